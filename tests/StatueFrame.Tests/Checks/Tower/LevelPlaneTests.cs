using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Tests.Checks.Members;

/// <summary>The axial forces in the plan of a level against frames of bars from the kernel, and against equilibrium.</summary>
public class LevelPlaneTests
{
    private static readonly LevelFrame braced = new()
    {
        Horizontals = new RectangularTube(120.Millimeters, 120.Millimeters, 8.Millimeters),
        PlanBracing = new AngleBar(60.Millimeters, 6.Millimeters),
        Material = StructuralSteel.S355,
    };

    private static readonly Hub arms = new() { Arms = new RectangularTube(150.Millimeters, 150.Millimeters, 10.Millimeters), Material = StructuralSteel.S355 };

    private static TowerLevel Level(int legs, bool hub, double size = 1.2) => new("mid", 3.Meters)
    {
        Plan = legs == 4 ? new RectangularPlan(size.Meters, (0.7 * size).Meters) : new PolygonPlan(legs, size.Meters),
        Frame = hub ? braced with { PlanBracing = null } : braced,
        Hub = hub ? arms : null,
    };

    private static BarElement Bar(int a, Vector3D from, int b, Vector3D to, Section section) =>
        new(a, from, b, to, StructuralSteel.S355.YoungsModulus.Pascals * section.Area.SquareMeters, 1, Vector3D.Zero, Vector3D.Zero);

    /// <summary>Random forces on the legs and, in the middle of nothing, what all legs answer evenly: both on a frame of pinned bars.</summary>
    [Theory]
    [InlineData(3, false)]
    [InlineData(4, false)]
    [InlineData(4, true)]
    [InlineData(6, false)]
    [InlineData(6, true)]
    public void A_level_is_the_truss_that_the_kernel_solves(int legs, bool hub)
    {
        TowerLevel level = Level(legs, hub);
        LevelMember[] members = [.. level.Members];
        Vector3D[] at = level.Legs;
        var builder = new FrameBuilder();
        foreach (Vector3D leg in at)
            builder.Restrain(builder.AddNode(leg), Freedoms.Z | Freedoms.Rotations);
        builder.Restrain(builder.AddNode(level.Center), hub ? Freedoms.Z | Freedoms.Rotations : Freedoms.All);
        builder.Restrain(0, Freedoms.X | Freedoms.Y | Freedoms.Z | Freedoms.Rotations);
        // What is left to hold against a turn about the first leg, square to the way from it: the loads put nothing on it.
        Vector3D square = Vector3D.UnitZ.Cross((at[1] - at[0]).Normalized());
        double[] way = [square.X, square.Y, 0, 0, 0, 0];
        builder.AddStiffness(1, [.. Enumerable.Range(0, 36).Select(i => 1e8 * way[i / 6] * way[i % 6])]);
        BarElement[] bars = [.. members.Select(m => Bar(NodeOf(m.From), m.From, NodeOf(m.To), m.To, m.Section))];
        foreach (BarElement bar in bars)
            builder.Add(bar);
        Frame frame = builder.Build();
        var statics = new LinearStatics(frame);
        var plane = new LevelPlane(level, LevelSide.Of(level));
        Gen.Double[-1, 1].Array[2 * legs].Sample(f =>
        {
            var own = new double[plane.Rows];
            var loads = new double[frame.FreedomCount];
            Vector3D sum = Vector3D.Zero;
            double moment = 0, squares = 0;
            for (int i = 0; i < legs; i++)
            {
                var force = new Vector3D(f[2 * i], f[2 * i + 1], 0);
                plane.Push(at[i], force, own);
                Vector3D r = at[i] - level.Center;
                (sum, moment, squares) = (sum + force, moment + r.Cross(force).Z, squares + r.Dot(r));
            }
            for (int i = 0; i < legs; i++)
            {
                Vector3D r = at[i] - level.Center;
                loads[6 * i] = f[2 * i] - sum.X / legs + moment * r.Y / squares;
                loads[6 * i + 1] = f[2 * i + 1] - sum.Y / legs - moment * r.X / squares;
            }
            double[] u = statics.Solve(loads);
            for (int j = 0; j < bars.Length; j++)
            {
                var local = new double[12];
                bars[j].Gather(u, local);
                Assert.Equal(bars[j].AxialForce(local), own[j], 1e-6);
            }
        });

        int NodeOf(Vector3D point) => Array.FindIndex([.. at, level.Center], node => (node - point).Length < 1e-9);
    }

