namespace StatueFrame;

/// <summary>
/// A plan figure made of rectangles and circles that do not overlap, less holes that lie inside them: a core, the plates
/// of a base, a footing. Moments of any part that a straight line cuts off are exact.
/// </summary>
/// <remarks>Immutable and safe to share between threads. SI units.</remarks>
internal sealed class PlanArea
{
    private readonly PlanPiece[] solids;
    private readonly PlanPiece[] holes;

    private PlanArea(PlanPiece[] solids, PlanPiece[] holes)
    {
        this.solids = solids;
        this.holes = holes;
        Whole = Where(1, 0, 0);
        foreach (PlanPiece piece in solids)
        {
            for (int i = 0; i < 4; i++)
            {
                (double x, double y) = piece.Farthest(i % 2 == 0 ? 1 : -1, i < 2 ? 1 : -1);
                Size = Math.Max(Size, Math.Max(Math.Abs(x + piece.CenterX), Math.Abs(y + piece.CenterY)));
            }
        }
    }

    /// <summary>Moments of the whole figure.</summary>
    public PlanMoments Whole { get; }

    /// <summary>Greatest coordinate of a far point, to scale by.</summary>
    public double Size { get; }

    public static PlanArea Rectangle(double widthX, double widthY, double centerX = 0, double centerY = 0) =>
        new([Piece(widthX, widthY, centerX, centerY)], []);

    public static PlanArea Disc(double diameter, double centerX = 0, double centerY = 0) =>
        new([new DiscPiece { CenterX = centerX, CenterY = centerY, Radius = diameter / 2 }], []);

    /// <summary>The figure without what another covers, which must lie inside it.</summary>
    public PlanArea Without(PlanArea hole) => new(solids, [.. holes, .. hole.solids]);

    /// <summary>Both figures, which must not overlap.</summary>
    public PlanArea With(PlanArea other) => new([.. solids, .. other.solids], [.. holes, .. other.holes]);

    /// <summary>Moments about the origin of the part where a + b x + c y &gt; 0.</summary>
    public PlanMoments Where(double a, double b, double c)
    {
        PlanMoments sum = default;
        foreach (PlanPiece piece in solids)
            sum += Of(piece, a, b, c);
        foreach (PlanPiece piece in holes)
            sum += -1 * Of(piece, a, b, c);
        return sum;
    }

    /// <summary>The point that lies farthest in a direction of any length.</summary>
    public (double X, double Y) Farthest(double ux, double uy)
    {
        (double X, double Y) best = default;
        double reach = double.NegativeInfinity;
        foreach (PlanPiece piece in solids)
        {
            (double x, double y) = piece.Farthest(ux, uy);
            (x, y) = (x + piece.CenterX, y + piece.CenterY);
            if (ux * x + uy * y > reach)
                (best, reach) = ((x, y), ux * x + uy * y);
        }
        return best;
    }

    /// <summary>How far the figure reaches in a direction, times the direction's length.</summary>
    public double Reach(double ux, double uy)
    {
        (double x, double y) = Farthest(ux, uy);
        return ux * x + uy * y;
    }

    /// <summary>
    /// The distance of a point from the origin over that of the edge of the figure's hull in the same direction: 1 on the
    /// edge. The origin must lie inside the hull.
    /// </summary>
    public double Gauge(double x, double y)
    {
        if (solids is [{ CenterX: 0, CenterY: 0 } only])
            return only.Gauge(x, y);
        // Gauge of a convex hull = greatest of u·r / reach(u) over all directions; the greatest lies at a side of the hull.
        double greatest = 0;
        foreach ((double ux, double uy) in HullNormals())
            greatest = Math.Max(greatest, (ux * x + uy * y) / Reach(ux, uy));
        return greatest;
    }

    /// <summary>Outward directions square to the sides of the hull; circles count as 360 sides.</summary>
    public IEnumerable<(double X, double Y)> HullNormals()
    {
        var points = new List<(double X, double Y)>();
        foreach (PlanPiece piece in solids)
        {
            int sides = piece is DiscPiece ? 360 : 4;
            for (int i = 0; i < sides; i++)
            {
                (double sin, double cos) = Math.SinCos(2 * Math.PI * (i + 0.5) / sides);
                (double x, double y) = piece.Farthest(cos, sin);
                points.Add((x + piece.CenterX, y + piece.CenterY));
            }
        }
        points.Sort();
        List<(double X, double Y)> hull = [.. Chain(points), .. Chain(Enumerable.Reverse(points))];
        for (int i = 0; i < hull.Count; i++)
        {
            (double X, double Y) p = hull[i], q = hull[(i + 1) % hull.Count];
            double dx = q.X - p.X, dy = q.Y - p.Y, length = Math.Sqrt(dx * dx + dy * dy);
            if (length > 0)
                yield return (dy / length, -dx / length);
        }
    }

    private static List<(double X, double Y)> Chain(IEnumerable<(double X, double Y)> points)
    {
        var chain = new List<(double X, double Y)>();
        foreach ((double X, double Y) p in points)
        {
            while (chain.Count > 1 && Cross(chain[^2], chain[^1], p) <= 0)
                chain.RemoveAt(chain.Count - 1);
            chain.Add(p);
        }
        chain.RemoveAt(chain.Count - 1);
        return chain;
    }

    private static double Cross((double X, double Y) o, (double X, double Y) p, (double X, double Y) q) =>
        (p.X - o.X) * (q.Y - o.Y) - (p.Y - o.Y) * (q.X - o.X);

    private static PlanMoments Of(PlanPiece piece, double a, double b, double c) =>
        piece.Where(a + b * piece.CenterX + c * piece.CenterY, b, c).MovedTo(piece.CenterX, piece.CenterY);

    private static RectanglePiece Piece(double widthX, double widthY, double centerX, double centerY) =>
        new() { CenterX = centerX, CenterY = centerY, HalfX = widthX / 2, HalfY = widthY / 2 };
}
