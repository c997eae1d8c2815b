using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Heat;

/// <summary>What the sheet says of heat, and of standoffs that are described to the last.</summary>
public class HeatSheetTests
{
    private static readonly TemperatureAction summer = new() { Name = "summer", SkinChange = TemperatureDelta.FromKelvins(25), SunRise = TemperatureDelta.FromKelvins(20), SunSide = 270.Degrees };

    private static readonly Situation hot = new() { Name = "hot", Actions = [1.35 * new SelfWeight(), 1.5 * summer, 0.9 * SmallStatue.Wind] };

    private static CheckSheet SheetOf(Statue statue, params Situation[] situations) => statue.Check(new Criteria(), situations);

    private static string[] Ids(CheckSheet sheet, string family) => [.. sheet.Checks.Where(c => c.Family == family).Select(c => c.Id).Distinct().Order()];

    [Fact]
    public void A_situation_with_heat_is_checked_by_itself_and_together()
    {
        CheckSheet sheet = SheetOf(SmallStatue.Good.Statue, hot);
        Assert.Equal(["heat.bar-deflection", "heat.bar-stress", "heat.joint-gap", "heat.restraint", "heat.saddle-travel"], Ids(sheet, "heat"));
        Assert.Equal(3, sheet.Checks.Count(c => c.Id == "heat.bar-stress"));
        Assert.Equal(2, sheet.Checks.Count(c => c.Id == "heat.restraint"));
        Assert.All(sheet.Checks.Where(c => c.Id is "heat.bar-stress" or "heat.bar-deflection" or "heat.restraint"), c => Assert.NotEqual(Verdict.NotChecked, c.Verdict));
        CheckSheet cold = SheetOf(SmallStatue.Good.Statue, hot with { Actions = [1.35 * new SelfWeight(), 0.9 * SmallStatue.Wind] });
        Assert.Contains("temperature action", Assert.Single(cold.Checks, c => c.Family == "heat").Reason);
        double with = sheet.Checks.Where(c => c.Id == "bars.bending").Max(c => c.Demand!.Value), without = cold.Checks.Where(c => c.Id == "bars.bending").Max(c => c.Demand!.Value);
        Assert.True(with > without);
    }

    [Fact]
    public void The_same_heat_is_listed_once()
    {
        CheckSheet sheet = SheetOf(SmallStatue.Good.Statue, hot, hot with { Name = "again", Actions = [1.5 * summer, new SelfWeight()] });
        Assert.Equal(3, sheet.Checks.Count(c => c.Id == "heat.bar-stress"));
    }

    [Fact]
    public void Sliding_saddles_travel_and_their_friction_drags_the_bars()
    {
        Standoff Sliding(double clamp) => HotRing.Flat with
        {
            Slide = SaddleSlide.AlongAxis,
            Saddle = new Saddle { Clamp = clamp.Newtons, Friction = 0.3, Travel = 3.Millimeters },
        };
        var heat = new Situation { Name = "hot", Actions = [new SelfWeight(), new TemperatureAction { SkinChange = TemperatureDelta.FromKelvins(30) }] };
        Statue Tall(double clamp) => HotRing.Of(8, bands: 7, flat: Sliding(clamp)) with
        {
            Skin = HotRing.Of(8, bands: 7).Skin! with { Joints = [] },
            Standoffs = [.. HotRing.Of(8, bands: 7, flat: Sliding(clamp)).Standoffs.Select((r, i) => i == 3 ? HotRing.Of(8, bands: 7).Standoffs[3] : r)],
            Seams = new SeamStiffness(100.Megapascals, 100.Megapascals),
        };
        CheckSheet loose = SheetOf(Tall(1), heat), tight = SheetOf(Tall(10000), heat);
        Check top = loose.Checks.Where(c => c.Id == "heat.saddle-travel").MaxBy(c => c.Demand)!;
        // The one ring that holds is the middle one: the outer rings are three bands of two meters away.
        Assert.Equal(HotRing.Copper * 30 * 6, top.Demand!.Value, 1e-5);
        Assert.Equal(Verdict.Fail, top.Verdict);
        double free = loose.Checks.Where(c => c.Id == "heat.bar-stress" && c.Where.StartsWith("band 7", StringComparison.Ordinal)).Max(c => c.Demand!.Value);
        double dragged = tight.Checks.Where(c => c.Id == "heat.bar-stress" && c.Where.StartsWith("band 7", StringComparison.Ordinal)).Max(c => c.Demand!.Value);
        // 3 kN across the flat's width, at the free end where the skin is limp: M = F L on W = t b²/6.
        double drag = 0.3 * 10000 * HotRing.Length / (HotRing.Thickness * HotRing.Width * HotRing.Width / 6);
        Assert.Equal(drag, dragged - free, 1e-3 * drag);
    }

    [Fact]
    public void A_joint_closes_by_the_growth_of_the_fields_beside_it()
    {
        var heat = new Situation { Name = "hot", Actions = [new SelfWeight(), new TemperatureAction { SkinChange = TemperatureDelta.FromKelvins(30), TowerChange = TemperatureDelta.FromKelvins(10) }] };
        Statue jointed = HotRing.Of(8, bands: 6);
        jointed = jointed with { Skin = jointed.Skin! with { Joints = [new SkinJoint(4.Meters, 2.Millimeters)] } };
        Check joint = Assert.Single(SheetOf(jointed, heat).Checks, c => c.Id == "heat.joint-gap");
        // Fields 0–4 m and 4–12 m, balanced about 2 m and 8 m: 2 m and 4 m of skin meet, their middles part by 6 m of tower.
        Assert.Equal(HotRing.Copper * 30 * 6 - HotRing.Steel * 10 * 6, joint.Demand!.Value, 1e-6);
        Assert.Equal(joint.Demand > 0.002 ? Verdict.Fail : Verdict.Pass, joint.Verdict);
    }

