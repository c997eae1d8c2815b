using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Members;

/// <summary>Horizontals in the levels of lattices: what they carry, what they give, what is open without them.</summary>
public class LevelSheetTests
{
    private static readonly LevelFrame stout = new()
    {
        Horizontals = new RectangularTube(200.Millimeters, 200.Millimeters, 12.Millimeters),
        Throat = 6.Millimeters,
        PlanBracing = new AngleBar(60.Millimeters, 6.Millimeters),
        PlanBracingJoint = new MemberConnection { Bolt = new Bolt { Diameter = 16.Millimeters, Grade = BoltGrade.Class88 }, InLine = 2, EndDistance = 35.Millimeters, EdgeDistance = 25.Millimeters, Pitch = 50.Millimeters },
        Material = StructuralSteel.S355,
    };

    private static SmallStatue With(LevelFrame? frame, bool slides = false)
    {
        SmallStatue whole = SmallWhole.Of(slides: slides);
        return whole with
        {
            Statue = whole.Statue with
            {
                Tower = whole.Statue.Tower with { Levels = [.. whole.Statue.Tower.Levels.Select(level => level.Plan is null || level.Name == "base" ? level : level with { Frame = frame })] },
            },
        };
    }

    private static CheckSheet Sheet(LevelFrame? frame)
    {
        SmallStatue statue = With(frame);
        return statue.Statue.Check(statue.Criteria, statue.Situations);
    }

    /// <summary>Roark, 8th ed., Table 8.1, 1e: P L³/48EI in the middle under a force there, and 5 w L⁴/384EI under an even load.</summary>
    [Fact]
    public void Influence_of_a_force_is_that_of_the_handbook()
    {
        Assert.Equal(1.0 / 48, LevelSheet.Influence(0.5, 0.5), 1e-15);
        Assert.Equal(5.0 / 384, Enumerable.Range(0, 1000).Average(i => LevelSheet.Influence(0.5, (i + 0.5) / 1000)), 1e-6);
        Assert.Equal(LevelSheet.Influence(0.2, 0.7), LevelSheet.Influence(0.7, 0.2), 1e-15);
    }

    [Fact]
    public void A_level_without_a_frame_is_open_and_one_with_a_frame_is_held()
    {
        CheckSheet none = Sheet(null), whole = Sheet(stout), loose = Sheet(stout with { PlanBracing = null, PlanBracingJoint = null });
        Assert.Contains(none.OpenLinks, link => link.Link == "level frames" && link.What.StartsWith("horizontals and plan bracing", StringComparison.Ordinal));
        Assert.DoesNotContain(whole.OpenLinks, link => link.What.StartsWith("horizontals and plan bracing", StringComparison.Ordinal));
        Assert.DoesNotContain(whole.OpenLinks, link => link.What.StartsWith("shape of the plan", StringComparison.Ordinal));
        Assert.Contains(loose.OpenLinks, link => link.What.StartsWith("shape of the plan", StringComparison.Ordinal));
        Assert.All(whole.Checks.Where(check => check.Family == "levels" && check.Id != "levels.faces"), check => Assert.Equal(Verdict.Pass, check.Verdict));
        Assert.Equal(["levels.bending", "levels.block", "levels.compression", "levels.connections", "levels.distances", "levels.faces", "levels.stiffness", "levels.tension", "levels.welds"], whole.Checks.Where(check => check.Family == "levels").Select(check => check.Id).Distinct().Order());
        // Its mass is counted: four horizontals and two members across a square of 1.2 m.
        double rho = StructuralSteel.S355.Density.KilogramsPerCubicMeter;
        double expected = rho * (4 * 1.2 * stout.Horizontals.Area.SquareMeters + 2 * 1.2 * Math.Sqrt(2) * stout.PlanBracing!.Area.SquareMeters);
        Assert.Equal(expected, whole.Results.Single(line => line.Group == "masses" && line.Name == "level frames").Value, 1e-6);
    }

