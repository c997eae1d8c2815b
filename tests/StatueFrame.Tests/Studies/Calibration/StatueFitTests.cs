using StatueFrame.Analysis;
using StatueFrame.Studies;
using StatueFrame.Tests.Actions;
using UnitsNet;

namespace StatueFrame.Tests.Studies.Calibration;

public class StatueFitTests
{
    private static readonly Situation breeze = new() { Name = "breeze", LimitState = LimitState.Service, Actions = [Stages.Wind(0)] };
    private static readonly StatueAdjustment tower = StatueAdjustment.TowerStiffness(), mass = StatueAdjustment.SkinMass();
    private static readonly StatueAdjustment rocking = StatueAdjustment.BaseRocking(
        RotationalStiffness.FromNewtonMetersPerRadian(3e8), RotationalStiffness.FromNewtonMetersPerRadian(1e6), RotationalStiffness.FromNewtonMetersPerRadian(1e12));
    private static readonly Statue truth = StatueFit.Adjusted(Stages.Statue, [tower, rocking, mass], [0.8, 1.2e8, 1.25]);

    /// <summary>Measures the true statue with an error of a percent, drawn by a seed.</summary>
    private static SiteMeasurement[] Site(ulong seed, double noise = 0.01)
    {
        var model = StatueModel.Build(truth);
        int drawn = 0;
        double Noisy(double value) => value * (1 + noise * Uncertain.Normal("", 0, 1).Quantile(RandomStream.Uniform(seed, drawn++, 0)));
        IReadOnlyList<ModeResult> modes = model.Modes(6).Modes;
        Response response = model.Respond(breeze);
        double tip = response.GreatestSway("tip").Sway.Meters, shoulder = response.GreatestSway("shoulder").Sway.Meters;
        BarResult bar = response.Bars[3];
        double strain = bar.Stress / bar.Standoff.Material.YoungsModulus;
        return
        [
            .. modes.Take(4).Select(m => SiteMeasurement.ModeFrequency(m.Number, Frequency.FromHertz(Noisy(m.Frequency.Hertz)), 0.01 * m.Frequency)),
            SiteMeasurement.Sway("tip", breeze, Length.FromMeters(Noisy(tip)), Length.FromMeters(0.01 * tip)),
            SiteMeasurement.Sway("shoulder", breeze, Length.FromMeters(Noisy(shoulder)), Length.FromMeters(0.01 * shoulder)),
            SiteMeasurement.BarStrain(bar.Band, bar.Number, breeze, Noisy(strain), 0.01 * strain),
        ];
    }

    [Fact]
    public void Known_numbers_are_found_again_from_noisy_measurements()
    {
        CalibrationResult exact = StatueFit.Of(Stages.Statue, [tower, rocking, mass], Site(1, 0));
        Assert.True(exact.Converged);
        Assert.Equal(1, exact.Values[0].Value / 0.8, 1e-4);
        Assert.Equal(1, exact.Values[1].Value / 1.2e8, 1e-4);
        Assert.Equal(1, exact.Values[2].Value / 1.25, 1e-4);
        CalibrationResult noisy = StatueFit.Of(Stages.Statue, [tower, rocking, mass], Site(2));
        // Within twice the 95 % interval: one seed, three numbers.
        foreach ((AdjustedValue found, double true_) in noisy.Values.Zip([0.8, 1.2e8, 1.25]))
            Assert.InRange(Math.Log(true_ / found.Value) / Math.Log(found.High / found.Value), -2, 2);
        Assert.InRange(noisy.ChiSquare, 0, 20);
    }

    [Fact]
    public void What_one_sway_cannot_tell_apart_is_named()
    {
        CalibrationResult fit = StatueFit.Of(Stages.Statue, [tower, rocking, mass], [Site(1, 0)[4]]);
        Assert.True(fit.CannotTell.Count >= 2);
        Assert.Contains(fit.CannotTell, c => c.Contains("skin mass"));
        Assert.Contains("cannot tell", fit.ToString());
    }

    [Fact]
    public void A_mode_is_known_by_its_shape()
    {
        var model = StatueModel.Build(truth);
        ModalResponse modes = model.Modes(12);
        string[] places = ["L2", "L3", "top", "band 4"];
        for (int mode = 0; mode < 3; mode++)
        {
            (string, double, double)[] shape = [.. places.Select(p => { double[] m = Moved(mode, p); return (p, -7 * m[0], -7 * m[1]); })];
            double[] found = SiteMeasurement.Mode("it", 1.Hertz, 0.1.Hertz, shape, 0.1).In(model);
            Assert.Equal(modes.Modes[mode].Frequency.Hertz, found[0]);
            // The scale is met too, whatever it was.
            Assert.All(found.Skip(1).Zip(shape.SelectMany(s => new[] { s.Item2, s.Item3 })), pair => Assert.Equal(pair.Second, pair.First, 1e-9));
        }
        Assert.Throws<ArgumentException>(() => SiteMeasurement.Mode("it", 1.Hertz, 0.1.Hertz, [("L2", 1, 0)], 0.1));

        double[] Moved(int mode, string place)
        {
            var moved = model.Motion(modes.Set.Shape(mode), model.PlaceOf(place), model.PlaceOf(place).Center).Displacement;
            return [moved.X, moved.Y];
        }
    }

    [Fact]
    public void Entangled_pairs_are_named()
    {
        // Two numbers that matter almost only by their product.
        Adjustable[] both = [new("a", 1, 0.1, 10), new("b", 1, 0.1, 10)];
        CalibrationResult fit = ModelFit.Of(both, [new("product", 2, 0.002), new("a alone", 1.5, 0.5)], p => [p[0] * p[1], p[0]]);
        Assert.Contains("a and b", Assert.Single(fit.Entangled));
        Assert.Empty(ModelFit.Of(both, [new("a", 2, 0.1), new("b", 1.5, 0.1)], p => [p[0], p[1]]).Entangled);
    }
}
