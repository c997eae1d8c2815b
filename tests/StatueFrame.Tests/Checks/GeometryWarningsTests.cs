using StatueFrame.Tests.Heron;
using UnitsNet;
using static StatueFrame.Tests.Validation.SmallStatue;

namespace StatueFrame.Tests.Checks;

/// <summary>Geometry that can be computed and not built is warned of, and what stands beside what carries it is refused.</summary>
public class GeometryWarningsTests
{
    private static readonly StatueDocument heron = SaltmereHeron.Document;

    private static ValueList<string> WarningsOf(Statue statue) =>
        statue.Check(new Criteria(), new Situation { Name = "calm", Actions = [new SelfWeight()] }).Warnings;

    [Fact]
    public void The_heron_can_be_built() =>
        Assert.DoesNotContain(WarningsOf(heron.Statue), warning => warning.Contains("axis") || warning.Contains("come through") || warning.Contains("out of the skin") || warning.Contains("armature") || warning.Contains("Leg "));

    [Fact]
    public void Bars_past_the_axis_are_told() =>
        Assert.Contains(WarningsOf(Good.Statue with { Standoffs = [Ring("base") with { Lay = Angle.Zero, Length = 2.2.Meters }, Ring("mid")], Points = [], Fittings = [] }), warning => warning.Contains("past the axis"));

    [Fact]
    public void Bars_that_come_through_the_skin_are_told()
    {
        Statue flat = heron.Statue with { Standoffs = [.. heron.Statue.Standoffs.Select(r => r is EvenRing { Level: "N30" } ring ? ring with { Lay = 80.Degrees, Length = 0.3.Meters } : r)] };
        Assert.Contains(WarningsOf(flat), warning => warning.Contains("standoffs of trunk come through the skin, band 30"));
    }

    [Fact]
    public void A_tower_outside_the_skin_is_told()
    {
        Tower wide = heron.Statue.Tower with { Levels = [.. heron.Statue.Tower.Levels.Select(l => l.Name == "L3" ? l with { Plan = TowerPlan.Square(5.Meters) } : l)] };
        Assert.Contains(WarningsOf(heron.Statue with { Tower = wide }), warning => warning.StartsWith("The tower at L3 reaches", StringComparison.Ordinal));
    }

    [Fact]
    public void An_armature_lighter_than_its_bars_is_told() =>
        Assert.Contains(WarningsOf(heron.Statue with { Skin = heron.Statue.Skin! with { ArmatureMass = 3.KilogramsPerSquareMeter } }), warning => warning.StartsWith("The armature of trunk is given as 3 kg/m²", StringComparison.Ordinal));

    [Fact]
    public void A_leg_without_a_plate_is_told()
    {
        HoldDown moved = heron.Statue.HoldDown! with { Plates = [.. heron.Statue.HoldDown!.Plates.Select((p, i) => i == 0 ? p with { X = 0.2.Meters } : p)] };
        Assert.Contains(WarningsOf(heron.Statue with { HoldDown = moved }), warning => warning.Contains("there is no base plate"));
    }

    [Fact]
    public void A_base_on_nothing_is_refused()
    {
        Statue narrow = heron.Statue with { Foundation = heron.Statue.Foundation! with { WidthX = 6.Meters } };
        Assert.Contains("narrower", Assert.Single(narrow.FindProblems()).Message);
        Statue off = heron.Statue with { HoldDown = heron.Statue.HoldDown! with { Plates = [.. heron.Statue.HoldDown!.Plates.Select(p => p with { X = 3 * p.X })] } };
        Assert.All(off.FindProblems(), problem => Assert.StartsWith("HoldDown.Plates[", problem.Path));
        Assert.Equal(4, off.FindProblems().Count);
    }
}