    [Fact]
    public void Joints_in_a_level_are_open_until_they_are_described()
    {
        CheckSheet plain = Sheet(stout with { Throat = null, PlanBracingJoint = null }), whole = Sheet(stout);
        Assert.Equal(["joints of horizontals", "joints of plan bracing"], plain.OpenLinks.Where(link => link.Link == "level frames" && link.What != OnLegs).Select(link => link.What));
        Assert.DoesNotContain(whole.OpenLinks, link => link.Link == "level frames");
    }

    private const string OnLegs = "walls of legs under what is welded to them";

    /// <summary>The walls of legs bear the axial force of horizontals, the thinner the worse; where there is no method it stays open.</summary>
    [Fact]
    public void Walls_of_legs_bear_what_is_welded_to_them()
    {
        SmallStatue whole = With(stout);
        CheckSheet Legs(Section legs) => (whole.Statue with
        {
            Tower = whole.Statue.Tower with { Segments = [.. whole.Statue.Tower.Segments.Select(segment => segment is LatticeSegment lattice ? lattice with { Legs = legs, LegSplice = null } : segment)] },
        }).Check(whole.Criteria, whole.Situations);
        CheckSheet solid = Legs(new RoundBar(150.Millimeters)), angles = Legs(new AngleBar(200.Millimeters, 20.Millimeters)), slight = Legs(new AngleBar(200.Millimeters, 12.Millimeters)), thick = Legs(new RectangularTube(220.Millimeters, 220.Millimeters, 12.Millimeters)), thin = Legs(new RectangularTube(220.Millimeters, 220.Millimeters, 6.Millimeters));
        Check open = solid.Checks.First(check => check.Id == "levels.faces");
        Assert.Equal(Verdict.NotChecked, open.Verdict);
        Assert.Contains("local bending", open.Reason);
        Assert.DoesNotContain(thick.OpenLinks, link => link.What == OnLegs);
        Assert.True(Use(thin) > 1.9 * Use(thick), $"{Use(thin)} {Use(thick)}");
        Assert.True(Use(slight) > 1.9 * Use(angles), $"{Use(slight)} {Use(angles)}");
        Assert.DoesNotContain(angles.OpenLinks, link => link.What == OnLegs);

        static double Use(CheckSheet sheet) => sheet.Checks.Where(check => check.Id == "levels.faces").Max(check => check.Utilization)!.Value;
    }

    /// <summary>An angle's flange by hand: 24 mm of 355 MPa not pressed, a foot of 200 mm square: m 76 mm, e 100 mm, l = 200 + 4·76 + 1.25·100 mm; half pressed, what plane stress after von Mises leaves.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.5, 0.83205)]
    public void The_flange_of_an_angle_folds_along_its_heel(double pressed, double left)
    {
        var chord = new BracketChord(new AngleBar(200.Millimeters, 24.Millimeters), StructuralSteel.S355, Mechanics.Vector3D.UnitZ, IsUpright: true, null) { Pressed = pressed };
        var load = new FaceLoad("L1", "", BarDesign.For(StructuralSteel.S355), chord, Mechanics.Axes3D.Along(Mechanics.Vector3D.UnitX, Mechanics.Vector3D.UnitZ), new RectangularTube(200.Millimeters, 200.Millimeters, 11.Millimeters), 1e5, 0, 0);
        double f_y = StructuralSteel.S355.For(0.024).YieldStrength.Pascals, m_pl = left * f_y * 0.024 * 0.024 / 4, N_R = m_pl * (0.2 + 4 * 0.076 + 1.25 * 0.1) / 0.076;
        Assert.Equal(1e5 / N_R, FaceChecks.UnderHorizontals.Utilization(load)!.Value, 1e-5);
    }

