using System.Reflection;
using UnitsNet;

namespace StatueFrame.Tests.Materials;

public class MaterialsTests
{
    private const string En1993 = "EN 1993-1-1:2005, Table 3.1, t ≤ 40 mm, second hand";
    private const string Bssa = "EN 10088-2, hot-rolled plate, second hand";
    private const string Aisc = "AISC Steel Construction Manual, Table 2-4, second hand";
    private const string Cda = "Copper in Architecture handbook, Table 1.1A, second hand";

    public static IEnumerable<PublishedValue> Rows =>
    [
        Stress("S235 yield strength", En1993, 235, StructuralSteel.S235.YieldStrength),
        Stress("S235 ultimate strength", En1993, 360, StructuralSteel.S235.UltimateStrength),
        Stress("S275 yield strength", En1993, 275, StructuralSteel.S275.YieldStrength),
        Stress("S275 ultimate strength", En1993, 430, StructuralSteel.S275.UltimateStrength),
        Stress("S355 yield strength", En1993, 355, StructuralSteel.S355.YieldStrength),
        Stress("S355 ultimate strength", En1993, 490, StructuralSteel.S355.UltimateStrength),
        new("steel shear modulus", "EN 1993-1-1:2005, 3.2.6 (about 81 000 MPa)", 81_000, "MPa", 0.5 / 81, () => StructuralSteel.S355.ShearModulus.Megapascals),
        Ksi("A36 yield strength", Aisc, 36, StructuralSteel.A36.YieldStrength),
        Ksi("A36 ultimate strength", Aisc, 58, StructuralSteel.A36.UltimateStrength),
        Ksi("A992 yield strength", Aisc, 50, StructuralSteel.A992.YieldStrength),
        Ksi("A992 ultimate strength", Aisc, 65, StructuralSteel.A992.UltimateStrength),
        Stress("316L proof strength", Bssa, 220, StainlessSteel.Grade316L.YieldStrength),
        Stress("316L ultimate strength", Bssa, 520, StainlessSteel.Grade316L.UltimateStrength),
        Stress("duplex 2205 proof strength", Bssa, 460, StainlessSteel.Duplex2205.YieldStrength),
        Stress("duplex 2205 ultimate strength", Bssa, 640, StainlessSteel.Duplex2205.UltimateStrength),
        Ksi("copper H00 yield strength", Cda, 20, Copper.ColdRolledH00.YieldStrength),
        Ksi("copper H00 ultimate strength", Cda, 32, Copper.ColdRolledH00.UltimateStrength),
        new("copper density", Cda + " (0.322 lb/in³)", 0.322, "lb/in³", 0.003, () => Copper.ColdRolledH00.Density.PoundsPerCubicInch),
        Stress("copper R240 proof strength", "EN 1172:2011, Table 2", 180, Copper.HalfHardR240.YieldStrength, ValueKind.FromMemory),
        Stress("gunmetal CuSn5Zn5Pb5 proof strength", "EN 1982 CC491K-GS, second hand", 90, Bronze.GunmetalCuSn5Zn5Pb5.YieldStrength),
        Stress("gunmetal CuSn5Zn5Pb5 ultimate strength", "EN 1982 CC491K-GS, second hand", 200, Bronze.GunmetalCuSn5Zn5Pb5.UltimateStrength),
        Stress("EN AW-6082 T6 proof strength", "EN 1999-1-1:2007, Table 3.2a", 260, Aluminum.Alloy6082T6.YieldStrength, ValueKind.FromMemory),
    ];

    private static PublishedValue Stress(string feature, string source, double expected, Pressure ours, ValueKind kind = ValueKind.Published) =>
        new(feature, source, expected, "MPa", 1e-12, () => ours.Megapascals, kind) { IsReadBack = true };

    private static PublishedValue Ksi(string feature, string source, double expected, Pressure ours) =>
        new(feature, source, expected, "ksi", 1e-12, () => ours.KilopoundsForcePerSquareInch) { IsReadBack = true };

    private static readonly Material[] Library =
    [
        .. new[] { typeof(StructuralSteel), typeof(StainlessSteel), typeof(WroughtIron), typeof(Copper), typeof(Bronze), typeof(Aluminum) }
            .SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Static))
            .Select(property => (Material)property.GetValue(null)!),
    ];

    [Fact]
    public void Every_material_of_the_library_is_valid_and_says_its_source()
    {
        Assert.Equal(19, Library.Length);
        foreach (Material material in Library)
        {
            var v = new Validator();
            material.Validate(v);
            Assert.Empty(v.Problems);
            Assert.NotEmpty(material.Source.Document);
            Assert.InRange(material.PoissonRatio, 0.25, 0.36);
        }
    }

    [Fact]
    public void Names_are_distinct() => Assert.Equal(Library.Length, Library.Select(m => m.Name).Distinct().Count());

    [Fact]
    public void Harder_copper_is_stronger()
    {
        Material[] tempers = [Copper.SoftR220, Copper.HalfHardR240, Copper.HardR290];
        for (int i = 1; i < tempers.Length; i++)
        {
            Assert.True(tempers[i].YieldStrength > tempers[i - 1].YieldStrength);
            Assert.True(tempers[i].UltimateStrength > tempers[i - 1].UltimateStrength);
        }
    }

    [Fact]
    public void Poisson_ratio_comes_back_from_the_moduli()
    {
        Pressure E = 100.Gigapascals;
        Material material = StructuralSteel.S355 with { YoungsModulus = E, ShearModulus = Material.ShearModulusOf(E, 0.34) };
        Assert.Equal(0.34, material.PoissonRatio, 1e-12);
    }

    [Fact]
    public void An_impossible_Poisson_ratio_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Material.ShearModulusOf(210.Gigapascals, double.NaN));

    [Fact]
    public void A_modulus_in_the_wrong_unit_is_found()
    {
        var v = new Validator();
        (StructuralSteel.S355 with { YoungsModulus = 210.Megapascals, ShearModulus = 81.Megapascals }).Validate(v);
        Assert.Equal(["YoungsModulus", "ShearModulus"], v.Problems.Select(p => p.Path));
    }

    [Fact]
    public void A_material_without_stiffness_has_no_Poisson_ratio() =>
        Assert.Throws<InvalidStatueException>(() => (Copper.SoftR220 with { YoungsModulus = Pressure.Zero, ShearModulus = Pressure.Zero }).PoissonRatio);
}
