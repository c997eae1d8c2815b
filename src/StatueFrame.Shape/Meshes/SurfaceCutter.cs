using StatueFrame.Mechanics;

namespace StatueFrame.Shape;

/// <summary>
/// Cuts sets of triangles by planes and into connected pieces. All pieces share one growing list of vertices, and two
/// triangles at a cut edge get the same new vertex, so that pieces can be put together again without gaps.
/// </summary>
/// <remarks>Not safe to share between threads.</remarks>
internal sealed class SurfaceCutter
{
    private readonly List<Vector3D> vertices;
    private readonly HashSet<long> marked = [];

    public SurfaceCutter(Mesh mesh)
    {
        vertices = new List<Vector3D>(mesh.VertexCount);
        for (int i = 0; i < mesh.VertexCount; i++)
            vertices.Add(mesh.Vertex(i));
        Tolerance = 1e-12 * mesh.Size;
    }

    public Vector3D this[int vertex] => vertices[vertex];

    /// <summary>Distance from a plane, m, within which a vertex counts as on it.</summary>
    public double Tolerance { get; }

    public int Add(Vector3D vertex)
    {
        vertices.Add(vertex);
        return vertices.Count - 1;
    }

    /// <summary>Marks an edge; its parts stay marked when it is cut.</summary>
    public void Mark(int a, int b) => marked.Add(EdgeTable.Key(a, b));

    public bool IsMarked(int a, int b) => marked.Contains(EdgeTable.Key(a, b));

    /// <summary>Cuts triangles by the plane through a point; the front is where the normal points.</summary>
    public (List<int> Front, List<int> Back) Cut(List<int> corners, Vector3D through, Vector3D normal)
    {
        var front = new List<int>();
        var back = new List<int>();
        var made = new Dictionary<long, int>();
        var heights = new Dictionary<int, double>();
        Span<int> first = stackalloc int[4], second = stackalloc int[4];
        for (int t = 0; t < corners.Count; t += 3)
        {
            int inFront = 0, behind = 0, ahead = 0;
            for (int k = 0; k < 3; k++)
            {
                int a = corners[t + k], b = corners[t + (k + 1) % 3];
                double ha = Height(a), hb = Height(b);
                if (ha >= 0)
                    first[ahead++] = a;
                if (ha <= 0)
                    second[behind++] = a;
                inFront += Math.Sign(ha);
                if (ha * hb < 0)
                    first[ahead++] = second[behind++] = Between(a, b, ha, hb);
            }
            if (ahead >= 3)
                Fan(first[..ahead], front);
            if (behind >= 3 && !(ahead == 3 && behind == 3 && inFront >= 0 && first[..3].SequenceEqual(second[..3])))
                Fan(second[..behind], back);
        }
        return (front, back);

        double Height(int vertex)
        {
            if (!heights.TryGetValue(vertex, out double h))
            {
                h = (vertices[vertex] - through).Dot(normal);
                heights[vertex] = h = Math.Abs(h) <= Tolerance ? 0 : h;
            }
            return h;
        }

        int Between(int a, int b, double ha, double hb)
        {
            long key = EdgeTable.Key(a, b);
            if (!made.TryGetValue(key, out int vertex))
            {
                if (a > b)
                    (a, b, ha, hb) = (b, a, hb, ha);
                made[key] = vertex = Add(vertices[a] + ha / (ha - hb) * (vertices[b] - vertices[a]));
                if (marked.Contains(key))
                {
                    Mark(a, vertex);
                    Mark(vertex, b);
                }
            }
            return vertex;
        }
    }

    /// <summary>The pieces that hang together by edges, in the order of their first triangles.</summary>
    public static List<List<int>> Pieces(List<int> corners)
    {
        int triangles = corners.Count / 3;
        var parent = new int[triangles];
        for (int t = 0; t < triangles; t++)
            parent[t] = t;
        var first = new Dictionary<long, int>(corners.Count);
        for (int s = 0; s < corners.Count; s++)
        {
            long key = EdgeTable.Key(corners[s], corners[EdgeTable.Next(s)]);
            if (!first.TryAdd(key, s / 3))
            {
                (int a, int b) = (Root(first[key]), Root(s / 3));
                parent[Math.Max(a, b)] = Math.Min(a, b);
            }
        }
        var pieces = new List<List<int>>();
        var number = new Dictionary<int, int>();
        for (int t = 0; t < triangles; t++)
        {
            int root = Root(t);
            if (!number.TryGetValue(root, out int piece))
            {
                number[root] = piece = pieces.Count;
                pieces.Add([]);
            }
            pieces[piece].AddRange([corners[3 * t], corners[3 * t + 1], corners[3 * t + 2]]);
        }
        return pieces;

        int Root(int t)
        {
            while (parent[t] != t)
                t = parent[t] = parent[parent[t]];
            return t;
        }
    }

    /// <summary>The sides of triangles at which the surface ends, each from vertex to vertex as its triangle runs.</summary>
    public static List<(int From, int To)> OpenSides(List<int> corners)
    {
        var open = new Dictionary<(int From, int To), int>(corners.Count);
        for (int s = 0; s < corners.Count; s++)
        {
            (int from, int to) = (corners[s], corners[EdgeTable.Next(s)]);
            if (!open.Remove((to, from)))
                open[(from, to)] = s;
        }
        return [.. open.OrderBy(o => o.Value).Select(o => o.Key)];
    }

    /// <summary>Triangles that close every opening by a fan from the middle of its edge.</summary>
    public List<int> Caps(List<int> corners)
    {
        var next = new Dictionary<int, Queue<int>>();
        List<(int From, int To)> open = OpenSides(corners);
        foreach ((int from, int to) in open)
        {
            if (!next.TryGetValue(from, out Queue<int>? ends))
                next[from] = ends = new Queue<int>();
            ends.Enqueue(to);
        }
        var caps = new List<int>();
        foreach ((int start, _) in open)
        {
            var loop = new List<int>();
            int at = start;
            while (next[at].TryDequeue(out int to))
            {
                loop.Add(at);
                at = to;
            }
            if (loop.Count < 3)
                continue;
            double round = 0;
            Vector3D middle = Vector3D.Zero;
            for (int i = 0; i < loop.Count; i++)
            {
                (Vector3D a, Vector3D b) = (vertices[loop[i]], vertices[loop[(i + 1) % loop.Count]]);
                double length = (b - a).Length;
                round += length;
                middle += 0.5 * length * (a + b);
            }
            int center = Add(round > 0 ? middle / round : vertices[start]);
            for (int i = 0; i < loop.Count; i++)
                caps.AddRange([loop[(i + 1) % loop.Count], loop[i], center]);
        }
        return caps;
    }

    /// <summary>A mesh of some triangles, with only the vertices they use.</summary>
    public Mesh ToMesh(IReadOnlyList<int> corners)
    {
        var number = new Dictionary<int, int>();
        var coordinates = new List<double>();
        var own = new int[corners.Count];
        for (int c = 0; c < own.Length; c++)
        {
            if (!number.TryGetValue(corners[c], out own[c]))
            {
                number[corners[c]] = own[c] = number.Count;
                Vector3D v = vertices[corners[c]];
                coordinates.AddRange([v.X, v.Y, v.Z]);
            }
        }
        return new Mesh([.. coordinates], own);
    }

    private static void Fan(ReadOnlySpan<int> polygon, List<int> corners)
    {
        for (int i = 2; i < polygon.Length; i++)
            corners.AddRange([polygon[0], polygon[i - 1], polygon[i]]);
    }
}
