using StatueFrame.Mechanics;

namespace StatueFrame.Shape;

/// <summary>Looks for each kind of flaw in a mesh.</summary>
/// <remarks>Not safe to share between threads.</remarks>
internal sealed class MeshExamination
{
    private const int MostPlaces = 5;

    /// <summary>A triangle is without area when it is lower than this part of the mesh's size.</summary>
    private const double Flat = 1e-12;

    private const double Needle = 1e-3;

    private readonly Mesh mesh;
    private readonly EdgeTable edges;
    private readonly Dictionary<MeshFlawKind, (int Count, List<Point3> Places)> found = [];

    public MeshExamination(Mesh mesh)
    {
        this.mesh = mesh;
        edges = new EdgeTable(mesh.Corners);
        Shells = Shells.Of(edges);
    }

    public Shells Shells { get; }

    public MeshReport Report()
    {
        LookAtVertices();
        LookAtFaces();
        LookAtEdges();
        LookAtShells();
        return new MeshReport
        {
            Vertices = mesh.VertexCount,
            Triangles = mesh.TriangleCount,
            Shells = Shells.Count,
            SurfaceArea = mesh.SurfaceArea(),
            Bounds = mesh.Bounds,
            Flaws = [.. found.OrderBy(f => f.Key).Select(f => new MeshFlaw(f.Key, f.Value.Count, [.. f.Value.Places]))],
        };
    }

    /// <summary>Whether a triangle has no area to speak of.</summary>
    public static bool IsDegenerate(Mesh mesh, int t, double size)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
        double longest = Math.Max((b - a).Length, Math.Max((c - b).Length, (a - c).Length));
        return !(mesh.Facing(t).Length > Flat * size * longest);
    }

    private void Add(MeshFlawKind kind, Vector3D place)
    {
        (int count, List<Point3> places) = found.TryGetValue(kind, out var known) ? known : (0, []);
        if (places.Count < MostPlaces)
            places.Add(Mesh.Point(place));
        found[kind] = (count + 1, places);
    }

    private Vector3D Center(int t)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
        return (a + b + c) / 3;
    }

    private void LookAtVertices()
    {
        var table = new VertexTable();
        for (int i = 0; i < mesh.VertexCount; i++)
        {
            Vector3D v = mesh.Vertex(i);
            int known = table.Count;
            if (table.Add(v.X, v.Y, v.Z) < known)
                Add(MeshFlawKind.UnjoinedVertices, v);
        }
    }

    private void LookAtFaces()
    {
        double size = mesh.Size;
        var seen = new HashSet<(int, int, int)>(mesh.TriangleCount);
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            if (!seen.Add(Ordered(mesh.Corners[(3 * t)..])))
                Add(MeshFlawKind.DuplicateFaces, Center(t));
            if (IsDegenerate(mesh, t, size))
            {
                Add(MeshFlawKind.DegenerateFaces, Center(t));
                continue;
            }
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            double longest = Math.Max((b - a).Length, Math.Max((c - b).Length, (a - c).Length));
            if (mesh.Facing(t).Length < Needle * longest * longest)
                Add(MeshFlawKind.Slivers, Center(t));
        }
    }

    /// <summary>The three corners of a triangle in ascending order.</summary>
    public static (int, int, int) Ordered(ReadOnlySpan<int> corners)
    {
        (int a, int b, int c) = (corners[0], corners[1], corners[2]);
        int least = Math.Min(a, Math.Min(b, c)), greatest = Math.Max(a, Math.Max(b, c));
        return (least, a + b + c - least - greatest, greatest);
    }

    private void LookAtEdges()
    {
        var open = new List<(int From, int To)>();
        for (int i = 0; i < edges.Count; i = edges.EndOf(i))
        {
            int sides = edges.EndOf(i) - i, side = edges.Side(i);
            Vector3D middle = 0.5 * (mesh.Vertex(edges.From(side)) + mesh.Vertex(edges.To(side)));
            if (sides == 1)
                open.Add((edges.From(side), edges.To(side)));
            else if (sides > 2)
                Add(MeshFlawKind.NonManifoldEdges, middle);
            else if (edges.From(side) == edges.From(edges.Side(i + 1)))
                Add(MeshFlawKind.FlippedFaces, middle);
        }
        foreach (int start in LoopsOf(open))
            Add(MeshFlawKind.OpenEdges, mesh.Vertex(start));
    }

    /// <summary>The lowest vertex of each group of open edges that hang together.</summary>
    private static IEnumerable<int> LoopsOf(List<(int From, int To)> open)
    {
        var parent = new Dictionary<int, int>();
        int Root(int v)
        {
            if (!parent.TryGetValue(v, out int up))
                parent[v] = up = v;
            while (up != v)
            {
                int next = parent[up];
                parent[v] = next;
                (v, up) = (up, next);
            }
            return v;
        }
        foreach ((int from, int to) in open)
        {
            (int a, int b) = (Root(from), Root(to));
            if (a != b)
                parent[Math.Max(a, b)] = Math.Min(a, b);
        }
        return open.Select(e => Root(e.From)).Distinct().Order();
    }

    private void LookAtShells()
    {
        foreach (int t in Shells.OneSided)
            Add(MeshFlawKind.OneSidedShells, Center(t));
        if (found.Keys.Any(k => k is MeshFlawKind.OpenEdges or MeshFlawKind.NonManifoldEdges or MeshFlawKind.OneSidedShells))
            return;
        double[] volumes = Volumes(asTheyFace: true);
        for (int s = 0; s < Shells.Count; s++)
        {
            Vector3D place = mesh.Vertex(mesh.Corners[3 * Shells.Firsts[s]]);
            if (volumes[s] < 0)
                Add(MeshFlawKind.InwardShells, place);
            if (Shells.Count > 1 && IsNested(s))
                Add(MeshFlawKind.NestedShells, place);
        }
    }

    /// <summary>
    /// The volume each closed shell encloses, m³, with its triangles as they face, or all turned as the first.
    /// </summary>
    public double[] Volumes(bool asTheyFace)
    {
        var volumes = new double[Shells.Count];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            int shell = Shells.Of(t);
            Vector3D origin = mesh.Vertex(mesh.Corners[3 * Shells.Firsts[shell]]);
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            double six = (a - origin).Dot((b - origin).Cross(c - origin));
            volumes[shell] += (!asTheyFace && Shells.Flip(t) ? -six : six) / 6;
        }
        return volumes;
    }

    /// <summary>Whether a ray upward from the shell's first triangle leaves another shell more often than it enters.</summary>
    private bool IsNested(int shell)
    {
        // Off the corner and off the middle, so that the ray meets no edge but by bad luck.
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(Shells.Firsts[shell]);
        Vector3D from = 0.347 * a + 0.431 * b + 0.222 * c;
        var crossings = new int[Shells.Count];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            if (Shells.Of(t) != shell && PassesAbove(t, from))
                crossings[Shells.Of(t)]++;
        }
        return Array.Exists(crossings, n => n % 2 == 1);
    }

    private bool PassesAbove(int t, Vector3D p)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
        double ab = Turn(a, b), bc = Turn(b, c), ca = Turn(c, a);
        if (!((ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0)) || ab + bc + ca == 0)
            return false;
        return (bc * a.Z + ca * b.Z + ab * c.Z) / (ab + bc + ca) > p.Z;

        double Turn(Vector3D u, Vector3D v) => (u.X - p.X) * (v.Y - p.Y) - (u.Y - p.Y) * (v.X - p.X);
    }
}
