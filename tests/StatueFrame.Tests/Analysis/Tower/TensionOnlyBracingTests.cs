using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Tests.Towers;
using UnitsNet;

namespace StatueFrame.Tests.Analyses;

/// <summary>
/// One panel with tension-only braces, against every possible set of acting braces tried in turn: the right one is that
/// in which acting braces pull and slack ones would be pushed.
/// </summary>
public class TensionOnlyBracingTests
{
    private const double Width = 2, Height = 3;

    private static readonly LatticeSegment panel = new()
    {
        Legs = new Tube(100.Millimeters, 8.Millimeters),
        Braces = new FlatBar(50.Millimeters, 6.Millimeters),
        Material = StructuralSteel.S355 with { Density = 500.KilogramsPerCubicMeter },
        Bracing = Bracing.TensionOnlyCross,
    };

    private static Statue Tower(LatticeSegment segment, double height = Height) => new()
    {
        Name = "panel",
        Tower = new Tower
        {
            Levels = [new TowerLevel("foot", 0.Meters) { Plan = TowerPlan.Square(Width.Meters) }, new TowerLevel("head", height.Meters) { Plan = TowerPlan.Square(Width.Meters) }],
            Segments = [segment],
        },
    };

    private static LoadCase Respond(LatticeSegment segment, double x, double y, double down, Vector3D at, double height = Height) =>
        StatueModel.Build(Tower(segment, height)).Respond(new Situation
        {
            Name = "load",
            Actions = [new ImposedLoad { Name = "pull", On = "head", AlongX = x.Newtons, AlongY = y.Newtons, Down = down.Newtons, At = Point3.FromMeters(at) }],
        }).Cases[0];

    private static Vector3D[] Corners(double z) => [new(1, 1, z), new(-1, 1, z), new(-1, -1, z), new(1, -1, z)];

    private static LatticeMesh Mesh(LatticeSegment segment, Func<string, bool> acts, double height = Height) =>
        new(segment, Corners(0), Corners(height), Vector3D.Zero, new Vector3D(0, 0, height), acts);

    /// <summary>All consistent sets of acting braces, each with the displacements of the head.</summary>
    private static List<(HashSet<string> Slack, Vector<double> U, Dictionary<string, double> N)> Consistent(Vector<double> load)
    {
        string[] braces = [.. Mesh(panel, _ => true).AxialForces(Vector<double>.Build.Dense(12)).Keys.Where(k => k.StartsWith("brace", StringComparison.Ordinal))];
        var found = new List<(HashSet<string>, Vector<double>, Dictionary<string, double>)>();
        for (int set = 0; set < 1 << braces.Length; set++)
        {
            HashSet<string> slack = [.. braces.Where((_, i) => (set >> i & 1) == 0)];
            LatticeMesh mesh = Mesh(panel, label => !slack.Contains(label));
            Vector<double> head = mesh.Stiffness.SubMatrix(6, 6, 6, 6).Solve(load), u = Vector<double>.Build.Dense([0, 0, 0, 0, 0, 0, .. head]);
            Dictionary<string, double> forces = mesh.AxialForces(u);
            double noise = 1e-9 * load.L2Norm();
            if (braces.All(b => slack.Contains(b) ? forces[b] <= noise : forces[b] >= -noise))
                found.Add((slack, head, forces));
        }
        return found;
    }

    [Fact]
    public void The_only_consistent_set_of_braces_is_found() =>
        Gen.Select(Gen.Double[-2e4, 2e4], Gen.Double[-2e4, 2e4], Gen.Double[-3e4, 3e4], Gen.Double[-1, 1], Gen.Double[-1, 1]).Sample((x, y, down, ax, ay) =>
        {
            var at = new Vector3D(ax, ay, Height);
            LoadCase ours = Respond(panel, x, y, down, at);
            Vector3D force = new(x, y, -down), moment = (at - new Vector3D(0, 0, Height)).Cross(force);
            var sets = Consistent(Vector<double>.Build.Dense([force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z]));
            // Sets that differ only in braces of no force are the same state.
            Assert.NotEmpty(sets);
            Vector<double> u = sets[0].U;
            Assert.All(sets, s => Assert.True((s.U - u).L2Norm() <= 1e-6 * u.L2Norm()));
            Movement head = ours.OfPart("head");
            Assert.InRange((new Vector3D(head.X.Meters, head.Y.Meters, head.Z.Meters) - new Vector3D(u[0], u[1], u[2])).Length, 0, 1e-9 * u.L2Norm());
            foreach (MemberForce member in ours.LatticeMembers())
            {
                double expected = sets[0].Slack.Contains(member.Member) ? 0 : sets[0].N[member.Member];
                Assert.Equal(expected, member.Axial.Newtons, 1e-6 * (force.Length + 1));
                Assert.True(!member.Member.StartsWith("brace", StringComparison.Ordinal) || member.Axial.Newtons >= 0);
            }
        }, iter: 4, threads: 1);

