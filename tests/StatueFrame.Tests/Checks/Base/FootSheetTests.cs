using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Base;

/// <summary>Single feet: what their legs put on them, their welds, plates and bars.</summary>
public class FootSheetTests
{
    private static readonly BasePlate plate = new()
    {
        WidthX = 0.5.Meters,
        WidthY = 0.5.Meters,
        Thickness = 30.Millimeters,
        FootX = 0.2.Meters,
        FootY = 0.2.Meters,
        Material = StructuralSteel.S355,
        LegWeld = 6.Millimeters,
    };

    private static readonly AnchorBar bar = new() { X = 0.2.Meters, Y = 0.Meters, Diameter = 30.Millimeters, Material = StructuralSteel.S355, FreeLength = 1.Meters, Embedment = 1.Meters };

    private static FootLoad Foot(Section section) => new("leg 1", section, StructuralSteel.S355, plate, [bar, bar with { X = (-0.2).Meters }], 0, 0, 0, 0, 0, 0, BarDesign.For(StructuralSteel.S355), new BaseDesign());

    /// <summary>A weld round a thin tube: N/(πDa), 4M/(πD²a), V over half its length and 2T/(πD²a), to the wall over the diameter.</summary>
    [Fact]
    public void The_weld_of_a_mast_is_a_ring()
    {
        const double D = 0.6, t = 0.006, a = 0.006;
        FootLoad foot = Foot(new Tube(D.Meters, t.Meters)) with { Axial = 2e5, Shear = 4e4, Strong = 9e4, Torsion = 2e4 };
        double d = D - t, sigma = 2e5 / (Math.PI * d * a) + 4 * 9e4 / (Math.PI * d * d * a), tau = 4e4 / (0.5 * Math.PI * d * a) + 2 * 2e4 / (Math.PI * d * d * a);
        Check check = FootSheet.WeldEntry.With(foot, "storm");
        double expected = Math.Sqrt(sigma * sigma + tau * tau);
        Assert.Equal(expected, check.Demand!.Value, 0.03 * expected);
        Assert.Equal(StructuralSteel.S355.UltimateStrength.Pascals / (Math.Sqrt(3) * 1.25), check.Capacity!.Value, 1);
    }

    /// <summary>An angle welded on both faces: twice its own wall of throats.</summary>
    [Fact]
    public void The_weld_of_an_angle_lies_on_both_faces()
    {
        var angle = new AngleBar(150.Millimeters, 12.Millimeters);
        Check check = FootSheet.WeldEntry.With(Foot(angle) with { Axial = 3e5 }, "storm");
        Assert.Equal(3e5 / (angle.Area.SquareMeters * 2 * 6 / 12), check.Demand!.Value, 1);
    }

    /// <summary>
    /// The bed under a wall by hand: f_jd = 2/3 · 1.5 · 30/1.5 = 20 MPa, c = 30 √(345/60) = 71.9 mm; a tube of 600 by 6 under 600 kN and
    /// 90 kN m has N/A + M/W on its wall, and of the rim 71.9 mm on both sides.
    /// </summary>
    [Fact]
    public void A_thin_plate_does_not_fill_what_is_between_walls()
    {
        var bed = new BaseBlock(BlockSection.Rectangle(3.Meters, 3.Meters), Concrete.OfStrength(30.Megapascals), 2);
        var tube = new Tube(600.Millimeters, 6.Millimeters);
        FootLoad foot = Foot(tube) with { Axial = 6e5, Strong = 9e4, Bed = bed, SpreadRatio = 1.5 };
        double fy = plate.Material.For(0.03).YieldStrength.Pascals, c = 0.03 * Math.Sqrt(fy / (3 * 20e6)), q = (6e5 / tube.Area.SquareMeters + 9e4 / tube.StrongModulus.CubicMeters) * 0.006;
        Check check = FootSheet.BearingEntry.With(foot, "storm");
        Assert.Equal(q, check.Demand!.Value, 1);
        Assert.Equal(20e6 * (0.006 + 2 * c), check.Capacity!.Value, 1);
        PrintedWorkings.CanBeFollowed([check, FootSheet.BearingEntry.With(foot with { Section = new AngleBar(150.Millimeters, 12.Millimeters), BaseDesign = new BaseDesign { Code = BaseCode.American } }, "storm")]);
        // The rim ends with the plate, and meets its like from the other side of a slender tube.
        Assert.Equal(20e6 * (0.006 + 0.05 + c), Capacity(foot with { Plate = plate with { FootX = 0.4.Meters } }), 1);
        Assert.Equal(20e6 * (0.006 + 0.044 + c), Capacity(foot with { Section = new Tube(100.Millimeters, 6.Millimeters) }), 1);
        // Half as thick, half as wide a rim; a whole area under the foot would not ask for thickness at all.
        Assert.Equal(20e6 * (0.006 + c * Math.Sqrt(plate.Material.For(0.015).YieldStrength.Pascals / fy)), Capacity(foot with { Plate = plate with { Thickness = 15.Millimeters } }), 1);
        Assert.Contains("not described", FootSheet.BearingEntry.With(foot with { Bed = null }, "storm").Reason, StringComparison.Ordinal);

        static double Capacity(FootLoad foot) => FootSheet.BearingEntry.With(foot, "storm").Capacity!.Value;
    }

