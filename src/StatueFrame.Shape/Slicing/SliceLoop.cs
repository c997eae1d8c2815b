using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>One closed line of a plane cut: anticlockwise round metal's outside, clockwise round a hole.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class SliceLoop
{
    private readonly double[] x;
    private readonly double[] y;

    internal SliceLoop(double[] x, double[] y)
    {
        (this.x, this.y) = (x, y);
        double x0 = x[0], y0 = y[0], sx = 0, sy = 0;
        for (int i = 0; i < x.Length; i++)
        {
            int j = i + 1 == x.Length ? 0 : i + 1;
            double ax = x[i] - x0, ay = y[i] - y0, bx = x[j] - x0, by = y[j] - y0;
            double triangle = 0.5 * (ax * by - ay * bx);
            SignedArea += triangle;
            sx += triangle * (ax + bx) / 3;
            sy += triangle * (ay + by) / 3;
            Round += Math.Sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
        }
        (CenterX, CenterY) = SignedArea == 0 ? (x0, y0) : (x0 + sx / SignedArea, y0 + sy / SignedArea);
    }

    /// <summary>True for a line round a hole.</summary>
    public bool IsHole => SignedArea < 0;

    /// <summary>Area enclosed.</summary>
    public Area Area => Area.FromSquareMeters(Math.Abs(SignedArea));

    /// <summary>Length of the line.</summary>
    public Length Perimeter => Length.FromMeters(Round);

    /// <summary>Centroid of the area enclosed.</summary>
    public PlanPoint Centroid => new(Length.FromMeters(CenterX), Length.FromMeters(CenterY));

    /// <summary>Number of points.</summary>
    public int Count => x.Length;

    /// <summary>The points in order; the last joins the first.</summary>
    public IEnumerable<PlanPoint> Points => x.Select((v, i) => new PlanPoint(Length.FromMeters(v), Length.FromMeters(y[i])));

    internal double SignedArea { get; }

    internal double Round { get; }

    internal double CenterX { get; }

    internal double CenterY { get; }

    internal ReadOnlySpan<double> X => x;

    internal ReadOnlySpan<double> Y => y;

    /// <summary>The least and the greatest coordinate along a direction.</summary>
    internal (double Least, double Greatest) Extent(double dx, double dy)
    {
        double least = double.PositiveInfinity, greatest = double.NegativeInfinity;
        for (int i = 0; i < x.Length; i++)
        {
            double s = dx * x[i] + dy * y[i];
            least = Math.Min(least, s);
            greatest = Math.Max(greatest, s);
        }
        return (least, greatest);
    }

    /// <summary>The farthest point at which a ray leaves the loop: its edge and its distance; −1 when the ray misses.</summary>
    internal (int Edge, double Distance) LastMeeting(double px, double py, double dx, double dy)
    {
        int edge = -1;
        double farthest = double.NegativeInfinity;
        for (int i = 0; i < x.Length; i++)
        {
            int j = i + 1 == x.Length ? 0 : i + 1;
            double ui = (x[i] - px) * -dy + (y[i] - py) * dx, uj = (x[j] - px) * -dy + (y[j] - py) * dx;
            if ((ui >= 0) == (uj >= 0))
                continue;
            double t = ui / (ui - uj);
            double s = (x[i] + t * (x[j] - x[i]) - px) * dx + (y[i] + t * (y[j] - y[i]) - py) * dy;
            if (s > 0 && s > farthest)
                (edge, farthest) = (i, s);
        }
        return (edge, farthest);
    }

    /// <summary>
    /// <paramref name="count"/> points at equal steps along the line, from where the ray from the centroid toward +x last
    /// meets it.
    /// </summary>
    internal (double X, double Y)[] Resampled(int count)
    {
        (int start, double distance) = LastMeeting(CenterX, CenterY, 1, 0);
        (double px, double py) = start < 0 ? (x[0], y[0]) : (CenterX + distance, CenterY);
        int next = start < 0 ? 1 : start + 1;
        var points = new (double, double)[count];
        double step = Round / count, left = 0;
        int made = 0;
        for (int k = 0; k <= x.Length && made < count; k++, next++)
        {
            // The last piece closes the loop at the start.
            (double qx, double qy) = k == x.Length && start >= 0 ? (CenterX + distance, CenterY) : (x[next % x.Length], y[next % x.Length]);
            double length = Math.Sqrt((qx - px) * (qx - px) + (qy - py) * (qy - py));
            for (; made < count && left <= length; left += step)
            {
                double t = length > 0 ? left / length : 0;
                points[made++] = (px + t * (qx - px), py + t * (qy - py));
            }
            left -= length;
            (px, py) = (qx, qy);
        }
        for (; made < count; made++)
            points[made] = (px, py);
        return points;
    }

    /// <summary>The convex hull of some loops as one loop.</summary>
    internal static SliceLoop Hull(IReadOnlyList<SliceLoop> loops)
    {
        (double X, double Y)[] points = [.. loops.SelectMany(l => l.x.Select((v, i) => (v, l.y[i])))];
        Array.Sort(points);
        var hull = new List<(double X, double Y)>();
        for (int pass = 0; pass < 2; pass++)
        {
            int begin = hull.Count;
            foreach ((double X, double Y) p in points)
            {
                while (hull.Count >= begin + 2 && Turn(hull[^2], hull[^1], p) <= 0)
                    hull.RemoveAt(hull.Count - 1);
                hull.Add(p);
            }
            hull.RemoveAt(hull.Count - 1);
            Array.Reverse(points);
        }
        return new SliceLoop([.. hull.Select(p => p.X)], [.. hull.Select(p => p.Y)]);

        static double Turn((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) =>
            (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
    }
}
