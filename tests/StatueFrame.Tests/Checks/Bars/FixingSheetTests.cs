using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Validation;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Bars;

/// <summary>What the sheet says of standoffs whose fixings, saddles and clearances are described.</summary>
public class FixingSheetTests
{
    private static readonly BoltedFixing bolts = new()
    {
        Bolt = new Bolt { Diameter = 12.Millimeters, Grade = BoltGrade.Stainless80 },
        Rows = 2,
        Pitch = 40.Millimeters,
        EndDistance = 25.Millimeters,
    };

    private static readonly Standoff whole = SmallStatue.Flat with
    {
        TowerFixing = new WeldedFixing { Throat = 4.Millimeters, CorrelationFactor = 0.9 },
        SkinFixing = bolts,
        Saddle = new Saddle { Clamp = 40.Kilonewtons, Friction = 0.3 },
        Clearance = 150.Millimeters,
    };

    private static SmallStatue With(Standoff standoff) => SmallStatue.Good.With(s => s with
    {
        Standoffs = [.. s.Standoffs.Cast<EvenRing>().Select(r => r with { Standoff = standoff })],
        Limbs = [.. s.Limbs.Select(l => l with { Standoffs = [.. l.Standoffs.Cast<EvenRing>().Select(r => r with { Standoff = standoff })] })],
    });

    private static Check[] Of(CheckSheet sheet, string id) => [.. sheet.Checks.Where(c => c.Id == id)];

    [Fact]
    public void Every_ring_has_its_lines()
    {
        CheckSheet sheet = With(whole).Check();
        foreach (string id in new[] { "bars.bolts", "bars.bearing", "bars.tear-out", "bars.net-section", "bars.welds", "bars.saddle-slip" })
        {
            Check[] found = Of(sheet, id);
            Assert.Equal(3, found.Length);
            Assert.All(found, c => Assert.NotEqual(Verdict.NotChecked, c.Verdict));
            Assert.All(found, c => Assert.Equal("storm", c.Situation));
        }
        Assert.Equal(6, Of(sheet, "bars.clearance").Length);
        Assert.Empty(Of(sheet, "bars.fixings"));
    }

    [Fact]
    public void The_state_that_is_worst_for_the_check_is_listed()
    {
        SmallStatue statue = With(whole);
        StatueModel model = StatueModel.Build(statue.Statue);
        Response storm = model.Respond(SmallStatue.Storm);
        double bolt = 0, weld = 0;
        Span<double> forces = stackalloc double[12];
        foreach ((RingElement ring, int band) in model.Rings)
        {
            foreach (BarModel bar in ring.Bars)
            {
                foreach (LoadCase heading in storm.Cases)
                {
                    foreach (SkinAssumption skin in SkinBounds.All)
                    {
                        if (!heading.ForcesOf(ring, bar, band, skin, forces))
                            continue;
                        var ends = new BarForces(BarEnds.Of(forces));
                        LoadedBar loaded = LoadedBars.Steel() with
                        {
                            Section = whole.Section,
                            Material = whole.Material,
                            AtTower = BarSectionForces.AtTower(ends),
                            AtSkin = BarSectionForces.AtSkin(ends),
                        };
                        bolt = Math.Max(bolt, FixingChecks.Bolts(loaded, bolts, BarDesign.For(whole.Material), atSkin: true).Utilization!.Value);
                        weld = Math.Max(weld, WeldChecks.Fillets(loaded, (WeldedFixing)whole.TowerFixing!, BarDesign.For(whole.Material)).Utilization!.Value);
                    }
                }
            }
        }
        CheckSheet sheet = statue.Check();
        // Local suction and weights at their own value are states too.
        Assert.InRange(Of(sheet, "bars.bolts").Max(c => c.Utilization!.Value), bolt * (1 - 1e-9), 4 * bolt);
        Assert.InRange(Of(sheet, "bars.welds").Max(c => c.Utilization!.Value), weld * (1 - 1e-9), 4 * weld);
    }

    [Fact]
    public void A_weak_part_fails_in_its_own_line_alone()
    {
        Assert.All(Of(With(whole with { Saddle = whole.Saddle! with { Clamp = 10.Newtons } }).Check(), "bars.saddle-slip"), c => Assert.Equal(Verdict.Fail, c.Verdict));
        Assert.All(Of(With(whole with { Clearance = 0.01.Millimeters }).Check(), "bars.clearance"), c => Assert.Equal(Verdict.Fail, c.Verdict));
        CheckSheet torn = With(whole with { SkinFixing = bolts with { EndDistance = 10.Millimeters } }).Check();
        Assert.True(Of(torn, "bars.tear-out").Max(c => c.Utilization) > 1.5 * Of(With(whole).Check(), "bars.tear-out").Max(c => c.Utilization));
        CheckSheet small = With(whole with { SkinFixing = bolts with { Bolt = new Bolt { Diameter = 4.Millimeters, Grade = BoltGrade.Class46 } } }).Check();
        Assert.True(Of(small, "bars.bolts").Max(c => c.Utilization) > Of(With(whole).Check(), "bars.bolts").Max(c => c.Utilization));
        Assert.Equal(Of(small, "bars.welds").Max(c => c.Utilization), Of(With(whole).Check(), "bars.welds").Max(c => c.Utilization));
    }

    [Fact]
    public void What_is_not_described_is_named()
    {
        CheckSheet bare = With(SmallStatue.Flat).Check();
        Assert.Equal(2, Of(bare, "bars.fixings").Length);
        Assert.Contains(Of(bare, "bars.fixings"), c => c.Reason.Contains("Standoff.TowerFixing", StringComparison.Ordinal));
        Assert.Contains("Standoff.Saddle", Assert.Single(Of(bare, "bars.saddle-slip")).Reason);
        Assert.All(Of(bare, "bars.clearance"), c => Assert.Contains("Standoff.Clearance", c.Reason));
        Assert.DoesNotContain(bare.Checks, c => c.Family == "bars" && c.Reason.Contains("not part of this sheet", StringComparison.Ordinal));
    }

    [Fact]
    public void A_saddle_that_is_meant_to_slide_needs_not_hold()
    {
        Assert.Empty(Of(With(whole with { Slide = SaddleSlide.AlongBar }).Check(), "bars.saddle-slip"));
    }

    [Fact]
    public void Problems_are_found_with_paths()
    {
        Standoff bad = whole with { SkinFixing = bolts with { Pitch = 1.Millimeters }, Saddle = new Saddle { Clamp = 1.Kilonewtons, Friction = 3 }, Clearance = (-1).Millimeters };
        string[] paths = [.. With(bad).Statue.FindProblems().Select(p => p.Path)];
        Assert.Contains("Standoffs[0].Standoff.SkinFixing.Pitch", paths);
        Assert.Contains("Standoffs[0].Standoff.Saddle.Friction", paths);
        Assert.Contains("Standoffs[0].Standoff.Clearance", paths);
    }
}
