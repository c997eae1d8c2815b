using StatueFrame.Analysis;
using StatueFrame.Studies;
using UnitsNet;

namespace StatueFrame.Tests.Studies;

public class GustSwayDynamicsTests
{
    private static readonly StatueModel model = Figures.Model;

    private static readonly ModalResponse modes = model.Modes(4);

    private static readonly DampingModel damping = DampingModel.OfRatio(0.006);

    private static readonly GustOptions quick = new() { FrequencyCount = 60, PointsAcross = 1, PointsAlong = 1, AcrossIntensity = 0 };

    private static readonly SwayCurve curve = Curve(0, new GustSwayDynamics(model, modes, damping, quick));

    private static SwayCurve Curve(double heading, ISwayDynamics? dynamics, params AccelerationLimit[] limits) => SwayCurve.Of(model, Figures.Wind, new SwayCurveOptions
    {
        AnemometerHeight = 10.Meters,
        Heading = heading.Degrees,
        MeanSpeeds = [0.MetersPerSecond, 15.MetersPerSecond, 25.MetersPerSecond],
        AccelerationLimits = [.. limits],
        Dynamics = dynamics,
    });

    private static GustResponse Gusts(SwayCurveRow row, double heading) => GustResponse.Of(
        model, modes, Figures.Wind with { Profile = Figures.Wind.Profile.AtSpeed(row.MeanSpeed / curve.DesignMeanSpeed) }, heading.Degrees, damping, quick);

    private static double Together(Acceleration along, Acceleration across) =>
        Math.Sqrt(Math.Pow(along.MetersPerSecondSquared, 2) + Math.Pow(across.MetersPerSecondSquared, 2));

    private static void AssertRelative(double expected, double actual, double tolerance = 1e-9) =>
        Assert.True(Math.Abs(actual - expected) <= tolerance * Math.Abs(expected), $"expected {expected:R}, found {actual:R}");

    [Fact]
    public void Every_line_has_the_accelerations_of_the_gust_response()
    {
        foreach (SwayCurveRow row in (SwayCurveRow[])[.. curve.Rows.Skip(1), curve.At(curve.DesignMeanSpeed)])
        {
            GustResponse gusts = Gusts(row, 0);
            foreach (string point in (string[])["tip", "belt"])
            {
                GustMovement of = gusts.Of(point);
                AssertRelative(Together(of.Acceleration.Peak, of.AccelerationAcross.Peak), row.At(point).Acceleration!.Peak.MetersPerSecondSquared);
                AssertRelative(Together(of.Acceleration.Deviation, of.AccelerationAcross.Deviation), row.At(point).Acceleration!.Rms.MetersPerSecondSquared);
                // But for the bars, which start at 5°, the figure is symmetric about this wind.
                AssertRelative(of.Acceleration.Peak.MetersPerSecondSquared, row.At(point).Acceleration!.Peak.MetersPerSecondSquared, 1e-3);
            }
        }
    }

    [Fact]
    public void Every_line_has_the_structural_factor_of_its_own_speed()
    {
        foreach (SwayCurveRow row in curve.Rows.Skip(1))
        {
            WindAction wind = Figures.Wind with { GustEffectFactor = Gusts(row, 0).StructuralFactor, Headings = [0.Degrees] };
            Response response = Figures.At(model, wind, row.MeanSpeed / curve.DesignMeanSpeed);
            AssertRelative(response.GreatestSway("tip").Sway.Meters, row.At("tip").Gust.Meters);
        }
        Assert.NotEqual(Gusts(curve.Rows[1], 0).StructuralFactor, Gusts(curve.Rows[2], 0).StructuralFactor, 1e-3);
    }

    [Fact]
    public void A_slanting_wind_shakes_across_too()
    {
        SwayCurveRow row = Curve(30, new GustSwayDynamics(model, modes, damping, quick)).Rows[^1];
        GustMovement tip = Gusts(row, 30).Of("tip");
        double across = tip.AccelerationAcross.Deviation / tip.Acceleration.Deviation;
        Assert.True(across > 0.05, $"{across}");
        AssertRelative(Math.Sqrt(1 + across * across) * tip.Acceleration.Deviation.MetersPerSecondSquared, row.At("tip").Acceleration!.Rms.MetersPerSecondSquared);
    }

    [Fact]
    public void A_limit_of_acceleration_is_met_at_its_speed()
    {
        Acceleration limit = 0.4 * curve.Rows[^1].At("tip").Acceleration!.Peak;
        SwayCurve limited = Curve(0, new GustSwayDynamics(model, modes, damping, quick), new AccelerationLimit("tip", limit));
        SpeedAtLimit met = limited.Limits[^1];
        Assert.Equal(LimitReach.Reached, met.Reach);
        GustMovement tip = Gusts(limited.At(met.MeanSpeed!.Value), 0).Of("tip");
        AssertRelative(limit.MetersPerSecondSquared, Together(tip.Acceleration.Peak, tip.AccelerationAcross.Peak));
    }

    [Fact]
    public void What_the_method_takes_for_the_user_is_listed()
    {
        SwayCurve assumed = Curve(0, new GustSwayDynamics(model, modes));
        Assert.Contains(assumed.Assumptions, a => a.Subject == "structural damping" && a.Value.Contains("0.02", StringComparison.Ordinal));
        Assert.Contains(assumed.Assumptions, a => a.Subject == "spectrum of gusts");
        Assert.DoesNotContain(curve.Assumptions, a => a.Subject == "structural damping");
        Assert.Equal(assumed.Assumptions.Distinct(), assumed.Assumptions);
        Assert.Contains("4 modes from", curve.Print(), StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_input_is_refused_before_any_wind()
    {
        Assert.Throws<ArgumentException>(() => new GustSwayDynamics(StatueModel.Build(Figures.Leaning), modes));
        var e = Assert.Throws<InvalidStatueException>(() => new GustSwayDynamics(model, modes, DampingModel.OfRatio(0), new GustOptions { FrequencyCount = 3 }));
        Assert.Equal(["Damping.StructuralDecrement", "Options.FrequencyCount"], e.Problems.Select(p => p.Path));
    }
}
