using StatueFrame.Checks;
using StatueFrame.Tests.Analyses;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Earthquake;

public class EarthquakeSheetTests
{
    private static CheckSheet Sheet(double a, EarthquakeCriteria? criteria = null, DirectionRule rule = DirectionRule.HundredThirtyThirty)
    {
        var spectrum = new En1998Spectrum { ReferenceAcceleration = a.MetersPerSecondSquared, Ground = GroundType.A };
        return new SampleStatue().Statue.Check(
            new Criteria { Earthquake = criteria, Sway = [new SwayLimit("tip", 50.Millimeters)], BarStressFraction = 0.9 },
            new Situation { Name = "quake", Actions = [new SelfWeight(), new EarthquakeAction { Horizontal = spectrum, Vertical = spectrum.Vertical(), DirectionRule = rule }] });
    }

    [Fact]
    public void A_sheet_with_an_earthquake_checks_bars_sway_and_base()
    {
        CheckSheet sheet = Sheet(0.3, new EarthquakeCriteria { BaseHalfWidthX = 2.Meters, BaseHalfWidthY = 2.Meters, Friction = 0.4 });
        Check[] own = [.. sheet.Checks.Where(c => c.Family == "earthquake")];
        Assert.Contains(sheet.Checks, c => c.Id == "bars.bending" && c.Situation == "quake" && c.Verdict == Verdict.Pass);
        Assert.Contains(own, c => c.Id == "earthquake.sway" && c.Verdict == Verdict.Pass);
        Assert.Equal(2, own.Count(c => c.Id == "earthquake.overturning" && c.Verdict == Verdict.Pass));
        Assert.Contains(own, c => c.Id == "earthquake.sliding" && c.Verdict == Verdict.Pass);
        Assert.DoesNotContain(own, c => c.Id == "earthquake.response");
        Assert.Contains(sheet.Results, r => r.Name == "earthquake base shear");
        Assert.Contains("recommended values", string.Join(" ", sheet.Assumptions));
        Assert.Contains("M_resist", own.First(c => c.Id == "earthquake.overturning").Working().ToText());
    }

    [Fact]
    public void A_strong_earthquake_topples_and_overstresses()
    {
        CheckSheet sheet = Sheet(12, new EarthquakeCriteria { BaseHalfWidthX = 1.Meters, BaseHalfWidthY = 1.Meters, Friction = 0.3 });
        foreach (string id in new[] { "bars.bending", "earthquake.overturning", "earthquake.sliding" })
            Assert.Contains(sheet.Checks, c => c.Id == id && c.Verdict == Verdict.Fail);
    }

    [Fact]
    public void Members_of_tower_and_limbs_bear_the_earthquake()
    {
        double Worst(double a, string id) => Sheet(a).Checks.Where(c => c.Id == id).Max(c => c.Utilization!.Value);
        foreach (string id in new[] { "tower.compression", "tower.bending", "limbs.bending" })
            Assert.True(Worst(0.01, id) < Worst(4, id), id);
        Check leg = Sheet(4).Checks.First(c => c.Id == "tower.compression");
        Assert.Contains(leg.AssumedInputs, a => a.Contains("peaks of an earthquake", StringComparison.Ordinal));
    }

    /// <summary>The base is as wide as the tower's plan unless another width is given.</summary>
    [Fact]
    public void A_base_that_nobody_gave_is_the_towers_plan()
    {
        Length half = Length.FromMeters(Math.Min(PlanAlong(1, 0), PlanAlong(-1, 0)));
        Check[] own = Overturning(null), given = Overturning(new EarthquakeCriteria { BaseHalfWidthX = half, BaseHalfWidthY = half });
        Assert.Equal(given[0].Utilization!.Value, own[0].Utilization!.Value, 1e-9);
        Assert.All(own, check => Assert.NotEqual(Verdict.NotChecked, check.Verdict));

        static Check[] Overturning(EarthquakeCriteria? criteria) => [.. Sheet(1, criteria).Checks.Where(c => c.Id == "earthquake.overturning")];

        static double PlanAlong(double x, double y) => new SampleStatue().Statue.Tower.Levels[0].Plan!.Outline.Cast(0, 0, x, y).Distance;
    }

    [Fact]
    public void What_is_not_given_is_not_checked()
    {
        CheckSheet sheet = Sheet(1);
        CheckSheet without = SmallStatue.Good.With(s => s with { Tower = s.Tower with { Levels = [.. s.Tower.Levels.Select(level => level with { Plan = null })], Segments = [SmallStatue.Mast, SmallStatue.Mast] } }).Statue.Check(
            new Criteria(), new Situation { Name = "quake", Actions = [new SelfWeight(), new EarthquakeAction { Horizontal = new En1998Spectrum { ReferenceAcceleration = 1.MetersPerSecondSquared, Ground = GroundType.A } }] });
        Assert.Equal(2, without.Checks.Count(c => c.Id == "earthquake.overturning" && c.Verdict == Verdict.NotChecked));
        Assert.Contains(sheet.Checks, c => c.Id == "earthquake.sliding" && c.Verdict == Verdict.NotChecked);
        CheckSheet none = new SampleStatue().Statue.Check(new Criteria(), new Situation { Name = "rest", Actions = [new SelfWeight()] });
        Assert.Contains(none.Checks, c => c.Id == "earthquake.response" && c.Verdict == Verdict.NotChecked);
    }

    [Fact]
    public void Stress_grows_with_the_ground()
    {
        double Utilization(double a) => Sheet(a).Checks.Where(c => c.Id == "bars.bending").Max(c => c.Utilization!.Value);
        double rest = Utilization(0.01), once = Utilization(1), twice = Utilization(2);
        Assert.True(rest < once && once < twice && twice < 2 * once);
    }

    [Fact]
    public void Two_earthquakes_in_one_situation_are_refused()
    {
        var action = new EarthquakeAction { Horizontal = new En1998Spectrum { ReferenceAcceleration = 1.MetersPerSecondSquared, Ground = GroundType.A } };
        Assert.Throws<InvalidStatueException>(() => new SampleStatue().Statue.Check(new Criteria(), new Situation { Name = "quake", Actions = [action, action] }));
    }
}
