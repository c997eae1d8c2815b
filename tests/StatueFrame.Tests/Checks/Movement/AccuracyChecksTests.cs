using StatueFrame.Checks;

namespace StatueFrame.Tests.Checks;

public sealed class AccuracyChecksTests
{
    [Theory]
    [InlineData("calculation.accuracy", 1e-6)]
    [InlineData("calculation.modes", 1e-4)]
    [InlineData("calculation.buckling", 1e-4)]
    [InlineData("calculation.energy", 1e-2)]
    public void An_error_is_told_when_it_can_be_felt_and_refused_when_it_is_large(string id, double greatest)
    {
        var entry = (AccuracyChecks.Entry)StatueFrame.Checks.Catalogue.Find(id)!;
        Assert.Equal(greatest, entry.Greatest);
        Assert.Null(Told(0));
        Assert.Null(Told(0.9e-3 * greatest));
        Assert.Equal(Verdict.Pass, Told(0.9 * greatest));
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
}