    [Fact]
    public void In_pure_sway_one_diagonal_of_each_pair_acts()
    {
        Vector3D top = new(0, 0, Height);
        var model = new SegmentModel(panel, "panel", new BodyAxes(Axes3D.Global, Vector3D.Zero), (Place.At(0, Vector3D.Zero), Tower(panel).Tower.Levels[0]), (Place.At(1, top), Tower(panel).Tower.Levels[1]));
        double[] sway = [0, 0, 0, 0, 0, 0, 1e-3, 0, 0, 0, 0, 0];
        var axial = new double[model.Members.Count];
        model.AxialForces(model.Element, sway, axial);
        bool[] acts = [.. axial.Select((n, i) => model.Members[i].Pair < 0 || n > 1e-6)];
        Assert.Equal(2, acts.Where((a, i) => a && model.Members[i].Pair >= 0).Count());
        double d = Math.Sqrt(Width * Width + Height * Height), E = panel.Material.YoungsModulus.Pascals;
        double legs = Dense.Stiffness(model.WithActing([.. acts.Select((_, i) => model.Members[i].Pair < 0)]))[6, 6];
        double one = 2 * E * 0.05 * 0.006 * Width * Width / (d * d * d);
        Assert.Equal(1, (Dense.Stiffness(model.WithActing(acts))[6, 6] - legs) / one, 1e-9);
        // For modes and buckling, half of each diagonal makes one.
        Assert.Equal(1, (Dense.Stiffness(model.Element)[6, 6] - legs) / one, 1e-9);
    }

    [Fact]
    public void Under_heavy_compression_all_braces_are_slack_and_the_legs_alone_resist_sway()
    {
        LoadCase ours = Respond(panel, 10, 0, 1e6, new Vector3D(0, 0, Height));
        Assert.All(ours.LatticeMembers(), m => Assert.True(m.Member.StartsWith("leg", StringComparison.Ordinal) ? m.Axial.Newtons < -2e5 : m.Axial.Newtons == 0));
        LatticeMesh legs = Mesh(panel, label => label.StartsWith("leg", StringComparison.Ordinal));
        double expected = legs.Stiffness.SubMatrix(6, 6, 6, 6).Solve(Vector<double>.Build.Dense([10, 0, -1e6, 0, 0, 0]))[0];
        Assert.Equal(1, ours.OfPart("head").X.Meters / expected, 1e-7);
    }

    [Fact]
    public void Mirrored_and_turned_loads_give_mirrored_and_turned_forces() =>
        Gen.Select(Gen.Double[0.1, 1], Gen.Double[-1, 1], Gen.Double[-1, 1]).Sample((x, y, down) =>
        {
            var head = new Vector3D(0, 0, Height);
            double[] Braces(double fx, double fy) => [.. Respond(panel, 1e4 * fx, 1e4 * fy, 1e4 * down, head).LatticeMembers().Select(m => m.Axial.Newtons).Order()];
            double[] original = Braces(x, y), mirrored = Braces(-x, y), turned = Braces(-y, x), swapped = Braces(y, x);
            for (int i = 0; i < original.Length; i++)
            {
                Assert.Equal(original[i], mirrored[i], 1e-5);
                Assert.Equal(original[i], turned[i], 1e-5);
                Assert.Equal(original[i], swapped[i], 1e-5);
            }
        }, iter: 8);

    [Fact]
    public void In_a_tall_panel_of_many_bays_acting_braces_pull_and_slack_ones_would_be_pushed() =>
        Gen.Select(Gen.Int[2, 5], Gen.Double[-2e4, 2e4], Gen.Double[-2e4, 2e4], Gen.Double[-2e4, 4e4], Gen.Double[-1, 1]).Sample((bays, x, y, down, ax) =>
        {
            LatticeSegment tall = panel with { Bays = bays };
            double height = 2.0 * bays;
            var at = new Vector3D(ax, 0.3, height);
            LoadCase ours = Respond(tall, x, y, down, at, height);
            IReadOnlyList<MemberForce> members = ours.LatticeMembers();
            HashSet<string> slack = [.. members.Where(m => m.Member.StartsWith("brace", StringComparison.Ordinal) && m.Axial.Newtons == 0).Select(m => m.Member)];
            LatticeMesh mesh = Mesh(tall, label => !slack.Contains(label), height);
            Vector3D force = new(x, y, -down), moment = (at - new Vector3D(0, 0, height)).Cross(force);
            Vector<double> head = mesh.Stiffness.SubMatrix(6, 6, 6, 6).Solve(Vector<double>.Build.Dense([force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z]));
            Dictionary<string, double> expected = mesh.AxialForces(Vector<double>.Build.Dense([0, 0, 0, 0, 0, 0, .. head]));
            double scale = expected.Values.Max(Math.Abs);
            foreach (MemberForce member in members)
            {
                if (slack.Contains(member.Member))
                    Assert.InRange(expected[member.Member], -double.MaxValue, 1e-7 * scale);
                else
                    Assert.Equal(expected[member.Member], member.Axial.Newtons, 1e-7 * scale);
            }
        }, iter: 10);
}
