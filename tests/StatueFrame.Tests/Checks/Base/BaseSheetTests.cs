using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Cores;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Base;

/// <summary>What the sheet says of cores, hold-down, pedestal and foundation.</summary>
public class BaseSheetTests
{
    private static readonly Concrete cap = Concrete.OfStrength(30.Megapascals) with { CreepCoefficient = 2 };

    private static Pedestal Plinth(double width = 3.2) => new()
    {
        Courses =
        [
            new PedestalCourse { Section = BlockSection.Rectangle(width.Meters, width.Meters), Height = 1.5.Meters, Material = cap },
            new PedestalCourse { Section = BlockSection.Rectangle(width.Meters, width.Meters), Height = 1.Meters, Material = BlockChecksTests.Stone },
            new PedestalCourse { Section = BlockSection.Rectangle((width + 0.4).Meters, (width + 0.4).Meters), Height = 1.Meters, Material = BlockChecksTests.Stone },
        ],
    };

    private static HoldDown Ties(double kN = 120) => new()
    {
        Plates = [.. Corners(0.8).Select(c => BaseGroupTests.Plate(c.X, c.Y, 0.5))],
        Bars = [.. Corners(0.95).Concat(Corners(0.65)).Select(c => BaseGroupTests.Bar(c.X, c.Y, kN))],
        Losses = new PreTensionLosses { Embedding = 0.1.Millimeters, Relaxation1000Hours = 0.04 },
    };

    private static (double X, double Y)[] Corners(double at) => [(at, at), (-at, at), (-at, -at), (at, -at)];

    private static SmallStatue Tied(Func<Statue, Statue>? change = null) => SmallStatue.Good.With(s =>
    {
        Statue tied = s with { HoldDown = Ties(), Pedestal = Plinth(), Foundation = FoundationChecksTests.Block };
        return change is null ? tied : change(tied);
    });

    private static Check[] Of(CheckSheet sheet, params string[] families) => [.. sheet.Checks.Where(c => families.Contains(c.Family))];

    [Fact]
    public void A_described_base_is_checked_in_every_family()
    {
        CheckSheet sheet = Tied().Check();
        string[] ids = [.. Of(sheet, "base", "pedestal", "foundation").Select(c => c.Id).Distinct()];
        foreach (string id in new[] { "base.anchor-tension", "base.anchor-shear", "base.anchor-interaction", "base.breakout", "base.pull-out", "base.bearing", "base.sliding", "base.overturning", "base.separation",
            "pedestal.overturning", "pedestal.toe-stress", "pedestal.capacity", "pedestal.sliding", "pedestal.kern",
            "foundation.overturning", "foundation.sliding", "foundation.bearing", "foundation.pressure", "foundation.uplift", "foundation.tilt-stability", "foundation.sway" })
            Assert.Contains(id, ids);
        Assert.All(Of(sheet, "base", "pedestal", "foundation").Where(c => c.Id != "foundation.sway"), c => Assert.True(c.Verdict == Verdict.Pass, c.ToString()));
        Assert.Contains(sheet.Results, r => r.Name == "tilt of the foundation" && r.Value > 0);
    }

    [Fact]
    public void American_rules_check_the_plate_too()
    {
        SmallStatue tied = Tied();
        CheckSheet sheet = (tied with { Criteria = tied.Criteria with { Base = new BaseDesign { Code = BaseCode.American } } }).Check();
        Assert.Equal(Verdict.Pass, Assert.Single(sheet.Checks, c => c.Id == "base.plate-bending").Verdict);
        Assert.Contains("ACI", Assert.Single(sheet.Checks, c => c.Id == "base.breakout").Source.Document, StringComparison.Ordinal);
        Assert.All(sheet.Checks.Where(c => c.Family is "base" or "pedestal" or "foundation"), c => Assert.NotEmpty(c.Working().ToText()));
    }

    [Fact]
    public void Bars_through_masonry_are_held_by_its_weight()
    {
        SmallStatue masonry = Tied(s => s with { Pedestal = new Pedestal { Courses = [.. Plinth().Courses.Select(c => c with { Material = BlockChecksTests.Stone })] } });
        CheckSheet sheet = masonry.Check();
        Assert.Equal(Verdict.NotChecked, Assert.Single(sheet.Checks, c => c.Id == "base.breakout").Verdict);
        Check weight = Assert.Single(sheet.Checks, c => c.Id == "base.anchorage-weight");
        Assert.Equal(3.2 * 3.2 * 1.2 * 2600 * 9.80665, weight.Capacity!.Value, 1);
    }

