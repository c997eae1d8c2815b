using System.Text.RegularExpressions;

namespace StatueFrame;

/// <summary>Tells the family of a metal.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static partial class MetalFamilies
{
    /// <summary>
    /// The family of a material: the one it gives, or else the one its name tells, as in "copper, half hard" or
    /// "stainless steel 316L"; null when neither does.
    /// </summary>
    /// <param name="material">The metal.</param>
    public static MetalFamily? Of(Material material)
    {
        ArgumentNullException.ThrowIfNull(material);
        return material.Family ?? ByName(material.Name ?? "");
    }

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

    private static MetalFamily? ByName(string name) =>
        StainlessSteel().IsMatch(name) ? MetalFamily.StainlessSteel
        : WroughtIron().IsMatch(name) ? MetalFamily.WroughtIron
        : CastIron().IsMatch(name) ? MetalFamily.CastIron
        : Steel().IsMatch(name) ? MetalFamily.CarbonSteel
        : Bronze().IsMatch(name) ? MetalFamily.Bronze
        : Brass().IsMatch(name) ? MetalFamily.Brass
        : Copper().IsMatch(name) ? MetalFamily.Copper
        : Aluminum().IsMatch(name) ? MetalFamily.Aluminum
        : Zinc().IsMatch(name) ? MetalFamily.Zinc
        : Lead().IsMatch(name) ? MetalFamily.Lead
        : null;

    [GeneratedRegex(@"\bstainless\b", RegexOptions.IgnoreCase)]
    private static partial Regex StainlessSteel();

    [GeneratedRegex(@"\b(wrought|puddled) iron\b|\bpuddled\b", RegexOptions.IgnoreCase)]
    private static partial Regex WroughtIron();

    [GeneratedRegex(@"\bcast iron\b", RegexOptions.IgnoreCase)]
    private static partial Regex CastIron();

    [GeneratedRegex(@"\bsteel\b", RegexOptions.IgnoreCase)]
    private static partial Regex Steel();

    [GeneratedRegex(@"\b(bronze|gunmetal)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Bronze();

    [GeneratedRegex(@"\bbrass\b", RegexOptions.IgnoreCase)]
    private static partial Regex Brass();

    [GeneratedRegex(@"\bcopper\b", RegexOptions.IgnoreCase)]
    private static partial Regex Copper();

    [GeneratedRegex(@"\balumini?um\b", RegexOptions.IgnoreCase)]
    private static partial Regex Aluminum();

    [GeneratedRegex(@"\bzinc\b", RegexOptions.IgnoreCase)]
    private static partial Regex Zinc();

    [GeneratedRegex(@"\blead\b", RegexOptions.IgnoreCase)]
    private static partial Regex Lead();
}
