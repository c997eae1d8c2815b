using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Structural steels of European and American standards, with the nominal strengths of thicknesses up to 40 mm
/// and from there to 80 mm (European grades); thicker products are weaker.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public static class StructuralSteel
{
    /// <summary>S235 of EN 10025-2: 235/360 MPa.</summary>
    public static Material S235 { get; } = European("S235", 235, 360, 215, 360);

    /// <summary>S275 of EN 10025-2: 275/430 MPa.</summary>
    public static Material S275 { get; } = European("S275", 275, 430, 255, 410);

    /// <summary>S355 of EN 10025-2: 355/490 MPa.</summary>
    public static Material S355 { get; } = European("S355", 355, 490, 335, 470);

    /// <summary>ASTM A36: 36/58 ksi.</summary>
    public static Material A36 { get; } = American("A36", 36, 58);

    /// <summary>ASTM A572 grade 50: 50/65 ksi.</summary>
    public static Material A572Grade50 { get; } = American("A572 grade 50", 50, 65);

    /// <summary>ASTM A992: 50/65 ksi.</summary>
    public static Material A992 { get; } = American("A992", 50, 65);

    private static Material European(string grade, double yield, double ultimate, double thickYield, double thickUltimate) => new()
    {
        Name = $"steel {grade}",
        Family = MetalFamily.CarbonSteel,
        YoungsModulus = 210.Gigapascals,
        ShearModulus = Material.ShearModulusOf(210.Gigapascals, 0.3),
        Density = 7850.KilogramsPerCubicMeter,
        YieldStrength = yield.Megapascals,
        UltimateStrength = ultimate.Megapascals,
        Thicker = new StrengthStep(40.Millimeters, thickYield.Megapascals, thickUltimate.Megapascals),
        ThermalExpansion = 12.PpmPerKelvin,
        Source = Source.En1993_1_1("Table 3.1 for t ≤ 40 mm, and to 80 mm, and 3.2.6; density EN 1991-1-1, Table A.4"),
    };

    private static Material American(string grade, double yield, double ultimate) => new()
    {
        Name = $"steel {grade}",
        Family = MetalFamily.CarbonSteel,
        YoungsModulus = 29_000.KilopoundsForcePerSquareInch,
        ShearModulus = 11_200.KilopoundsForcePerSquareInch,
        Density = 490.PoundsPerCubicFoot,
        YieldStrength = yield.KilopoundsForcePerSquareInch,
        UltimateStrength = ultimate.KilopoundsForcePerSquareInch,
        ThermalExpansion = CoefficientOfThermalExpansion.FromPpmPerDegreeFahrenheit(6.5),
        Source = new Source("AISC Steel Construction Manual, 14th ed.", "Table 2-4; E, G, density and expansion from memory"),
    };
}
