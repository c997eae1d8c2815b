using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Analyses;

public class FineModelTests
{
    private static Situation Storm(SampleStatue s) => new()
    {
        Name = "storm",
        Actions = [1.2 * new SelfWeight(), 1.5 * s.Wind(0, 1.1), s.Imposed("L3", 3000, 1000, 2000, s.Point(0.5, 0.5, 9)), s.Imposed("band 2", 500, -200, 300)],
    };

    private static FineMesh Coarse => new() { Size = 0.5.Meters };

    [Fact]
    public void The_ground_carries_what_acts()
    {
        foreach (SampleStatue sample in (SampleStatue[])[new(), new() { Base = SampleStatue.Springs, HasLimb = false }, new() { Seams = new SeamStiffness(50.Megapascals, 20.Megapascals) }])
        {
            FineModel fine = FineModel.Build(sample.Statue, Coarse);
            FineResponse response = fine.Respond(Storm(sample));
            IReadOnlyList<LoadCase> reduced = fine.Reduced.Respond(Storm(sample)).Cases;
            for (int i = 0; i < reduced.Count; i++)
            {
                BaseReaction ours = response.Cases[i].Base, theirs = reduced[i].Base;
                double force = theirs.Shear.Newtons, moment = theirs.Overturning.NewtonMeters;
                Assert.Equal(theirs.ForceX.Newtons, ours.ForceX.Newtons, 1e-6 * force);
                Assert.Equal(theirs.ForceY.Newtons, ours.ForceY.Newtons, 1e-6 * force);
                Assert.Equal(theirs.ForceZ.Newtons, ours.ForceZ.Newtons, 1e-6 * force);
                Assert.Equal(theirs.MomentX.NewtonMeters, ours.MomentX.NewtonMeters, 1e-6 * moment);
                Assert.Equal(theirs.MomentY.NewtonMeters, ours.MomentY.NewtonMeters, 1e-6 * moment);
                Assert.Equal(theirs.MomentZ.NewtonMeters, ours.MomentZ.NewtonMeters, 1e-6 * moment);
            }
        }
    }

    [Fact]
    public void Both_models_weigh_the_same()
    {
        StatueModel reduced = StatueModel.Build(new SampleStatue().Statue);
        FineModel fine = FineModel.Build(reduced, Coarse);
        foreach (int direction in Enumerable.Range(0, 3))
            Assert.Equal(Moved(reduced.Frame, direction), Moved(fine.Frame, direction), 1e-6 * reduced.Masses.TotalKilograms);

        static double Moved(Frame frame, int direction)
        {
            double[] motion = frame.RigidMotion(direction), forces = frame.InertiaForces(motion);
            return Enumerable.Range(0, motion.Length).Sum(i => motion[i] * forces[i]);
        }
    }

    /// <summary>A thick skin cut at every edge of its bands is what the other model takes every skin for.</summary>
    [Fact]
    public void Bands_of_stiff_sheet_with_joints_between_are_rigid_rings()
    {
        Statue statue = Stiff(new SampleStatue { HasLimb = false }.Statue);
        Situation storm = Storm(new SampleStatue { HasLimb = false });
        FineModel fine = FineModel.Build(statue, new FineMesh { Size = 0.25.Meters });
        FineResponse response = fine.Respond(storm);
        Response reduced = fine.Reduced.Respond(storm);
        for (int i = 0; i < reduced.Cases.Count; i++)
        {
            foreach (FineBar bar in fine.Bars)
            {
                var f = new double[12];
                int band = fine.Reduced.Rings.Single(r => r.Ring == bar.Ring).BandInStatue;
                reduced.Cases[i].ForcesOf(bar.Ring, bar.Bar, band, SkinAssumption.RigidRing, f);
                BarEnds rigid = BarEnds.Of(f), shell = response.Cases[i].EndsOf(bar);
                double expected = rigid.NormalStress(0.06, 0.002), found = shell.NormalStress(0.06, 0.002);
                Assert.Equal(expected, found, 0.02 * reduced.Bars.Max(b => b.Stress.Pascals) + 0.02 * expected);
            }
            foreach (string point in (string[])["tip", "neck"])
                Assert.Equal(reduced.Cases[i].Of(point).Sway.Meters, response.Cases[i].Of(point).Sway.Meters, 0.01 * reduced.Cases[i].Of(point).Sway.Meters);
        }
    }

    [Fact]
    public void Frequencies_of_stiff_bands_are_those_of_rigid_ones()
    {
        FineModel fine = FineModel.Build(Stiff(new SampleStatue { HasLimb = false }.Statue), new FineMesh { Size = 0.25.Meters });
        double[] reduced = [.. fine.Reduced.Modes(6).Modes.Select(m => m.Frequency.Hertz)], found = [.. fine.Modes(6).Select(m => m.Frequency.Hertz)];
        for (int i = 0; i < reduced.Length; i++)
            Assert.Equal(reduced[i], found[i], 0.01 * reduced[i]);
    }

