using StatueFrame.Analysis;
using UnitsNet;
using static StatueFrame.Tests.Validation.SmallStatue;

namespace StatueFrame.Tests.Validation;

public class LoosePartsTests
{
    private static readonly Standoff hinged = Flat with { TowerFixity = EndFixity.Pinned, SkinFixity = EndFixity.Pinned };

    /// <summary>Bars square to the skin; they begin in the middle of an edge of its outline, where its normal is exact.</summary>
    private static EvenRing Radial(EvenRing ring) => ring with { Lay = Angle.Zero, FirstAngle = (180.0 / 96).Degrees, Standoff = hinged };

    [Fact]
    public void Radial_bars_on_upright_pins_let_the_band_turn()
    {
        var pin = new EndFixity { WeakAxis = RotationalStiffness.Zero };
        EvenRing ring = Radial(Ring("base", 0)) with { Standoff = Flat with { TowerFixity = pin, SkinFixity = pin } };
        Problem problem = OnlyProblemOf(Good.Statue with { Standoffs = [ring, Ring("mid")] });
        Assert.Equal("Standoffs", problem.Path);
        Assert.Equal("\"band 1\" is loose: nothing keeps it from turning about z", problem.Message);
        Assert.Contains("EndFixity.Rigid", problem.Hint);
    }

    [Fact]
    public void Flat_radial_bars_pinned_at_both_ends_let_the_band_drop_too()
    {
        Problem problem = OnlyProblemOf(Good.Statue with { Standoffs = [Radial(Ring("base", 0)), Ring("mid")] });
        Assert.StartsWith("\"band 1\" is loose", problem.Message);
        Assert.Contains("moving along z", problem.Message);
        Assert.EndsWith("turning about z", problem.Message);
    }

    [Fact]
    public void Saddles_that_all_slide_along_the_axis_let_the_band_drop()
    {
        Standoff sliding = Flat with { SkinFixity = EndFixity.Pinned, Slide = SaddleSlide.AlongAxis };
        Problem problem = OnlyProblemOf(Good.Statue with { Standoffs = [Ring("base"), Ring("mid") with { Standoff = sliding }] });
        Assert.StartsWith("\"band 2\" is loose: nothing keeps it from moving along z", problem.Message);
    }

    /// <summary>No axis of the statue shows it: the one direction that all saddles leave free lies aslant, and no freedom by itself is loose.</summary>
    [Theory]
    [InlineData(1, 1, 1)]
    [InlineData(0.3, -2, 0.7)]
    [InlineData(1, 0.001, 0)]
    public void Saddles_that_all_slide_along_one_oblique_direction_let_the_band_go(double x, double y, double z)
    {
        Standoff sliding = Flat with { SkinFixity = EndFixity.Pinned, Slide = SaddleSlide.Along(x, y, z) };
        Problem problem = OnlyProblemOf(Good.Statue with { Standoffs = [Ring("base"), Ring("mid") with { Standoff = sliding }] });
        Assert.StartsWith("\"band 2\" is loose: nothing keeps it from moving along", problem.Message);
    }

    [Fact]
    public void Every_loose_band_is_told_and_so_is_its_limb()
    {
        var thrown = Assert.Throws<InvalidStatueException>(() => StatueModel.Build(Good.Statue with
        {
            Standoffs = [Radial(Ring("base", 0)), Radial(Ring("mid", 0) with { Band = 2 })],
            Limbs = [Arm with { Standoffs = [Radial(Ring("hand", 0) with { Length = 0.3.Meters })] }],
        }));
        Assert.Equal(["Standoffs", "Standoffs", "Limbs[0].Standoffs"], thrown.Problems.Select(p => p.Path));
        Assert.Contains("\"arm/band 1\"", thrown.Problems[2].Message);
    }

    [Fact]
    public void Seams_hold_a_band_that_no_ring_holds()
    {
        var seams = new SeamStiffness(1.Megapascals, 1.Megapascals);
        CheckSheet sheet = (Good with { Statue = Good.Statue with { Standoffs = [Ring("base")], Seams = seams } }).Check();
        Assert.NotEmpty(sheet.Results);
    }

    [Fact]
    public void Seams_without_stiffness_hold_nothing()
    {
        Problem problem = OnlyProblemOf(Good.Statue with { Standoffs = [Ring("base")], Seams = new SeamStiffness(Pressure.Zero, Pressure.Zero) });
        Assert.StartsWith("\"band 2\" is loose: nothing keeps it from moving along x, moving along y", problem.Message);
    }

    [Fact]
    public void Statue_without_mass_is_told()
    {
        Statue core = Good.Statue with
        {
            Skin = null,
            Standoffs = [],
            Limbs = [],
            Fittings = [],
            Points = [],
            Tower = Trunk with { Segments = [SmallStatue.Core with { Mass = default }, SmallStatue.Core with { Mass = default }] },
        };
        Problem problem = OnlyProblemOf(core);
        Assert.Equal("Tower", problem.Path);
        Assert.Contains("has a mass", problem.Message);
    }

    [Fact]
    public void Buckling_names_the_part_that_gives_way()
    {
        var crush = new ImposedLoad { Name = "crush", On = "top", Down = 9e7.Newtons };
        CheckSheet sheet = (Good with { Situations = [new Situation { Name = "crush", Actions = [5 * crush] }] }).Check();
        string warning = Assert.Single(sheet.Warnings, w => w.Contains("does not stand"));
        Assert.Contains("it gives way most in ", warning);
        Assert.Contains(" of \"", warning);
    }

    private static Problem OnlyProblemOf(Statue statue) =>
        Assert.Single(Assert.Throws<InvalidStatueException>(() => StatueModel.Build(statue)).Problems);
}
