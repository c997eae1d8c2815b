using StatueFrame.Checks;

namespace StatueFrame.Tests.Checks;

public sealed class AccuracyChecksTests
{
    [Theory]
    [InlineData("calculation.accuracy", 1e-6)]
    [InlineData("calculation.modes", 1e-4)]
    [InlineData("calculation.buckling", 1e-4)]
    [InlineData("calculation.energy", 1e-2)]
    [InlineData("calculation.levels", 0.35)]
    public void An_error_is_told_when_it_can_be_felt_and_refused_when_it_is_large(string id, double greatest)
    {
        var entry = (AccuracyChecks.Entry)StatueFrame.Checks.Catalogue.Find(id)!;
        Assert.Equal(greatest, entry.Greatest);
        Assert.Null(Told(0));
        Assert.Null(Told(0.9e-3 * greatest));
        Assert.Equal(entry.Noticed < 1 ? Verdict.Pass : null, Told(0.9 * greatest));
        Assert.Equal(Verdict.Fail, Told(1.1 * greatest));
        Assert.Equal(Verdict.Fail, Told(1e9 * greatest));
        Assert.Equal(Verdict.NotChecked, Told(double.PositiveInfinity));

        Verdict? Told(double error)
        {
            var lists = new SheetWriter();
            AccuracyChecks.Add(lists, entry, error, "storm");
            return lists.Checks.SingleOrDefault()?.Verdict;
        }
    }

    private static CheckSheet Shaken(int n, StatueAction action) => new Statue
    {
        Name = "mast",
        Tower = new Tower
        {
            Levels = [.. Enumerable.Range(0, n + 1).Select(i => new TowerLevel($"t{i}", (10.0 * i / n).Meters))],
            Segments = [.. Enumerable.Repeat(new MemberSegment { Section = new Tube(300.Millimeters, 10.Millimeters), Material = StructuralSteel.S355 }, n)],
        },
    }.Check(new Criteria { Modes = 6 }, new Situation { Name = "shaken", Actions = [new SelfWeight(), action] });

    /// <summary>A bare mast in an earthquake, described in one piece, carries at its foot what it does in sixteen: the inertia of its own mass is between its ends.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void A_mast_in_an_earthquake_needs_few_levels(int segments)
    {
        var earthquake = new EarthquakeAction { Horizontal = new En1998Spectrum { ReferenceAcceleration = 2.MetersPerSecondSquared, Ground = GroundType.B, BehaviorFactor = 1 } };
        static double Foot(CheckSheet sheet) => sheet.Checks.Where(check => check.Id == "tower.bending").Max(check => check.Utilization!.Value);
        double expected = Foot(Shaken(16, earthquake));
        Assert.Equal(expected, Foot(Shaken(segments, earthquake)), 0.01 * expected);
    }

    /// <summary>In a shock what is between the levels is not followed in time: a body of few levels is refused.</summary>
    [Theory]
    [InlineData(1, true)]
    [InlineData(2, true)]
    [InlineData(4, false)]
    public void A_mast_in_a_shock_needs_levels(int segments, bool refused)
    {
        var rope = new SuddenRelease { Name = "rope", On = $"t{segments}", Pull = 5.Kilonewtons };
        Assert.Equal(refused ? Verdict.Fail : null, Shaken(segments, rope).Checks.SingleOrDefault(check => check.Id == "calculation.levels")?.Verdict);
    }
}
