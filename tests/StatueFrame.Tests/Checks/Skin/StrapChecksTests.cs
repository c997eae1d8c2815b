using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Sheets;

/// <summary>The straps that hold the sheet to the bars of its armature.</summary>
public class StrapChecksTests
{
    private static readonly SaddleStrap strap = new()
    {
        Distance = 0.25.Meters,
        Width = 40.Millimeters,
        Thickness = 2.Millimeters,
        Material = Copper.HalfHardR240,
        Rivet = Rivet.Of(4.Millimeters, Copper.HalfHardR240),
        Reach = 15.Millimeters,
    };

    private static Skin With(SaddleStrap? own)
    {
        Skin skin = SmallWhole.Of().Statue.Skin!;
        return skin with { Armature = skin.Armature! with { Straps = own } };
    }

    private static CheckSheet Sheet(SaddleStrap? own)
    {
        SmallStatue whole = SmallWhole.Of();
        return (whole.Statue with { Skin = With(own), Limbs = [], Points = [.. whole.Statue.Points.Where(point => !point.On.Contains('/'))] }).Check(whole.Criteria, whole.Situations);
    }

    private static double Use(SaddleStrap own, string id) => Sheet(own).Checks.Where(check => check.Id == id).Max(check => check.Utilization)!.Value;

    /// <summary>By hand: F = 2 kPa · 0.4 m · 0.25 m = 200 N, M = 100 N · 15 mm, W = 36 · 2²/6 mm³ beside a hole of 4 mm, and 100 N on 72 mm².</summary>
    [Fact]
    public void A_strap_bends_as_by_hand()
    {
        Check bending = StrapChecks.All(With(strap), 2.5.Millimeters, 2.Kilopascals, SkinRules(), 1, "band 1", "").Single(check => check.Id == "straps.bending");
        Assert.Equal(1.5 / (0.036 * 0.002 * 0.002 / 6) + 100 / 72e-6, bending.Demand!.Value, 1);
        Check pull = StrapChecks.All(With(strap), 2.5.Millimeters, 2.Kilopascals, SkinRules(), 1, "band 1", "").Single(check => check.Id == "straps.pull-off");
        // The end, 1.5 · 4 mm beyond the rivets, holds 100 N · 15 mm and so pulls by 250 N more.
        Assert.Equal(100 + 250, pull.Demand!.Value, 1e-9);
        Assert.Contains(pull.Id, Sheet(strap).Checks.Where(check => check.AssumedInputs.Any(input => input.Contains("ends of straps", StringComparison.Ordinal))).Select(check => check.Id));
        Check shear = StrapChecks.All(With(strap), 2.5.Millimeters, 2.Kilopascals, SkinRules(), 1, "band 1", "").Single(check => check.Id == "straps.shear");
        Assert.Equal(Copper.HalfHardR240.Density.KilogramsPerCubicMeter * 9.80665 * 0.0025 * 0.4 * 0.25 / 2, shear.Demand!.Value, 1e-9);
    }

    /// <summary>Two rivets of one side stand at a quarter and three quarters of the width: 1.2 d₀ to the edges, 2.2 d₀ between (EN 1993-1-8, Table 3.3).</summary>
    [Fact]
    public void Rivets_need_room_across_a_strap()
    {
        Assert.Equal(1.2 * 4 / 20, StrapChecks.Distances(strap, "trunk").Demand!.Value, 1e-9);
        Assert.Equal(1.2 * 9 / 10, StrapChecks.Distances(strap with { Rivets = 4, Rivet = Rivet.Of(9.Millimeters, Copper.HalfHardR240) }, "trunk").Demand!.Value, 1e-9);
        Assert.Equal(Verdict.Fail, StrapChecks.Distances(strap with { Rivet = Rivet.Of(20.Millimeters, Copper.HalfHardR240) }, "trunk").Verdict);
    }

