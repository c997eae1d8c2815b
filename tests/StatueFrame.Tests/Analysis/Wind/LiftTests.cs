using StatueFrame.Analysis;
using StatueFrame.Tests.Validation;

namespace StatueFrame.Tests.Analysis.Winds;

/// <summary>The force on limbs that is square to the wind and to their axis.</summary>
public class LiftTests
{
    private const double Wide = 1.0, Deep = 0.4;

    private static readonly WindAction wind = SmallStatue.Wind with { Headings = [90.Degrees], ForceCoefficient = 1.2, GustEffectFactor = 1, Eccentricity = 0, LiftCoefficient = 0.8 };

    /// <summary>An arm held out along +x, wider in plan than it is deep.</summary>
    private static StatueModel Model(double inclination = 0, bool hasSkin = true)
    {
        Limb arm = SmallStatue.Arm with
        {
            Heading = 0.Degrees,
            Inclination = inclination.Degrees,
            Skin = hasSkin ? new Skin
            {
                Material = Copper.HalfHardR240,
                Thickness = 2.Millimeters,
                Stations = [SkinStation.Ellipse(2.5.Meters, Deep.Meters, Wide.Meters), SkinStation.Ellipse(4.5.Meters, Deep.Meters, Wide.Meters)],
            } : null,
            Standoffs = hasSkin ? [SmallStatue.Ring("hand", 0) with { Length = 0.1.Meters }] : [],
        };
        return StatueModel.Build(SmallStatue.Good.Statue with { Limbs = [arm] });
    }

    private static SituationDemands Demands(StatueModel model, WindAction action) =>
        SituationDemands.Of([model], new Situation { Name = "storm", Actions = [new SelfWeight(), 1.5 * action] }, DampingModel.OfRatio(0.01));

    private static (double Least, double Most) Vertical(SituationDemands demands) => Vertical(demands.OnBase());

    private static (double Least, double Most) Vertical(IEnumerable<BaseForces> onBase)
    {
        double[] all = [.. onBase.Select(state => state.Reaction.ForceZ.Newtons)];
        return (all.Min(), all.Max());
    }

    [Fact]
    public void An_arm_held_out_is_lifted_and_pressed_down_by_a_known_force()
    {
        StatueModel model = Model();
        // At the top of the arm: its axis is 3 m up.
        double q = wind.Profile.PeakPressure((model.Statue.BaseAboveGround.Meters + 3 + 0.5 * Deep).Meters).Pascals;
        (double least, double most) = Vertical(Demands(model, wind));
        (double still, _) = Vertical(Demands(model, wind with { LiftCoefficient = 0 }));
        double expected = 1.5 * 0.8 * q * Wide * 2;
        Assert.Equal(expected, most - still, 0.01 * expected);
        Assert.Equal(-expected, least - still, 0.01 * expected);

        (double tippingLeast, double tippingMost) = Vertical(Demands(model, wind).OnBaseInEquilibrium());
        Assert.Equal(2 * expected, tippingMost - tippingLeast, 0.02 * expected);
    }

    [Fact]
    public void A_wind_along_the_limb_has_none()
    {
        StatueModel model = Model();
        (double least, double most) = Vertical(Demands(model, wind with { Headings = [0.Degrees] }));
        Assert.Equal(least, most, 1e-6 * Math.Abs(most));
        (least, most) = Vertical(Demands(Model(hasSkin: false), wind));
        Assert.Equal(least, most, 1e-6 * Math.Abs(most));
    }

    [Fact]
    public void An_upright_limb_is_pushed_sideways_both_ways()
    {
        double[] sideways = [.. Demands(Model(90), wind).OnBase().Select(state => state.Reaction.ForceX.Newtons)];
        Assert.True(sideways.Max() > 100);
        Assert.Equal(sideways.Max(), -sideways.Min(), 1e-6 * sideways.Max());
    }

    [Fact]
    public void What_nobody_gave_is_an_assumption()
    {
        Assert.Contains((wind with { LiftCoefficient = null }).Assumptions(true, true), a => a.Subject == "lift on limbs");
        Assert.DoesNotContain((wind with { LiftCoefficient = null }).Assumptions(true, false), a => a.Subject == "lift on limbs");
        Assert.DoesNotContain(wind.Assumptions(true, true), a => a.Subject == "lift on limbs");
    }
}
