namespace StatueFrame;

/// <summary>A rectangle with sides parallel to x and y.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class RectanglePiece : PlanPiece
{
    public required double HalfX { get; init; }

    public required double HalfY { get; init; }

    public override PlanMoments Where(double a, double b, double c)
    {
        double reach = Math.Abs(b) * HalfX + Math.Abs(c) * HalfY;
        double A = 4 * HalfX * HalfY;
        if (a >= reach)
            return new PlanMoments(A, 0, 0, A * HalfX * HalfX / 3, A * HalfY * HalfY / 3, 0);
        if (a <= -reach)
            return default;
        ReadOnlySpan<double> x = [HalfX, -HalfX, -HalfX, HalfX], y = [HalfY, HalfY, -HalfY, -HalfY];
        Span<double> px = stackalloc double[8], py = stackalloc double[8];
        int count = 0;
        for (int i = 0; i < 4; i++)
        {
            int j = (i + 1) % 4;
            double here = a + b * x[i] + c * y[i], next = a + b * x[j] + c * y[j];
            if (here > 0)
                (px[count], py[count++]) = (x[i], y[i]);
            if (here > 0 != next > 0)
            {
                double t = here / (here - next);
                (px[count], py[count++]) = (x[i] + t * (x[j] - x[i]), y[i] + t * (y[j] - y[i]));
            }
        }
        return Polygon(px[..count], py[..count]);
    }

    /// <summary>Triangles from the first vertex, each by its own centroid and sides: no digits are lost in a small part far from the center.</summary>
    private static PlanMoments Polygon(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        PlanMoments sum = default;
        for (int i = 1; i + 1 < x.Length; i++)
        {
            double ux = x[i] - x[0], uy = y[i] - y[0], vx = x[i + 1] - x[0], vy = y[i + 1] - y[0];
            double A = 0.5 * (ux * vy - uy * vx);
            var corner = new PlanMoments(
                A, A * (ux + vx) / 3, A * (uy + vy) / 3, A * (ux * ux + ux * vx + vx * vx) / 6, A * (uy * uy + uy * vy + vy * vy) / 6,
                A * (2 * ux * uy + 2 * vx * vy + ux * vy + vx * uy) / 12);
            sum += corner.MovedTo(x[0], y[0]);
        }
        return sum;
    }

    public override (double X, double Y) Farthest(double ux, double uy) => (ux < 0 ? -HalfX : HalfX, uy < 0 ? -HalfY : HalfY);

    public override double Gauge(double x, double y) => Math.Max(Math.Abs(x) / HalfX, Math.Abs(y) / HalfY);
}
