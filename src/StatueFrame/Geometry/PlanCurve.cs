namespace StatueFrame;

/// <summary>
/// A closed plan curve as a polygon in SI units, vertices anticlockwise: the outline of a skin or of a tower in the
/// plane across its axis. The last vertex joins the first; it is not repeated.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class PlanCurve
{
    private readonly double[] x;
    private readonly double[] y;

    /// <summary>Takes over the two arrays; the caller must not change them afterwards.</summary>
    public PlanCurve(double[] x, double[] y)
    {
        this.x = x;
        this.y = y;
        (Area, CentroidX, CentroidY) = Moments();
        for (int i = 0; i < Count; i++)
        {
            int j = Next(i);
            Perimeter += Math.Sqrt(Square(x[j] - x[i]) + Square(y[j] - y[i]));
        }
    }

    public int Count => x.Length;

    public ReadOnlySpan<double> X => x;

    public ReadOnlySpan<double> Y => y;

    /// <summary>Enclosed area, m²; negative when the vertices run clockwise.</summary>
    public double Area { get; }

    public double CentroidX { get; }

    public double CentroidY { get; }

    public double Perimeter { get; }

    /// <summary>An ellipse of full widths a and b, turned by <paramref name="rotation"/>, as <paramref name="count"/> points on it.</summary>
    public static PlanCurve Ellipse(double widthX, double widthY, double centerX, double centerY, double rotation, int count)
    {
        var x = new double[count];
        var y = new double[count];
        (double sin, double cos) = Math.SinCos(rotation);
        for (int i = 0; i < count; i++)
        {
            (double s, double c) = Math.SinCos(2 * Math.PI * i / count);
            double u = 0.5 * widthX * c, v = 0.5 * widthY * s;
            x[i] = centerX + cos * u - sin * v;
            y[i] = centerY + sin * u + cos * v;
        }
        return new PlanCurve(x, y);
    }

    /// <summary>The curve a fraction <paramref name="t"/> of the way from one curve to another with as many vertices.</summary>
    public static PlanCurve Between(PlanCurve from, PlanCurve to, double t)
    {
        var x = new double[from.Count];
        var y = new double[from.Count];
        for (int i = 0; i < x.Length; i++)
        {
            x[i] = from.x[i] + t * (to.x[i] - from.x[i]);
            y[i] = from.y[i] + t * (to.y[i] - from.y[i]);
        }
        return new PlanCurve(x, y);
    }

    /// <summary>The least and the greatest coordinate of the curve along a unit direction.</summary>
    public (double Least, double Greatest) Extent(double directionX, double directionY)
    {
        double least = double.PositiveInfinity, greatest = double.NegativeInfinity;
        for (int i = 0; i < x.Length; i++)
        {
            double s = x[i] * directionX + y[i] * directionY;
            least = Math.Min(least, s);
            greatest = Math.Max(greatest, s);
        }
        return (least, greatest);
    }

    /// <summary>
    /// Where a ray first meets the curve: the distance along the unit direction (NaN when it misses) and the outward
    /// unit normal of the edge it meets.
    /// </summary>
    public (double Distance, double NormalX, double NormalY) Cast(double originX, double originY, double directionX, double directionY)
    {
        double distance = double.NaN, normalX = 0, normalY = 0;
        for (int i = 0; i < x.Length; i++)
        {
            int j = Next(i);
            double ex = x[j] - x[i], ey = y[j] - y[i];
            double cross = directionX * ey - directionY * ex;
            if (Math.Abs(cross) < 1e-300)
                continue;
            double px = x[i] - originX, py = y[i] - originY;
            double t = (px * ey - py * ex) / cross;
            double s = (px * directionY - py * directionX) / cross;
            if (t < 0 || s < 0 || s > 1 || t >= distance)
                continue;
            double length = Math.Sqrt(ex * ex + ey * ey);
            (distance, normalX, normalY) = (t, ey / length, -ex / length);
        }
        return (distance, normalX, normalY);
    }

    private (double Area, double X, double Y) Moments()
    {
        double area = 0, sx = 0, sy = 0;
        double x0 = x[0], y0 = y[0];
        for (int i = 1; i + 1 < x.Length; i++)
        {
            double ax = x[i] - x0, ay = y[i] - y0, bx = x[i + 1] - x0, by = y[i + 1] - y0;
            double triangle = 0.5 * (ax * by - ay * bx);
            area += triangle;
            sx += triangle * (ax + bx) / 3;
            sy += triangle * (ay + by) / 3;
        }
        return area == 0 ? (0, x0, y0) : (area, x0 + sx / area, y0 + sy / area);
    }

    private int Next(int i) => i + 1 == x.Length ? 0 : i + 1;

    private static double Square(double v) => v * v;
}