    /// <summary>Two panels, one on the other, and the level between them.</summary>
    private static StatueModel TwoPanels(Bracing bracing, double top = 1.2)
    {
        LatticeSegment panel = new() { Legs = new AngleBar(120.Millimeters, 12.Millimeters), Braces = new AngleBar(60.Millimeters, 6.Millimeters), Bracing = bracing, Material = StructuralSteel.S355 };
        return StatueModel.Build(new Statue
        {
            Name = "two panels",
            Tower = new Tower
            {
                Levels = [new TowerLevel("base", 0.Meters) { Plan = TowerPlan.Square(1.6.Meters) }, Level(4, hub: false) with { Elevation = 2.Meters, Plan = TowerPlan.Square(1.2.Meters) }, new TowerLevel("top", 4.Meters) { Plan = TowerPlan.Square(top.Meters) }],
                Segments = [panel, panel],
            },
        });
    }

    /// <summary>Braces that cross hold one another halfway about their weak axis; others and legs buckle over their whole length (common practice, no source).</summary>
    [Theory]
    [InlineData(Bracing.Cross, 0.5)]
    [InlineData(Bracing.KBrace, 1)]
    [InlineData(Bracing.SingleDiagonal, 1)]
    public void Braces_that_cross_buckle_over_half_their_length(Bracing bracing, double weak)
    {
        SegmentModel segment = TwoPanels(bracing).Bodies[0].Segments[0];
        foreach (LatticeMember member in segment.Members)
        {
            LoadedMember loaded = MemberSheet.Loaded(segment, (LatticeSegment)segment.Segment, member, 1, default, "");
            Assert.Equal((member.Role == LatticeRole.Leg ? 1 : weak, 1), (loaded.WeakFactor, loaded.StrongFactor));
            Assert.Equal((member.To - member.From).Length, loaded.Length.Meters, 1e-12);
        }
    }

    /// <summary>What members push on the level they end in is what the cut there says, whatever the bracing.</summary>
    [Theory]
    [InlineData(Bracing.Cross)]
    [InlineData(Bracing.KBrace)]
    [InlineData(Bracing.SingleDiagonal)]
    public void Pushes_of_members_add_up_to_the_cut(Bracing bracing)
    {
        SegmentModel segment = TwoPanels(bracing).Bodies[0].Segments[0];
        foreach (bool top in (bool[])[true, false])
        {
            (int Member, Vector3D At, Vector3D[] Pushes)[] all = [.. segment.PushesOn(top)];
            for (int k = 0; k < 6; k++)
            {
                Vector3D sum = Vector3D.Zero;
                foreach ((_, _, Vector3D[] pushes) in all)
                    sum += pushes[k];
                Vector3D unit = k switch { 0 => Vector3D.UnitX, 1 => Vector3D.UnitY, 2 => Vector3D.UnitZ, _ => Vector3D.Zero };
                Assert.True((sum - (top ? -1 : 1) * unit).Length < 1e-9, $"{k}");
            }
        }
    }

