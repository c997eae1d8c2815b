using UnitsNet;

namespace StatueFrame;

/// <summary>The loss of a metal in its first year, category by category.</summary>
/// <remarks>
/// Source: ISO 9223:2012, Table 2; the limits in µm are from memory, those of carbon steel checked against a table of the
/// standard. Aluminum is classed by mass, here divided by 2700 kg/m³. Stateless; safe to use from many threads.
/// </remarks>
public static class CorrosivityTable
{
    private const double AluminumDensity = 2.7;

    private static readonly double[] carbonSteel = [0, 1.3, 25, 50, 80, 200, 700];
    private static readonly double[] zinc = [0, 0.1, 0.7, 2.1, 4.2, 8.4, 25];
    private static readonly double[] copper = [0, 0.1, 0.6, 1.3, 2.8, 5.6, 10];

    /// <summary>In g/m²; C1 is negligible, and CX has no upper limit.</summary>
    private static readonly double[] aluminum = [0, 0, 0.6, 2, 5, 10, double.NaN];

    internal static readonly Source Source = new("ISO 9223:2012", "Table 2, limits from memory");

    /// <summary>
    /// The limits of a category for a metal: above the lower one, up to the upper one. Null for metals that the standard
    /// does not class (stainless steel, lead), and the upper limit is null for aluminum in CX. Iron counts as carbon steel,
    /// bronze and brass as copper.
    /// </summary>
    /// <param name="metal">The metal.</param>
    /// <param name="category">The category.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such metal or category.</exception>
    public static (Length Lower, Length? Upper)? Limits(MetalFamily metal, Corrosivity category)
    {
        if (!Enum.IsDefined(category))
            throw new ArgumentOutOfRangeException(nameof(category), category, "Categories are C1 to CX.");
        if (Standard(metal) is not { } standard)
            return null;
        double[] limits = Table(standard);
        double scale = standard == MetalFamily.Aluminum ? 1 / AluminumDensity : 1, upper = limits[(int)category + 1];
        return (Length.FromMicrometers(scale * limits[(int)category]), double.IsNaN(upper) ? null : Length.FromMicrometers(scale * upper));
    }

    /// <summary>The category that a first year's loss falls in; null for metals that are not classed. A loss above CX is CX.</summary>
    /// <param name="metal">The metal.</param>
    /// <param name="firstYear">What it lost in the first year, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The loss is negative or not finite, or there is no such metal.</exception>
    public static Corrosivity? CategoryOf(MetalFamily metal, Length firstYear)
    {
        if (!(firstYear.Micrometers >= 0 && double.IsFinite(firstYear.Micrometers)))
            throw new ArgumentOutOfRangeException(nameof(firstYear), firstYear, "A loss is zero or more, and finite.");
        if (Standard(metal) is not { } standard)
            return null;
        double[] limits = Table(standard);
        double loss = standard == MetalFamily.Aluminum ? AluminumDensity * firstYear.Micrometers : firstYear.Micrometers;
        int category = 0;
        while (category < (int)Corrosivity.CX && loss > limits[category + 1] * (1 + 1e-12))
            category++;
        return (Corrosivity)category;
    }

    /// <summary>The metal of the standard that stands for a family; null when none does.</summary>
    internal static MetalFamily? Standard(MetalFamily metal) => metal switch
    {
        MetalFamily.CarbonSteel or MetalFamily.WroughtIron or MetalFamily.CastIron => MetalFamily.CarbonSteel,
        MetalFamily.Copper or MetalFamily.Bronze or MetalFamily.Brass => MetalFamily.Copper,
        MetalFamily.Zinc or MetalFamily.Aluminum => metal,
        MetalFamily.StainlessSteel or MetalFamily.Lead => null,
        _ => throw new ArgumentOutOfRangeException(nameof(metal), metal, "There is no such family of metals."),
    };

    private static double[] Table(MetalFamily standard) => standard switch
    {
        MetalFamily.CarbonSteel => carbonSteel,
        MetalFamily.Zinc => zinc,
        MetalFamily.Copper => copper,
        _ => aluminum,
    };
}
