namespace StatueFrame;

/// <summary>
/// Aluminum sheet alloys of EN 1999-1-1. The strengths are those of the sheet away from welds: beside a weld tempered
/// alloys lose up to half. Keep it from contact with copper.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public static class Aluminum
{
    /// <summary>EN AW-5754 in temper O/H111: 80/190 MPa.</summary>
    public static Material Alloy5754H111 { get; } = Sheet("EN AW-5754 O/H111", 80, 190);

    /// <summary>EN AW-5083 in temper O/H111, up to 50 mm: 125/275 MPa.</summary>
    public static Material Alloy5083H111 { get; } = Sheet("EN AW-5083 O/H111", 125, 275);

    /// <summary>EN AW-6082 in temper T6, up to 6 mm: 260/310 MPa.</summary>
    public static Material Alloy6082T6 { get; } = Sheet("EN AW-6082 T6", 260, 310);

    private static Material Sheet(string alloy, double proof, double ultimate) => new()
    {
        Name = $"aluminum {alloy}",
        Family = MetalFamily.Aluminum,
        YoungsModulus = 70.Gigapascals,
        ShearModulus = 27.Gigapascals,
        Density = 2700.KilogramsPerCubicMeter,
        YieldStrength = proof.Megapascals,
        UltimateStrength = ultimate.Megapascals,
        ThermalExpansion = 23.PpmPerKelvin,
        Source = new Source("EN 1999-1-1:2007, values from memory", "Table 3.2a and 3.2.5"),
    };
}
