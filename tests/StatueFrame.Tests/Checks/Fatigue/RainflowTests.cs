using CsCheck;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Fatigue;

public class RainflowTests
{
    private const string Astm = "ASTM E1049-85, Figure 6";
    private const string FourPoint = "public test data of the fatpack library: closed cycles by the four-point method, its residue as half cycles";
    private static readonly double[] standard = [-2, 1, -3, 5, -1, 3, -4, 4, -2];
    private static readonly double[] series = [4, 7, 2, 10, 5, 9, 3, 4, 2, 12, 5, 11, 1, 4, 3, 10, 6, 12, 4, 8, 1, 9, 4, 6];

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. new (double Range, double Cycles)[] { (3, 0.5), (4, 1.5), (6, 0.5), (8, 1), (9, 0.5) }
            .Select(r => new PublishedValue($"rainflow of the standard's history, cycles of range {r.Range}", Astm, r.Cycles, "-", 1e-12, () => Of(standard, r.Range))),
        .. new (double Range, double Cycles)[] { (1, 2), (2, 0.5), (3, 0.5), (4, 3), (5, 1), (6, 1), (8, 1.5), (10, 0.5), (11, 1.5) }
            .Select(r => new PublishedValue($"rainflow of 24 reversals, cycles of range {r.Range}", FourPoint, r.Cycles, "-", 1e-12, () => Of(series, r.Range), ValueKind.IndependentComputation)),
    ];

    [Fact]
    public void Cycles_are_half_the_reversals_and_the_greatest_range_is_found() => Gen.Int[-20, 20].Array[2, 60].Sample(history =>
    {
        double[] points = [.. history.Select(h => (double)h)];
        var cycles = Rainflow.Count(points);
        double span = points.Max() - points.Min();
        Assert.Equal(span, cycles.Count == 0 ? 0 : cycles.Max(c => c.Range));
        // Half of the path up and down is the sum of ranges times cycles: what rises must fall within a cycle.
        double path = 0;
        for (int i = 1; i < points.Length; i++)
            path += Math.Abs(points[i] - points[i - 1]);
        Assert.Equal(path, 2 * cycles.Sum(c => c.Range * c.Cycles), 1e-9);
    });

    [Fact]
    public void Counting_does_not_change_when_the_history_is_turned_over_or_shifted() => Gen.Int[-20, 20].Array[2, 40].Sample(history =>
        Assert.Equal(Rainflow.Count([.. history.Select(h => (double)h)]), Rainflow.Count([.. history.Select(h => 7.0 - h)])));

    [Fact]
    public void Public_count_gathers_equal_ranges()
    {
        ValueList<StressBlock> blocks = Rainflow.Count(standard.Select(s => Pressure.FromMegapascals(s)), "shock");
        Assert.Equal([3, 4, 6, 8, 9], blocks.Select(b => Math.Round(b.Range.Megapascals, 9)));
        Assert.Equal([0.5, 1.5, 0.5, 1, 0.5], blocks.Select(b => b.Cycles));
        Assert.Empty(Rainflow.Count(Enumerable.Empty<Pressure>()));
        Assert.Empty(Rainflow.Count([Pressure.Zero, Pressure.Zero]));
    }

    private static double Of(double[] history, double range) => Rainflow.Count(history).Where(c => c.Range == range).Sum(c => c.Cycles);
}
