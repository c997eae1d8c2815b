using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>The triangles of one band: its nodes with their share of its mass, and the means to put a force on it or to read its movement as a whole.</summary>
/// <remarks>Immutable and safe to share between threads once it is built.</remarks>
internal sealed class BandMesh
{
    private readonly int[] nodes;
    private readonly Vector3D[] at;
    private readonly double[] masses;
    private readonly Vector3D center;
    private readonly double mass;
    private readonly double[] inertia = new double[9];

    public BandMesh(BodyModel body, int band, int bandInStatue, ShellElement[] triangles)
    {
        (Body, Band, BandInStatue, Triangles) = (body, band, bandInStatue, triangles);
        var shares = new SortedDictionary<int, (Vector3D At, double Mass)>();
        foreach (ShellElement triangle in triangles)
        {
            for (int i = 0; i < 3; i++)
            {
                int node = triangle.Nodes[i];
                shares[node] = (triangle.Corner(i), shares.GetValueOrDefault(node).Mass + triangle.Area * triangle.Section.Mass / 3);
            }
        }
        nodes = [.. shares.Keys];
        at = [.. shares.Values.Select(s => s.At)];
        masses = [.. shares.Values.Select(s => s.Mass)];
        for (int i = 0; i < nodes.Length; i++)
            (center, mass) = (center + masses[i] * at[i], mass + masses[i]);
        center /= mass;
        for (int i = 0; i < nodes.Length; i++)
        {
            Vector3D r = at[i] - center;
            double square = r.Dot(r);
            double[] c = [r.X, r.Y, r.Z];
            for (int j = 0; j < 9; j++)
                inertia[j] += masses[i] * ((j / 3 == j % 3 ? square : 0) - c[j / 3] * c[j % 3]);
        }
        SmallMatrix.InvertPositive(inertia, 3);
    }

    public BodyModel Body { get; }

    /// <summary>Its number in its body, from 0.</summary>
    public int Band { get; }

    public int BandInStatue { get; }

    public ShellElement[] Triangles { get; }

    public ReadOnlySpan<int> Nodes => nodes;

    /// <summary>Spreads a force and a moment about a point over the nodes, as inertia would: by their masses, and by their distance from the middle.</summary>
    public void Spread(Vector3D force, Vector3D moment, Vector3D about, Span<double> loads)
    {
        Vector3D a = force / mass, b = Turned(moment + (about - center).Cross(force));
        for (int i = 0; i < nodes.Length; i++)
            Add(loads, nodes[i], masses[i] * (a + b.Cross(at[i] - center)));
    }

    /// <summary>Force and moment about a point of what the nodes bear.</summary>
    public (Vector3D Force, Vector3D Moment) Sum(ReadOnlySpan<double> loads, Vector3D about)
    {
        Vector3D force = Vector3D.Zero, moment = Vector3D.Zero;
        for (int i = 0; i < nodes.Length; i++)
        {
            ReadOnlySpan<double> f = loads.Slice(nodes[i] * Frame.NodeSize, Frame.NodeSize);
            var own = new Vector3D(f[0], f[1], f[2]);
            force += own;
            moment += (at[i] - about).Cross(own) + new Vector3D(f[3], f[4], f[5]);
        }
        return (force, moment);
    }

    /// <summary>The movement of the band as a whole, of which its nodes' own are deviations without mean or turn: at a point, and its turn.</summary>
    public (Vector3D Move, Vector3D Turn) Movement(ReadOnlySpan<double> u, Vector3D point)
    {
        Vector3D move = Vector3D.Zero, turn = Vector3D.Zero;
        for (int i = 0; i < nodes.Length; i++)
        {
            ReadOnlySpan<double> own = u.Slice(nodes[i] * Frame.NodeSize, 3);
            var v = new Vector3D(own[0], own[1], own[2]);
            move += masses[i] * v;
            turn += masses[i] * (at[i] - center).Cross(v);
        }
        (move, turn) = (move / mass, Turned(turn));
        return (move + turn.Cross(point - center), turn);
    }

    internal static void Add(Span<double> loads, int node, Vector3D force)
    {
        Span<double> f = loads.Slice(node * Frame.NodeSize, 3);
        (f[0], f[1], f[2]) = (f[0] + force.X, f[1] + force.Y, f[2] + force.Z);
    }

    private Vector3D Turned(Vector3D m) => new(
        inertia[0] * m.X + inertia[1] * m.Y + inertia[2] * m.Z,
        inertia[3] * m.X + inertia[4] * m.Y + inertia[5] * m.Z,
        inertia[6] * m.X + inertia[7] * m.Y + inertia[8] * m.Z);
}