    private static Statue Seamed(double restraint) => SmallStatue.Good.Statue with
    {
        Skin = SmallStatue.Body with { SheetSeam = Seam with { HeatRestraint = restraint } },
    };

    private static RivetedSeam Seam => new() { Rivet = Rivet.Of(6.Millimeters, Copper.HalfHardR240), Pitch = 30.Millimeters, EdgeDistance = 12.Millimeters };

    [Fact]
    public void Seams_hold_the_part_of_the_heat_that_they_are_said_to_hold()
    {
        var even = new TemperatureAction { SkinChange = TemperatureDelta.FromKelvins(20), TowerChange = TemperatureDelta.FromKelvins(5) };
        var heat = new Situation { Name = "hot", Actions = [new SelfWeight(), 1.5 * even] };
        Check held = Assert.Single(SheetOf(Seamed(0.3), heat).Checks, c => c.Id == "seams.heat");
        Material sheet = SmallStatue.Body.Material;
        double alpha = sheet.ThermalExpansion.PerKelvin, t = SmallStatue.Body.Thickness.Meters, strain = 1.5 * (alpha * 20 - 12e-6 * 5);
        double hanging = sheet.Density.KilogramsPerCubicMeter * SelfWeight.Gravity * t;
        StatueModel model = StatueModel.Build(Seamed(0.3));
        double most = model.Bodies[0].Bands.Max(b => 0.3 * sheet.YoungsModulus.Pascals * strain * t + hanging * (b.Top - b.Bottom));
        Assert.Equal(most * 0.030, held.Demand!.Value, 0.01 * most * 0.030);
        Assert.DoesNotContain(SheetOf(Seamed(0), heat).Checks, c => c.Id == "seams.heat");
        Assert.Contains("temperature action", Assert.Single(SheetOf(Seamed(0.3), SmallStatue.Storm).Checks, c => c.Id == "seams.heat").Reason);
    }

    [Fact]
    public void Wind_and_heat_add_at_seams()
    {
        double Shear(Statue statue, Situation situation) => SheetOf(statue, situation).Checks.Where(c => c.Id == "seams.shear" && c.Demand is not null).Max(c => c.Demand!.Value);
        double slides = Shear(Seamed(0), hot), holds = Shear(Seamed(0.5), hot), windOnly = Shear(Seamed(0.5), hot with { Actions = [1.35 * new SelfWeight(), 0.9 * SmallStatue.Wind] });
        Assert.True(holds > 2 * slides);
        Assert.Equal(slides, windOnly, 1e-9 * slides);
    }

    [Fact]
    public void Problems_are_found_with_paths()
    {
        Statue bad = SmallStatue.Good.Statue with { Skin = SmallStatue.Body with { Joints = [new SkinJoint(1.Meters, 5.Millimeters), new SkinJoint(3.Meters, (-5).Millimeters)] } };
        string[] paths = [.. bad.FindProblems().Select(p => p.Path)];
        Assert.Contains("Skin.Joints[0].Elevation", paths);
        Assert.Contains("Skin.Joints[1].Gap", paths);
        var heat = new TemperatureAction { SkinChange = TemperatureDelta.FromKelvins(300), SunRise = TemperatureDelta.FromKelvins(20) };
        var problems = Assert.Throws<InvalidStatueException>(() => SmallStatue.Good.Statue.Check(new Criteria(), new Situation { Name = "hot", Actions = [heat] })).Problems;
        Assert.Contains(problems, p => p.Path.EndsWith("SkinChange", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.Path.EndsWith("SunSide", StringComparison.Ordinal));
        Assert.All(problems, p => Assert.NotEmpty(p.Hint));
    }

    [Fact]
    public void Heat_combines_by_EN_1990()
    {
        ValueList<Situation> all = new EurocodeBasis().Combine(new CharacteristicActions { Variable = [SmallStatue.Wind, summer] });
        Assert.Contains(all, s => s.Actions.Any(a => a.Action is WindAction && a.Factor == 1.5) && s.Actions.Any(a => a.Action is TemperatureAction && Math.Abs(a.Factor - 0.9) < 1e-12));
        Assert.Contains(all, s => s.Actions.Any(a => a.Action is TemperatureAction && a.Factor == 1.5) && s.Actions.Any(a => a.Action is WindAction && Math.Abs(a.Factor - 0.9) < 1e-12));
    }

    /// <summary>The tower beside a band counts, not the one at the foot.</summary>
    [Fact]
    public void A_seam_is_held_by_the_tower_beside_it()
    {
        Statue Of(Material upper) => Seamed(0.3) with
        {
            Tower = SmallStatue.Trunk with { Segments = [SmallStatue.Panel, SmallStatue.Mast with { Material = upper }] },
        };
        var cold = new Situation { Name = "cold", Actions = [new SelfWeight(), new TemperatureAction { SkinChange = TemperatureDelta.FromKelvins(20), TowerChange = TemperatureDelta.FromKelvins(-20) }] };
        double Most(Material upper) => SheetOf(Of(upper), cold).Checks.Single(c => c.Id == "seams.heat").Demand!.Value;
        Material strange = StructuralSteel.S355 with { Name = "a metal that grows", ThermalExpansion = 24.PpmPerKelvin };
        Assert.True(Most(strange) > 1.2 * Most(StructuralSteel.S355));
    }
}
