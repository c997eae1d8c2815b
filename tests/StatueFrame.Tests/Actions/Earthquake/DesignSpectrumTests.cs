using CsCheck;

namespace StatueFrame.Tests.Actions.Earthquake;

public class DesignSpectrumTests
{
    private static readonly Gen<En1998Spectrum> Spectra =
        from ag in Gen.Double[0.1, 5]
        from ground in Gen.Enum<GroundType>()
        from type in Gen.Enum<En1998SpectrumType>()
        from q in Gen.OneOf(Gen.Const((double?)null), Gen.Double[1, 6].Select(q => (double?)q))
        from vertical in Gen.Bool
        select new En1998Spectrum
        {
            ReferenceAcceleration = ag.MetersPerSecondSquared,
            Ground = ground,
            Type = type,
            BehaviorFactor = q,
            IsVertical = vertical,
        };

    private static double At(DesignSpectrum spectrum, double T) => spectrum.At(T.Seconds).MetersPerSecondSquared;

    private static En1998Spectrum En(GroundType ground, En1998SpectrumType type = En1998SpectrumType.Type1, double? q = null) =>
        new() { ReferenceAcceleration = 1.MetersPerSecondSquared, Ground = ground, Type = type, BehaviorFactor = q };

    private static Asce7Spectrum Asce(double sds, double sd1, double tl) => new() { ShortPeriod = sds, OneSecond = sd1, LongTransition = tl };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("plateau S_e/a_g, type 1, ground B", "EN 1998-1:2004, Table 3.2 and (3.3): 2.5·1.2", 3.0, "-", 1e-9, () => At(En(GroundType.B), 0.3), ValueKind.IndependentComputation),
        new("S_e/a_g at 1 s, type 1, ground C", "EN 1998-1:2004, Table 3.2 and (3.4): 2.5·1.15·0.6", 1.725, "-", 1e-9, () => At(En(GroundType.C), 1.0), ValueKind.IndependentComputation),
        new("S_e/a_g at 3 s, type 1, ground D", "EN 1998-1:2004, Table 3.2 and (3.5): 2.5·1.35·0.8·2/9", 0.6, "-", 1e-9, () => At(En(GroundType.D), 3.0), ValueKind.IndependentComputation),
        new("plateau S_e/a_g, type 2, ground D", "EN 1998-1:2004, Table 3.3 and (3.3): 2.5·1.8", 4.5, "-", 1e-9, () => At(En(GroundType.D, En1998SpectrumType.Type2), 0.2), ValueKind.IndependentComputation),
        new("S_e/a_g at 2 s, type 2, ground A", "EN 1998-1:2004, Table 3.3 and (3.5): 2.5·0.25·1.2/4", 0.1875, "-", 1e-9, () => At(En(GroundType.A, En1998SpectrumType.Type2), 2), ValueKind.IndependentComputation),
        new("vertical plateau S_ve/a_g, type 1", "EN 1998-1:2004, Table 3.4 and (3.9): 3·0.9", 2.7, "-", 1e-9, () => At(En(GroundType.D).Vertical(), 0.1), ValueKind.IndependentComputation),
        new("vertical S_ve/a_g at 0.5 s, type 2", "EN 1998-1:2004, Table 3.4 and (3.10): 3·0.45·0.15/0.5", 0.405, "-", 1e-9, () => At(En(GroundType.A, En1998SpectrumType.Type2).Vertical(), 0.5), ValueKind.IndependentComputation),
        new("design plateau S_d/a_g, q = 3, ground B", "EN 1998-1:2004, (3.14): 1.2·2.5/3", 1.0, "-", 1e-9, () => At(En(GroundType.B, q: 3), 0.4), ValueKind.IndependentComputation),
        new("design S_d/a_g at period zero", "EN 1998-1:2004, (3.13): 1.2·2/3", 0.8, "-", 1e-9, () => At(En(GroundType.B, q: 3), 0), ValueKind.IndependentComputation),
        new("design lower bound β", "EN 1998-1:2004, (3.16): 0.2", 0.2, "-", 1e-9, () => At(En(GroundType.B, q: 4), 3.5), ValueKind.IndependentComputation),
        new("damping correction at 2 %", "EN 1998-1:2004, (3.6): √(10/7)", 1.195, "-", 5e-4, () => En1998Spectrum.DampingCorrection(0.02)),
        new("damping correction, least", "EN 1998-1:2004, (3.6)", 0.55, "-", 1e-9, () => En1998Spectrum.DampingCorrection(0.4)),
        new("T_S for S_DS 1.09, S_D1 0.79", "ASCE/SEI 7-22, 11.4.5.2: S_D1/S_DS", 0.7248, "s", 1e-4, () => Asce(1.09, 0.79, 8).TS),
        new("S_a at period zero", "ASCE/SEI 7-22, (11.4-2): 0.4 S_DS", 0.436, "g", 1e-9, () => At(Asce(1.09, 0.79, 8), 0) / SelfWeight.Gravity, ValueKind.IndependentComputation),
        new("S_a at 2 s", "ASCE/SEI 7-22, (11.4-3): S_D1/T", 0.395, "g", 1e-9, () => At(Asce(1.09, 0.79, 8), 2) / SelfWeight.Gravity),
        new("S_a at 10 s", "ASCE/SEI 7-22, (11.4-4): S_D1·T_L/T²", 0.0632, "g", 1e-9, () => At(Asce(1.09, 0.79, 8), 10) / SelfWeight.Gravity),
        new("vertical coefficient, S_S 0.8, class D", "ASCE/SEI 7-16, Table 11.9-1, half way from 1.1 to 1.3", 1.2, "-", 1e-9, () => Asce7VerticalSpectrum.Coefficient(0.8, 'D')),
        new("vertical S_av/S_DS at 0.1 s, C_v 1.3", "ASCE/SEI 7-16, (11.9-3): 0.8·1.3", 1.04, "-", 1e-9, () => At(new Asce7VerticalSpectrum { Horizontal = Asce(1, 0.1, 4), VerticalCoefficient = 1.3 }, 0.1) / SelfWeight.Gravity, ValueKind.IndependentComputation),
    ];

    [Fact]
    public void A_spectrum_of_EN_1998_has_no_steps_and_never_rises_after_its_plateau() => Spectra.Sample(spectrum =>
    {
        SpectrumShape shape = spectrum.ShapeInUse;
        foreach (double T in new[] { shape.TB, shape.TC, shape.TD })
            Assert.Equal(1, At(spectrum, T * (1 + 1e-9)) / At(spectrum, T * (1 - 1e-9)), 1e-6);
        Assert.True(At(spectrum, 1.7) >= At(spectrum, 1.8));
    });

    [Fact]
    public void Acceleration_of_the_ground_scales_a_spectrum() => Gen.Select(Spectra, Gen.Double[0, 4], Gen.Double[0.5, 2]).Sample((spectrum, T, k) =>
        Math.Abs(At(spectrum with { ImportanceFactor = k }, T) - k * At(spectrum, T)) < 1e-9);

    [Fact]
    public void More_damping_never_shakes_more() => Gen.Select(Spectra, Gen.Double[0.01, 4], Gen.Double[0.005, 0.2]).Sample((spectrum, T, zeta) =>
    {
        En1998Spectrum elastic = spectrum with { BehaviorFactor = null };
        return At(elastic.WithDamping(1.1 * zeta)!, T) <= At(elastic.WithDamping(zeta)!, T) + 1e-12;
    });

    [Fact]
    public void A_table_of_the_two_period_spectrum_agrees_with_it_at_its_points()
    {
        Asce7Spectrum spectrum = Asce(0.8, 0.4, 6);
        double[] periods = [0, 0.05, 0.1, 0.5, 1, 2, 6, 10];
        var table = new TableSpectrum
        {
            Origin = Source.User,
            Points = periods.Select(T => new SpectrumPoint(T.Seconds, spectrum.At(T.Seconds))).ToValueList(),
        };
        foreach (double T in periods)
            Assert.Equal(At(spectrum, T), At(table, T), 1e-12);
        Assert.Equal(At(spectrum, 10), At(table, 50), 1e-12);
        Assert.Equal(0.5 * (At(spectrum, 1) + At(spectrum, 2)), At(table, 1.5), 1e-12);
        Assert.Equal(At(spectrum, 1) / 4, At(table with { ForceReduction = 4 }, 1), 1e-12);
    }

    [Fact]
    public void Reduction_by_R_is_undone_for_displacements_by_C_d()
    {
        Asce7Spectrum spectrum = Asce(0.8, 0.4, 6) with { ResponseModification = 3, DeflectionAmplification = 2.5, ImportanceFactor = 1.25 };
        Assert.Equal(0.8 * SelfWeight.Gravity / (3 / 1.25), At(spectrum, 0.3), 1e-12);
        Assert.Equal(2.5 / 1.25, spectrum.DisplacementFactor);
        Assert.Equal(3 / 1.25, (spectrum with { DeflectionAmplification = null }).DisplacementFactor);
    }

    [Fact]
    public void Wrong_spectra_are_told_with_hints()
    {
        var wrong = Assert.Throws<InvalidStatueException>(() => Asce(0.4, 0.8, 1).At(1.Seconds));
        Assert.Contains("swapped", wrong.Message);
        Assert.Throws<InvalidStatueException>(() => (En(GroundType.A, q: 2) with { DampingRatio = 0.02 }).At(1.Seconds));
        Assert.Throws<ArgumentOutOfRangeException>(() => En(GroundType.A).At((-1).Seconds));
        var unsorted = new TableSpectrum { Origin = Source.User, Points = [new(1.Seconds, 1.MetersPerSecondSquared), new(0.5.Seconds, 1.MetersPerSecondSquared)] };
        Assert.Throws<InvalidStatueException>(() => unsorted.At(1.Seconds));
        var action = new EarthquakeAction { Horizontal = En(GroundType.A, q: 2), ModalDamping = [0.02] };
        var v = new Validator();
        action.Validate(v);
        Assert.Contains(v.Problems, p => p.Path.Contains(nameof(EarthquakeAction.ModalDamping)));
    }
}
