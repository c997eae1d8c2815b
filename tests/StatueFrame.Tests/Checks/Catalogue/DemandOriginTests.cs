using System.Globalization;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Heron;
using StatueFrame.Tests.Validation;

namespace StatueFrame.Tests.Checks.Catalogue;

/// <summary>How demands come about, as workings tell it: each action alone, and all of them together.</summary>
public class DemandOriginTests
{
    private static readonly SmallStatue whole = SmallWhole.Of(slides: true);

    private static readonly WindAction wind = (WindAction)whole.Situations[0].Actions[1].Action with { Eccentricity = 0, LiftCoefficient = 0 };

    private static readonly ImposedLoad rope = new() { Name = "rope", On = "top", AlongX = 3.Kilonewtons };

    [Fact]
    public void What_an_action_gives_is_what_it_gives_alone()
    {
        var model = StatueModel.Build(whole.Statue);
        Situation all = new() { Name = "all", Actions = [1.35 * new SelfWeight(), 1.5 * wind, 0.7 * rope] };
        Check[] checks = [.. Of(whole.Statue, all).Checks.Where(check => check.Id == "tower.compression")];
        Assert.NotEmpty(checks);
        foreach (Check check in checks)
        {
            WorkingLine.Superposition acts = Acts(check);
            Assert.Equal(3, acts.Terms.Count);
            string member = string.Join(", ", check.Where.Split(", ").Skip(1));
            double heading = double.Parse(acts.Terms.Single(term => term.Factor == 1.5).Cause["wind towards ".Length..^1], CultureInfo.InvariantCulture);
            Alone(acts, "self-weight", new SelfWeight());
            Alone(acts, "rope", rope);
            Alone(acts, Headings.Describe(heading.Degrees), wind with { Headings = [heading.Degrees] });

            void Alone(WorkingLine.Superposition of, string cause, StatueAction action)
            {
                double expected = model.Respond(new Situation { Name = "one", Actions = [action] }).Cases[0].LatticeMembers().Single(m => m.Segment == check.Where.Split(", ")[0] && m.Member == member).Axial.Newtons;
                Assert.Equal(expected, of.Terms.Single(term => term.Cause == cause).Values[0], 1e-6 * Math.Abs(expected) + 1e-3);
            }
        }
    }

    [Fact]
    public void The_demand_is_the_sum_with_what_second_order_makes_of_it()
    {
        foreach (Check check in Of(whole.Statue, [.. whole.Situations]).Checks.Where(check => check.Id is "tower.compression" or "tower.tension"))
        {
            Working working = check.Working();
            double sum = Acts(check).Quantities.Single().Value;
            double k = working.Lines.OfType<WorkingLine.Given>().FirstOrDefault(line => line.Symbol.ToText() == "k")?.Value ?? 1;
            Assert.Equal(check.Demand!.Value, Math.Abs(k * sum), 1e-9 * check.Demand.Value);
        }
    }

    /// <summary>Ice that catches wind and braces that go slack are no sum of what each gives alone; what each adds is one still.</summary>
    [Fact]
    public void Where_something_is_not_linear_the_sum_is_exact_still()
    {
        TowerSegment slack = ((LatticeSegment)whole.Statue.Tower.Segments[0]) with { Bracing = Bracing.TensionOnlyCross };
        Statue statue = whole.Statue with { Tower = whole.Statue.Tower with { Segments = [slack, .. whole.Statue.Tower.Segments.Skip(1)] } };
        var ice = new IceAction { Class = IceClass.Glaze(3) };
        var warm = new TemperatureAction { Name = "frost", SkinChange = 30.Kelvins, TowerChange = 5.Kelvins };
        Check[] checks = [.. Of(statue, new Situation { Name = "winter", Actions = [1.35 * new SelfWeight(), 1.5 * ice, 0.9 * wind, -0.6 * warm] }).Checks.Where(check => check.Utilization is not null)];
        PrintedWorkings.CanBeFollowed(checks);
        Assert.Contains(checks, check => Acts(check) is { } acts && acts.Terms.Any(term => term.Cause == ice.Title && term.Factor == 1.5));
        Assert.Contains(checks, check => Acts(check) is { } acts && acts.Terms.Any(term => term.Cause == warm.Title && term.Factor == -0.6));
    }

    [Fact]
    public void What_shakes_the_statue_is_a_term_of_its_own()
    {
        var spectrum = new En1998Spectrum { ReferenceAcceleration = 2.MetersPerSecondSquared, Ground = GroundType.B };
        var quake = new EarthquakeAction { Horizontal = spectrum, Vertical = spectrum.Vertical() };
        Check[] checks = [.. Of(whole.Statue, new Situation { Name = "seismic", Actions = [new SelfWeight(), 1.2 * quake] }).Checks.Where(check => check.Utilization is not null)];
        PrintedWorkings.CanBeFollowed(checks);
        foreach (string id in (string[])["tower.compression", "bars.bending", "base.anchor-tension", "pedestal.toe-stress", "limbs.bending"])
            Assert.All(checks.Where(check => check.Id == id), check => Assert.Contains(Acts(check).Terms, term => term.Cause.StartsWith("earthquake: peaks with their factor, 1.2", StringComparison.Ordinal)));
        Assert.Contains(checks, check => check.Id == "tower.compression" && Acts(check).Terms.Count == 2);
    }

    /// <summary>A new kind of check tells what acts, or has to stand here.</summary>
    [Fact]
    public void Every_kind_of_check_on_forces_of_load_cases_tells_what_acts()
    {
        Check[] checks = [.. SaltmereHeron.Sheet.Checks.Where(check => check is { Utilization: not null, Nature: Nature.Strength })];
        IEnumerable<string> silent = checks.GroupBy(check => check.Id).Where(kind => kind.All(check => !check.Working().Lines.OfType<WorkingLine.Superposition>().Any())).Select(kind => kind.Key);
        Assert.Equal(string.Join(' ', sheet.Concat(envelopes).Concat(others).Order(StringComparer.Ordinal)), string.Join(' ', silent.Order(StringComparer.Ordinal)));
    }

    /// <summary>The sheet's own, under a pressure that its working gives.</summary>
    private static readonly string[] sheet =
        ["armature.bending", "seams.pitch", "sheet.buckling", "sheet.panel-bending", "straps.bearing", "straps.bending", "straps.distances", "straps.pull-off", "straps.shear"];

    /// <summary>What takes the most of every force of many states, all at one time.</summary>
    private static readonly string[] envelopes =
        ["fittings.fixing", "hubs.bending", "hubs.welds", "levels.bending", "levels.block", "levels.compression", "levels.connections", "levels.distances", "levels.faces", "levels.tension", "levels.welds"];

    /// <summary>Ranges of stress in time, movements, metals, and what is of the whole statue.</summary>
    private static readonly string[] others =
    [
        "bars.fatigue", "earthquake.overturning", "earthquake.sliding", "fatigue.anchors", "fatigue.brackets", "fatigue.fasteners", "fatigue.feet", "fatigue.flange-bolts", "fatigue.gussets", "fatigue.hubs",
        "fatigue.levels", "fatigue.members", "fatigue.tubes", "foundation.tilt-stability", "heat.restraint", "heat.saddle-travel", "life.end", "metals.galvanic", "metals.loss", "shock.clearance", "shock.overturning",
        "stability.buckling", "wind.galloping",
    ];

    private static WorkingLine.Superposition Acts(Check check) => check.Working().Lines.OfType<WorkingLine.Superposition>().FirstOrDefault()!;

    private static CheckSheet Of(Statue statue, params Situation[] situations) => statue.Check(whole.Criteria, situations);
}
