using System.Globalization;

namespace StatueFrame.Shape;

/// <summary>
/// Cuts triangles by planes across z. A vertex on the plane counts as above it, so that every triangle is cut in two
/// of its edges or not at all; each cut runs from the edge that goes down to the edge that goes up, and so keeps the
/// inside on its left. The ends of a cut are edges of the mesh, known by their two vertices: lines close exactly.
/// </summary>
internal static class Slicer
{
    /// <summary>The loops at each of the ascending heights.</summary>
    /// <exception cref="InvalidMeshException">The surface is open at a height.</exception>
    public static PlanSlice[] Slice(double[] xyz, int[] corners, double[] heights)
    {
        int[] begin = new int[heights.Length + 1];
        int triangles = corners.Length / 3;
        for (int t = 0; t < triangles; t++)
        {
            (int from, int to) = Cut(t);
            for (int h = from; h < to; h++)
                begin[h + 1]++;
        }
        for (int h = 0; h < heights.Length; h++)
            begin[h + 1] += begin[h];
        int[] cut = new int[begin[^1]], fill = begin[..^1];
        for (int t = 0; t < triangles; t++)
        {
            (int from, int to) = Cut(t);
            for (int h = from; h < to; h++)
                cut[fill[h]++] = t;
        }
        var slices = new PlanSlice[heights.Length];
        for (int h = 0; h < slices.Length; h++)
            slices[h] = new PlanSlice(heights[h], Loops(xyz, corners, cut.AsSpan(begin[h], begin[h + 1] - begin[h]), heights[h]));
        return slices;

        // The heights above the lowest and not above the highest corner.
        (int From, int To) Cut(int t)
        {
            double a = xyz[3 * corners[3 * t] + 2], b = xyz[3 * corners[3 * t + 1] + 2], c = xyz[3 * corners[3 * t + 2] + 2];
            return (FirstAbove(Math.Min(a, Math.Min(b, c))), FirstAbove(Math.Max(a, Math.Max(b, c))));
        }

        int FirstAbove(double z)
        {
            int low = 0, high = heights.Length;
            while (low < high)
            {
                int middle = (low + high) / 2;
                if (heights[middle] > z)
                    high = middle;
                else
                    low = middle + 1;
            }
            return low;
        }
    }

    private static SliceLoop[] Loops(double[] xyz, int[] corners, ReadOnlySpan<int> triangles, double z)
    {
        var ends = new Dictionary<long, long>(triangles.Length);
        var order = new List<long>(triangles.Length);
        foreach (int t in triangles)
        {
            long down = 0, up = 0;
            for (int k = 0; k < 3; k++)
            {
                int a = corners[3 * t + k], b = corners[3 * t + (k + 1) % 3];
                bool aAbove = xyz[3 * a + 2] >= z, bAbove = xyz[3 * b + 2] >= z;
                if (aAbove && !bAbove)
                    down = EdgeTable.Key(a, b);
                else if (!aAbove && bAbove)
                    up = EdgeTable.Key(a, b);
            }
            if (!ends.TryAdd(down, up))
                throw Open(down, "triangles face opposite sides, or more than two meet at an edge");
            order.Add(down);
        }
        var loops = new List<SliceLoop>();
        foreach (long first in order)
        {
            if (!ends.ContainsKey(first))
                continue;
            var x = new List<double>();
            var y = new List<double>();
            long at = first;
            do
            {
                (double px, double py) = Point(at);
                if (x.Count == 0 || x[^1] != px || y[^1] != py)
                {
                    x.Add(px);
                    y.Add(py);
                }
                if (!ends.Remove(at, out long next))
                    throw Open(at, "the surface is open");
                at = next;
            }
            while (at != first);
            while (x.Count > 1 && x[^1] == x[0] && y[^1] == y[0])
            {
                x.RemoveAt(x.Count - 1);
                y.RemoveAt(y.Count - 1);
            }
            if (x.Count >= 3)
                loops.Add(new SliceLoop([.. x], [.. y]));
        }
        return [.. loops];

        (double X, double Y) Point(long edge)
        {
            int a = (int)(edge >> 32), b = (int)edge;
            double za = xyz[3 * a + 2], t = (z - za) / (xyz[3 * b + 2] - za);
            return (xyz[3 * a] + t * (xyz[3 * b] - xyz[3 * a]), xyz[3 * a + 1] + t * (xyz[3 * b + 1] - xyz[3 * a + 1]));
        }

        InvalidMeshException Open(long edge, string why)
        {
            (double px, double py) = Point(edge);
            return new InvalidMeshException(string.Create(CultureInfo.InvariantCulture, $"The cut at {z:g6} m is no closed line: {why} at ({px:g4}, {py:g4}, {z:g4}) m. Repair the mesh, or close it there."));
        }
    }
}