    /// <summary>The further the end of a strap is from its rivets, the less it pries, but no less than at 1.25 of their lever.</summary>
    [Fact]
    public void The_end_of_a_strap_pries()
    {
        double Pull(double end) => StrapChecks.All(With(strap with { EndDistance = end.Millimeters }), 2.5.Millimeters, 2.Kilopascals, SkinRules(), 1, "band 1", "").Single(check => check.Id == "straps.pull-off").Demand!.Value;
        Assert.Equal(200, Pull(15), 1e-9);
        Assert.Equal(180, Pull(18.75), 1e-9);
        Assert.Equal(180, Pull(60), 1e-9);
        Assert.Equal(1.2 * 4 / 5, StrapChecks.Distances(strap with { EndDistance = 5.Millimeters }, "trunk").Demand!.Value, 1e-9);
        Assert.DoesNotContain(Sheet(strap with { EndDistance = 15.Millimeters }).Checks, check => check.AssumedInputs.Any(input => input.Contains("ends of straps", StringComparison.Ordinal)));
    }

    /// <summary>A rivet has its heads and holes in sheet and strap: the weaker counts.</summary>
    [Theory]
    [InlineData("straps.pull-off")]
    [InlineData("straps.bearing")]
    public void The_weaker_of_sheet_and_strap_counts(string id)
    {
        double Use(double sheet, double own) => StrapChecks.All(With(strap with { Thickness = own.Millimeters }), sheet.Millimeters, 2.Kilopascals, SkinRules(), 1, "band 1", "").Single(check => check.Id == id).Utilization!.Value;
        Assert.Equal(2 * Use(0.8, 0.8), Use(0.8, 0.4), 1e-9);
        Assert.Equal(id == "straps.bearing" ? Use(0.8, 0.8) : 2 * Use(0.8, 0.8), Use(0.4, 0.8), 1e-9);
    }

    private static BarDesign SkinRules() => SkinSheet.SeamDesign(With(strap), new Criteria());

    [Fact]
    public void Straps_close_their_link()
    {
        LinkState State(SaddleStrap? own) => Assert.Single(Sheet(own).LoadPath, link => link.Link == "saddles" && link.What.StartsWith("straps", StringComparison.Ordinal)).State;
        Assert.Equal(LinkState.Open, State(null));
        Assert.Equal(LinkState.Holds, State(strap));
        Assert.Equal(LinkState.Fails, State(strap with { Thickness = 0.3.Millimeters }));
    }

    [Fact]
    public void A_weaker_strap_never_helps()
    {
        foreach (SaddleStrap weaker in (SaddleStrap[])[strap with { Thickness = 1.5.Millimeters }, strap with { Distance = 0.4.Meters }, strap with { Reach = 25.Millimeters }, strap with { Rivet = Rivet.Of(3.Millimeters, Copper.HalfHardR240) }, strap with { Width = 25.Millimeters }, strap with { Rivet = Rivet.Of(12.Millimeters, Copper.HalfHardR240) }])
        {
            foreach (string id in (string[])(weaker.Rivet.d_0 < strap.Rivet.d_0 ? ["straps.pull-off", "straps.shear"] : weaker.Rivet.d_0 > strap.Rivet.d_0 ? ["straps.bending"] : ["straps.pull-off", "straps.shear", "straps.bending"]))
                Assert.True(Use(weaker, id) >= Use(strap, id) - 1e-12, $"{id}: {weaker}");
        }
    }

    [Fact]
    public void Bad_straps_are_problems_at_their_paths()
    {
        string[] paths = [.. (SmallWhole.Of().Statue with { Skin = With(strap with { Rivets = 3, Distance = Length.Zero }) }).FindProblems().Select(problem => problem.Path)];
        Assert.Contains(paths, path => path.EndsWith("Armature.Straps.Rivets", StringComparison.Ordinal));
        Assert.Contains(paths, path => path.EndsWith("Armature.Straps.Distance", StringComparison.Ordinal));
        foreach (SaddleStrap bad in (SaddleStrap[])[strap with { Rivet = Rivet.Of(40.Millimeters, Copper.HalfHardR240) }, strap with { Rivets = 4, Rivet = Rivet.Of(20.Millimeters, Copper.HalfHardR240) }, strap with { Rivets = 4, Width = 9.Millimeters }])
            Assert.EndsWith("Armature.Straps.Width", Assert.Single((SmallWhole.Of().Statue with { Skin = With(bad) }).FindProblems()).Path, StringComparison.Ordinal);
        Assert.EndsWith("Armature.Straps.Distance", Assert.Single((SmallWhole.Of().Statue with { Skin = With(strap with { Distance = 30.Millimeters }) }).FindProblems()).Path, StringComparison.Ordinal);
    }
}
