namespace StatueFrame.Checks;

/// <summary>How noble a metal is: its potential in flowing sea water against the saturated calomel electrode.</summary>
/// <remarks>
/// Source: Australasian Corrosion Association, Corrosion potentials in flowing seawater (the ranges of the usual chart, as in
/// ASTM G82), wrought iron from Professional Boatbuilder 100 (2006), which has it level with mild steel. The middle of each
/// range is taken. Stainless steel is taken as passive 316, its noblest and for its partners the worst state. Stateless;
/// safe to use from many threads.
/// </remarks>
public static class GalvanicSeries
{
    internal static readonly Source Source = new("Australasian Corrosion Association", "corrosion potentials in flowing seawater, V against SCE, middle of the range");

    /// <summary>The range of a metal's potential, V; the less noble end first.</summary>
    /// <param name="metal">The metal.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such family of metals.</exception>
    public static (double Least, double Greatest) Range(MetalFamily metal) => metal switch
    {
        MetalFamily.Zinc => (-1.03, -0.98),
        MetalFamily.Aluminum => (-1.00, -0.76),
        MetalFamily.CarbonSteel or MetalFamily.CastIron => (-0.72, -0.60),
        MetalFamily.WroughtIron => (-0.71, -0.60),
        MetalFamily.Brass => (-0.40, -0.31),
        MetalFamily.Copper => (-0.37, -0.30),
        MetalFamily.Bronze => (-0.32, -0.24),
        MetalFamily.Lead => (-0.25, -0.19),
        MetalFamily.StainlessSteel => (-0.10, 0.00),
        _ => throw new ArgumentOutOfRangeException(nameof(metal), metal, "There is no such family of metals."),
    };

    /// <summary>The potential taken for a metal, V.</summary>
    /// <param name="metal">The metal.</param>
    public static double Potential(MetalFamily metal) => 0.5 * (Range(metal).Least + Range(metal).Greatest);

    /// <summary>
    /// The difference of potential that is let be without isolation, V: 0.50 controlled, 0.25 normal, 0.15 harsh. A rule of
    /// thumb of the trade for indices of this kind.
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
