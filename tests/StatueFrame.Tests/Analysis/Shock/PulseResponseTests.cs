using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Analyses.Shocks;

public class PulseResponseTests
{
    private const string Chopra = "Chopra, Dynamics of Structures, chapter 4", Biggs = "Biggs, Introduction to Structural Dynamics, fig. 2.24", DenHartog = "Den Hartog, Mechanical Vibrations, section 2.12";

    public static IEnumerable<PublishedValue> Rows =>
    [
        Elastic("Rectangle", new RectanglePulse(), 0.5, 2, 1e-6),
        Elastic("Rectangle", new RectanglePulse(), 3, 2, 1e-6),
        Elastic("Rectangle, 2 sin(π/6)", new RectanglePulse(), 1.0 / 6, 1, 1e-6),
        Elastic("Half sine, greatest of all durations", new HalfSinePulse(), 0.81, 1.77, 0.003),
        Elastic("Half sine, (π/2 at resonance)", new HalfSinePulse(), 0.5, 1.5708, 5e-5),
        Elastic("Half sine, 1.732", new HalfSinePulse(), 1, 1.732, 5e-4),
        Elastic("Symmetric triangle, 4/π", new TrianglePulse(0.5), 0.5, 1.2732, 5e-5),
        Elastic("Symmetric triangle, greatest of all durations", new TrianglePulse(0.5), 0.91, 1.52, 0.005),
        Elastic("Falling triangle", new TrianglePulse(), 0.5, 1.20, 0.005),
        Elastic("Falling triangle", new TrianglePulse(), 1, 1.55, 0.005),
        Elastic("Falling triangle", new TrianglePulse(), 2, 1.76, 0.005),
        new("Rectangle of 20 periods, yield force 1.1 of the peak: ductility", "energy: 0.5/(1 − F/R)", 5.5, "-", 1e-6, () => PulseResponse.Of(new RectanglePulse(), 20, 0, 1.1).Ductility, ValueKind.CommonPracticeNoSource),
        new("Short pulse, td/T = 0.01, impulse of 2 times that of first yield: ductility", Biggs + ", limit of short pulses: ½(1 + (Jω/R)²)", 2.5, "-", 0.005, () => PulseResponse.Of(new TrianglePulse(), 0.01, 0, Math.PI * 0.01 / 2).Ductility, ValueKind.FromMemory),
        new("Transmissibility at r = √2, ζ = 0.3", DenHartog, 1, "-", 1e-9, () => TransmissibilityPoint.OfOneMass(Math.Sqrt(2), 0.3), ValueKind.FromMemory),
        new("Transmissibility at r = 2 without damping", DenHartog, 1.0 / 3, "-", 1e-9, () => TransmissibilityPoint.OfOneMass(2, 0), ValueKind.FromMemory),
        new("Transmissibility at resonance, ζ = 0.125", DenHartog, 4.123, "-", 2e-4, () => TransmissibilityPoint.OfOneMass(1, 0.125), ValueKind.FromMemory),
    ];

    private static PublishedValue Elastic(string what, PressureShape shape, double ratio, double expected, double tolerance) => new(
        FormattableString.Invariant($"Shock spectrum, {what}, t_d/T = {ratio:0.###}"), Chopra, expected, "-", tolerance, () => PulseResponse.Of(shape, ratio).Factor, ValueKind.FromMemory);

    [Fact]
    public void Formulas_of_the_spectra_hold() => Gen.Double[0.02, 0.499].Sample(x =>
    {
        Assert.Equal(2 * Math.Sin(Math.PI * x), PulseResponse.Of(new RectanglePulse(), x).Factor, 1e-9);
        Assert.Equal(Math.Cos(Math.PI * x) / x / (0.25 / (x * x) - 1), PulseResponse.Of(new HalfSinePulse(), x).Factor, 2e-5);
        Assert.Equal(4 * Math.Pow(Math.Sin(0.5 * Math.PI * x), 2) / (Math.PI * x), PulseResponse.Of(new TrianglePulse(0.5), x).Factor, 1e-9);
    }, iter: 30);

    [Fact]
    public void Damped_peak_of_a_long_rectangle_has_the_overshoot_of_a_step() => Gen.Double[0.01, 0.8].Sample(zeta =>
        Math.Abs(PulseResponse.Of(new RectanglePulse(), 3, zeta).Factor - (1 + Math.Exp(-Math.PI * zeta / Math.Sqrt(1 - zeta * zeta)))) < 1e-9);

    [Fact]
    public void Spring_that_does_not_reach_its_yield_is_elastic() => Gen.Select(Gen.Double[0.05, 5], Gen.Double[0, 0.3]).Sample((x, zeta) =>
    {
        PulseResponse elastic = PulseResponse.Of(new DecayPulse(1.5), x, zeta), strong = PulseResponse.Of(new DecayPulse(1.5), x, zeta, 2.5);
        return elastic.Factor == strong.Factor && Math.Abs(strong.Ductility - strong.Factor / 2.5) < 1e-12 && elastic.Ductility == 0;
    }, iter: 30);

    [Fact]
    public void Weaker_spring_passes_on_less_and_is_asked_for_more() => Gen.Select(Gen.Double[0.2, 3], Gen.Double[0.3, 0.9]).Sample((x, strength) =>
    {
        double elastic = PulseResponse.Of(new TrianglePulse(), x).Factor;
        PulseResponse weak = PulseResponse.Of(new TrianglePulse(), x, 0.02, strength * elastic), weaker = PulseResponse.Of(new TrianglePulse(), x, 0.02, 0.8 * strength * elastic);
        return weaker.Ductility > weak.Ductility && weaker.Transmitted < weak.Transmitted && weak.Transmitted <= strength * elastic * (1 + 1e-12);
    }, iter: 30);

    [Fact]
    public void Rectangle_that_yields_meets_the_balance_of_energy() => Gen.Double[0.55, 0.95].Sample(load =>
    {
        // A load that stays until the peak: F u = R (u − u_y/2).
        double ductility = PulseResponse.Of(new RectanglePulse(), 40, 0, 1 / load).Ductility;
        return Math.Abs(ductility - 0.5 / (1 - load)) < 1e-8 * ductility;
    }, iter: 20);

    [Fact]
    public void Wrong_numbers_are_told_together()
    {
        var e = Assert.Throws<InvalidStatueException>(() => PulseResponse.Of(new TrianglePulse(-1), double.NaN, 1.5, -2, 1));
        Assert.Equal(5, e.Problems.Count);
    }

    [Theory, InlineData(-1, 0), InlineData(double.NaN, 0), InlineData(1, -0.1)]
    public void Transmissibility_refuses_what_is_out_of_range(double ratio, double damping) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TransmissibilityPoint.OfOneMass(ratio, damping));
}
