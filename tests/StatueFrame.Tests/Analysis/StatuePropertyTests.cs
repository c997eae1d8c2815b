using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Tests.Analyses;

public class StatuePropertyTests
{
    private static Situation Storm(SampleStatue s, double factor = 1) => new()
    {
        Name = "storm",
        Actions = [factor * 1.2 * new SelfWeight(), factor * 1.5 * s.Wind(0, 1.1), factor * s.Imposed("L3", 3000, 1000, 2000, s.Point(0.5, 0.5, 9))],
    };

    private static TowerBase[] Bases => [TowerBase.Fixed, SampleStatue.Springs, TowerBase.Rocking(5e7.NewtonMetersPerRadian)];

    [Fact]
    public void Base_reaction_from_the_loads_is_what_the_ground_does_to_the_frame()
    {
        foreach (TowerBase held in Bases)
        {
            var sample = new SampleStatue { Base = held, Bays = 3 };
            StatueModel model = StatueModel.Build(sample.Statue);
            Situation situation = Storm(sample);
            Response response = model.Respond(situation);
            var nodal = new double[model.Frame.FreedomCount];
            Loads.Of(model, situation, response.Cases[1].Heading, null, nodal);
            double[] reactions = Equilibrium.Reactions(model.Frame, response.Cases[1].Displacements, nodal);
            (Vector3D force, Vector3D moment) = Equilibrium.Resultant(model.Frame, reactions, Vector3D.Zero);
            Assert.InRange((Force(response.Cases[1].Base) + force).Length, 0, 1e-9 * force.Length);
            Assert.InRange((Moment(response.Cases[1].Base) + moment).Length, 0, 1e-9 * moment.Length);
        }
    }

    [Fact]
    public void Bars_of_a_band_together_carry_the_load_on_the_band()
    {
        var sample = new SampleStatue();
        StatueModel model = StatueModel.Build(sample.Statue);
        Situation situation = Storm(sample);
        LoadCase loadCase = model.Respond(situation).Cases[1];
        var nodal = new double[model.Frame.FreedomCount];
        Loads.Of(model, situation, loadCase.Heading, null, nodal);
        for (int band = 0; band < model.BandCount; band++)
        {
            (BodyModel body, int index) = model.BandAt(band);
            Place place = body.BandPlaces[index];
            Vector3D force = Vector3D.Zero, moment = Vector3D.Zero;
            foreach ((RingElement ring, int carried) in model.Rings.Where(r => r.BandInStatue == band))
            {
                foreach (BarModel bar in ring.Bars)
                {
                    var f = new double[12];
                    loadCase.ForcesOf(ring, bar, carried, SkinAssumption.RigidRing, f);
                    Axes3D axes = bar.Bar.Place.Axes;
                    Vector3D end = axes.ToGlobal(new Vector3D(f[6], f[7], f[8]));
                    force += end;
                    moment += axes.ToGlobal(new Vector3D(f[9], f[10], f[11])) + (bar.Bar.Place.SkinEnd - place.NodeAt).Cross(end);
                }
            }
            ReadOnlySpan<double> load = nodal.AsSpan(6 * place.Node, 6);
            var (loadForce, loadMoment) = (new Vector3D(load[0], load[1], load[2]), new Vector3D(load[3], load[4], load[5]));
            Assert.InRange((force - loadForce).Length, 0, 1e-7 * loadForce.Length);
            Assert.InRange((moment - loadMoment).Length, 0, 1e-7 * loadForce.Length);
        }
    }

