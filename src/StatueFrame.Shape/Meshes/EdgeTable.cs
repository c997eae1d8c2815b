namespace StatueFrame.Shape;

/// <summary>All edges of a mesh with the triangles at each, sorted, so that those of one edge lie side by side.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class EdgeTable
{
    private readonly long[] keys;
    private readonly int[] sides;
    private readonly int[] corners;

    public EdgeTable(ReadOnlySpan<int> meshCorners)
    {
        corners = meshCorners.ToArray();
        keys = new long[corners.Length];
        sides = new int[corners.Length];
        for (int s = 0; s < corners.Length; s++)
        {
            keys[s] = Key(corners[s], corners[Next(s)]);
            sides[s] = s;
        }
        Array.Sort(keys, sides);
        // Sides of one edge in their own order, whatever the sort did with equal keys.
        for (int i = 0; i < keys.Length; i = EndOf(i))
            Array.Sort(sides, i, EndOf(i) - i);
    }

    /// <summary>Number of entries: the sides of all triangles.</summary>
    public int Count => keys.Length;

    /// <summary>One past the last entry of the edge that entry <paramref name="i"/> begins.</summary>
    public int EndOf(int i)
    {
        int end = i + 1;
        while (end < keys.Length && keys[end] == keys[i])
            end++;
        return end;
    }

    /// <summary>The side at an entry: three times the triangle plus 0, 1 or 2.</summary>
    public int Side(int entry) => sides[entry];

    /// <summary>The vertex a side starts from.</summary>
    public int From(int side) => corners[side];

    /// <summary>The vertex a side runs to.</summary>
    public int To(int side) => corners[Next(side)];

    /// <summary>The side after the given one in its triangle.</summary>
    public static int Next(int side) => side % 3 == 2 ? side - 2 : side + 1;

    public static long Key(int a, int b) => a < b ? ((long)a << 32) | (uint)b : ((long)b << 32) | (uint)a;
}
