using StatueFrame.Mechanics;
using StatueFrame.Shape;

namespace StatueFrame.Works;

/// <summary>
/// Finds which sheet lies along which stretch of every edge. Sheets are cut one after the other, so that a corner of one may
/// lie within an edge of its neighbor: every edge is divided at all corners that lie on it.
/// </summary>
internal static class SeamFinder
{
    public static SeamSide[] Of(SheetPlan plan)
    {
        var open = new List<(int Sheet, int From, int To, Vector3D A, Vector3D B)>();
        double size = 0;
        for (int s = 0; s < plan.Sheets.Count; s++)
        {
            Mesh mesh = plan.Sheets[s].Surface;
            size = Math.Max(size, mesh.Size);
            foreach ((int from, int to) in SurfaceCutter.OpenSides([.. mesh.Corners]))
                open.Add((s, from, to, mesh.Vertex(from), mesh.Vertex(to)));
        }
        if (open.Count == 0)
            return [];
        double tolerance = 1e-6 * size, cell = Math.Max(open.Average(o => (o.B - o.A).Length), 10 * tolerance);
        var grid = new Dictionary<(long, long, long), List<int>>();
        for (int i = 0; i < open.Count; i++)
        {
            foreach ((long, long, long) at in Cells(open[i].A, open[i].B))
            {
                if (!grid.TryGetValue(at, out List<int>? list))
                    grid[at] = list = [];
                list.Add(i);
            }
        }
        var sides = new List<SeamSide>();
        foreach ((int sheet, int from, int to, Vector3D a, Vector3D b) in open)
        {
            int[] near = [.. Cells(a, b).SelectMany(at => grid[at]).Distinct().Where(i => open[i].Sheet != sheet)];
            double length = (b - a).Length;
            if (length <= tolerance)
                continue;
            var cuts = new List<double> { 0, 1 };
            foreach (int i in near)
            {
                foreach (Vector3D p in (Vector3D[])[open[i].A, open[i].B])
                {
                    double t = (p - a).Dot(b - a) / (length * length);
                    if (t > tolerance / length && t < 1 - tolerance / length && (p - a - t * (b - a)).Length <= tolerance)
                        cuts.Add(t);
                }
            }
            cuts.Sort();
            for (int k = 1; k < cuts.Count; k++)
            {
                if ((cuts[k] - cuts[k - 1]) * length <= tolerance)
                    continue;
                Vector3D middle = a + 0.5 * (cuts[k - 1] + cuts[k]) * (b - a);
                int other = Array.FindIndex(near, i => Distance(middle, open[i].A, open[i].B) <= 2 * tolerance);
                sides.Add(new SeamSide(sheet, from, to, cuts[k - 1], cuts[k], other < 0 ? -1 : open[near[other]].Sheet, middle, (cuts[k] - cuts[k - 1]) * length));
            }
        }
        return [.. sides];

        IEnumerable<(long, long, long)> Cells(Vector3D a, Vector3D b)
        {
            for (long x = Cell(Math.Min(a.X, b.X) - tolerance); x <= Cell(Math.Max(a.X, b.X) + tolerance); x++)
            {
                for (long y = Cell(Math.Min(a.Y, b.Y) - tolerance); y <= Cell(Math.Max(a.Y, b.Y) + tolerance); y++)
                {
                    for (long z = Cell(Math.Min(a.Z, b.Z) - tolerance); z <= Cell(Math.Max(a.Z, b.Z) + tolerance); z++)
                        yield return (x, y, z);
                }
            }
        }

        long Cell(double at) => (long)Math.Floor(at / cell);
    }

    private static double Distance(Vector3D p, Vector3D a, Vector3D b)
    {
        double t = Math.Clamp((p - a).Dot(b - a) / Math.Max((b - a).Dot(b - a), double.Epsilon), 0, 1);
        return (p - a - t * (b - a)).Length;
    }
}