    [Fact]
    public void Points_act_on_each_other_alike()
    {
        var sample = new SampleStatue { Base = SampleStatue.Springs, Seams = new SeamStiffness(1.Megapascals, 1.Megapascals) };
        StatueModel model = StatueModel.Build(sample.Statue);
        string[] parts = ["L1", "L3", "band 1", "band 3", "wing/W2", "wing/band 2", "wing/root"];
        var cases = parts.SelectMany(on => new[] { (on, 0), (on, 1), (on, 2) }).ToArray();
        LoadCase[] solved = [.. cases.Select(c => model.Respond(new Situation { Name = "unit", Actions = [sample.Imposed(c.on, c.Item2 == 0 ? 1e6 : 0, c.Item2 == 1 ? 1e6 : 0, c.Item2 == 2 ? -1e6 : 0)] }).Cases[0])];
        for (int i = 0; i < cases.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double ij = Along(solved[i].OfPart(cases[j].on), cases[j].Item2), ji = Along(solved[j].OfPart(cases[i].on), cases[i].Item2);
                double scale = Math.Sqrt(Along(solved[i].OfPart(cases[i].on), cases[i].Item2) * Along(solved[j].OfPart(cases[j].on), cases[j].Item2));
                Assert.Equal(ij, ji, 1e-9 * scale);
            }
        }

