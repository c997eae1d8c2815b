using CsCheck;
using StatueFrame.Analysis;
using static StatueFrame.Tests.Analysis.Gusts.GustStatues;

namespace StatueFrame.Tests.Analysis.Gusts;

public class GustResponseTests
{
    private static readonly Statue slender = Uniform(40, 4, 0.8);

    private static readonly StatueModel model = StatueModel.Build(slender);

    private static readonly ModalResponse modes = model.Modes(6);

    private static readonly GustOptions noAir = new() { AerodynamicDamping = false };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("growth of the resonant sway of a tall light tower with mean speed, exponent",
            "\"The Dynamic Characteristics and Response to Wind of Tall Free-standing Lattice Towers\", abstract, second hand: measured, approximately 2.5", 2.5, "-", 0.08, GrowthWithSpeed),
        new("background of the base shear of a one-band statue over its mean, gusts all at once", "closed form 2 I", 0.36, "-", 1e-9,
            () => FullyCorrelated(Uniform(3, 1, 5, bands: 1)), ValueKind.IndependentComputation),
    ];

    private static double GrowthWithSpeed()
    {
        Statue tower = Uniform(100, 1, 0.7, mass: 500, bands: 20);
        double slow = Resonant(15), fast = Resonant(30);
        return Math.Log(fast / slow) / Math.Log(2);

        double Resonant(double speed) => Blow(tower, Wind(speed), logDecrement: 0.03).Of("tip").Sway.Resonant.Meters;
    }

    private static TableWind Even(double intensity, double speed = 30) => new()
    {
        SpeedIs = WindSpeedBasis.MeanSpeed,
        Rows = [new WindTableRow(10.Meters, speed.MetersPerSecond) { TurbulenceIntensity = intensity }],
    };

    private static double FullyCorrelated(Statue statue)
    {
        GustResponse gusts = Blow(statue, Even(0.18), options: noAir with { DecayAcross = 0, DecayVertical = 0 }, modes: 2);
        return gusts.BaseShear.Background / gusts.BaseShear.Mean;
    }

    private static GustResponse Of(WindProfile wind, double heading = 0, double logDecrement = 0.05, GustOptions? options = null) =>
        GustResponse.Of(model, modes, Action(wind), heading.Degrees, new DampingModel { StructuralDecrement = logDecrement }, options);

    [Fact]
    public void Without_turbulence_the_peak_is_the_mean()
    {
        GustResponse still = Of(Even(0.01)), gusty = Of(Even(0.2));
        Assert.Equal(still.Overturning.Mean.NewtonMeters, gusty.Overturning.Mean.NewtonMeters, 3);
        Assert.InRange(still.GustFactor, 1, 1.12);
        // Deviations are in proportion to the turbulence, so they vanish with it.
        Assert.Equal(20, gusty.Overturning.Deviation / still.Overturning.Deviation, 9);
        Assert.Equal(20, gusty.Of("tip").Acceleration.Deviation / still.Of("tip").Acceleration.Deviation, 9);
    }

    [Fact]
    public void Responses_scale_with_the_force_coefficient()
    {
        WindAction wind = Action(Wind());
        DampingModel damping = DampingModel.OfRatio(0.01);
        GustResponse one = GustResponse.Of(model, modes, wind, 0.Degrees, damping, noAir);
        GustResponse two = GustResponse.Of(model, modes, wind with { ForceCoefficient = 2 }, 0.Degrees, damping, noAir);
        Assert.Equal(2, two.Of("tip").Sway.Peak / one.Of("tip").Sway.Peak, 9);
        Assert.Equal(2, two.BaseShear.Peak / one.BaseShear.Peak, 9);
        Assert.Equal(2, two.Rings[3].Stress.Deviation / one.Rings[3].Stress.Deviation, 9);
        Assert.Equal(one.StructuralFactor, two.StructuralFactor, 9);
    }

    [Fact]
    public void More_damping_is_never_more_resonant() =>
        Gen.Select(Gen.Double[0.005, 0.2], Gen.Double[1.05, 4], Gen.Double[15, 35]).Sample((delta, more, speed) =>
        {
            GustResponse light = Of(Wind(speed), 0, delta), heavy = Of(Wind(speed), 0, more * delta);
            return heavy.Overturning.Resonant < light.Overturning.Resonant
                && heavy.Of("tip").Acceleration.Deviation < light.Of("tip").Acceleration.Deviation
                && Math.Abs(heavy.Overturning.Background / light.Overturning.Background - 1) < 1e-12;
        }, iter: 12);

    [Fact]
    public void Air_damps()
    {
        GustResponse with = Of(Wind()), without = Of(Wind(), options: noAir);
        Assert.True(with.Overturning.Resonant < without.Overturning.Resonant);
        Assert.True(with.Modes[0].AerodynamicRatio > 0);
        Assert.Equal(0, without.Modes[0].AerodynamicRatio);
    }

    [Fact]
    public void Gusts_all_at_once_are_an_upper_bound() =>
        Gen.Select(Gen.Double[1, 30], Gen.Double[1, 30]).Sample((across, vertical) =>
        {
            GustResponse all = Of(Wind(), options: new GustOptions { DecayAcross = 0, DecayVertical = 0 });
            GustResponse some = Of(Wind(), options: new GustOptions { DecayAcross = across, DecayVertical = vertical });
            return some.Overturning.Background < all.Overturning.Background && some.Overturning.Resonant < all.Overturning.Resonant
                && some.BaseShear.Deviation < all.BaseShear.Deviation;
        }, iter: 8);

    [Fact]
    public void Gusts_all_at_once_fall_short_of_one_gust_only_by_their_growth_with_height() =>
        Assert.InRange(FullyCorrelated(slender), 0.99 * 0.36, 0.36);

    [Fact]
    public void A_round_statue_answers_alike_in_every_heading()
    {
        GustResponse first = Of(Wind());
        foreach (double heading in (double[])[30, 60, 150, 270])
        {
            GustResponse other = Of(Wind(), heading);
            Assert.Equal(1, other.Overturning.Peak / first.Overturning.Peak, 6);
            Assert.Equal(1, other.Of("tip").Sway.Deviation / first.Of("tip").Sway.Deviation, 6);
            Assert.Equal(1, other.Of("tip").Acceleration.Deviation / first.Of("tip").Acceleration.Deviation, 6);
            Assert.Equal(1, other.Of("tip").SwayAcross.Deviation / first.Of("tip").SwayAcross.Deviation, 6);
            Assert.Equal(1, other.BaseTwist.Deviation / first.BaseTwist.Deviation, 6);
        }
    }

    [Fact]
    public void Turning_statue_and_wind_together_changes_nothing()
    {
        GustResponse first = Blow(Uniform(30, 3, 1, limbs: Arm("L12", 90)), Wind()), turned = Blow(Uniform(30, 3, 1, limbs: Arm("L12", 150)), Wind(), 60);
        Assert.Equal(1, turned.Overturning.Deviation / first.Overturning.Deviation, 4);
        Assert.Equal(1, turned.BaseTwist.Deviation / first.BaseTwist.Deviation, 4);
        Assert.Equal(1, turned.OfPart("arm/A2").Acceleration.Deviation / first.OfPart("arm/A2").Acceleration.Deviation, 4);
    }

    [Fact]
    public void A_limb_to_one_side_twists_the_statue()
    {
        var along = new GustOptions { PointsAcross = 1, AcrossIntensity = 0 };
        GustResponse bare = Blow(Uniform(30, 3, 1), Wind(), options: along), armed = Blow(Uniform(30, 3, 1, limbs: Arm("L12", 90)), Wind(), options: along);
        // The left arm is blown along x: clockwise seen from above.
        Assert.True(armed.BaseTwist.Mean.NewtonMeters < -1e3);
        Assert.True(armed.BaseTwist.Deviation > 1e3 * bare.BaseTwist.Deviation);
        Assert.True(armed.Of("tip").Twist.Deviation > 1e3 * bare.Of("tip").Twist.Deviation);
    }

    [Fact]
    public void Static_analysis_with_the_structural_factor_reaches_the_peak_moment()
    {
        GustResponse gusts = Of(Wind());
        WindAction wind = Action(Wind()) with { GustEffectFactor = gusts.StructuralFactor, Headings = [0.Degrees] };
        Response response = model.Respond(new Situation { Name = "wind", Actions = [wind] });
        Assert.Equal(1, response.Cases[0].Base.Overturning / gusts.Overturning.Peak, 9);
    }

    [Fact]
    public void Means_are_those_of_statics()
    {
        // With peaks that are the means (no gusts), the profile's pressure is the mean pressure.
        TableWind wind = Even(0.01) with { PeakFactor = 1 };
        GustResponse gusts = Of(wind);
        LoadCase still = model.Respond(new Situation { Name = "wind", Actions = [Action(wind) with { GustEffectFactor = 1 / 1.02, Headings = [0.Degrees] }] }).Cases[0];
        Assert.Equal(1, gusts.BaseShear.Mean / still.Base.Shear, 9);
        Assert.Equal(1, gusts.Of("tip").Sway.Mean / still.Of("tip").Sway, 9);
        Assert.Equal(1, gusts.Of("middle").Sway.Mean / still.Of("middle").Sway, 9);
    }

    [Fact]
    public void Modes_left_out_act_as_in_statics()
    {
        GustResponse few = Blow(slender, Wind(), modes: 2, options: noAir), many = Blow(slender, Wind(), modes: 14, options: noAir);
        Assert.Equal(1, few.Overturning.Background / many.Overturning.Background, 9);
        Assert.Equal(1, few.Of("tip").Sway.Deviation / many.Of("tip").Sway.Deviation, 3);
        Assert.Equal(1, few.Overturning.Deviation / many.Overturning.Deviation, 2);
        Assert.Equal(1, few.BaseShear.Deviation / many.BaseShear.Deviation, 1);
    }

    [Fact]
    public void The_result_does_not_hang_on_the_grid()
    {
        GustResponse coarse = Of(Wind()), fine = Of(Wind(), options: new GustOptions { FrequencyCount = 2000 });
        GustResponse cells = Of(Wind(), options: new GustOptions { PointsAcross = 6 });
        Assert.Equal(1, fine.Overturning.Deviation / coarse.Overturning.Deviation, 0.005);
        Assert.Equal(1, fine.Of("tip").Acceleration.Deviation / coarse.Of("tip").Acceleration.Deviation, 0.005);
        Assert.Equal(1, cells.Overturning.Deviation / coarse.Overturning.Deviation, 0.02);
    }

    [Fact]
    public void Same_input_gives_the_same_bits()
    {
        GustResponse first = Of(Wind()), again = Of(Wind());
        Assert.Equal(first.Of("tip"), again.Of("tip"));
        Assert.Equal(first.Rings[5].Stress.Peak, again.Rings[5].Stress.Peak);
    }

    [Fact]
    public void Every_ring_names_its_worst_bar()
    {
        GustResponse gusts = Of(Wind());
        Assert.Equal(16, gusts.Rings.Count);
        Assert.All(gusts.Rings, bar => Assert.True(bar.Stress.Deviation.Pascals > 0 && Math.Abs(bar.Stress.Peak.Pascals) > Math.Abs(bar.Stress.Mean.Pascals)));
    }

    [Fact]
    public void What_was_taken_for_the_user_is_listed()
    {
        GustResponse gusts = GustResponse.Of(model, modes, new WindAction { Profile = Wind() }, 0.Degrees);
        string[] subjects = [.. gusts.Assumptions.Select(a => a.Subject)];
        Assert.Contains("structural damping", subjects);
        Assert.Contains("spectrum of gusts", subjects);
        Assert.Contains("force coefficient of bands that give none", subjects);
        Assert.Contains("density of air", subjects);
    }

    [Fact]
    public void Bad_input_is_refused_with_its_path()
    {
        var e = Assert.Throws<InvalidStatueException>(() => Of(Wind(), 0, 0.05, new GustOptions { DecayAcross = -1, FrequencyCount = 3 }));
        Assert.Equal(["Options.DecayAcross", "Options.FrequencyCount"], e.Problems.Select(p => p.Path));
        Assert.Throws<ArgumentException>(() => GustResponse.Of(StatueModel.Build(slender), modes, Action(Wind()), 0.Degrees));
        Assert.Throws<ArgumentException>(() => Of(Wind()).Of("tp"));
        Assert.Throws<ArgumentException>(() => Of(Wind()).OfPart("L99"));
    }
}