    /// <summary>
    /// The whole as a space frame in which the level is its members and nothing is rigid but the top: under shear, moment, twist and
    /// thrust no member of the level has more than what is counted; single diagonals, whose panels warp, leave up to a sixth to
    /// the plans that are rigid in the analysis.
    /// </summary>
    [Theory]
    [InlineData(Bracing.Cross, 1.2)]
    [InlineData(Bracing.Cross, 0.6)]
    [InlineData(Bracing.SingleDiagonal, 1.2)]
    [InlineData(Bracing.SingleDiagonal, 0.6)]
    public void No_member_in_the_plan_has_more_than_is_counted(Bracing bracing, double topSize)
    {
        StatueModel model = TwoPanels(bracing, topSize);
        BodyModel body = model.Bodies[0];
        TowerLevel mid = body.Tower.Levels[1];
        var plane = new LevelPlane(mid, LevelSide.Of(mid));
        double[][] below = plane.PerUnit(body.Segments[0], top: true), above = plane.PerUnit(body.Segments[1], top: false);
        var nodes = new List<Vector3D>();
        var builder = new FrameBuilder();
        LevelMember[] level = [.. mid.Members];
        BarElement[] plan = [.. level.Select(m => Bar(Node(m.From), m.From, Node(m.To), m.To, m.Section))];
        foreach (BarElement bar in plan)
            builder.Add(bar);
        foreach (LatticeMember m in body.Segments.SelectMany(segment => segment.Members))
            builder.Add(Bar(Node(m.From), m.From, Node(m.To), m.To, m.Section));
        int middle = builder.AddNode(body.Tower.Levels[2].Center);
        for (int i = 0; i < nodes.Count; i++)
        {
            builder.Restrain(i, nodes[i].Z < 1e-9 ? Freedoms.All : Freedoms.Rotations);
            // The top is a stiff plate on its four corners.
            if (nodes[i].Z > 4 - 1e-9)
            {
                for (int j = 0; j < i; j++)
                {
                    if (nodes[j].Z > 4 - 1e-9)
                        builder.Add(new BarElement(j, nodes[j], i, nodes[i], 1e13, 1, Vector3D.Zero, Vector3D.Zero));
                }
            }
        }
        builder.Restrain(middle, Freedoms.All);
        Frame frame = builder.Build();
        var statics = new LinearStatics(frame);
        int[] corners = [.. Enumerable.Range(0, nodes.Count).Where(i => nodes[i].Z > 4 - 1e-9)];
        HubSheet.Arm[] legs = HubSheet.Arm.Of(body.Tower.Levels[2], 0);
        Gen.Double[-1, 1].Array[6].Sample(f =>
        {
            Vector3D force = new(f[0], f[1], f[2]), moment = new(f[3], f[4], f[5]), atMid = moment + new Vector3D(0, 0, 2).Cross(force);
            Vector3D[] shares = HubSheet.Share(legs, force, moment);
            var loads = new double[frame.FreedomCount];
            for (int i = 0; i < legs.Length; i++)
            {
                int node = corners.MinBy(c => (nodes[c] - legs[i].Leg).Length);
                (loads[6 * node], loads[6 * node + 1], loads[6 * node + 2]) = (shares[i].X, shares[i].Y, shares[i].Z);
            }
            double[] u = statics.Solve(loads), counted = new double[plane.Rows];
            Add(above, force, moment);
            Add(below, force, atMid);
            for (int j = 0; j < plan.Length; j++)
            {
                var local = new double[12];
                plan[j].Gather(u, local);
                Assert.True(Math.Abs(plan[j].AxialForce(local)) <= (bracing == Bracing.Cross ? 1.02 : 1.17) * counted[j] + (bracing == Bracing.Cross ? 0.03 : 0.06), $"{j}: {plan[j].AxialForce(local):0.000} of {counted[j]:0.000}");
            }

            void Add(double[][] perUnit, Vector3D F, Vector3D M)
            {
                ReadOnlySpan<double> cut = [F.X, F.Y, F.Z, M.X, M.Y, M.Z];
                for (int j = 0; j < counted.Length; j++)
                {
                    double sum = 0;
                    for (int k = 0; k < 6; k++)
                        sum += cut[k] * perUnit[k][j];
                    counted[j] += Math.Abs(sum);
                }
            }
        });

        int Node(Vector3D at)
        {
            int known = nodes.FindIndex(node => (node - at).Length < 1e-9);
            if (known >= 0)
                return known;
            nodes.Add(at);
            return builder.AddNode(at);
        }
    }
}