        static double Along(Movement m, int axis) => (axis == 0 ? m.X : axis == 1 ? m.Y : m.Z).Meters;
    }

    [Fact]
    public void A_statue_turned_with_its_loads_gives_turned_results() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Int[0, 2], Dense.OneOf(Bracing.Cross, Bracing.SingleDiagonal, Bracing.KBrace, Bracing.TensionOnlyCross), Gen.Int[1, 3]).Sample((turn, held, bracing, bays) =>
        {
            var sample = new SampleStatue { Base = Bases[held], Bracing = bracing, Bays = bays };
            SampleStatue turned = sample with { Turn = turn };
            StatueModel a = StatueModel.Build(sample.Statue), b = StatueModel.Build(turned.Statue);
            Response ra = a.Respond(Storm(sample)), rb = b.Respond(Storm(turned));
            for (int i = 0; i < 2; i++)
            {
                foreach (NamedPoint point in a.Statue.Points)
                {
                    Movement ma = ra.Cases[i].Of(point.Name), mb = rb.Cases[i].Of(point.Name);
                    double scale = new Vector3D(ma.X.Meters, ma.Y.Meters, ma.Z.Meters).Length;
                    Assert.InRange((Turn(new Vector3D(ma.X.Meters, ma.Y.Meters, ma.Z.Meters), turn) - new Vector3D(mb.X.Meters, mb.Y.Meters, mb.Z.Meters)).Length, 0, 1e-8 * scale);
                    Assert.Equal(ma.Twist.Radians, mb.Twist.Radians, 1e-8 * scale);
                }
                Assert.InRange((Turn(Moment(ra.Cases[i].Base), turn) - Moment(rb.Cases[i].Base)).Length, 0, 1e-8 * Moment(ra.Cases[i].Base).Length);
            }
            for (int i = 0; i < ra.Bars.Count; i++)
            {
                Assert.Equal(1, rb.Bars[i].Stress.Pascals / ra.Bars[i].Stress.Pascals, 1e-6);
                Assert.Equal(1, rb.Bars[i].Deflection.Meters / ra.Bars[i].Deflection.Meters, 1e-6);
            }
            ModalResponse fa = a.Modes(6), fb = b.Modes(6);
            for (int i = 0; i < 6; i++)
                Assert.Equal(1, fb.Modes[i].Frequency.Hertz / fa.Modes[i].Frequency.Hertz, 1e-8);
            Assert.Equal(1, rb.Stability.BucklingFactor!.Value / ra.Stability.BucklingFactor!.Value, 1e-7);
            Assert.Equal(1, rb.Stability.Amplification!.Value / ra.Stability.Amplification!.Value, 1e-7);
        }, iter: 8, threads: 2);

    [Fact]
    public void An_eccentric_fitting_tilts_a_mast_as_the_cantilever_formula_says() =>
        Gen.Select(Gen.Double[100, 3000], Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[3, 20]).Sample((mass, x, y, L) =>
        {
            var tube = new Tube(400.Millimeters, 12.Millimeters);
            var member = new MemberSegment { Section = tube, Material = StructuralSteel.S355 };
            Statue statue = new()
            {
                Name = "mast",
                Tower = new Tower { Levels = [new TowerLevel("foot", 0.Meters), new TowerLevel("half", (0.4 * L).Meters), new TowerLevel("head", L.Meters)], Segments = [member, member] },
                Fittings = [new Fitting { Name = "lamp", On = "head", Mass = mass.Kilograms, At = Point3.FromMeters(x, y, L + 0.5) }],
            };
            Movement head = StatueModel.Build(statue).Respond(new Situation { Name = "rest", Actions = [new SelfWeight()] }).Cases[0].OfPart("head");
            double d0 = 0.4, d1 = 0.376, EI = StructuralSteel.S355.YoungsModulus.Pascals * Math.PI / 64 * (Math.Pow(d0, 4) - Math.Pow(d1, 4)), M = mass * 9.80665;
            Assert.Equal(M * x * L / EI, head.RotationY.Radians, 1e-9 * M * L / EI);
            Assert.Equal(-M * y * L / EI, head.RotationX.Radians, 1e-9 * M * L / EI);
            Assert.Equal(M * x * L * L / (2 * EI), head.X.Meters, 1e-9 * M * L * L / EI);
            Assert.Equal(M * y * L * L / (2 * EI), head.Y.Meters, 1e-9 * M * L * L / EI);
        });

    /// <summary>A mast shortens under its own weight by (w L/2 + P) L/EA; all of its weight counts, whatever the ground holds.</summary>
    [Fact]
    public void A_mast_shortens_under_its_own_weight()
    {
        const double L = 12;
        var member = new MemberSegment { Section = new RoundBar(200.Millimeters), Material = StructuralSteel.S355 };
        foreach (int pieces in new[] { 1, 2, 5 })
        {
            Statue statue = new()
            {
                Name = "mast",
                Tower = new Tower
                {
                    Levels = [.. Enumerable.Range(0, pieces + 1).Select(i => new TowerLevel($"L{i}", (L * i / pieces).Meters))],
                    Segments = [.. Enumerable.Repeat<TowerSegment>(member, pieces)],
                },
            };
            Movement head = StatueModel.Build(statue).Respond(new Situation { Name = "rest", Actions = [new SelfWeight()] }).Cases[0].OfPart($"L{pieces}");
            double stress = StructuralSteel.S355.Density.KilogramsPerCubicMeter * 9.80665 * L * L / 2;
            Assert.Equal(-stress / StructuralSteel.S355.YoungsModulus.Pascals, head.Z.Meters, 1e-9 * stress / 2e11);
        }
    }

    [Fact]
    public void A_limb_on_a_springy_joint_sinks_by_the_joint_and_by_itself()
    {
        const double L = 4, P = 5000, K = 3e6, I = Math.PI / 64 * (0.2 * 0.2 * 0.2 * 0.2 - 0.18 * 0.18 * 0.18 * 0.18);
        var stiff = new CoreSegment
        {
            BendingX = Rigidity.FromNewtonSquareMeters(1e16),
            BendingY = Rigidity.FromNewtonSquareMeters(1e16),
            Torsion = Rigidity.FromNewtonSquareMeters(1e16),
            Axial = 1e16.Newtons,
        };
        var tube = new Tube(200.Millimeters, 10.Millimeters);
        Statue statue = new()
        {
            Name = "limb",
            Tower = new Tower { Levels = [new TowerLevel("foot", 0.Meters), new TowerLevel("head", 1.Meters)], Segments = [stiff] },
            Limbs =
            [
                new Limb
                {
                    Name = "arm", From = "head", Heading = 30.Degrees, Inclination = 0.Degrees, Root = Point3.FromMeters(0.2, 0.1, 0.3),
                    Tower = new Tower
                    {
                        Levels = [new TowerLevel("root", 0.Meters), new TowerLevel("tip", L.Meters)],
                        Segments = [new MemberSegment { Section = tube, Material = StructuralSteel.S355 }],
                        Base = new TowerBase { RotationY = K.NewtonMetersPerRadian, RotationX = 1e6.NewtonMetersPerRadian },
                    },
                },
            ],
        };
        Movement tip = StatueModel.Build(statue).Respond(new Situation { Name = "load", Actions = [new ImposedLoad { Name = "load", On = "arm/tip", Down = P.Newtons }] }).Cases[0].OfPart("arm/tip");
        double E = StructuralSteel.S355.YoungsModulus.Pascals, shear = P * L / (StructuralSteel.S355.ShearModulus.Pascals * tube.Properties.Asz);
        Assert.Equal(1, -tip.Z.Meters / (P * L * L * L / (3 * E * I) + shear + P * L * L / K), 1e-6);
    }

    [Fact]
    public void A_thicker_bar_is_never_softer_and_never_slows_the_skin()
    {
        double sway = double.PositiveInfinity, frequency = 0;
        foreach (double thickness in new[] { 4.0, 6, 8, 12, 20, 30 })
        {
            var sample = new SampleStatue { Thickness = thickness, HasLimb = false };
            StatueModel model = StatueModel.Build(sample.Statue with { Fittings = [] });
            double tip = model.Respond(new Situation { Name = "wind", Actions = [sample.Wind(0.2)] }).Cases[0].Of("tip").Sway.Meters;
            double first = model.Modes(1).First.Frequency.Hertz;
            Assert.InRange(tip, 0, sway * (1 + 1e-12));
            Assert.InRange(first, frequency * (1 - 1e-12), double.MaxValue);
            (sway, frequency) = (tip, first);
        }
    }

    [Fact]
    public void The_buckling_factor_of_all_headings_is_the_least_of_each_alone() =>
        Gen.Select(Gen.Double[0, 6], Gen.Double[2, 9], Gen.Int[0, 2]).Sample((from, factor, held) =>
        {
            var sample = new SampleStatue { Base = Bases[held] };
            StatueModel model = StatueModel.Build(sample.Statue);
            double[] headings = [from, from + 1, from + 2.2, from + 3.5, from + 5];
            Situation Blown(params double[] at) => new() { Name = "storm", Actions = [3 * new SelfWeight(), factor * sample.Wind(at)] };
            double least = headings.Min(at => model.Respond(Blown(at)).Stability.BucklingFactor!.Value);
            Stability all = model.Respond(Blown(headings)).Stability;
            Assert.Equal(least, all.BucklingFactor!.Value, 1e-6 * least);
            Assert.Equal(all.BucklingFactor.Value, model.Respond(Blown(all.Heading!.Value.Radians - sample.Turn)).Stability.BucklingFactor!.Value, 1e-6 * least);
        }, iter: 8, threads: 2);

    [Fact]
    public void Twice_the_loads_make_twice_the_results()
    {
        var sample = new SampleStatue();
        StatueModel model = StatueModel.Build(sample.Statue);
        Response once = model.Respond(Storm(sample)), twice = model.Respond(Storm(sample, 2));
        foreach (NamedPoint point in model.Statue.Points)
            Assert.Equal(2, twice.Cases[0].Of(point.Name).Sway / once.Cases[0].Of(point.Name).Sway, 1e-9);
        Assert.Equal(2, twice.Cases[1].Base.Overturning / once.Cases[1].Base.Overturning, 1e-9);
        Assert.Equal(once.Stability.BucklingFactor!.Value, 2 * twice.Stability.BucklingFactor!.Value, 1e-6 * once.Stability.BucklingFactor.Value);
        for (int i = 0; i < once.Bars.Count; i++)
            Assert.Equal(2, twice.Bars[i].Stress / once.Bars[i].Stress, 1e-9);
    }

    [Fact]
    public void More_levels_and_stations_leave_the_mass_and_its_center_alone()
    {
        Statue coarse = new SampleStatue { HasLimb = false }.Statue;
        var neck = (MemberSegment)coarse.Tower.Segments[2];
        Section middle = neck.SectionAt(0.5);
        TowerLevel top = coarse.Tower.Levels[3], below = coarse.Tower.Levels[2];
        Statue fine = coarse with
        {
            Tower = coarse.Tower with
            {
                Levels = [.. coarse.Tower.Levels.Take(3), new TowerLevel("mid", 7.5.Meters) { OffsetX = 0.5 * (top.OffsetX + below.OffsetX), OffsetY = 0.5 * (top.OffsetY + below.OffsetY) }, top],
                Segments = [.. coarse.Tower.Segments.Take(2), neck with { TopSection = middle }, neck with { Section = middle }],
            },
            Skin = coarse.Skin! with
            {
                Stations = [.. coarse.Skin.Stations.Take(1), new SkinStation { Elevation = 1.5.Meters, Outline = new EllipseOutline { WidthX = 3.3.Meters, WidthY = 2.9.Meters, CenterX = 0.15.Meters, CenterY = 0.05.Meters } }, .. coarse.Skin.Stations.Skip(1)],
                BandEdges = [.. coarse.Skin.Stations.Select(s => s.Elevation)],
            },
        };
        MassSummary a = StatueModel.Build(coarse).Masses, b = StatueModel.Build(fine).Masses;
        foreach (MassGroup group in Enum.GetValues<MassGroup>())
            Assert.Equal(a.Of(group).Kilograms, b.Of(group).Kilograms, 1e-9 * a.TotalKilograms);
        Assert.InRange((a.CenterMeters - b.CenterMeters).Length, 0, 1e-8);
    }

    /// <summary>The summary adds up parts; the mass matrix, moved rigidly, must agree.</summary>
    [Fact]
    public void Masses_and_center_are_those_of_the_mass_matrix()
    {
        StatueModel model = StatueModel.Build(new SampleStatue { Turn = 0.7, Base = SampleStatue.Springs, Bays = 2 }.Statue);
        double[] x = model.Frame.RigidMotion(0), y = model.Frame.RigidMotion(1), aboutZ = model.Frame.RigidMotion(5), aboutY = model.Frame.RigidMotion(4);
        double[] px = model.Frame.InertiaForces(x), py = model.Frame.InertiaForces(y);
        double mass = Dot(px, x);
        Assert.Equal(1, mass / model.Masses.TotalKilograms, 1e-9);
        var center = new Vector3D(Dot(py, aboutZ), -Dot(px, aboutZ), Dot(px, aboutY)) / mass;
        Assert.InRange((center - model.Masses.CenterMeters).Length, 0, 1e-8);

        static double Dot(double[] a, double[] b) => a.Zip(b, (p, q) => p * q).Sum();
    }

    [Fact]
    public void Bars_of_a_ring_share_the_whole_wind_of_a_convex_limp_band() =>
        Gen.Select(Gen.Double[1.5, 3], Gen.Double[1.5, 3], Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Int[2, 12], Gen.Double[-0.2, 0.2]).Sample((a, b, turn, heading, count, off) =>
        {
            var outline = new EllipseOutline { WidthX = a.Meters, WidthY = b.Meters, Rotation = turn.Radians, CenterX = off.Meters };
            Standoff flat = new() { Section = new FlatBar(60.Millimeters, 8.Millimeters), Material = StainlessSteel.Grade316L, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid };
            Statue statue = new()
            {
                Name = "drum",
                Tower = new Tower { Levels = [new TowerLevel("L0", 0.Meters), new TowerLevel("L1", 2.Meters)], Segments = [new MemberSegment { Section = new Tube(300.Millimeters, 10.Millimeters), Material = StructuralSteel.S355 }] },
                Skin = new Skin { Material = Copper.HalfHardR240, Thickness = 2.Millimeters, Stations = [new SkinStation { Elevation = 0.Meters, Outline = outline }, new SkinStation { Elevation = 3.Meters, Outline = outline }] },
                Standoffs =
                [
                    new EvenRing { Level = "L1", Count = count, Length = 0.4.Meters, Standoff = flat },
                    new EvenRing { Level = "L1", Rise = (-0.35).Meters, Count = 3, FirstAngle = 0.3.Radians, Length = 0.4.Meters, Standoff = flat },
                ],
            };
            StatueModel model = StatueModel.Build(statue);
            LoadCase loadCase = model.Respond(new Situation { Name = "wind", Actions = [new SampleStatue().Wind(heading)] }).Cases[0];
            Vector3D sum = Vector3D.Zero;
            foreach ((RingElement ring, int band) in model.Rings)
            {
                foreach (BarModel bar in ring.Bars)
                {
                    var f = new double[12];
                    loadCase.ForcesOf(ring, bar, band, SkinAssumption.LimpSkin, f);
                    sum += bar.Bar.Place.Axes.ToGlobal(new Vector3D(f[6], f[7], f[8]));
                }
            }
            var expected = loadCase.WindForce.Newtons * new Vector3D(Math.Cos(heading), Math.Sin(heading), 0);
            Assert.InRange((sum - expected).Length, 0, 1e-8 * expected.Length);
        }, iter: 30);

    [Fact]
    public void Limp_strips_of_a_level_limb_share_the_wind_along_its_axis()
    {
        SampleStatue sample = new();
        Statue statue = sample.Statue;
        Limb wing = statue.Limbs[0] with { Inclination = default };
        StatueModel model = StatueModel.Build(statue with { Limbs = [wing], Points = [], Fittings = [] });
        LoadCase loadCase = model.Respond(new Situation { Name = "wind", Actions = [sample.Wind(wing.Heading.Radians)] }).Cases[0];
        double area = 0, shared = 0;
        foreach (SkinBand band in model.Bodies[1].Bands)
            area += band.TaperArea + band.CapArea;
        foreach ((RingElement ring, int band) in model.Rings.Where(r => model.BandAt(r.BandInStatue).Body == model.Bodies[1]))
        {
            double q = 0.5 * 1.25 * SampleStatue.Gust * SampleStatue.Gust * 1.3 * 1.1;
            foreach (BarModel bar in ring.Bars)
            {
                var f = new double[12];
                if (loadCase.ForcesOf(ring, bar, band, SkinAssumption.LimpSkin, f))
                    shared += new Vector3D(f[6], f[7], f[8]).Length / q;
            }
        }
        Assert.True(area > 0.1);
        Assert.Equal(area, shared, 1e-6 * area);
    }

    [Fact]
    public void Energy_shares_of_a_mode_make_one()
    {
        // A limb that starts in the very center of its level shares the level's node.
        Statue statue = new SampleStatue().Statue;
        statue = statue with { Limbs = [statue.Limbs[0] with { Root = default, From = "L3" }] };
        foreach (ModeResult mode in StatueModel.Build(statue).Modes(8).Modes)
            Assert.Equal(1, mode.EnergyShares.Values.Sum(), 1e-9);
    }

    [Fact]
    public void Overturning_is_about_the_center_of_the_base_wherever_that_is()
    {
        var member = new MemberSegment { Section = new Tube(400.Millimeters, 12.Millimeters), Material = StructuralSteel.S355 };
        Statue statue = new()
        {
            Name = "mast on a plinth",
            Tower = new Tower { Levels = [new TowerLevel("foot", 2.Meters) { OffsetX = 1.Meters }, new TowerLevel("head", 12.Meters) { OffsetX = 1.Meters }], Segments = [member] },
        };
        BaseReaction reaction = StatueModel.Build(statue).Respond(new Situation { Name = "pull", Actions = [new SelfWeight(), new ImposedLoad { Name = "pull", On = "head", AlongX = 1000.Newtons }] }).Cases[0].Base;
        Assert.Equal(10_000, reaction.MomentY.NewtonMeters, 1e-6);
        Assert.Equal(0, reaction.MomentX.NewtonMeters, 1e-6);
    }

    private static Vector3D Force(BaseReaction r) => new(r.ForceX.Newtons, r.ForceY.Newtons, r.ForceZ.Newtons);

    private static Vector3D Moment(BaseReaction r) => new(r.MomentX.NewtonMeters, r.MomentY.NewtonMeters, r.MomentZ.NewtonMeters);

    private static Vector3D Turn(Vector3D v, double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        return new Vector3D(cos * v.X - sin * v.Y, sin * v.X + cos * v.Y, v.Z);
    }
}