    [Fact]
    public void What_is_not_described_is_said_to_be_not_checked()
    {
        CheckSheet sheet = SmallStatue.Good.Check();
        foreach ((string id, string word) in new[] { ("base.overturning", "HoldDown"), ("pedestal.overturning", "Pedestal"), ("foundation.overturning", "Foundation") })
        {
            Check check = Assert.Single(sheet.Checks, c => c.Id == id);
            Assert.Equal(Verdict.NotChecked, check.Verdict);
            Assert.Contains(word, check.Reason, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("base")]
    [InlineData("pedestal")]
    [InlineData("foundation")]
    public void A_weak_part_fails_in_its_own_family(string family)
    {
        CheckSheet sheet = Tied(s => family switch
        {
            "base" => s with { HoldDown = Ties() with { Bars = [.. Corners(0.95).Select(c => BaseGroupTests.Bar(c.X, c.Y) with { Diameter = 8.Millimeters, HeadWidth = 20.Millimeters })] } },
            "pedestal" => s with { Pedestal = Plinth() with { Courses = Plinth().Courses.With(1, Plinth().Courses[1] with { Section = BlockSection.Rectangle(0.5.Meters, 0.5.Meters) }) } },
            _ => s with { Foundation = FoundationChecksTests.Block with { Soil = FoundationChecksTests.Block.Soil with { FrictionAngle = 10.Degrees }, BaseFriction = 1.Degrees } },
        }).Check();
        Assert.Contains(Of(sheet, family), c => c.Verdict == Verdict.Fail);
        Assert.All(Of(sheet, "base", "pedestal", "foundation").Where(c => c.Family != family && c.Id != "foundation.sway"), c => Assert.True(c.Verdict != Verdict.Fail, c.ToString()));
    }

    [Fact]
    public void Worst_heading_governs()
    {
        SmallStatue tied = Tied();
        Response response = StatueModel.Build(tied.Statue).Respond(SmallStatue.Storm);
        double greatest = response.Cases.Max(c => FoundationChecks.Overturning(FoundationChecksTests.Block, Under(c).N.Newtons, Torque.FromNewtonMeters(-Under(c).my), Torque.FromNewtonMeters(Under(c).mx)).Utilization!.Value);
        // The weights at their own value make it worse than with 1.35.
        Check check = Assert.Single(tied.Check().Checks, c => c.Id == "foundation.overturning");
        Assert.True(check.Utilization >= greatest);

        BaseLoad Under(LoadCase c) => BaseLoad.Of(c.Base).Below(Plinth().Height + 1.5, 1.35 * (Plinth().Weight + FoundationChecksTests.Block.Weight));
    }

    [Fact]
    public void Springs_under_the_tower_leave_the_added_sway_out()
    {
        CheckSheet sheet = Tied(s => s with { Tower = s.Tower with { Base = TowerBase.Rocking(1e9.NewtonMetersPerRadian) } }).Check();
        Check check = Assert.Single(sheet.Checks, c => c.Id == "foundation.sway");
        Assert.Equal(Verdict.NotChecked, check.Verdict);
        Assert.Contains("TowerBase", check.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Softer_ground_sways_more()
    {
        double Sway(double MPa) => Assert.Single(Tied(s => s with { Foundation = FoundationChecksTests.Block with { Soil = FoundationChecksTests.Block.Soil with { ShearModulus = MPa.Megapascals } } }).Check().Checks, c => c.Id == "foundation.sway").Demand!.Value;
        double stiff = Sway(1e4), soft = Sway(5);
        Assert.True(soft > stiff * 1.05);
        double rigid = Assert.Single(Tied().Check().Checks, c => c.Id == "sway.limit" && c.Demand is not null).Demand!.Value;
        Assert.Equal(rigid, Sway(9e4), 0.02 * rigid);
    }

    private static Statue Cored(TowerSegment core) => SmallStatue.Good.Statue with
    {
        Tower = SmallStatue.Trunk with { Segments = [core, core] },
        Fittings = [],
    };

    [Theory]
    [InlineData(2.2, true)]
    [InlineData(0.35, false)]
    public void A_masonry_core_is_checked_at_every_segment(double width, bool stands)
    {
        Statue statue = Cored(new MasonrySegment { Section = BlockSection.Rectangle(width.Meters, width.Meters), Material = BlockChecksTests.Stone });
        CheckSheet sheet = statue.Check(new Criteria(), SmallStatue.Storm, SmallStatue.Sway);
        foreach (string id in new[] { "core.overturning", "core.toe-stress", "core.capacity", "core.shear", "core.kern" })
            Assert.Equal(2, sheet.Checks.Count(c => c.Id == id));
        Assert.True(stands == Of(sheet, "core").All(c => c.Verdict == Verdict.Pass), string.Join("\n", Of(sheet, "core").Select(c => c.ToString())));
    }

    [Fact]
    public void The_lowest_cut_carries_the_whole_weight()
    {
        Statue statue = Cored(new MasonrySegment { Section = BlockSection.Rectangle(2.2.Meters, 2.2.Meters), Material = BlockChecksTests.Stone }) with { Skin = null, Standoffs = [], Limbs = [], Points = [] };
        var situation = new Situation { Name = "calm", Actions = [new SelfWeight(), new ImposedLoad { Name = "push", On = "mid", AlongX = 50.Kilonewtons }] };
        Check check = Assert.Single(statue.Check(new Criteria(), situation).Checks, c => c.Id == "core.overturning" && c.Where.StartsWith("base–mid, foot", StringComparison.Ordinal));
        double weight = StatueModel.Build(statue).Masses.TotalKilograms * 9.80665;
        Assert.Contains(check.Working().Lines, l => l is WorkingLine.Given { Value: var v } && Math.Abs(v - weight) < 1e-6 * weight);
    }

    [Fact]
    public void A_reinforced_core_is_checked_by_interaction()
    {
        Statue statue = Cored(new ConcreteSegment { Section = BlockSection.Round(0.8.Meters), Material = cap, Reinforcement = Reinforcement.Ring(12, 0.65.Meters, 20.Millimeters, 500.Megapascals) });
        Check[] core = Of(statue.Check(new Criteria(), SmallStatue.Storm), "core");
        Assert.Equal(2, core.Count(c => c.Id == "core.interaction" && c.Verdict == Verdict.Pass));
        Assert.All(core.Where(c => c.Id == "core.shear"), c => Assert.Equal(Verdict.NotChecked, c.Verdict));
    }

    [Fact]
    public void A_core_of_unknown_make_is_not_checked() =>
        Assert.Contains(Cored(SmallStatue.Core).Check(new Criteria(), SmallStatue.Storm).Checks, c => c.Id == "tower.core" && c.Verdict == Verdict.NotChecked);

    [Fact]
    public void A_masonry_core_is_the_beam_of_its_section()
    {
        // Tip of a cantilever with shear under 1 kN: F h³/(3EI) + F h/(κGA).
        var core = new MasonrySegment { Section = BlockSection.Rectangle(1.Meters, 2.Meters), Material = BlockChecksTests.Stone };
        Statue statue = Cored(core) with { Skin = null, Standoffs = [], Limbs = [], Points = [new NamedPoint("tip", "top")] };
        var push = new Situation { Name = "push", Actions = [new ImposedLoad { Name = "push", On = "top", AlongX = 1.Kilonewtons }] };
        double E = 8e9, I = 2.0 / 12, G = E / 2.4;
        double expected = 1000 * 216 / (3 * E * I) + 1000 * 6 / (G * 5.0 / 6 * 2);
        Assert.Equal(expected, StatueModel.Build(statue).Respond(push).Cases[0].Of("tip").X.Meters, 1e-6 * expected);
    }

    [Fact]
    public void Problems_are_found_with_paths()
    {
        Statue bad = Tied().Statue with
        {
            HoldDown = Ties() with { Plates = [BaseGroupTests.Plate(0, 0, 1), BaseGroupTests.Plate(0.2, 0, 1)], Friction = 3 },
            Pedestal = new Pedestal { Courses = [] },
            Foundation = FoundationChecksTests.Block with { WidthX = 6000.Meters },
        };
        string[] paths = [.. bad.FindProblems().Select(p => p.Path)];
        foreach (string path in new[] { "HoldDown.Plates[1]", "HoldDown.Friction", "Pedestal.Courses", "Foundation.WidthX" })
            Assert.Contains(path, paths);
        Assert.All(bad.FindProblems(), p => Assert.NotEmpty(p.Hint));
    }
}
