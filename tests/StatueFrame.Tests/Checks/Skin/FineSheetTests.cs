using StatueFrame.Checks;
using StatueFrame.Tests.Analyses;

namespace StatueFrame.Tests.Checks.Sheets;

public class FineSheetTests
{
    private static Situation Storm(SampleStatue s) => new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * s.Wind(0, 1.1)] };

    private static readonly Criteria fine = new() { Fine = new FineMesh { Size = 0.3.Meters } };

    [Fact]
    public void The_fine_model_is_one_more_source_of_demand()
    {
        SampleStatue sample = new();
        CheckSheet without = sample.Statue.Check(new Criteria(), Storm(sample)), with = sample.Statue.Check(fine, Storm(sample));
        foreach (IGrouping<(string, string), Check> ring in Bars(without))
        {
            double before = ring.Max(check => check.Utilization!.Value), after = Bars(with).Single(r => r.Key == ring.Key).Max(check => check.Utilization!.Value);
            Assert.True(after >= before - 1e-9, $"{ring.Key}: {before} is {after} with one more source");
        }
    }

    /// <summary>Six bars a ring behind bare sheet with joints: between them the sheet bows, and the bars at the wind's sides take more than their strips.</summary>
    [Fact]
    public void Where_the_bounds_fail_the_sheet_says_so_and_checks_the_greater_force()
    {
        Tower mast = Tower.Mast(_ => new Tube(0.25.Meters, 12.Millimeters), StructuralSteel.S355, 0.Meters, 0.5.Meters, 1.5.Meters, 2.5.Meters);
        var ring = new EvenRing
        {
            Level = "0.5 m",
            Count = 6,
            Length = 0.3.Meters,
            Standoff = new Standoff { Section = new FlatBar(50.Millimeters, 12.Millimeters), Material = StainlessSteel.Grade316L, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned },
        };
        var statue = new Statue
        {
            Name = "bare sheet",
            Tower = mast,
            Skin = new Skin
            {
                Material = Copper.HalfHardR240,
                Thickness = 1.5.Millimeters,
                Stations = [SkinStation.Ellipse(0.Meters, 1.5.Meters, 1.2.Meters), SkinStation.Ellipse(3.Meters, 1.5.Meters, 1.2.Meters)],
                BandEdges = [0.Meters, 1.Meters, 2.Meters, 3.Meters],
                Joints = [new SkinJoint(1.Meters, 5.Millimeters), new SkinJoint(2.Meters, 5.Millimeters)],
            },
            Standoffs = ring.OnLevels("0.5 m", "1.5 m", "2.5 m"),
            Points = [new NamedPoint("top", "band 3")],
        };
        var storm = new Situation { Name = "storm", Actions = [new SelfWeight(), new SampleStatue().Wind(0, 0.5, 1)] };
        Criteria strict = new() { Sway = [new SwayLimit("top", 5.Millimeters)] }, finer = strict with { Fine = new FineMesh() };
        CheckSheet without = statue.Check(strict, storm), with = statue.Check(finer, storm);
        Assert.Contains(without.Warnings, warning => warning.Contains("no armature is described", StringComparison.Ordinal));
        Assert.DoesNotContain(with.Warnings, warning => warning.Contains("no armature is described", StringComparison.Ordinal));
        Assert.Contains(without.OpenLinks, link => link.Link == "standoffs" && link.What.Contains("bare sheet of trunk", StringComparison.Ordinal));
        Assert.DoesNotContain(with.LoadPath, link => link.What.Contains("bare sheet", StringComparison.Ordinal));
        Assert.Contains(with.Warnings, warning => warning.Contains("more than the bounds on the skin do", StringComparison.Ordinal));
        Assert.Contains(with.Checks, check => check.Id == "bars.bending" && check.Working().ToText().Contains("skin as a shell", StringComparison.Ordinal));
        Situation service = storm with { Name = "sway", LimitState = LimitState.Service };
        double Sway(Criteria criteria) => statue.Check(criteria, service).Checks.Single(check => check.Id == "sway.limit").Demand!.Value;
        Assert.True(Sway(finer) > 1.05 * Sway(strict), $"{Sway(finer)} {Sway(strict)}");
    }

    private static IEnumerable<IGrouping<(string Id, string Band), Check>> Bars(CheckSheet sheet) => sheet.Checks
        .Where(check => check.Id.StartsWith("bars.", StringComparison.Ordinal) && check.Utilization is not null && check.Subject.Where.Contains(", bar", StringComparison.Ordinal))
        .GroupBy(check => (check.Id, check.Subject.Where[..check.Subject.Where.IndexOf(',')]));

    [Fact]
    public void The_sheet_of_trunk_and_limbs_is_checked_as_a_shell_and_is_told_when_not()
    {
        SampleStatue sample = new();
        Assert.Equal(["trunk", "wing"], sample.Statue.Check(fine, Storm(sample)).Checks.Where(c => c is { Id: "sheet.shell-stress", Verdict: not Verdict.NotChecked }).Select(c => c.Subject.Where).Order());
        Assert.Equal(["trunk", "wing"], sample.Statue.Check(new Criteria(), Storm(sample)).Checks.Where(c => c is { Id: "sheet.shell-stress", Verdict: Verdict.NotChecked }).Select(c => c.Subject.Where).Order());
    }

    /// <summary>Braces that act in tension only carry nothing in compression, whatever model is asked.</summary>
    [Fact]
    public void Slack_braces_are_left_to_the_model_that_knows_them()
    {
        SampleStatue sample = new() { Bracing = Bracing.TensionOnlyCross, HasLimb = false };
        double[] without = Members(new Criteria()), with = Members(fine);
        Assert.NotEmpty(without);
        Assert.Equal(without.Length, with.Length);
        Assert.All(without.Zip(with), pair => Assert.Equal(pair.First, pair.Second, 1e-9));

        double[] Members(Criteria criteria) =>
            [.. sample.Statue.Check(criteria, Storm(sample)).Checks.Where(c => c.Id == "tower.tension" && c.Subject.Where.StartsWith("L0", StringComparison.Ordinal) && c.Utilization is not null).Select(c => c.Utilization!.Value)];
    }

    [Fact]
    public void Thinner_sheet_is_stressed_more()
    {
        SampleStatue sample = new();
        double before = Stress(sample.Statue), after = Stress(sample.Statue with { Skin = sample.Statue.Skin! with { Thickness = 1.2.Millimeters } });
        Assert.True(after > before, $"{after} {before}");

        double Stress(Statue statue) => statue.Check(fine, Storm(sample)).Checks.Single(c => c is { Id: "sheet.shell-stress", Subject.Where: "trunk" }).Utilization!.Value;
    }

    [Fact]
    public void A_mesh_that_cannot_be_is_told_with_its_path() =>
        Assert.Contains("Criteria.Fine.Size", Assert.Throws<InvalidStatueException>(() => new SampleStatue().Statue.Check(fine with { Fine = new FineMesh { Size = 9.Meters } }, Storm(new SampleStatue()))).Message);
}
