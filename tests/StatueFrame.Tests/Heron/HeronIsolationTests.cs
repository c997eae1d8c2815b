using StatueFrame.Checks;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Heron;

public class HeronIsolationTests
{
    /// <summary>A sharp wave.</summary>
    private static readonly PressurePulse wave = new()
    {
        Name = "wave",
        Shape = new TrianglePulse(),
        Peak = 24.Kilopascals,
        Duration = 0.005.Seconds,
        Heading = 0.Degrees,
        WaveSpeed = 340.MetersPerSecond,
    };

    /// <summary>
    /// The bars pass on less than half of what rigid links do, and the thinner the less; yet the base is turned by the impulse
    /// as a whole, which the slender tower feels long after thick bars or thin ones have given way.
    /// </summary>
    [Fact]
    public void Bars_halve_the_blow_and_leave_its_impulse_to_the_tower()
    {
        Statue heron = SaltmereHeron.Document.Statue;
        IsolationStudy study = IsolationStudy.Of(heron, wave, new IsolationOptions
        {
            Variants = [IsolationVariant.RigidLinks, IsolationVariant.Thickness(55.Millimeters), IsolationVariant.AsIs],
            Damping = DampingModel.OfRatio(0.02),
            Limits = new ShockLimits { BaseWidth = 2.8.Meters, Clearance = 120.Millimeters, HoldDown = 700.Kilonewtons },
        });
        double[] passed = [.. study.Rows.Select(row => row.Response.BarForce.Value.Newtons)];
        Assert.True(passed[2] < 0.5 * passed[0] && passed[2] < 0.7 * passed[1] && passed[1] < passed[0]);
        Assert.True(study.Rows[2].Response.MostMovedBar!.Movement.Value > study.Rows[1].Response.MostMovedBar!.Movement.Value);
        double[] turned = [.. study.Rows.Select(row => row.Response.Overturning.Value.NewtonMeters)];
        Assert.InRange(turned[2] / turned[1], 1 / 1.15, 1.15);
        Assert.True(turned[0] > 0.8 * turned[2]);
        Assert.All(study.Rows.Skip(1), row => Assert.False(row.Lifts));
    }
}
