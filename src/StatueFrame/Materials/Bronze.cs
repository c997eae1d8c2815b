namespace StatueFrame;

/// <summary>Bronzes for bars, rivets and castings.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public static class Bronze
{
    /// <summary>Wrought tin bronze CuSn8, strip temper R450: 280/450 MPa.</summary>
    public static Material TinCuSn8R450 { get; } = new()
    {
        Name = "bronze CuSn8 (R450)",
        Family = MetalFamily.Bronze,
        YoungsModulus = 115.Gigapascals,
        ShearModulus = Material.ShearModulusOf(115.Gigapascals, 0.34),
        Density = 8800.KilogramsPerCubicMeter,
        YieldStrength = 280.Megapascals,
        UltimateStrength = 450.Megapascals,
        ThermalExpansion = 18.2.PpmPerKelvin,
        Source = new Source("EN 1652 CW453K, strengths from memory", "E, density and expansion from makers' data sheets; ν = 0.34 from memory"),
    };

    /// <summary>Cast gunmetal CuSn5Zn5Pb5-C, sand cast: 90/200 MPa.</summary>
    public static Material GunmetalCuSn5Zn5Pb5 { get; } = new()
    {
        Name = "gunmetal CuSn5Zn5Pb5-C, sand cast",
        Family = MetalFamily.Bronze,
        YoungsModulus = 85.Gigapascals,
        ShearModulus = Material.ShearModulusOf(85.Gigapascals, 0.34),
        Density = 8700.KilogramsPerCubicMeter,
        YieldStrength = 90.Megapascals,
        UltimateStrength = 200.Megapascals,
        ThermalExpansion = 18.2.PpmPerKelvin,
        Source = new Source(
            "EN 1982 CC491K-GS", "as in founders' data sheets, which give E from 65 to 105 GPa, here the middle; ν = 0.34 from memory"),
    };

    /// <summary>Silicon bronze C65500, annealed plate: 18/50 ksi. Cold-worked tempers are far stronger.</summary>
    public static Material SiliconC65500 { get; } = new()
    {
        Name = "silicon bronze C65500, annealed",
        Family = MetalFamily.Bronze,
        YoungsModulus = 15_000.KilopoundsForcePerSquareInch,
        ShearModulus = 5_600.KilopoundsForcePerSquareInch,
        Density = 8530.KilogramsPerCubicMeter,
        YieldStrength = 18.KilopoundsForcePerSquareInch,
        UltimateStrength = 50.KilopoundsForcePerSquareInch,
        ThermalExpansion = 18.PpmPerKelvin,
        Source = new Source("ASTM B96 C65500, strengths from memory", "E, G, density and expansion (20 to 300 °C) from makers' data sheets"),
    };
}
