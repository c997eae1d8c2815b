using StatueFrame.Checks;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Heron;

public class HeronIsolationTests
{
    /// <summary>A sharp wave: long against thick bars, short against those the Heron has.</summary>
    private static readonly PressurePulse wave = new()
    {
        Name = "wave",
        Shape = new TrianglePulse(),
        Peak = 24.Kilopascals,
        Duration = 0.005.Seconds,
        Heading = 0.Degrees,
        WaveSpeed = 340.MetersPerSecond,
    };

    [Fact]
    public void A_blow_that_lifts_the_heron_on_rigid_links_leaves_it_standing_on_its_bars()
    {
        Statue heron = StatueFile.Load(Path.Combine(Repository.Root, "docs", "examples", "saltmere-heron.json")).Statue;
        IsolationStudy study = IsolationStudy.Of(heron, wave, new IsolationOptions
        {
            Variants = [IsolationVariant.RigidLinks, IsolationVariant.Thickness(55.Millimeters), IsolationVariant.AsIs],
            Damping = DampingModel.OfRatio(0.02),
            Limits = new ShockLimits { BaseWidth = 2.8.Meters, Clearance = 120.Millimeters, HoldDown = 700.Kilonewtons },
        });
        Assert.True(study.Rows[0].Lifts);
        Assert.False(study.Rows[2].Lifts);
        // The thicker the bars, the more of the blow they pass on; how far the base is turned depends on the slender tower's own sway too.
        Assert.True(study.Rows[2].Response.BarForce.Value < 0.5 * study.Rows[1].Response.BarForce.Value);
        Assert.True(study.Rows[2].Response.MostMovedBar!.Movement.Value > study.Rows[1].Response.MostMovedBar!.Movement.Value);
    }
}