    /// <summary>The plastic moment across a fold that is pressed along it, by halving the strip's neutral depth with both strengths of von Mises' ellipse.</summary>
    [Fact]
    public void What_pressure_along_a_fold_leaves_is_the_plane_stress_of_von_Mises()
    {
        foreach (double n in new[] { 0.1, 0.4, 0.7, 0.95 })
        {
            // σ² − σ n + n² = 1 and σ² + σ n + n² = 1 of the pulled and of the pressed face.
            double pulled = (Math.Sqrt(4 - 3 * n * n) - n) / 2, pressedFace = (Math.Sqrt(4 - 3 * n * n) + n) / 2;
            double low = 0, high = 1;
            for (int i = 0; i < 60; i++)
            {
                double z = 0.5 * (low + high);
                (low, high) = z * pulled < (1 - z) * pressedFace ? (z, high) : (low, z);
            }
            double moment = pulled * low * (0.5 - low / 2) + pressedFace * (1 - low) * (low / 2);
            Assert.Equal(2 * (1 - n * n) / Math.Sqrt(4 - 3 * n * n), moment / 0.25, 1e-9);
        }
    }

    [Fact]
    public void What_is_weaker_in_a_level_never_helps()
    {
        double Use(LevelFrame frame, string id) => Sheet(frame).Checks.Where(check => check.Id == id).Max(check => check.Utilization)!.Value;
        Assert.Equal(2 * Use(stout, "levels.welds"), Use(stout with { Throat = 3.Millimeters }, "levels.welds"), 1e-9);
        LevelFrame thin = stout with { PlanBracing = new AngleBar(50.Millimeters, 5.Millimeters) };
        foreach (string id in (string[])["levels.compression", "levels.tension", "levels.block"])
            Assert.True(Use(thin, id) > Use(stout, id), id);
        Assert.True(Use(stout with { PlanBracingJoint = stout.PlanBracingJoint! with { InLine = 1 } }, "levels.connections") > Use(stout, "levels.connections"));
    }

    [Fact]
    public void Thin_horizontals_fail_in_strength_and_soft_ones_in_stiffness()
    {
        CheckSheet thin = Sheet(stout with { Horizontals = new RectangularTube(40.Millimeters, 40.Millimeters, 3.Millimeters) });
        Assert.Contains(thin.Failed, check => check.Id == "levels.bending");
        Assert.Contains(thin.Failed, check => check.Id == "levels.stiffness");
    }

    /// <summary>What is checked is at least what every single wind does to the horizontal, as a beam on two legs.</summary>
    [Fact]
    public void Horizontals_are_checked_for_more_than_any_one_wind_does()
    {
        SmallStatue statue = With(stout);
        StatueModel model = StatueModel.Build(statue.Statue);
        SituationDemands demands = SituationDemands.Of([model], statue.Situations[0], DampingModel.OfRatio(0.01));
        var all = new FootEnvelope(model);
        var single = new Dictionary<string, FootEnvelope>();
        for (int ring = 0; ring < model.Rings.Count; ring++)
        {
            demands.Bars(ring, (BarModel bar, SkinAssumption skin, in BarEnds ends, DemandState when) =>
            {
                all.Look(bar, ends);
                if (!single.TryGetValue($"{when.When}, {skin}", out FootEnvelope? one))
                    single[$"{when.When}, {skin}"] = one = new FootEnvelope(model);
                one.Look(bar, ends);
            });
        }
        Assert.True(single.Count > 8);
        LevelSide[] most = LevelSide.Of(model.Bodies[0], 1, all);
        Assert.True(most.Sum(side => side.Feet.Count) > 0);
        foreach (FootEnvelope one in single.Values)
        {
            foreach ((LevelSide side, LevelSide bound) in LevelSide.Of(model.Bodies[0], 1, one).Zip(most))
            {
                Assert.True(Moment(side) <= Moment(bound) * (1 + 1e-9));
                Assert.True(LevelSide.MomentOnLeg(most, side.Leg) * (1 + 1e-9) >= LevelSide.MomentOnLeg(LevelSide.Of(model.Bodies[0], 1, one), side.Leg));
            }
        }

        static double Moment(LevelSide side) => side.Feet.Sum(foot => foot.Force.Z * foot.At * (side.Length - foot.At) / side.Length);
    }

