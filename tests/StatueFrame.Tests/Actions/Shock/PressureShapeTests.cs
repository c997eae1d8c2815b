using CsCheck;

namespace StatueFrame.Tests.Actions.Shock;

public class PressureShapeTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        new("Impulse of a decaying pulse with b = 1 to its duration, over peak times duration", "Friedlander's shape: 1/e", 0.3679, "-", 1e-4, () => new DecayPulse(1) { HasSuction = false }.Area, ValueKind.IndependentComputation),
        new("Impulse of half a sine over peak times duration", "calculus: 2/π", 0.6366, "-", 1e-4, () => new HalfSinePulse().Area, ValueKind.CommonPracticeNoSource),
    ];

    public static TheoryData<PressureShape> Shapes =>
    [
        new RectanglePulse(), new TrianglePulse(), new TrianglePulse(0.3), new TrianglePulse(1), new HalfSinePulse(), new DecayPulse(1.7),
        new DecayPulse(0.4) { HasSuction = false }, new DecayPulse(0) { HasSuction = false }, new RecordPulse([0, 0.2, 0.2, 1.5], [0, 1, -0.4, 0.3]),
    ];

    [Theory, MemberData(nameof(Shapes))]
    public void Lines_keep_the_impulse_and_its_first_moment(PressureShape shape) =>
        Gen.Double[0.02, 0.4].Sample(h =>
        {
            double impulse = 0, moment = 0, exact = 0, exactMoment = 0;
            int lines = (int)Math.Ceiling(shape.End / h) + 1;
            for (int i = 0; i < lines; i++)
            {
                (double before, double after) = shape.Line((i - 0.37) * h, (i + 0.63) * h);
                double mean = 0.5 * (before + after) * h;
                impulse += mean;
                moment += mean * (i + 0.13) * h + (after - before) * h * h / 12;
            }
            const int fine = 400_000;
            for (int i = 0; i < fine; i++)
            {
                double x = (i + 0.5) * shape.End / fine, part = shape.At(x) * shape.End / fine;
                (exact, exactMoment) = (exact + part, exactMoment + part * x);
            }
            return Math.Abs(impulse - shape.Area) < 1e-6 && Math.Abs(exact - shape.Area) < 1e-4 && Math.Abs(moment - exactMoment) < 1e-4;
        }, iter: 4);

    [Fact]
    public void Line_of_a_straight_stretch_is_the_stretch()
    {
        (double before, double after) = new TrianglePulse(0.5).Line(0.1, 0.4);
        Assert.Equal(0.2, before, 1e-14);
        Assert.Equal(0.8, after, 1e-14);
    }

    [Fact]
    public void Suction_is_greatest_where_its_formula_says()
    {
        var shape = new DecayPulse(1.5);
        double at = 1 + 1 / 1.5, least = -Math.Exp(-2.5) / 1.5;
        Assert.Equal(least, shape.At(at), 1e-15);
        Assert.True(shape.At(at - 0.01) > least && shape.At(at + 0.01) > least);
        Assert.True(Math.Abs(shape.Inside(shape.End)) < 2e-9);
    }

    [Fact]
    public void Wrong_shapes_and_sizes_are_told_with_hints()
    {
        Assert.Equal(["Shape.Rise"], Problems(new TrianglePulse(1.2)));
        Assert.Equal(["Shape.Decay"], Problems(new DecayPulse(0)));
        Assert.Equal(["Shape.Times"], Problems(new RecordPulse([0, 2, 1], [0, 1, 0])));
        Assert.Equal(["Shape.Sizes"], Problems(new RecordPulse([0, 1], [0])));
        Assert.Equal(["Shape.Sizes"], Problems(new RecordPulse([0, 1], [0, double.NaN])));
        Assert.NotEmpty(Problems(new RecordPulse(null!, [])));

        static string[] Problems(PressureShape shape)
        {
            var v = new Validator();
            new PressurePulse { Name = "wave", Shape = shape, Peak = 1.Kilopascals, Duration = 0.1.Seconds }.Validate(v);
            Assert.All(v.Problems, p => Assert.NotEmpty(p.Hint));
            return [.. v.Problems.Select(p => p.Path)];
        }
    }

    [Fact]
    public void Shapes_of_equal_samples_are_equal() =>
        Assert.Equal(new RecordPulse([0, 1], [1, 0]), new RecordPulse([0, 1], [1, 0]));

    [Fact]
    public void Strike_passes_the_impulse_of_colliding_bodies() =>
        Gen.Select(Gen.Double[0.1, 100], Gen.Double[0.1, 100], Gen.Double[0, 1], Gen.Double[0.1, 10]).Sample((m, M, e, v) =>
        {
            double J = Strike.ImpulseOf(m, v, e, M), after = v - J / m, struck = J / M;
            double lost = 0.5 * m * v * v - 0.5 * m * after * after - 0.5 * M * struck * struck;
            return Math.Abs(struck - after - e * v) < 1e-12 * v && Math.Abs(lost - 0.5 * (1 - e * e) * v * v / (1 / m + 1 / M)) < 1e-9 * m * v * v;
        });

    [Fact]
    public void Fixed_body_sends_the_mass_back() => Assert.Equal(1.5 * 3 * 2, Strike.ImpulseOf(3, 2, 0.5, double.PositiveInfinity), 1e-12);
}
