using StatueFrame.Analysis;
using static StatueFrame.Tests.Analysis.Gusts.GustStatues;

namespace StatueFrame.Tests.Analysis.Gusts;

public class GustFactorsTests
{
    private static readonly DampingModel damping = new() { StructuralDecrement = 0.05 };

    private static readonly AsceWind asce = new() { Edition = AsceEdition.Asce7_22, Exposure = AsceExposure.C, BasicSpeed = 50.MetersPerSecond };

    private static readonly Blown calm = new(40, 4, 0.8, 2000, Wind(26, TerrainCategory.Zero));

    private static readonly Blown slender = new(40, 4, 0.8, 2000, Wind());

    private static readonly Blown stout = new(30, 8, 1.2, 3000, Wind());

    private static readonly Blown little = new(20, 2, 3, 1000, Wind());

    private static readonly Blown inTown = new(40, 4, 2, 2000, Wind(26, TerrainCategory.IV));

    private static readonly Blown tall = new(80, 6, 0.4, 3000, Wind());

    private static readonly Blown american = new(40, 4, 0.8, 2000, asce);

    /// <summary>A tower with all results along x, found once.</summary>
    private sealed class Blown
    {
        private readonly Lazy<GustResponse> response;

        public Blown(double h, double b, double n, double mass, WindProfile wind)
        {
            // The peak pressure is that at the top of each band, the standard's along the whole height: bands are low.
            Model = StatueModel.Build(Uniform(h, b, n, mass, bands: 48));
            Modes = Model.Modes(6);
            Wind = Action(wind);
            response = new(() => GustResponse.Of(Model, Modes, Wind, 0.Degrees, damping));
        }

        public StatueModel Model { get; }

        public ModalResponse Modes { get; }

        public WindAction Wind { get; }

        public En1991StatueGust En => GustFactors.En1991(Model, Modes, Wind, 0.Degrees, damping)!;

        public Asce7StatueGust Asce => GustFactors.Asce7(Model, Modes, Wind, 0.Degrees, damping)!;

        public GustResponse Response => response.Value;
    }

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. Compared("40 m high, 4 m wide, 0.84 Hz, terrain 0", calm),
        .. Compared("40 m high, 4 m wide, 0.84 Hz, terrain II", slender),
        .. Compared("30 m high, 8 m wide, 1.26 Hz, terrain II", stout),
        .. Compared("20 m high, 2 m wide, 3.0 Hz, terrain II", little),
        .. Compared("80 m high, 6 m wide, 0.42 Hz, terrain II", tall),
        .. Compared("40 m high, 4 m wide, 2.1 Hz, terrain IV", inTown, 0.07, 0.06),
        Acceleration("Annex B", 0.17, en => en.AnnexB),
        Acceleration("Annex C", 0.1, en => en.AnnexC),
        new("δ_a of a uniform 40 m cantilever in terrain II", "EN 1991-1-4:2005, (F.18) by hand, mass over height", DecrementByHand(), "-", 0.02, () => slender.En.AerodynamicDecrement, ValueKind.IndependentComputation),
        new("modal damping by the air of the same, as a decrement", "EN 1991-1-4:2005, (F.18) by hand, mass over height; it has the wind at 0.6 h only", DecrementByHand(), "-", 0.05, () => 2 * Math.PI * slender.Response.Modes[0].AerodynamicRatio, ValueKind.IndependentComputation),
        new("exponent ζ of a slender cantilever's mode shape", "EN 1991-1-4:2005, F.3", 1.5, "-", 0.1, () => slender.En.ModeExponent, ValueKind.FromMemory),
        new("peak over gust pressure of a 40 m cantilever, exposure C, by random vibration",
            "Q and R of ASCE/SEI 7-22, (26.11-8) and (26.11-12), combined as 1 + 2 g I √(Q² + (1.7 R/2)²) on the mean pressure at 0.6 h",
            AsceByHand(), "-", 0.05, () => american.Response.StructuralFactor, ValueKind.IndependentComputation),
    ];

    private static PublishedValue[] Compared(string what, Blown tower, double toB = 0.045, double toC = 0.025) =>