    /// <summary>In the fine model the weight of bands tips them on their bars too, which the other leaves out.</summary>
    [Fact]
    public void A_figure_of_stiff_bands_buckles_as_one_of_rigid_ones()
    {
        var standoff = new Standoff { Section = new FlatBar(60.Millimeters, 20.Millimeters), Material = StainlessSteel.Grade316L, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid };
        var ring = new EvenRing { Level = "1 m", Count = 16, Length = 0.3.Meters, Standoff = standoff };
        var statue = new Statue
        {
            Name = "stiff bands on a thin mast",
            Tower = Tower.Mast(_ => new Tube(100.Millimeters, 4.Millimeters), StructuralSteel.S355, 0.Meters, 1.Meters, 3.Meters, 5.Meters),
            Skin = Stiff(new SampleStatue { HasLimb = false }.Statue).Skin! with
            {
                Thickness = 15.Millimeters,
                ArmatureMass = default,
                Stations = [SkinStation.Ellipse(0.Meters, 1.5.Meters, 1.2.Meters), SkinStation.Ellipse(6.Meters, 1.5.Meters, 1.2.Meters)],
                BandEdges = [0.Meters, 2.Meters, 4.Meters, 6.Meters],
                Joints = [new SkinJoint(2.Meters, 5.Millimeters), new SkinJoint(4.Meters, 5.Millimeters)],
            },
            Standoffs = ring.OnLevels("1 m", "3 m", "5 m"),
            Points = [new NamedPoint("top", "5 m")],
        };
        var heavy = new Situation { Name = "heavy", Actions = [new SelfWeight()] };
        FineModel fine = FineModel.Build(statue, new FineMesh { Size = 0.15.Meters });
        double expected = fine.Reduced.Respond(heavy).Stability.BucklingFactor!.Value, found = fine.Respond(heavy).Cases[0].BucklingFactors(1)[0];
        Assert.InRange(found / expected, 0.95, 1.001);
    }

    [Fact]
    public void Heat_that_is_the_same_everywhere_strains_nothing()
    {
        SampleStatue sample = new() { HasLimb = false };
        Statue statue = sample.Statue;
        Material steel = StructuralSteel.S355;
        statue = statue with
        {
            Skin = statue.Skin! with { Material = steel },
            Standoffs = [.. statue.Standoffs.Select(ring => ring switch
            {
                EvenRing even => even with { Bracket = null, Standoff = even.Standoff with { Material = steel } },
                ExplicitRing all => (StandoffRing)(all with { Bars = [.. all.Bars.Select(bar => bar with { Standoff = bar.Standoff with { Material = steel } })] }),
                _ => ring,
            })],
        };
        var heat = new Situation { Name = "warm", Actions = [new TemperatureAction { Name = "warm", SkinChange = 30.Kelvins, TowerChange = 30.Kelvins }] };
        FineCase warm = FineModel.Build(statue, Coarse).Respond(heat).Cases[0];
        double scale = 30 * 12e-6 * 210; // GPa
        Assert.All(warm.Bars(), bar => Assert.InRange(bar.Stress.Gigapascals, 0, 1e-6 * scale));
        Assert.InRange(warm.GreatestSkinStress().VonMises.Gigapascals, 0, 1e-6 * scale);
    }

    [Fact]
    public void A_finer_mesh_changes_little()
    {
        SampleStatue sample = new();
        Statue statue = sample.Statue;
        statue = statue with { Skin = statue.Skin! with { Armature = new Armature { Bar = new FlatBar(50.Millimeters, 12.Millimeters), Material = Copper.HalfHardR240, Spacing = 0.5.Meters, PanelLength = 0.5.Meters, Span = 1.Meters } } };
        FineComparison comparison = FineComparison.Of(statue, Storm(sample), new FineMesh { Size = 0.1.Meters });
        Assert.All(comparison.Rows.Where(row => row.Quantity is "sway" || row.Quantity.StartsWith("frequency", StringComparison.Ordinal)), row => Assert.InRange(row.Error!.Value, 0, 0.05));
        Assert.All(comparison.Rows.Where(row => row.IsBound), row => Assert.InRange(row.Error!.Value, 0, 0.1));
        Assert.Contains(CheckSheet.Caution[..40], comparison.Print());
        Assert.All(comparison.Print().Split('\n'), line => Assert.InRange(line.Length, 0, 110));
    }

    [Fact]
    public void What_cannot_be_meshed_is_refused_with_a_path()
    {
        Statue statue = new SampleStatue().Statue;
        Assert.Contains("FineMesh.Size", Assert.Throws<InvalidStatueException>(() => FineModel.Build(statue, new FineMesh { Size = 1.Millimeters })).Message);
        Assert.Contains("nodes of skin", Assert.Throws<InvalidStatueException>(() => FineModel.Build(statue, new FineMesh { Size = 5.Millimeters })).Message);
        Assert.Contains("Skin", Assert.Throws<InvalidStatueException>(() => FineModel.Build(statue with { Skin = null, Standoffs = [], Fittings = [], Points = [], Limbs = [] })).Message);
    }

    private static Statue Stiff(Statue statue) => statue with
    {
        Skin = statue.Skin! with { Thickness = 25.Millimeters, FoldFactor = 1, Material = Copper.HalfHardR240 with { YoungsModulus = 900.Gigapascals, ShearModulus = 340.Gigapascals }, Joints = [new SkinJoint(3.Meters, 5.Millimeters), new SkinJoint(6.Meters, 5.Millimeters)] },
        Standoffs = [.. statue.Standoffs.Select(ring => ring switch
        {
            EvenRing even => even with { Standoff = Thin(even.Standoff) },
            ExplicitRing all => (StandoffRing)(all with { Bars = [.. all.Bars.Select(bar => bar with { Standoff = Thin(bar.Standoff) })] }),
            _ => ring,
        })],
    };

    private static Standoff Thin(Standoff standoff) => standoff with { Section = new FlatBar(60.Millimeters, 2.Millimeters), Material = standoff.Material with { YoungsModulus = 1.Gigapascals, ShearModulus = 0.4.Gigapascals } };
}
