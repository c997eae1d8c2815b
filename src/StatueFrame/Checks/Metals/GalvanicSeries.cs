namespace StatueFrame.Checks;

/// <summary>How noble a metal is: its anodic index, the difference of potential to gold.</summary>
/// <remarks>
/// Source: MIL-STD-889, table of anodic indices, from memory; the limits of <see cref="Allowed"/> are made for these and for no
/// other scale. Stainless steel is taken as one with 18 % of chromium, aluminum as a wrought alloy. Stateless; safe to use
/// from many threads.
/// </remarks>
internal static class GalvanicSeries
{
    internal static readonly Source Source = new("MIL-STD-889", "anodic index, from memory");

    /// <summary>The anodic index of a metal, V; 0 for gold, the less noble the more negative.</summary>
    /// <param name="metal">The metal.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such family of metals.</exception>
    public static double AnodicIndex(MetalFamily metal) => metal switch
    {
        MetalFamily.Copper => -0.35,
        MetalFamily.Bronze => -0.40,
        MetalFamily.Brass => -0.45,
        MetalFamily.StainlessSteel => -0.50,
        MetalFamily.Lead => -0.70,
        MetalFamily.CarbonSteel or MetalFamily.CastIron or MetalFamily.WroughtIron => -0.85,
        MetalFamily.Aluminum => -0.90,
        MetalFamily.Zinc => -1.25,
        _ => throw new ArgumentOutOfRangeException(nameof(metal), metal, "There is no such family of metals."),
    };

    /// <summary>
    /// The difference of indices that is let be without isolation, V: 0.50 controlled, 0.25 normal, 0.15 harsh. A rule of
    /// thumb of the trade for anodic indices.
    /// </summary>
    /// <param name="environment">The surroundings.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are no such surroundings.</exception>
    public static double Allowed(GalvanicEnvironment environment) => environment switch
    {
        GalvanicEnvironment.Controlled => 0.50,
        GalvanicEnvironment.Normal => 0.25,
        GalvanicEnvironment.Harsh => 0.15,
        _ => throw new ArgumentOutOfRangeException(nameof(environment), environment, "There are controlled, normal and harsh surroundings."),
    };

    /// <summary>
    /// How many times faster the less noble metal of a pair corrodes than alone, when oxygen reaching the nobler one sets the
    /// pace: 1 + A_noble/A_base (the catchment-area rule, as in Uhlig, Corrosion and Corrosion Control; from memory).
    /// </summary>
    /// <param name="nobleOverBase">Wetted area of the nobler metal over that of the less noble one, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is negative or not finite.</exception>
    public static double Acceleration(double nobleOverBase) => 1 + CheckInput.NotNegative(nobleOverBase, nameof(nobleOverBase));
}
