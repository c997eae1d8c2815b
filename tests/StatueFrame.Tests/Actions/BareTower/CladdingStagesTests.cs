using StatueFrame.Analysis;

namespace StatueFrame.Tests.Actions.BareTower;

public class CladdingStagesTests
{
    [Fact]
    public void The_bands_that_stay_are_the_same_as_in_the_finished_statue()
    {
        SkinBand[] whole = BandBuilder.Bands(Stages.Skin), cut = BandBuilder.Bands(Stages.Statue.CladUpTo(6.5.Meters).Skin!);
        Assert.Equal(3, cut.Length);
        for (int i = 0; i < cut.Length; i++)
        {
            Assert.Equal(whole[i].Mass, cut[i].Mass, 1e-9 * whole[i].Mass);
            Assert.Equal(whole[i].Centroid.Z, cut[i].Centroid.Z, 1e-9);
        }
    }

    [Fact]
    public void What_belongs_to_missing_bands_goes_with_them()
    {
        Statue stage = Stages.Statue.CladUpTo(4.Meters);
        Assert.Equal("Saltmere chick, clad up to 4 m", stage.Name);
        Assert.Equal(["L0", "L1"], stage.Standoffs.Select(r => r.Level));
        Assert.Equal(["shoulder"], stage.Points.Select(p => p.Name));
        Assert.Empty(stage.Fittings);
        Assert.Empty(stage.FindProblems());
    }

    [Fact]
    public void Clad_to_the_top_is_the_finished_statue() =>
        Assert.Equal(Stages.Statue, Stages.Statue.CladUpTo(8.Meters) with { Name = Stages.Statue.Name });

    [Fact]
    public void Without_a_whole_band_the_tower_is_bare()
    {
        Statue stage = Stages.Statue.CladUpTo(1.9.Meters);
        Assert.Null(stage.Skin);
        Assert.Empty(stage.Standoffs);
        Assert.Empty(stage.FindProblems());
    }

    [Fact]
    public void A_stage_with_more_skin_catches_more_wind()
    {
        double[] forces = [.. new[] { 0.0, 2, 4, 6, 8 }.Select(h => Stages.Blow(Stages.Statue.CladUpTo(h.Meters), Stages.Wind(0)).WindForce.Newtons)];
        Assert.Equal(forces.Order(), forces);
    }

    [Fact]
    public void A_stage_keeps_the_joints_below_its_edge_and_the_criteria_that_concern_it()
    {
        Statue whole = Stages.Statue with { Skin = Stages.Skin with { Joints = [new SkinJoint(2.Meters, 3.Millimeters), new SkinJoint(4.Meters, 3.Millimeters), new SkinJoint(6.Meters, 3.Millimeters)] } };
        Statue stage = whole.CladUpTo(4.Meters);
        Assert.Equal([2.Meters], stage.Skin!.Joints!.Select(joint => joint.Elevation));
        var criteria = new Criteria { Sway = [.. whole.Points.Select(point => new SwayLimit(point.Name, 0.1.Meters))] };
        CheckSheet sheet = stage.Check(criteria.ForStage(stage), new Situation { Name = "calm", Actions = [new SelfWeight()] });
        Assert.NotEmpty(sheet.Checks);
        Assert.Throws<InvalidStatueException>(() => stage.Check(criteria, new Situation { Name = "calm", Actions = [new SelfWeight()] }));
    }

    [Fact]
    public void Polygons_are_cut_where_the_skin_runs()
    {
        Outline Square(double half) => new PolygonOutline
        {
            Vertices = [.. new[] { (1, 1), (-1, 1), (-1, -1), (1, -1) }.Select(p => new PlanPoint((p.Item1 * half).Meters, (p.Item2 * half).Meters))],
        };
        Statue statue = Stages.Statue with
        {
            Skin = Stages.Skin with
            {
                Stations = [new SkinStation { Elevation = 0.Meters, Outline = Square(2) }, new SkinStation { Elevation = 8.Meters, Outline = Square(1.2) }],
            },
        };
        SkinBand whole = BandBuilder.Bands(statue.Skin!)[1], cut = BandBuilder.Bands(statue.CladUpTo(4.Meters).Skin!)[1];
        Assert.Equal(whole.Mass, cut.Mass, 1e-9 * whole.Mass);
    }

    [Fact]
    public void A_limb_above_the_skin_is_bare()
    {
        Limb wing = Stages.Statue.Limbs[0] with
        {
            Skin = new Skin
            {
                Material = Copper.HalfHardR240,
                Thickness = 2.Millimeters,
                Stations = [.. new[] { 2.0, 4.0 }.Select(z => new SkinStation { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = 1.Meters, WidthY = 1.Meters } })],
            },
            Standoffs = [new EvenRing { Level = "end", Rise = (-0.2).Meters, Count = 6, Length = 0.45.Meters, Standoff = ((EvenRing)Stages.Statue.Standoffs[0]).Standoff }],
        };
        Statue statue = Stages.Statue with { Limbs = [wing] };
        Assert.Empty(statue.FindProblems());
        Assert.Null(statue.CladUpTo(4.Meters).Limbs[0].Skin);
        Assert.NotNull(statue.CladUpTo(6.Meters).Limbs[0].Skin);
    }

    [Fact]
    public void Bad_input_is_refused() =>
        Assert.Throws<InvalidStatueException>(() => (Stages.Statue with { Name = "" }).CladUpTo(4.Meters));

    [Fact]
    public void A_stage_can_be_analyzed() =>
        Assert.True(StatueModel.Build(Stages.Statue.CladUpTo(4.Meters)).BareSlices.Length > 0);
}
