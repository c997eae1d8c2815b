namespace StatueFrame;

/// <summary>
/// Stainless steels for bars and saddles near copper and salt air, as hot-rolled plate up to 75 mm. They have no sharp
/// yield point: the yield strength is the 0.2 % proof strength, and they soften below it.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public static class StainlessSteel
{
    private const string Place =
        "minimum strengths of hot-rolled plate up to 75 mm, and EN 10088-1 physical properties (20 to 100 °C), as tabulated by the British Stainless Steel Association";

    /// <summary>Austenitic grade 316L, EN 1.4404: 220/520 MPa.</summary>
    public static Material Grade316L { get; } = new()
    {
        Name = "stainless steel 316L (1.4404)",
        Family = MetalFamily.StainlessSteel,
        YoungsModulus = 200.Gigapascals,
        ShearModulus = 76.9.Gigapascals,
        Density = 8000.KilogramsPerCubicMeter,
        YieldStrength = 220.Megapascals,
        UltimateStrength = 520.Megapascals,
        ThermalExpansion = 16.PpmPerKelvin,
        Source = new Source("EN 10088-2, 1.4404", Place),
    };

    /// <summary>Duplex grade 2205, EN 1.4462: 460/640 MPa.</summary>
    public static Material Duplex2205 { get; } = new()
    {
        Name = "stainless steel duplex 2205 (1.4462)",
        Family = MetalFamily.StainlessSteel,
        YoungsModulus = 200.Gigapascals,
        ShearModulus = 76.9.Gigapascals,
        Density = 7800.KilogramsPerCubicMeter,
        YieldStrength = 460.Megapascals,
        UltimateStrength = 640.Megapascals,
        ThermalExpansion = 13.PpmPerKelvin,
        Source = new Source("EN 10088-2, 1.4462", Place),
    };
}