    /// <summary>The feet of a level take all that its standoffs put on it: their vertical forces add up to the skin's weight at rest.</summary>
    [Fact]
    public void Feet_carry_the_weight_of_the_skin()
    {
        SmallStatue statue = With(stout);
        StatueModel model = StatueModel.Build(statue.Statue with { Limbs = [], Seams = null, Points = [], Fittings = [] });
        LoadCase rest = model.Respond(new Situation { Name = "rest", Actions = [new SelfWeight()] }).Cases[0];
        var feet = new FootEnvelope(model);
        Span<double> forces = stackalloc double[12];
        double bars = 0;
        foreach ((RingElement ring, int band) in model.Rings)
        {
            foreach (BarModel bar in ring.Bars)
            {
                Assert.True(rest.ForcesOf(ring, bar, band, SkinAssumption.RigidRing, forces));
                feet.Look(bar, BarEnds.Of(forces));
                bars += bar.Mass;
            }
        }
        double carried = Enumerable.Range(0, model.Bodies[0].Levels.Length).SelectMany(level => feet.At(model.Bodies[0], level)).Sum(foot => foot.Force.Z);
        double skin = model.Masses.Of(MassGroup.Skin).Kilograms + 0.5 * bars;
        Assert.Equal(9.80665 * skin, carried, 1e-6 * carried);
    }

    [Fact]
    public void A_frame_needs_legs()
    {
        Statue statue = SmallStatue.Good.Statue;
        TowerLevel[] levels = [.. statue.Tower.Levels];
        levels[^1] = levels[^1] with { Frame = stout };
        Problem problem = Assert.Single((statue with { Tower = statue.Tower with { Levels = [.. levels] } }).FindProblems());
        Assert.Equal($"Tower.Levels[{levels.Length - 1}].Frame", problem.Path);
    }

    [Fact]
    public void Rust_thins_frames_and_brackets()
    {
        SmallStatue statue = With(stout);
        Statue sound = statue.Statue with { Standoffs = [.. statue.Statue.Standoffs.Select(ring => ring with { Bracket = new Bracket { Section = new RectangularTube(100.Millimeters, 100.Millimeters, 8.Millimeters), Material = StructuralSteel.S355, TowerFixity = EndFixity.Rigid } })] };
        Statue rusty = sound.Corroded(Duration.FromYears365(50));
        JointPlate plate = new() { Thickness = 10.Millimeters, Width = 200.Millimeters, Material = StructuralSteel.S355, Eccentricity = Length.Zero };
        MemberConnection lap = stout.PlanBracingJoint! with { Plate = plate }, cover = lap with { ShearPlanes = 2 };
        LatticeSegment panel = sound.Tower.Segments.OfType<LatticeSegment>().First() with { BraceJoint = lap, LegSplice = cover };
        LatticeSegment old = (sound with { Tower = sound.Tower with { Segments = [.. sound.Tower.Segments.Select(segment => segment is LatticeSegment ? panel : segment)] } }).Corroded(Duration.FromYears365(50)).Tower.Segments.OfType<LatticeSegment>().First();
        double lost = 10 - old.BraceJoint!.Plate!.Thickness.Millimeters;
        Assert.True(lost > 0);
        Assert.Equal(2 * lost, 10 - old.LegSplice!.Plate!.Thickness.Millimeters, 1e-9);
        Assert.True(rusty.Tower.Levels[1].Frame!.Horizontals.Area.SquareMeters < stout.Horizontals.Area.SquareMeters);
        Assert.True(rusty.Standoffs[0].Bracket!.Section.Area.SquareMeters < sound.Standoffs[0].Bracket!.Section.Area.SquareMeters);
    }
}
