using CsCheck;
using UnitsNet;

namespace StatueFrame.Tests.Actions.AcrossWind;

public class VortexSheddingTests
{
    private const string TableE5 = "EN 1991-1-4:2005, Table E.5";
    private const string Tool = "quoted second-hand";
    private const string Ruscheweyh = $"Ruscheweyh 1994, Eq. 2.16, Eq. 2.21 and Tab. 2.1, {Tool}";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("K, cantilever, parabolic mode", TableE5, 0.13, "-", 0.005 / 0.13, () => At(Bodies.Parabola).ModeFactor, ValueKind.FromMemory),
        new("K, simply supported, sine mode", TableE5, 0.10, "-", 0.005 / 0.10, () => At(Bodies.HalfSine).ModeFactor, ValueKind.FromMemory),
        new("K, clamped both ends", TableE5, 0.11, "-", 0.005 / 0.11, () => At(Bodies.Clamped).ModeFactor, ValueKind.FromMemory),
        new("K_w, cantilever, L_j/b = 6, length 40 widths", "integral of the mode over the correlated length, by hand", CantileverFactor(6.0 / 40), "-", 2e-4, () => At(Bodies.Parabola).CorrelationFactor, ValueKind.IndependentComputation),
        new("K_w, simply supported, L_j/b = 6, length 40 widths", TableE5, Math.Cos(Math.PI / 2 * (1 - 6.0 / 40)), "-", 2e-4, () => At(Bodies.HalfSine).CorrelationFactor, ValueKind.IndependentComputation),
        new("K_w, clamped both ends, L_j/b = 6, length 40 widths", TableE5, 6.0 / 40 + Math.Sin(Math.PI * 6 / 40) / Math.PI, "-", 2e-4, () => At(Bodies.Clamped).CorrelationFactor, ValueKind.IndependentComputation),
        new("K_w of a short body", $"EN 1991-1-4:2005, (E.8), its cap on K_w, {Tool}", 0.6, "-", 1e-12, () => VortexShedding.Evaluate(Bodies.Of(Bodies.Parabola, 10, 1)).CorrelationFactor),
        .. new[] { (0.05, 6.0), (0.1, 6.0), (0.3, 8.4), (0.6, 12.0), (0.9, 12.0) }.Select(p => new PublishedValue(
            $"L_j/b at y_F/b {p.Item1:0.00}", Ruscheweyh, p.Item2, "-", 1e-12, () => VortexShedding.CorrelationLengthToWidth(p.Item1))),
        .. Chimney(),
        .. SpectralChimney(),
    ];

    /// <summary>The same chimney by approach 2: σ_y found step by step from (E.14), in which the negative damping fades as the amplitude grows.</summary>
    private static IEnumerable<PublishedValue> SpectralChimney()
    {
        foreach ((string name, double delta) in new[] { ("lightly damped", 0.012), ("well damped", 0.12) })
        {
            VortexInput chimney = Bodies.Of(Bodies.Parabola, 40, 1.2, 350, delta, 0.9, strips: 800) with { ReferenceStrip = 800 };
            double Re = 1.2 * 6 / 15e-6, between = Math.Log(Re / 1e5) / Math.Log(5), C = 0.02 - 0.015 * between, K = 2 - 1.5 * between;
            double S = 2 * delta * 350 / (1.25 * 1.44) / (4 * Math.PI);
            // Of all amplitudes the one at which forcing and damping balance, by halving.
            double low = 0, high = 10;
            for (int i = 0; i < 200; i++)
            {
                double s = 0.5 * (low + high), net = S - K * (1 - s * s / 0.16);
                bool more = net <= 0 || s < C / (0.18 * 0.18) * Math.Sqrt(1.25 * 1.44 / 350 * 1.2 / 40 / net);
                (low, high) = more ? (s, high) : (low, s);
            }
            const string how = "an invented chimney, h 40 m, b 1.2 m, n 0.9 Hz, m 350 kg/m, by halving from (E.14) of EN 1991-1-4:2005, Table E.6 and (E.17) from memory";
            double k_p = Math.Sqrt(2) * (1 + 1.2 * Math.Atan(0.75 * S / K));
            yield return new($"σ_y of a {name} chimney, approach 2", how, 1.2 * low, "m", 1e-4, () => VortexShedding.Evaluate(chimney).Spectral!.Deviation.Meters, ValueKind.IndependentComputation);
            yield return new($"y_max of a {name} chimney, approach 2", how, 1.2 * low * k_p, "m", 1e-4, () => VortexShedding.Evaluate(chimney).Spectral!.Amplitude.Meters, ValueKind.IndependentComputation);
        }
    }

    /// <summary>An invented welded steel chimney without liner, by hand from the formulas and closed forms of the standard.</summary>
    private static IEnumerable<PublishedValue> Chimney()
    {
        const string byHand = "an invented chimney, h 40 m, b 1.2 m, n 0.9 Hz, m 350 kg/m, δ 0.012, by hand with (E.2) to (E.10) and Table E.5";
        VortexResult ours() => VortexShedding.Evaluate(Bodies.Of(Bodies.Parabola, 40, 1.2, 350, 0.012, 0.9, strips: 800) with { ReferenceStrip = 800, Approach = VortexApproach.VortexResonance });
        double v = 1.2 * 0.9 / 0.18, Sc = 2 * 0.012 * 350 / (1.25 * 1.44), Re = 1.2 * v / 15e-6;
        double c = 0.7 - 0.5 * Math.Log(Re / 3e5) / Math.Log(5 / 3.0), K = 5 / (12 * Math.PI), y = 0;
        for (int i = 0; i < 100; i++)
            y = CantileverFactor(Math.Clamp(4.8 + 12 * y, 6, 12) * 1.2 / 40) * K * c / (0.18 * 0.18 * Sc);
        double N = 2 * 3.2e7 * 50 * 0.9 * 0.3 * Math.Exp(-1);
        yield return Row("v_crit", v, "m/s", r => r.CriticalSpeed.MetersPerSecond);
        yield return Row("Sc", Sc, "-", r => r.ScrutonNumber);
        yield return Row("Re", Re, "-", r => r.ReynoldsNumber);
        yield return Row("c_lat", c, "-", r => r.LateralCoefficient);
        yield return Row("y_F,max", y * 1.2, "m", r => r.Amplitude.Meters);
        yield return Row("N, v_crit at v₀", N, "-", r => r.Cycles);
        PublishedValue Row(string name, double expected, string unit, Func<VortexResult, double> part) =>
            new($"{name} of a chimney", byHand, expected, unit, 5e-4, () => part(ours()), ValueKind.IndependentComputation);
    }

    private static double CantileverFactor(double x) => 3 * x * (1 - x + x * x / 3);

    private static VortexResult At(Func<double, double> mode) =>
        VortexShedding.Evaluate(Bodies.Of(mode, 40, 1, mass: 1e5) with { ReferenceStrip = mode == Bodies.Parabola ? 200 : 100 });

    private static Gen<VortexInput> Inputs { get; } = Gen.Select(
        Gen.Select(Gen.Double[0.3, 3], Gen.Double[0.2, 4], Gen.Double[-1, 1], Gen.Double[10, 40]).Array[1, 12], Gen.Double[0.2, 6], Gen.Double[50, 3000], Gen.Double[0.005, 0.1], Gen.Bool)
        .Select((strips, n, m, delta, sharp) => new VortexInput
        {
            Strips = strips.Select(s => new VortexStrip(s.Item1.Meters, s.Item2.Meters, s.Item3 + 2e-3, s.Item4.MetersPerSecond,
                sharp ? BluffSection.Rectangle(1) : BluffSection.Round, 100.KilogramsPerMeter)).ToValueList(),
            Frequency = n.Hertz,
            EquivalentMass = m.KilogramsPerMeter,
            LogDecrement = delta,
        });

    [Fact]
    public void Amplitude_never_grows_with_damping_or_mass() => Gen.Select(Inputs, Gen.Double[1, 4]).Sample((input, k) =>
    {
        // The peak factor of approach 2 grows with damping, so that its peak has a hump of 6 % where a body locks in; its deviation has none.
        foreach (VortexApproach approach in new[] { VortexApproach.VortexResonance, VortexApproach.Spectral })
        {
            double one = Most(input), damped = Most(input with { LogDecrement = Math.Min(3, k * input.LogDecrement) }), heavy = Most(input with { EquivalentMass = k * input.EquivalentMass });
            Assert.True(damped <= one * (1 + 1e-9) && heavy <= one * (1 + 1e-9));

            double Most(VortexInput of) => Enumerable.Range(1, of.Strips.Count).Max(strip => VortexShedding.Evaluate(of with { Approach = approach, ReferenceStrip = strip }) is var r && r.Spectral is { } spectral ? spectral.Deviation.Meters : r.Amplitude.Meters);
        }
    }, iter: 300);

    [Fact]
    public void The_scale_and_sign_of_a_mode_do_not_matter() => Gen.Select(Inputs, Gen.OneOf(Gen.Double[0.01, 100], Gen.Double[-100, -0.01])).Sample((input, k) =>
    {
        VortexResult one = VortexShedding.Evaluate(input);
        VortexResult other = VortexShedding.Evaluate(input with { Strips = input.Strips.Select(s => s with { Amplitude = k * s.Amplitude }).ToValueList() });
        Assert.Equal(one.Amplitude.Meters, other.Amplitude.Meters, 1e-9 * (one.Width + one.Amplitude).Meters);
        Assert.Equal(one.CorrelationFactor, other.CorrelationFactor, 1e-9);
    }, iter: 300);

    [Fact]
    public void A_body_k_times_as_large_and_k_times_as_slow_swings_k_times_as_far() => Gen.Select(Inputs, Gen.Double[0.5, 2]).Sample((input, k) =>
    {
        // Same speeds and Scruton number; a rectangle, since a circle knows the Reynolds number.
        VortexInput sharp = input with { Strips = input.Strips.Select(s => s with { Section = BluffSection.Rectangle(1) }).ToValueList() };
        VortexInput large = sharp with
        {
            Strips = sharp.Strips.Select(s => s with { Length = k * s.Length, Width = k * s.Width }).ToValueList(),
            Frequency = sharp.Frequency / k,
            EquivalentMass = k * k * sharp.EquivalentMass,
        };
        // Strip by strip: which of two that swing alike is named may hang on rounding.
        for (int strip = 1; strip <= sharp.Strips.Count; strip++)
        {
            VortexResult one = VortexShedding.Evaluate(sharp with { ReferenceStrip = strip }), other = VortexShedding.Evaluate(large with { ReferenceStrip = strip });
            Assert.Equal(k * one.Amplitude.Meters, other.Amplitude.Meters, 1e-9 * (other.Width + other.Amplitude).Meters);
            Assert.Equal(one.CriticalSpeed.MetersPerSecond, other.CriticalSpeed.MetersPerSecond, 1e-9 * one.CriticalSpeed.MetersPerSecond);
        }
        Assert.Equal(k * VortexShedding.Evaluate(sharp).Amplitude.Meters, VortexShedding.Evaluate(large).Amplitude.Meters, 1e-8 * k * sharp.Strips.Max(s => s.Width.Meters));
    }, iter: 200);

    /// <summary>By chance far from lock-in, steady within it: the peak factor goes from about 4 to √2, and the amplitude to the limit of the table.</summary>
    [Fact]
    public void The_spectral_model_goes_from_chance_to_a_steady_swing()
    {
        VortexInput body = Bodies.Of(Bodies.Parabola, 60, 1, 300, 0.02, 1);
        SpectralVortices heavy = VortexShedding.Evaluate(body with { EquivalentMass = 1e7.KilogramsPerMeter, LogDecrement = 2 }).Spectral!;
        SpectralVortices light = VortexShedding.Evaluate(body with { LogDecrement = 1e-4 }).Spectral!;
        Assert.Equal(Math.Sqrt(2) * (1 + 0.6 * Math.PI), heavy.PeakFactor, 1e-3);
        Assert.Equal(Math.Sqrt(2), light.PeakFactor, 0.02);
        Assert.Equal(0.4, light.Deviation.Meters / 1, 0.05);
    }

    /// <summary>What holds only for cantilevers that are round or square is not put on others, and the worse of both models counts.</summary>
    [Fact]
    public void The_spectral_model_is_kept_to_what_it_is_for()
    {
        VortexInput body = Bodies.Of(Bodies.Parabola, 60, 1, 300, 0.01, 1);
        VortexResult both = VortexShedding.Evaluate(body), first = VortexShedding.Evaluate(body with { Approach = VortexApproach.VortexResonance }), second = VortexShedding.Evaluate(body with { Approach = VortexApproach.Spectral });
        Assert.Equal(Math.Max(first.Amplitude.Meters, second.Amplitude.Meters), both.Amplitude.Meters, 1e-12);
        Assert.True(second.Amplitude > 3 * first.Amplitude);
        Assert.Null(first.Spectral);
        Assert.Null(VortexShedding.Evaluate(Bodies.Of(Bodies.HalfSine, 60, 1, 300, 0.01, 1)).Spectral);
        Assert.Null(VortexShedding.Evaluate(Bodies.Of(Bodies.Parabola, 60, 1, 300, 0.01, 1, section: BluffSection.Rectangle(2))).Spectral);
        Assert.NotNull(VortexShedding.Evaluate(Bodies.Of(Bodies.Parabola, 60, 1, 300, 0.01, 1, section: BluffSection.Rectangle(1))).Spectral);
        Assert.Null(VortexShedding.Evaluate(Bodies.Of(Bodies.Parabola, 60, 1, 300, 0.01, 1, speed: 2)).Spectral);
    }

    /// <summary>Turbulence takes from the negative damping, and never adds to what is below the limit a_L b, which the motion feeds; beyond it that damping brakes.</summary>
    [Fact]
    public void Turbulence_never_adds() => Gen.Select(Inputs, Gen.Double[0.05, 1]).Sample((input, left) =>
        Assert.True(Swing(input) > 0.4 * input.Strips[0].Width.Meters || Swing(input with { TurbulenceReduction = left }) <= Swing(input) * (1 + 1e-9)), iter: 300);

    private static double Swing(VortexInput input) => VortexShedding.Evaluate(input with { ReferenceStrip = 1 }).Spectral?.Deviation.Meters ?? 0;

    [Fact]
    public void A_body_reads_the_same_from_either_end() => Inputs.Sample(input =>
    {
        VortexResult one = VortexShedding.Evaluate(input), other = VortexShedding.Evaluate(input with { Strips = input.Strips.Reverse().ToValueList() });
        Assert.Equal(one.Amplitude.Meters, other.Amplitude.Meters, 1e-9 * (one.Width + one.Amplitude).Meters);
    }, iter: 200);

    [Fact]
    public void Results_stay_in_their_bounds() => Inputs.Sample(input =>
    {
        VortexResult r = VortexShedding.Evaluate(input);
        Assert.InRange(r.CorrelationFactor, 0, 0.6);
        Assert.InRange(r.LateralCoefficient, 0, r.BasicLateralCoefficient);
        Assert.True(r.ModeFactor >= 1 / (4 * Math.PI) * (1 - 1e-12));
        Assert.True(double.IsFinite(r.Amplitude.Meters) && r.Amplitude.Meters >= 0 && r.Cycles >= 1e4);
        Assert.True(!r.IsBeyondRange || r.LateralCoefficient < 1e-12);
        Assert.Equal(input.Strips.Count, r.InertiaForces.Count);
        Assert.True(r.InertiaForces.All(f => Math.Abs(f.NewtonsPerMeter) <= 100 * r.PeakAcceleration.MetersPerSecondSquared * (1 + 1e-9) + 1e-12));
    }, iter: 300);

    [Fact]
    public void The_worst_strip_is_no_milder_than_any_that_is_given() => Inputs.Sample(input =>
    {
        VortexResult worst = VortexShedding.Evaluate(input);
        for (int i = 1; i <= input.Strips.Count; i++)
        {
            VortexResult one = VortexShedding.Evaluate(input with { ReferenceStrip = i });
            Assert.True(one.IsBeyondRange || !worst.IsBeyondRange && one.Amplitude <= worst.Amplitude);
        }
    }, iter: 150);

    [Fact]
    public void The_amplitude_is_that_of_a_mode_in_resonance()
    {
        // Modal force ½ρv²c_lat b∫|φ| on the correlation length, over 2ζω²M: the steady amplitude of an oscillator.
        VortexInput input = Bodies.Of(Bodies.Parabola, 50, 1, 400, 0.03, 0.4, strips: 1000) with { ReferenceStrip = 1000, Approach = VortexApproach.VortexResonance };
        VortexResult r = VortexShedding.Evaluate(input);
        double v = r.CriticalSpeed.MetersPerSecond, step = 50.0 / 1e5, force = 0, mass = 0, omega = 2 * Math.PI * 0.4;
        for (double s = 0.5 * step; s < 50; s += step)
        {
            double phi = s * s / 2500;
            mass += 400 * phi * phi * step;
            force += s > 50 - r.CorrelationLength.Meters ? 0.5 * 1.25 * v * v * r.LateralCoefficient * phi * step : 0;
        }
        Assert.Equal(force / (2 * (0.03 / (2 * Math.PI)) * omega * omega * mass), r.Amplitude.Meters, 1e-3 * r.Amplitude.Meters);
        Assert.True(r.Converged);
    }

    [Fact]
    public void Every_antinode_of_a_higher_mode_is_struck()
    {
        VortexResult one = VortexShedding.Evaluate(Bodies.Of(t => Math.Sin(Math.PI * t), 40, 1, mass: 1e5));
        VortexResult three = VortexShedding.Evaluate(Bodies.Of(t => Math.Sin(3 * Math.PI * t), 120, 1, mass: 1e5, strips: 600) with { ReferenceStrip = 300 });
        Assert.Equal(one.CorrelationFactor, three.CorrelationFactor, 1e-3);
        Assert.Equal(one.ModeFactor, three.ModeFactor, 1e-3);
    }

    [Fact]
    public void Vortices_of_a_wide_foot_do_not_act_on_a_narrow_neck()
    {
        VortexInput neck = Bodies.Of(Bodies.Parabola, 20, 1, mass: 2000, strips: 20, frequency: 0.5);
        VortexInput WithFoot(double width) => neck with
        {
            Strips = neck.Strips.Select((s, i) => i < 10 ? s with { Width = width.Meters } : s).ToValueList(),
            ReferenceStrip = 1,
        };
        double far = VortexShedding.Evaluate(WithFoot(4)).CorrelationFactor;
        Assert.Equal(1.0 / 8, far, 1e-2);
        Assert.Equal(Math.Pow(0.7, 3) - Math.Pow(0.4, 3), VortexShedding.Evaluate(WithFoot(1.3) with { ReferenceStrip = 11 }).CorrelationFactor, 1e-2);
        VortexResult top = VortexShedding.Evaluate(WithFoot(4) with { ReferenceStrip = 20 });
        Assert.Equal(VortexShedding.Evaluate(neck with { ReferenceStrip = 20 }).Amplitude.Meters, top.Amplitude.Meters, 1e-9);
    }

    [Fact]
    public void A_light_body_swings_farther_than_the_first_guess_of_the_correlation_length()
    {
        VortexResult r = VortexShedding.Evaluate(Bodies.Of(Bodies.Parabola, 60, 1, 40, 0.01, 1));
        Assert.True(r.CorrelationLength.Meters > 6.5);
        Assert.True(r.Converged);
        double top = VortexShedding.CorrelationLengthToWidth(r.Amplitude.Meters);
        Assert.Equal(top, r.CorrelationLength.Meters, 1e-6);
    }

    [Fact]
    public void Cycles_are_most_when_the_critical_speed_is_the_speed_of_the_distribution() => Gen.Double[0.05, 4].Sample(ratio =>
        VortexShedding.Cycles(1.Hertz, (5 * ratio).MetersPerSecond, 5.MetersPerSecond, 50) <= VortexShedding.Cycles(1.Hertz, 5.MetersPerSecond, 5.MetersPerSecond, 50), iter: 200);

    [Fact]
    public void Beyond_the_range_nothing_shakes_and_just_below_little_does()
    {
        VortexInput input = Bodies.Of(Bodies.Parabola, 40, 1, frequency: 1.8);
        Speed critical = VortexShedding.Evaluate(input).CriticalSpeed;
        VortexInput In(double ratio) => input with { Strips = input.Strips.Select(s => s with { MeanSpeed = critical / ratio }).ToValueList() };
        Assert.True(VortexShedding.Evaluate(In(1.2501)).IsBeyondRange);
        Assert.Equal(0, VortexShedding.Evaluate(In(1.2501)).Amplitude.Meters);
        Assert.False(VortexShedding.Evaluate(In(1.2499)).IsBeyondRange);
        Assert.Equal(0.7 * 0.6, VortexShedding.Evaluate(In(1)).LateralCoefficient / VortexShedding.Evaluate(In(0.5)).LateralCoefficient * 0.7, 1e-9);
    }

    [Fact]
    public void Bad_input_is_listed_in_full()
    {
        VortexInput bad = Bodies.Of(Bodies.Parabola, 40, 1, strips: 3) with
        {
            Strips = [new VortexStrip(0.Meters, (-1).Meters, double.NaN, 0.MetersPerSecond, null!)],
            Frequency = Frequency.Zero,
            EquivalentMass = LinearDensity.Zero,
            LogDecrement = 0,
            LifeYears = 0,
            BandwidthFactor = 2,
            ReferenceStrip = 4,
        };
        var exception = Assert.Throws<InvalidStatueException>(() => VortexShedding.Evaluate(bad));
        Assert.Equal(11, exception.Problems.Count);
        Assert.Throws<InvalidStatueException>(() => VortexShedding.Evaluate(bad with { Strips = [] }));
        Assert.Throws<InvalidStatueException>(() => Galloping.Evaluate(Bodies.Of(t => 0, 40, 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => VortexShedding.CorrelationLengthToWidth(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => VortexShedding.LateralReduction(-1));
        Assert.Throws<ArgumentOutOfRangeException>("weibullSpeed", () => VortexShedding.Cycles(1.Hertz, 5.MetersPerSecond, Speed.Zero, 50));
    }

    /// <summary>A strip stands still but for rounding, and its neighbor moves the other way.</summary>
    [Theory]
    [InlineData(1e-20)]
    [InlineData(-1e-20)]
    [InlineData(0)]
    public void A_mode_may_be_zero_at_a_strip(double nothing)
    {
        VortexInput Of(double at) => Bodies.Of(Bodies.HalfSine, 20, 1, strips: 4) with
        {
            Strips = [.. Bodies.Of(Bodies.HalfSine, 20, 1, strips: 4).Strips.Select((strip, i) => strip with { Amplitude = i switch { 0 => at, 1 => -0.5, 2 => -1, _ => 0.3 } })],
        };
        double amplitude = VortexShedding.Evaluate(Of(nothing)).Amplitude.Meters;
        Assert.Equal(VortexShedding.Evaluate(Of(nothing < 0 ? -1e-9 : 1e-9)).Amplitude.Meters, amplitude, 1e-6 * amplitude);
    }
}
