using CsCheck;

namespace StatueFrame.Tests.Actions.AcrossWind;

public class GallopingTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        new("v_CG of a square mast, b 0.4 m, n 1.1 Hz, m 90 kg/m, δ 0.02", "EN 1991-1-4:2005, (E.4) and (E.18), by hand: Sc = 18, v = 2·18/1.2·1.1·0.4", 13.2, "m/s", 1e-9,
            () => Square.OnsetSpeed!.Value.MetersPerSecond, ValueKind.IndependentComputation),
        new("v_IG of two cylinders, b 1 m, a 3 m, n 1 Hz, Sc 12", "EN 1991-1-4:2005, (E.23), by hand", 3.5 * Math.Sqrt(3 * 12 / 3.0), "m/s", 1e-9,
            () => Galloping.InterferenceOnset(1.Hertz, 1.Meters, 3.Meters, 12).MetersPerSecond, ValueKind.FromMemory),
    ];

    private static GallopingResult Square => Galloping.Evaluate(Bodies.Of(Bodies.Parabola, 15, 0.4, 90, 0.02, 1.1, section: BluffSection.Rectangle(1)));

    [Fact]
    public void At_the_onset_the_wind_feeds_what_damping_takes() => Gen.Select(Gen.Double[0.2, 3].Array[2, 10], Gen.Double[0.005, 0.1], Gen.Double[50, 2000]).Sample((widths, delta, m) =>
    {
        var input = new VortexInput
        {
            Strips = widths.Select((b, i) => new VortexStrip(2.Meters, b.Meters, (i + 1) * (i + 1), 30.MetersPerSecond, BluffSection.Rectangle(1))).ToValueList(),
            Frequency = 1.3.Hertz,
            EquivalentMass = m.KilogramsPerMeter,
            LogDecrement = delta,
        };
        double v = Galloping.Evaluate(input).OnsetSpeed!.Value.MetersPerSecond, feed = 0, square = 0;
        foreach (VortexStrip s in input.Strips)
        {
            feed += 0.5 * 1.25 * v * 1.2 * s.Width.Meters * s.Amplitude * s.Amplitude * 2;
            square += s.Amplitude * s.Amplitude * 2;
        }
        double taken = 2 * (delta / (2 * Math.PI)) * (2 * Math.PI * 1.3) * m * square;
        Assert.Equal(taken, feed, 1e-9 * taken);
    }, iter: 200);

    [Fact]
    public void Onset_grows_with_damping_and_a_round_section_has_none()
    {
        VortexInput input = Bodies.Of(Bodies.Parabola, 15, 0.4, 90, 0.02, 1.1, section: BluffSection.Rectangle(1));
        Assert.Equal(2, Galloping.Evaluate(input with { LogDecrement = 0.04 }).OnsetSpeed!.Value / Square.OnsetSpeed!.Value, 1e-12);
        Assert.Null(Galloping.Evaluate(Bodies.Of(Bodies.Parabola, 15, 0.4)).OnsetSpeed);
        Assert.NotNull(Galloping.Evaluate(Bodies.Of(Bodies.Parabola, 15, 0.4, section: BluffSection.RoundWithIce)).OnsetSpeed);
        GallopingResult unknown = Galloping.Evaluate(Bodies.Of(Bodies.Parabola, 15, 0.4, section: BluffSection.Rectangle(4)));
        Assert.True(unknown.AssumesFactor);
        Assert.Equal(10, unknown.GallopingFactor, 1e-12);
    }

    [Theory]
    [InlineData(0.69, false)]
    [InlineData(0.71, true)]
    [InlineData(1.49, true)]
    [InlineData(1.51, false)]
    public void Galloping_near_the_vortices_is_told(double ratio, bool interacts)
    {
        // v_CG/v_crit = 2 Sc St / a_G: with St = 0.12 and a_G = 1.2 it is Sc/5.
        double m = ratio * 5 * 1.25 * 0.16 / (2 * 0.02);
        Assert.Equal(interacts, Galloping.Evaluate(Bodies.Of(Bodies.Parabola, 15, 0.4, m, 0.02, 1.1, section: BluffSection.Rectangle(1))).Interacts);
    }

    [Fact]
    public void Cylinders_cannot_be_nearer_than_they_are_wide() =>
        Assert.Throws<ArgumentOutOfRangeException>("spacing", () => Galloping.InterferenceOnset(1.Hertz, 1.Meters, 0.9.Meters, 12));
}
