namespace StatueFrame;

/// <summary>Families of metals in words.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class MetalFamilies
{
    /// <summary>The name of a family in a sentence, as in "stainless steel".</summary>
    /// <param name="family">The family.</param>
    public static string Describe(this MetalFamily family) => family switch
    {
        MetalFamily.CarbonSteel => "carbon steel",
        MetalFamily.WroughtIron => "wrought iron",
        MetalFamily.CastIron => "cast iron",
        MetalFamily.StainlessSteel => "stainless steel",
        _ => family.ToString().ToLowerInvariant(),
    };
}
