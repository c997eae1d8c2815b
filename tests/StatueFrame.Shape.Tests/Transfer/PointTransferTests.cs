using CsCheck;
using UnitsNet;

namespace StatueFrame.Shape.Tests.Transfer;

public class PointTransferTests
{
    private const string LevelRing = "GNU Gama 1.5.09, output of the 1D example (ring of 4 points, levelled forward and back, 5 mm each)";
    private const string SixLevels = "Ghilani, Adjustment Computations, example 12.1 (results recalled)";

    /// <summary>Heights of points 4, 3, 2; point 1a is at 1000 m.</summary>
    private static LinearAdjustment Ring { get; } = LinearAdjustment.Of(
        new double[,] { { 1, 0, 0 }, { -1, 1, 0 }, { 0, -1, 1 }, { 0, 0, -1 }, { 0, 0, 1 }, { 0, 1, -1 }, { 1, -1, 0 }, { -1, 0, 0 } },
        [1000 - 1.225, -0.848, 1.342, 0.720 - 1000, 1000 - 0.724, -1.335, 0.842, 1.231 - 1000],
        [0.005, 0.005, 0.005, 0.005, 0.005, 0.005, 0.005, 0.005])!;

    /// <summary>Heights of B, C, D; A is at 437.596 m.</summary>
    private static LinearAdjustment Net { get; } = LinearAdjustment.Of(
        new double[,] { { 1, 0, 0 }, { -1, 1, 0 }, { 0, -1, 1 }, { 0, 0, -1 }, { -1, 0, 1 }, { 0, 1, 0 } },
        [448.105, 5.360, -8.523, -444.944, -3.167, 453.477],
        [0.006, 0.004, 0.005, 0.003, 0.004, 0.012])!;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("ring of levels: adjusted height of point 4", LevelRing, 998.77513, "m", 5.1e-9, () => Ring.Unknowns[0], ValueKind.IndependentComputation),
        new("ring of levels: adjusted height of point 3", LevelRing, 997.93325, "m", 5e-9, () => Ring.Unknowns[1], ValueKind.IndependentComputation),
        new("ring of levels: adjusted height of point 2", LevelRing, 999.27487, "m", 6e-9, () => Ring.Unknowns[2], ValueKind.IndependentComputation),
        new("ring of levels: standard error of point 4", LevelRing, 3.1, "mm", 0.0162, () => 1000 * Math.Sqrt(Ring.Covariance[0, 0]), ValueKind.IndependentComputation),
        new("ring of levels: standard error of point 3", LevelRing, 3.5, "mm", 0.0143, () => 1000 * Math.Sqrt(Ring.Covariance[1, 1]), ValueKind.IndependentComputation),
        new("ring of levels: weighted squares of residuals, of unit 1 mm²", LevelRing, 146.625, "mm²", 1e-5, () => 25 * Ring.Weighted, ValueKind.IndependentComputation),
        new("ring of levels: standard error of one reading as it turned out", LevelRing, 5.42, "mm", 1e-3, () => 5 * Math.Sqrt(Ring.Weighted / Ring.Freedom), ValueKind.IndependentComputation),
        new("ring of levels: greatest standardized residual", LevelRing, 1.68, "-", 3e-3, () => Ring.Standardized.Max(Math.Abs), ValueKind.IndependentComputation),
        new("ring of levels: observation that has it", LevelRing, 6, "-", 0, () => 1 + Array.IndexOf(Ring.Standardized.Select(Math.Abs).ToArray(), Ring.Standardized.Max(Math.Abs)), ValueKind.IndependentComputation),
        new("net of six levels: height of B", SixLevels, 448.1087, "m", 2e-7, () => Net.Unknowns[0], ValueKind.FromMemory),
        new("net of six levels: height of C", SixLevels, 453.4685, "m", 2e-7, () => Net.Unknowns[1], ValueKind.FromMemory),
        new("net of six levels: height of D", SixLevels, 444.9436, "m", 2e-7, () => Net.Unknowns[2], ValueKind.FromMemory),
        new("two lines at right angles, read twice each: standard error of the point", "σ/√2 along each line", 0.5 / Math.Sqrt(2), "mm", 1e-9, () => RightAngle.ErrorX.Millimeters, ValueKind.IndependentComputation),
        new("one stage of factor 5: a 0.3 mm error with 1 mm of setting out", "√(5² 0.3² + 1²)", Math.Sqrt(3.25), "mm", 1e-9, () => OneStage(0), ValueKind.IndependentComputation),
    ];

    private static AdjustedPoint RightAngle => new PointSurvey
    {
        Lines = [new("A", 0.Meters, 1.Meters), new("B", 1.Meters, 0.Meters)],
        Distances = [new("p", "A", 1.Meters, 1.Meters), new("p", "B", 1.Meters, 1.Meters)],
        Heights = [new("p", 1.Meters, 1.Meters)],
        DistanceError = 0.5.Millimeters,
        HeightError = 0.5.Millimeters,
    }.Adjust().Points[0];

    private static double OneStage(double scaleError)
    {
        PointSurvey survey = Survey(0.3 * Math.Sqrt(2), [(0.2, 0.3, 0.7)]);
        return survey.Adjust().Transfer(new EnlargementStage(5, 1.Millimeters, scaleError)).Points[0].ErrorZ.Millimeters;
    }

    [Fact]
    public void Exact_readings_give_the_points_back() =>
        Gen.Select(Gen.Double[-0.4, 0.4], Gen.Double[-0.4, 0.4], Gen.Double[0, 2]).Sample((x, y, z) =>
        {
            Point3 at = Survey(0.5, [(x, y, z)]).Adjust().Points[0].At;
            return Math.Abs(at.X.Meters - x) < 1e-9 && Math.Abs(at.Y.Meters - y) < 1e-9 && Math.Abs(at.Z.Meters - z) < 1e-9;
        }, iter: 200);

    [Fact]
    public void Two_lines_in_a_row_give_the_point_on_the_side_of_the_frame()
    {
        PointSurvey all = Survey(0.5, [(0.1, -0.2, 1)]);
        AdjustedPoint p = (all with { Distances = [.. all.Distances.Take(2)] }).Adjust().Points[0];
        Assert.Equal(0.1, p.At.X.Meters, 1e-9);
        Assert.Equal(-0.2, p.At.Y.Meters, 1e-9);
    }

    [Fact]
    public void Standard_errors_are_those_of_many_repeated_surveys()
    {
        var random = new Random(7);
        double Noise() => 0.5e-3 * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        PointSurvey exact = Survey(0.5, [(0.3, 0.1, 1)]);
        AdjustedPoint known = exact.Adjust().Points[0];
        double x = 0, y = 0, z = 0, factor = 0;
        const int times = 2000;
        for (int i = 0; i < times; i++)
        {
            AdjustedSurvey read = (exact with
            {
                Distances = [.. exact.Distances.Select(d => d with { First = (d.First.Meters + Noise()).Meters, Second = (d.Second.Meters + Noise()).Meters })],
                Heights = [.. exact.Heights.Select(h => h with { First = (h.First.Meters + Noise()).Meters, Second = (h.Second.Meters + Noise()).Meters })],
                BlunderLimit = 10,
            }).Adjust();
            AdjustedPoint p = read.Points[0];
            x += Math.Pow(p.At.X.Meters - 0.3, 2);
            y += Math.Pow(p.At.Y.Meters - 0.1, 2);
            z += Math.Pow(p.At.Z.Meters - 1, 2);
            factor += read.VarianceFactor;
        }
        Assert.Equal(known.ErrorX.Meters, Math.Sqrt(x / times), 0.05 * known.ErrorX.Meters);
        Assert.Equal(known.ErrorY.Meters, Math.Sqrt(y / times), 0.05 * known.ErrorY.Meters);
        Assert.Equal(known.ErrorZ.Meters, Math.Sqrt(z / times), 0.05 * known.ErrorZ.Meters);
        Assert.Equal(1, factor / times, 0.05);
    }

    [Fact]
    public void A_misread_distance_is_named_and_left_out() =>
        Gen.Select(Gen.Int[0, 3], Gen.Bool, Gen.Double[0.01, 0.2]).Sample((k, second, by) =>
        {
            PointSurvey good = Survey(0.5, [(0.1, 0.05, 1)]);
            LineReading r = good.Distances[k];
            LineReading wrong = second ? r with { Second = r.Second + by.Meters } : r with { First = r.First + by.Meters };
            AdjustedPoint p = (good with { Distances = good.Distances.With(k, wrong) }).Adjust().Points[0];
            Blunder named = Assert.Single(p.Blunders);
            return named.LeftOut && named.Reading == $"line {r.Line}, {(second ? "second" : "first")} reading"
                && Math.Abs(p.At.X.Meters - 0.1) < 1e-9 && p.ClosingError.Equals(by.Meters, 1e-9.Meters);
        }, iter: 100);

    [Fact]
    public void Two_heights_that_differ_are_both_named_as_neither_can_be_told()
    {
        PointSurvey good = Survey(0.5, [(0.1, 0.05, 1)]);
        AdjustedPoint p = (good with { Heights = [new HeightReading("p1", 1.Meters, 1.1.Meters)] }).Adjust().Points[0];
        Assert.Equal(2, p.Blunders.Count);
        Assert.All(p.Blunders, b => Assert.False(b.LeftOut));
    }

    [Fact]
    public void Readings_worse_than_stated_show_in_the_variance_factor()
    {
        PointSurvey survey = Survey(0.5, [.. Enumerable.Range(0, 10).Select(i => (0.02 * i, 0.01 * i, 0.1 * i))]);
        AdjustedSurvey read = (survey with
        {
            Distances = [.. survey.Distances.Select((d, i) => d with { First = d.First + (i % 2 == 0 ? 1 : -1).Millimeters, Second = d.Second - (i % 3 == 0 ? 1 : -1).Millimeters })],
        }).Adjust();
        Assert.False(read.ErrorsAreAsStated);
        Assert.True(read.VarianceFactor > 1.5);
    }

    [Fact]
    public void Errors_grow_from_stage_to_stage_and_two_stages_without_errors_are_one()
    {
        AdjustedSurvey survey = Survey(0.5, [(0.2, 0.3, 0.7), (-0.1, 0.2, 1.4)]).Adjust();
        PointTransfer one = survey.Transfer(new EnlargementStage(20, 0.Meters)), two = survey.Transfer(new EnlargementStage(4, 0.Meters), new EnlargementStage(5, 0.Meters));
        Assert.Equal(one.Points[0].ErrorX.Meters, two.Points[0].ErrorX.Meters, 1e-12);
        Assert.Equal(20 * survey.Points[0].ErrorX.Meters, one.Points[0].ErrorX.Meters, 1e-12);
        PointTransfer worse = survey.Transfer(new EnlargementStage(4, 1.Millimeters), new EnlargementStage(5, 2.Millimeters, 1e-4));
        double z = 20 * 1.4;
        Assert.Equal(Math.Sqrt(400 * survey.Points[1].Covariance.ZZ + 25e-6 + 4e-6 + 1e-8 * z * z), worse.Points[1].ErrorZ.Meters, 1e-12);
        Assert.Equal(4, worse.Points[0].At.X.Meters, 1e-9);
        Assert.Equal(3, worse.Points[0].Distances.Count);
        Assert.Equal(3, worse.ToCsv().Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.Contains("p2", worse.ToString());
    }

    [Fact]
    public void All_problems_are_listed()
    {
        PointSurvey good = Survey(0.5, [(0.1, 0.05, 1)]);
        string message = Assert.Throws<ArgumentException>(() => (good with
        {
            Distances = [new("p1", "Z", 1.Meters, 1.Meters), new("q", "A", 0.Meters, 1.Meters)],
            HeightError = 0.Meters,
        }).Adjust()).Message;
        Assert.Contains("HeightError", message);
        Assert.Contains("\"Z\"", message);
        Assert.Contains("1 mm", message);
        Assert.Contains("not read from two lines", message);
        Assert.Contains("has no height", message);
        Assert.Throws<ArgumentException>(() => good.Adjust().Transfer());
        Assert.Throws<ArgumentException>(() => good.Adjust().Transfer(new EnlargementStage(0, 0.Meters)));
    }

    /// <summary>Four lines round the model, and exact readings of points.</summary>
    private static PointSurvey Survey(double errorMillimeters, (double X, double Y, double Z)[] points)
    {
        ReferenceLine[] lines = [new("A", -1.Meters, -1.Meters), new("B", 1.Meters, -1.Meters), new("C", 1.Meters, 1.Meters), new("D", -1.Meters, 1.Meters)];
        return new PointSurvey
        {
            Lines = [.. lines],
            Distances =
            [
                .. points.SelectMany((p, i) => lines.Select(l =>
                {
                    Length d = Math.Sqrt(Math.Pow(p.X - l.X.Meters, 2) + Math.Pow(p.Y - l.Y.Meters, 2)).Meters;
                    return new LineReading($"p{i + 1}", l.Name, d, d);
                })),
            ],
            Heights = [.. points.Select((p, i) => new HeightReading($"p{i + 1}", p.Z.Meters, p.Z.Meters))],
            DistanceError = errorMillimeters.Millimeters,
            HeightError = errorMillimeters.Millimeters,
        };
    }
}
