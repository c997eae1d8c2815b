using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Phosphorus-deoxidized copper sheet (Cu-DHP, C12200) for building, by temper. Hammering (repoussé) hardens it and
/// annealing or brazing softens it, so a worked skin has no single temper: R220 is the careful choice.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public static class Copper
{
    private const string Elastic =
        "E and expansion (20 to 300 °C) from the Copper Development Association's Copper in Architecture handbook, Table 1.1A; ν = 0.34 from memory";

    /// <summary>
    /// Soft (annealed), EN 1172 R220: 50/220 MPa. The standard gives only an upper limit of 140 MPa to the proof strength;
    /// 50 MPa is a low value for annealed copper.
    /// </summary>
    public static Material SoftR220 { get; } = European("copper, soft (R220)", 50, 220,
        "; the standard sets no least proof strength, 50 MPa is a low value for annealed copper, from memory");

    /// <summary>Half hard, EN 1172 R240: 180/240 MPa.</summary>
    public static Material HalfHardR240 { get; } = European("copper, half hard (R240)", 180, 240);

    /// <summary>Hard, EN 1172 R290: 250/290 MPa.</summary>
    public static Material HardR290 { get; } = European("copper, hard (R290)", 250, 290);

    /// <summary>Cold-rolled ASTM B370 temper H00 (eighth hard): 20/32 ksi.</summary>
    public static Material ColdRolledH00 { get; } = Sheet("copper, cold rolled (H00)",
        20.KilopoundsForcePerSquareInch, 32.KilopoundsForcePerSquareInch,
        new Source("ASTM B370 H00", "strengths, " + Elastic));

    private static Material European(string name, double proof, double ultimate, string note = "") =>
        Sheet(name, proof.Megapascals, ultimate.Megapascals, new Source("EN 1172:2011, strengths from memory", "Table 2" + note + "; " + Elastic));

    private static Material Sheet(string name, Pressure proof, Pressure ultimate, Source source) => new()
    {
        Name = name,
        Family = MetalFamily.Copper,
        YoungsModulus = 17_000.KilopoundsForcePerSquareInch,
        ShearModulus = Material.ShearModulusOf(17_000.KilopoundsForcePerSquareInch, 0.34),
        Density = 8930.KilogramsPerCubicMeter,
        YieldStrength = proof,
        UltimateStrength = ultimate,
        ThermalExpansion = CoefficientOfThermalExpansion.FromPpmPerDegreeFahrenheit(9.8),
        Source = source,
    };
}
