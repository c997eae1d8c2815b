using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Base;

public class AnchorChecksTests
{
    private static readonly BaseDesign aci = new() { Code = BaseCode.American };
    private static readonly AnchorBar m24 = BaseGroupTests.Bar(0, 0) with
    {
        Diameter = 24.Millimeters,
        StressArea = Area.FromSquareMillimeters(353),
        Material = StructuralSteel.S235 with { Name = "steel 4.6", YieldStrength = 240.Megapascals, UltimateStrength = 400.Megapascals },
    };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("steel tension of M24 4.6 with 0.85 for cut threads", "sample calculation of a column base to EN 1992-4, second hand: N_Rd,s = 60.0 kN, γ_Ms = 1.2 f_uk/f_yk", 60.0, "kN", 1e-3, () => 0.85e-3 * AnchorChecks.Tension(m24, Force.Zero).Capacity!.Value),
        new("bearing f_p of concrete at √(A₂/A₁) = 2, f′c = 3 ksi, with ϕ = 0.60", "AISC Design Guide 1, 2nd ed., example B.5.2: 0.60 × 1.7 × 3.0 ksi", 3.06, "ksi", 1e-3, () => 0.60 / 0.65 * PlateBearing.Strength(null, Concrete.OfStrength(3.KilopoundsForcePerSquareInch), 2, aci) / 6894757.293),
        new("head bearing of an anchor, A_h 0.01 m², C30, cracked", "EN 1992-4:2018, (7.11): 7.5 A_h f_ck/1.5, from memory", 7.5 * 0.01 * 30e3 / 1.5, "kN", 1e-9, () => 1e-3 * AnchorChecks.PullOut(m24 with { HeadWidth = Math.Sqrt(0.01 + Math.PI / 4 * 0.024 * 0.024).Meters }, Force.Zero, BaseGroupTests.C30).Capacity!.Value, ValueKind.FromMemory),
        new("α_b of a bar with f_yb = 240 MPa", "EN 1993-1-8:2005, 6.2.2 (7): 0.44 − 0.0003 f_yb, from memory", 0.368, "-", 1e-9, () => AnchorChecks.Shear(m24, Force.Zero).Capacity!.Value * 1.25 / (400e6 * 353e-6), ValueKind.FromMemory),
        new("width c of a plate of 40 mm, S235, f_jd 20 MPa", "EN 1993-1-8:2005, (6.5), by hand", 40 * Math.Sqrt(235 / 60.0), "mm", 1e-9, () => 1e3 * PlateBearing.Spread(null, 0.04, 235e6, 20e6, 1), ValueKind.IndependentComputation),
    ];

    [Fact]
    public void Girder_is_bent_most_in_the_middle_or_at_its_bars()
    {
        var girder = new AnchorGirder
        {
            Length = 2.Meters,
            BarDistance = 1.Meters,
            Width = 0.2.Meters,
            SectionModulus = Volume.FromCubicCentimeters(1000),
            ShearArea = Area.FromSquareCentimeters(60),
            Material = StructuralSteel.S355,
        };
        // q = 100 kN/m: 12.5 kN·m at the bars; q L²/8 − T s/2 = 0 in the middle.
        double T = 100e3;
        Assert.Equal(Math.Max(12.5e3 / 1e-3, Math.Sqrt(3) * 50e3 / 60e-4), AnchorChecks.GirderBending(girder, T.Newtons).Demand!.Value, 1);
        // Bars together in the middle: a cantilever each way, T L/4.
        double together = AnchorChecks.GirderBending(girder with { BarDistance = 0.01.Meters, ShearArea = Area.FromSquareMeters(1) }, T.Newtons).Demand!.Value;
        Assert.Equal(T * 2 / 4 / 1e-3, together, 0.011 * together);
        Assert.Equal(T / (1 * 0.2), AnchorChecks.GirderBearing(girder, T.Newtons, BaseGroupTests.C30).Demand!.Value, 1);
    }

    [Fact]
    public void Tension_and_shear_together_follow_the_codes_curves()
    {
        double T = AnchorChecks.Tension(m24, Force.Zero).Capacity!.Value, V = AnchorChecks.Shear(m24, Force.Zero).Capacity!.Value;
        Assert.Equal(1, AnchorChecks.Interaction(m24, (0.6 * T).Newtons, (0.8 * V).Newtons).Demand!.Value, 1e-9);
        T = AnchorChecks.Tension(m24, Force.Zero, aci).Capacity!.Value;
        V = AnchorChecks.Shear(m24, Force.Zero, aci).Capacity!.Value;
        Assert.Equal(1, AnchorChecks.Interaction(m24, (0.5 * T).Newtons, (0.7 * V).Newtons, aci).Demand!.Value, 1e-9);
        Assert.Equal(0.9, AnchorChecks.Interaction(m24, (0.9 * T).Newtons, (0.1 * V).Newtons, aci).Demand!.Value, 1e-9);
    }

    [Fact]
    public void Bar_without_head_needs_bond()
    {
        AnchorBar plain = m24 with { HeadWidth = null };
        Assert.Equal(Verdict.NotChecked, AnchorChecks.PullOut(plain, 10.Kilonewtons, BaseGroupTests.C30).Verdict);
        Check ribbed = AnchorChecks.PullOut(plain with { Ribbed = true, BondLength = 1.Meters }, 10.Kilonewtons, BaseGroupTests.C30);
        Assert.Equal("base.bond", ribbed.Id);
        Assert.Equal(2.25 * 0.7 * 0.7 * BaseGroupTests.C30.f_ctm / 1.5 * Math.PI * 0.024, ribbed.Capacity!.Value, 1);
    }

    [Fact]
    public void No_pull_needs_no_cone_and_a_bar_outside_has_none()
    {
        AnchorBar[] bars = [m24, m24 with { X = 3.Meters }];
        BlockSection block = BlockSection.Rectangle(2.Meters, 2.Meters);
        Assert.Equal(Verdict.Pass, AnchorChecks.Breakout(bars, [Force.Zero, Force.Zero], block, BaseGroupTests.C30).Verdict);
        Assert.Equal(Verdict.Fail, AnchorChecks.Breakout(bars, [Force.Zero, 1.Kilonewtons], block, BaseGroupTests.C30).Verdict);
    }

    [Fact]
    public void Spread_below_a_plate_stops_at_edges_depth_and_neighbors()
    {
        BasePlate plate = BaseGroupTests.Plate(0, 0, 1);
        Assert.Equal(2, PlateBearing.SpreadRatio(plate, [plate], BlockSection.Rectangle(2.Meters, 5.Meters), 10), 1e-12);
        Assert.Equal(1.5, PlateBearing.SpreadRatio(plate, [plate], BlockSection.Rectangle(9.Meters, 9.Meters), 0.5), 1e-12);
        Assert.Equal(Math.Sqrt(2), PlateBearing.SpreadRatio(plate, [plate], BlockSection.Round(2.Meters), 9), 1e-12);
        BasePlate other = BaseGroupTests.Plate(1.3, 0, 1);
        Assert.Equal(1.3, PlateBearing.SpreadRatio(plate, [plate, other], BlockSection.Rectangle(9.Meters, 9.Meters), 9), 1e-12);
    }
}
