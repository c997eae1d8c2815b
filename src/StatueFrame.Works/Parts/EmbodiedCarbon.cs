namespace StatueFrame.Works;

/// <summary>Embodied carbon of metals from cradle to gate, kg of CO₂ equivalent a kg.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record EmbodiedCarbon
{
    /// <summary>
    /// The averages of the Inventory of Carbon and Energy: sections of steel 1.53, stainless 6.15, copper tube and sheet 2.71,
    /// bronze 4.0, brass 2.64, aluminum 9.16, iron 2.03, zinc 3.09, lead 1.67. An environmental declaration of the mill is better.
    /// </summary>
    public static EmbodiedCarbon Inventory { get; } = new()
    {
        Values =
        [
            new CarbonValue(MetalFamily.CarbonSteel, 1.53), new CarbonValue(MetalFamily.StainlessSteel, 6.15), new CarbonValue(MetalFamily.Copper, 2.71),
            new CarbonValue(MetalFamily.Bronze, 4.0), new CarbonValue(MetalFamily.Brass, 2.64), new CarbonValue(MetalFamily.Aluminum, 9.16),
            new CarbonValue(MetalFamily.WroughtIron, 2.03), new CarbonValue(MetalFamily.CastIron, 2.03), new CarbonValue(MetalFamily.Zinc, 3.09), new CarbonValue(MetalFamily.Lead, 1.67),
        ],
        Source = new Source("Hammond and Jones, Inventory of Carbon and Energy, version 2.0, University of Bath, 2011", "summary table (from memory)"),
    };

    /// <summary>The values.</summary>
    public required ValueList<CarbonValue> Values { get; init; }

    /// <summary>Where they come from.</summary>
    public required Source Source { get; init; }

    /// <summary>The value of a family; null when there is none.</summary>
    /// <param name="family">The family of metals.</param>
    public double? Of(MetalFamily family) => Values.FirstOrDefault(v => v.Family == family)?.KilogramsPerKilogram;
}
