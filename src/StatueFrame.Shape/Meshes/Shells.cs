namespace StatueFrame.Shape;

/// <summary>The pieces of a mesh that hang together by edges, and which triangles of each face the wrong side.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class Shells
{
    private readonly int[] shellOf;
    private readonly bool[] flip;

    private Shells(int[] shellOf, bool[] flip, int[] firsts, List<int> oneSided)
    {
        (this.shellOf, this.flip) = (shellOf, flip);
        Firsts = firsts;
        OneSided = oneSided;
    }

    /// <summary>The first triangle of each shell; the others face as it does once flipped.</summary>
    public int[] Firsts { get; }

    public int Count => Firsts.Length;

    /// <summary>A triangle of each shell at which no consistent facing is possible.</summary>
    public List<int> OneSided { get; }

    public int Of(int triangle) => shellOf[triangle];

    /// <summary>Whether the triangle must be turned over to face as the first of its shell.</summary>
    public bool Flip(int triangle) => flip[triangle];

    /// <summary>Walks from triangle to triangle over edges that have exactly two.</summary>
    public static Shells Of(EdgeTable edges)
    {
        int triangles = edges.Count / 3;
        var partner = new int[edges.Count];
        Array.Fill(partner, -1);
        for (int i = 0; i < edges.Count; i = edges.EndOf(i))
        {
            if (edges.EndOf(i) - i == 2)
                (partner[edges.Side(i)], partner[edges.Side(i + 1)]) = (edges.Side(i + 1), edges.Side(i));
        }
        var shellOf = new int[triangles];
        Array.Fill(shellOf, -1);
        var flip = new bool[triangles];
        var firsts = new List<int>();
        var oneSided = new List<int>();
        var open = new Stack<int>();
        for (int first = 0; first < triangles; first++)
        {
            if (shellOf[first] >= 0)
                continue;
            int shell = firsts.Count;
            firsts.Add(first);
            shellOf[first] = shell;
            bool sided = true;
            open.Push(first);
            while (open.TryPop(out int t))
            {
                for (int side = 3 * t; side < 3 * t + 3; side++)
                {
                    if (partner[side] is not (>= 0 and int other))
                        continue;
                    int u = other / 3;
                    bool same = edges.From(side) == edges.From(other);
                    bool wanted = flip[t] ^ same;
                    if (shellOf[u] < 0)
                    {
                        (shellOf[u], flip[u]) = (shell, wanted);
                        open.Push(u);
                    }
                    else if (flip[u] != wanted && sided)
                    {
                        sided = false;
                        oneSided.Add(u);
                    }
                }
            }
        }
        return new Shells(shellOf, flip, [.. firsts], oneSided);
    }
}
