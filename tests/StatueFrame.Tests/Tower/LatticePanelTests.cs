using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Tests.Analyses;
using UnitsNet;

namespace StatueFrame.Tests.Towers;

public class LatticePanelTests
{
    private sealed record Sample(SegmentModel Ours, LatticeMesh Mesh, Vector3D LowerNode, Vector3D UpperNode);

    private static readonly Section round = new Tube(140.Millimeters, 9.Millimeters), angle = new AngleBar(90.Millimeters, 60.Millimeters, 8.Millimeters);

    private static Gen<(double Low, double High, double Height, double X, double Y)> Shape { get; } =
        Gen.Select(Gen.Double[1, 4], Gen.Double[0.6, 3], Gen.Double[1, 6], Gen.Double[-0.6, 0.6], Gen.Double[-0.6, 0.6]);

    private static Gen<Sample> Panels { get; } = Gen.Select(
        Dense.OneOf(3, 4, 6), Gen.Int[1, 4], Dense.OneOf(Bracing.Cross, Bracing.SingleDiagonal, Bracing.KBrace), Shape,
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-1.5, 1.5], Gen.Double[0, 1]),
        (legs, bays, bracing, shape, turn) => Make(legs, bays, bracing, shape, turn, round));

    private static Sample Make(
        int legs, int bays, Bracing bracing, (double Low, double High, double Height, double X, double Y) s, (double Heading, double Inclination, double First) turn, Section leg)
    {
        var segment = new LatticeSegment
        {
            Legs = leg,
            Braces = new RoundBar(40.Millimeters),
            Horizontals = angle,
            Material = StructuralSteel.S355,
            Bracing = bracing,
            Bays = bays,
            ConnectionMassFraction = 0.12,
        };
        var lower = new TowerLevel("a", 0.Meters) { Plan = new PolygonPlan(legs, s.Low.Meters, turn.First.Radians) };
        var upper = new TowerLevel("b", s.Height.Meters) { Plan = new PolygonPlan(legs, s.High.Meters, turn.First.Radians), OffsetX = s.X.Meters, OffsetY = s.Y.Meters };
        // Axes of a limb: z along it, y level.
        (double sh, double ch) = Math.SinCos(turn.Heading);
        (double si, double ci) = Math.SinCos(turn.Inclination);
        Vector3D z = new(ci * ch, ci * sh, si), y = new(-sh, ch, 0), x = y.Cross(z), origin = new(1, -2, 3);
        Vector3D Out(double px, double py, double pz) => origin + px * x + py * y + pz * z;
        Vector3D[] Corners(double diameter, double dx, double dy, double height) =>
            [.. Enumerable.Range(0, legs).Select(i => turn.First + 2 * Math.PI * i / legs).Select(a => Out(dx + 0.5 * diameter * Math.Cos(a), dy + 0.5 * diameter * Math.Sin(a), height))];
        Vector3D lowCenter = Out(0, 0, 0), highCenter = Out(s.X, s.Y, s.Height), lowNode = lowCenter + new Vector3D(0.3, -0.2, 0.1);
        var ours = new SegmentModel(segment, "panel", new BodyAxes(new Axes3D(x, y, z), origin), (new Place(0, lowNode, lowCenter), lower), (Place.At(1, highCenter), upper));
        return new Sample(ours, new LatticeMesh(segment, Corners(s.Low, 0, 0, 0), Corners(s.High, s.X, s.Y, s.Height), lowNode, highCenter), lowNode, highCenter);
    }

    [Fact]
    public void Stiffness_is_that_of_the_panel_meshed_member_by_member() =>
        Panels.Sample(p => Assert.InRange(Dense.Difference(Dense.Stiffness(p.Ours.Element), p.Mesh.Stiffness), 0, 1e-9), iter: 40);

    [Fact]
    public void Angle_legs_turn_their_backs_the_same_way_all_round() =>
        Gen.Select(Dense.OneOf(3, 4, 6), Gen.Int[1, 4], Shape, Gen.Double[0, 1]).Sample((legs, bays, shape, first) =>
        {
            Sample p = Make(legs, bays, Bracing.Cross, (shape.Low, shape.High, shape.Height, 0, 0), (0.4, 0.3, first), angle);
            Assert.InRange(Dense.Difference(Dense.Stiffness(p.Ours.Element), p.Mesh.Stiffness), 0, 1e-9);
        }, iter: 20);

    [Fact]
    public void Members_carry_the_axial_forces_of_the_mesh() =>
        Gen.Select(Panels, Gen.Double[-1e-3, 1e-3].Array[12]).Sample((p, u) =>
        {
            Dictionary<string, double> expected = p.Mesh.AxialForces(Vector<double>.Build.Dense(u));
            var axial = new double[p.Ours.Members.Count];
            p.Ours.AxialForces(p.Ours.Element, u, axial);
            double scale = expected.Values.Max(Math.Abs);
            Assert.Equal(expected.Count, axial.Length);
            for (int i = 0; i < axial.Length; i++)
                Assert.Equal(expected[p.Ours.Members[i].Label], axial[i], 1e-8 * scale);
        }, iter: 30);

    /// <summary>What acts between the levels as the mass does: the weight of the members bay by bay, and sideways.</summary>
    [Fact]
    public void Members_carry_what_acts_between_the_levels() =>
        Gen.Select(Panels, Gen.Double[-1e-5, 1e-5].Array[12], Gen.Double[-10, 10].Array[3], Gen.Double[0, 2]).Sample((p, u, side, weight) =>
        {
            var wind = new Vector3D(side[0], side[1], side[2]);
            Dictionary<string, double> expected = p.Mesh.AxialForces(Vector<double>.Build.Dense(u), wind + new Vector3D(0, 0, -weight * 9.80665));
            var axial = new double[p.Ours.Members.Count];
            p.Ours.AxialForces(p.Ours.Element, u, axial, new BetweenLevels(weight, 0.25 * p.Ours.Mass * wind, 0.75 * p.Ours.Mass * wind));
            double scale = expected.Values.Max(Math.Abs);
            for (int i = 0; i < axial.Length; i++)
                Assert.Equal(expected[p.Ours.Members[i].Label], axial[i], 1e-8 * scale);
        }, iter: 30);

    [Fact]
    public void Mass_center_and_inertia_of_rigid_motion_are_exact() => Panels.Sample(p =>
    {
        Matrix<double> rigid = Dense.Arm(p.LowerNode).Stack(Dense.Arm(p.UpperNode));
        Matrix<double> ours = rigid.TransposeThisAndMultiply(Dense.Mass(p.Ours.Element) * rigid), expected = p.Mesh.RigidMass();
        Assert.InRange(Dense.Difference(ours, expected), 0, 1e-9);
        Assert.Equal(expected[0, 0], p.Ours.Mass, 1e-9 * expected[0, 0]);
        var center = new Vector3D(expected[1, 5], -expected[0, 5], expected[0, 4]) / expected[0, 0];
        Assert.InRange((p.Ours.CenterOfMass - center).Length, 0, 1e-8);
    }, iter: 20);

    [Fact]
    public void A_rigid_motion_strains_nothing() => Panels.Sample(p =>
    {
        Matrix<double> k = Dense.Stiffness(p.Ours.Element), rigid = Dense.Arm(p.LowerNode).Stack(Dense.Arm(p.UpperNode));
        Assert.InRange((k * rigid).InfinityNorm(), 0, 1e-9 * k.InfinityNorm());
    }, iter: 20);

    /// <summary>A bar of constant force N has the energy N times its length; its second derivative is the geometric stiffness.</summary>
    [Fact]
    public void Geometric_stiffness_of_a_brace_on_rigid_arms_follows_from_its_length()
    {
        Vector3D a = new(0.1, -0.2, 0), b = new(-0.3, 0.2, 2), armA = new(0.9, 0.8, 0.1), armB = new(-0.7, 0.6, -0.2);
        var bar = new BarElement(0, a, 1, b, 2e8, 0, armA, armB);
        double[] u = [0, 0, 0, 0, 0, 0, 1e-3, -2e-3, 3e-3, 0, 0, 0];
        var kg = new double[144];
        bar.AddGeometricStiffness(u, kg);
        double N = bar.AxialForce(u), h = 2e-4;
        double Length(int i, double di, int j, double dj)
        {
            var q = new double[12];
            q[i] += di;
            q[j] += dj;
            return (End(b, armB, q.AsSpan(6)) - End(a, armA, q.AsSpan(0, 6))).Length;
        }
        for (int i = 0; i < 12; i++)
        {
            for (int j = 0; j < 12; j++)
            {
                double second = (Length(i, h, j, h) - Length(i, h, j, -h) - Length(i, -h, j, h) + Length(i, -h, j, -h)) / (4 * h * h);
                Assert.Equal(N * second, kg[12 * i + j], 1e-5 * Math.Abs(N));
            }
        }

        static Vector3D End(Vector3D node, Vector3D arm, ReadOnlySpan<double> q)
        {
            // Rodrigues: a finite turn by the vector (q3, q4, q5).
            var turn = new Vector3D(q[3], q[4], q[5]);
            double angle = turn.Length;
            Vector3D turned = arm;
            if (angle > 0)
            {
                Vector3D e = turn / angle;
                turned = Math.Cos(angle) * arm + Math.Sin(angle) * e.Cross(arm) + (1 - Math.Cos(angle)) * e.Dot(arm) * e;
            }
            return node + new Vector3D(q[0], q[1], q[2]) + turned;
        }
    }

    [Theory]
    [InlineData(Bracing.Cross)]
    [InlineData(Bracing.SingleDiagonal)]
    [InlineData(Bracing.KBrace)]
    public void Panel_buckles_as_its_mesh_does(Bracing bracing)
    {
        const double Width = 1.5, Height = 2, Load = 1e5;
        var segment = new LatticeSegment { Legs = new RoundBar(100.Millimeters), Braces = new RoundBar(5.Millimeters), Material = StructuralSteel.S355, Bracing = bracing };
        TowerLevel Level(string name, double z) => new(name, z.Meters) { Plan = TowerPlan.Square(Width.Meters) };
        var top = new Vector3D(0, 0, Height);
        var ours = new SegmentModel(segment, "panel", new BodyAxes(Axes3D.Global, Vector3D.Zero), (Place.At(0, Vector3D.Zero), Level("a", 0)), (Place.At(1, top), Level("b", Height)));
        double expected = Factor(Mesh(8)), coarse = Factor(Mesh(1));
        var builder = new FrameBuilder();
        builder.AddNode(Vector3D.Zero);
        builder.AddNode(top);
        double factor = Factor(builder.Add(ours.Element));
        Assert.Equal(1, factor / coarse, 1e-9);
        // One element for a leg that sways between two level plans: 10 EI/L² for π² EI/L², 1.3 % too stiff.
        Assert.Equal(1, factor / expected, 0.02);

        double Factor(FrameBuilder model)
        {
            Frame frame = model.Restrain(0, Freedoms.All).Build();
            var load = new double[frame.FreedomCount];
            load[8] = -Load;
            return LinearBuckling.Solve(frame, new LinearStatics(frame).Solve(load), 1).LoadFactors[0];
        }

        FrameBuilder Mesh(int pieces)
        {
            var mesh = new FrameBuilder();
            mesh.AddNode(Vector3D.Zero);
            mesh.AddNode(top);
            Vector3D[] corner = [new(0.75, 0.75, 0), new(-0.75, 0.75, 0), new(-0.75, -0.75, 0), new(0.75, -0.75, 0)];
            BeamSection leg = segment.Legs.Of(segment.Material), brace = segment.Braces.Of(segment.Material);
            for (int i = 0; i < 4; i++)
            {
                int before = 0;
                for (int p = 0; p < pieces; p++)
                {
                    int next = p + 1 == pieces ? 1 : mesh.AddNode(corner[i] + (double)(p + 1) / pieces * top);
                    Vector3D from = p == 0 ? Vector3D.Zero : corner[i] + (double)p / pieces * top, to = next == 1 ? top : corner[i] + (double)(p + 1) / pieces * top;
                    mesh.Add(new BeamElement(before, from, next, to, new BeamDefinition(leg)
                    {
                        Up = corner[i],
                        StartOffset = p == 0 ? corner[i] : default,
                        EndOffset = next == 1 ? corner[i] : default,
                    }));
                    before = next;
                }
                Vector3D other = corner[(i + 1) % 4];
                void Brace(Vector3D foot, Vector3D head) => mesh.Add(new BarElement(0, Vector3D.Zero, 1, top, brace.EA, 0, foot, head));
                if (bracing == Bracing.KBrace)
                {
                    Brace(corner[i], 0.5 * (corner[i] + other));
                    Brace(other, 0.5 * (corner[i] + other));
                }
                else
                {
                    if (bracing == Bracing.Cross || i % 2 == 0)
                        Brace(corner[i], other);
                    if (bracing == Bracing.Cross || i % 2 == 1)
                        Brace(other, corner[i]);
                }
            }
            return mesh;
        }
    }
}
