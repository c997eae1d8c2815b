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

    /// <summary>
    /// A bare mast shaken by an earthquake: described in one piece its foot carries a quarter too little, and the sheet refuses it; in four it does
    /// not. What is right is the same mast in sixteen pieces.
    /// </summary>
    [Theory]
    [InlineData(1, false)]
    [InlineData(4, true)]
    [InlineData(8, true)]
    public void A_mast_needs_levels_to_be_shaken(int segments, bool enough)
    {
        static CheckSheet Shaken(int n) => new Statue
        {
            Name = "mast",
            Tower = new Tower
            {
                Levels = [.. Enumerable.Range(0, n + 1).Select(i => new TowerLevel($"t{i}", (10.0 * i / n).Meters))],
                Segments = [.. Enumerable.Repeat(new MemberSegment { Section = new Tube(300.Millimeters, 10.Millimeters), Material = StructuralSteel.S355 }, n)],
            },
        }.Check(new Criteria { Modes = 6 }, new Situation
        {
            Name = "earthquake",
            Actions = [new SelfWeight(), new EarthquakeAction { Horizontal = new En1998Spectrum { ReferenceAcceleration = 2.MetersPerSecondSquared, Ground = GroundType.B, BehaviorFactor = 1 } }],
        });
        double Foot(CheckSheet sheet) => sheet.Checks.Where(check => check.Id == "tower.bending").Max(check => check.Utilization!.Value);
        CheckSheet sheet = Shaken(segments);
        Assert.Equal(enough ? null : Verdict.Fail, sheet.Checks.SingleOrDefault(check => check.Id == "calculation.levels")?.Verdict);
        double ratio = Foot(sheet) / Foot(Shaken(16));
        Assert.True(enough ? ratio > 0.98 : ratio < 0.85, $"{ratio}");
    }
}