    [Fact]
    public void A_foot_without_bars_holds_no_uplift()
    {
        Check none = FootSheet.AnchorEntry.With(Foot(new AngleBar(150.Millimeters, 12.Millimeters)) with { Uplift = 1, Bars = [] }, "storm");
        Assert.Equal(Verdict.Fail, none.Verdict);
    }

    /// <summary>What feet are checked for is at least what balance asks: pulls on one side, T b ≥ M − W b/2.</summary>
    [Fact]
    public void Uplift_is_at_least_what_balance_asks()
    {
        SmallStatue whole = SmallWhole.Of(wind: 32);
        StatueModel model = StatueModel.Build(whole.Statue);
        CheckSheet sheet = whole.Statue.Check(whole.Criteria, whole.Situations);
        LoadCase storm = model.Respond(whole.Situations[0]).Cases.MaxBy(c => Math.Abs(c.Base.MomentY.NewtonMeters))!;
        double b = 1.6, M = Math.Abs(storm.Base.MomentY.NewtonMeters), W = Math.Abs(storm.Base.ForceZ.Newtons);
        double pull = Math.Max(0, M / b - W / 2);
        Assert.True(pull > 0);
        double most = sheet.Checks.Where(check => check.Id == "feet.anchors").Max(check => check.Demand!.Value);
        // Two legs share the side, one bar holds each.
        Assert.True(most >= 0.5 * pull, $"{most} {pull}");
        Assert.Contains(sheet.NotChecked, check => check.Id == "feet.welds");
    }

    /// <summary>Braces pull a foot up that its leg hardly presses: what is pulled is the sum of all that meets in the foot.</summary>
    [Fact]
    public void Braces_pull_a_foot_up_too()
    {
        SmallStatue whole = SmallWhole.Of(wind: 32);
        StatueModel model = StatueModel.Build(whole.Statue);
        SituationDemands demands = SituationDemands.Of([model], whole.Situations[0], DampingModel.OfRatio(0.01));
        SegmentModel segment = model.Segments[0];
        var most = new double[segment.Members.Count];
        Array.Fill(most, double.NegativeInfinity);
        demands.Members(0, (int i, in MemberForces forces, DemandState _) => most[i] = Math.Max(most[i], forces.N));
        Mechanics.Vector3D leg = model.Bodies[0].Tower.Levels[0].Legs[0];
        int[] there = [.. Enumerable.Range(0, most.Length).Where(i => (segment.Members[i].From - leg).Length < 1e-6)];
        Assert.Contains(there, i => segment.Members[i].Role == LatticeRole.Brace && most[i] > 0);
        double pulled = there.Sum(i => most[i] * (segment.Members[i].To - segment.Members[i].From).Normalized().Z);
        CheckSheet sheet = whole.Statue.Check(whole.Criteria, whole.Situations);
        double asked = sheet.Checks.Where(check => check.Id == "feet.anchors").Max(check => check.Demand!.Value);
        Assert.True(asked >= pulled * (1 - 1e-9), $"{asked} {pulled}");
    }

    /// <summary>A foot is as strong as its weakest bar, which need not be the thinnest.</summary>
    [Fact]
    public void The_weakest_bar_of_a_foot_counts()
    {
        SmallStatue whole = SmallWhole.Of(wind: 32);
        HoldDown holdDown = whole.Statue.HoldDown!;
        AnchorBar soft = holdDown.Bars[0] with { Diameter = 1.1 * holdDown.Bars[0].Diameter, Material = StructuralSteel.S235 };
        // One beside every bar that is there.
        SmallStatue mixed = whole.With(s => s with { HoldDown = holdDown with { Bars = [.. holdDown.Bars, .. holdDown.Bars.Select(bar => soft with { X = bar.X, Y = bar.Y - 0.1.Meters })] } });
        double weakest = AnchorChecks.TensionResistance(null, soft, new BaseDesign());
        Assert.True(weakest < AnchorChecks.TensionResistance(null, holdDown.Bars[0], new BaseDesign()));
        Assert.Contains(mixed.Statue.Check(mixed.Criteria, mixed.Situations).Checks, check => check.Id == "feet.anchors" && Math.Abs(check.Capacity!.Value - weakest) < 1e-6 * weakest);
    }
}