[
    new($"c_s c_d of a uniform cantilever by random vibration, {what}", "EN 1991-1-4:2005, Annex B, fed with the same frequency and damping", tower.En.AnnexB.Factor, "-", toB, () => tower.Response.StructuralFactor, ValueKind.IndependentComputation),
        new($"c_s c_d of a uniform cantilever by random vibration, {what}", "EN 1991-1-4:2005, Annex C, fed with the same frequency and damping", tower.En.AnnexC.Factor, "-", toC, () => tower.Response.StructuralFactor, ValueKind.IndependentComputation),
    ];

    // (B.10) takes R of either annex; the two differ by a fifth, and the truth lies between.
    private static PublishedValue Acceleration(string annex, double tolerance, Func<En1991StatueGust, En1991StructuralFactor> factor) => new(
        "peak acceleration of a 40 m cantilever in terrain II, by random vibration", $"EN 1991-1-4:2005, (B.10) and B.4(4) with R of {annex}, fed with the same frequency, mass and damping",
        factor(slender.En).PeakAcceleration(1, slender.En.Width, slender.En.EquivalentMass).MetersPerSecondSquared, "m/s²", tolerance,
        () => slender.Response.Of("tip").Acceleration.Peak.MetersPerSecondSquared, ValueKind.IndependentComputation);

    private static double DecrementByHand()
    {
        double m = slender.Model.Masses.Total.Kilograms / 40, n = slender.Modes.First.Frequency.Hertz;
        return 1.0 * 1.25 * 4 * Wind().MeanSpeed(24.Meters).MetersPerSecond / (2 * n * m);
    }

    private static double AsceByHand()
    {
        Asce7GustFactor f = american.Asce.Flexible;
        double swing = 2 * american.Response.Overturning.PeakFactor * f.TurbulenceIntensity * double.Hypot(f.BackgroundResponse, 0.85 * f.ResonantResponse);
        double gust = asce.GustSpeed(24.Meters) / asce.MeanSpeed(24.Meters);
        return (1 + swing) / (gust * gust);
    }

    [Fact]
    public void A_factor_makes_a_wind_action()
    {
        var wind = slender.Wind with { GustEffectFactor = slender.En.Factor };
        Response response = slender.Model.Respond(new Situation { Name = "wind", Actions = [wind] });
        Response plain = slender.Model.Respond(new Situation { Name = "wind", Actions = [slender.Wind] });
        Assert.Equal(slender.En.Factor, response.Cases[0].Base.Shear.Newtons / plain.Cases[0].Base.Shear.Newtons, 9);
    }

    [Fact]
    public void What_is_fed_is_the_statue()
    {
        En1991StatueGust en = slender.En;
        Assert.Equal(1, en.Mode);
        Assert.Equal(40, en.Height.Meters, 9);
        Assert.Equal(4, en.Width.Meters, 2);
        Assert.Equal(24, en.ReferenceHeight.Meters, 9);
        Assert.Equal(slender.Modes.First.Frequency.Hertz, en.Frequency.Hertz, 6);
        Assert.Equal(
            En1991StructuralFactor.AnnexB(Wind(), en.Height, en.Width, en.ReferenceHeight, en.Frequency, en.LogDecrement, en.ModeExponent), en.AnnexB);
    }

    [Fact]
    public void Asce_takes_the_rigid_factor_from_one_hertz_on()
    {
        Asce7StatueGust soft = american.Asce, stiff = new Blown(40, 4, 1.5, 2000, asce).Asce;
        Assert.True(soft.IsFlexible);
        Assert.Equal(soft.Flexible.Factor, soft.Factor);
        Assert.False(stiff.IsFlexible);
        Assert.Equal(Asce7GustFactor.Rigid(asce, stiff.Height, stiff.Width).Factor, stiff.Factor);
        Assert.Equal(4, soft.Depth.Meters, 2);
        Assert.Equal(Asce7GustFactor.Flexible(asce, soft.Height, soft.Width, soft.Depth, soft.Frequency, soft.DampingRatio), soft.Flexible);
    }

    [Fact]
    public void A_standard_is_not_available_for_the_winds_of_the_other()
    {
        Blown en = slender, us = american;
        Assert.Null(GustFactors.Asce7(en.Model, en.Modes, en.Wind, 0.Degrees));
        Assert.Null(GustFactors.En1991(us.Model, us.Modes, us.Wind, 0.Degrees));
    }

    [Fact]
    public void A_users_wind_takes_the_annexes_and_says_so()
    {
        var log = new LogLawWind { SpeedIs = WindSpeedBasis.MeanSpeed, ReferenceSpeed = 26.MetersPerSecond, ReferenceHeight = 10.Meters, RoughnessLength = 0.05.Meters };
        Blown user = new(40, 4, 0.8, 2000, log), same = slender;
        // k_r ln(10/z₀) of terrain II is 1.0066.
        Assert.Equal(same.En.Factor, user.En.Factor, 2);
        Assert.Contains(user.En.Assumptions, a => a.Subject.Contains("not of EN 1991-1-4", StringComparison.Ordinal));
    }

    [Fact]
    public void Damping_that_is_not_given_is_listed()
    {
        Assert.Contains(GustFactors.En1991(slender.Model, slender.Modes, slender.Wind, 0.Degrees)!.Assumptions, a => a.Subject == "structural damping");
        Assert.DoesNotContain(slender.En.Assumptions, a => a.Subject == "structural damping");
        Assert.Equal(0.02, GustFactors.En1991(slender.Model, slender.Modes, slender.Wind, 0.Degrees)!.StructuralDecrement);
    }

    [Fact]
    public void Dampers_count_as_structure_does()
    {
        DampingModel damped = new() { StructuralDecrement = 0.02, Dampers = [new TunedDamper { Decrement = 0.03 }] };
        En1991StatueGust en = GustFactors.En1991(slender.Model, slender.Modes, slender.Wind, 0.Degrees, damped)!;
        Asce7StatueGust us = GustFactors.Asce7(american.Model, american.Modes, american.Wind, 0.Degrees, damped)!;
        Assert.Equal(slender.En.LogDecrement, en.LogDecrement, 12);
        Assert.Equal(american.Asce.DampingRatio, us.DampingRatio, 12);
    }

    /// <summary>A damper counts in the modes near its own frequency alone: those of one frequency together, higher ones not.</summary>
    [Fact]
    public void Dampers_count_in_the_modes_that_they_are_tuned_to()
    {
        DampingModel damped = new() { StructuralDecrement = 0.02, Dampers = [new TunedDamper { Decrement = 0.03 }] };
        double lowest = slender.Modes.First.Frequency.Hertz;
        Assert.All(GustResponse.Of(slender.Model, slender.Modes, slender.Wind, 0.Degrees, damped).Modes, mode =>
            Assert.Equal(DampingModel.RatioOf(mode.Frequency.Hertz < 1.1 * lowest ? 0.05 : 0.02), mode.StructuralRatio, 12));
        DampingModel higher = damped with { Dampers = [new TunedDamper { Decrement = 0.03, Frequency = slender.Modes.Modes[^1].Frequency }] };
        Assert.Equal(0.02, GustFactors.En1991(slender.Model, slender.Modes, slender.Wind, 0.Degrees, higher)!.StructuralDecrement);
        GustResponse gusts = GustResponse.Of(slender.Model, slender.Modes, slender.Wind, 0.Degrees, higher);
        Assert.Equal(DampingModel.RatioOf(0.02), gusts.Modes[0].StructuralRatio, 12);
        Assert.Equal(DampingModel.RatioOf(0.05), gusts.Modes[^1].StructuralRatio, 12);
    }

    [Fact]
    public void Bad_damping_is_refused()
    {
        var e = Assert.Throws<InvalidStatueException>(() => GustFactors.En1991(slender.Model, slender.Modes, slender.Wind, 0.Degrees, DampingModel.OfRatio(0)));
        Assert.Equal("Damping.StructuralDecrement", Assert.Single(e.Problems).Path);
    }
}
