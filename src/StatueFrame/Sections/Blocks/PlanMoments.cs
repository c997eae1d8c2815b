namespace StatueFrame;

/// <summary>The area of a plan figure and its moments about the origin: ∫dA, ∫x dA, ∫y dA, ∫x² dA, ∫y² dA, ∫xy dA. SI units.</summary>
internal readonly record struct PlanMoments(double A, double X, double Y, double XX, double YY, double XY)
{
    public static PlanMoments operator +(PlanMoments p, PlanMoments q) => new(p.A + q.A, p.X + q.X, p.Y + q.Y, p.XX + q.XX, p.YY + q.YY, p.XY + q.XY);

    public static PlanMoments operator *(double s, PlanMoments p) => new(s * p.A, s * p.X, s * p.Y, s * p.XX, s * p.YY, s * p.XY);

    /// <summary>The moments about the origin of a figure whose moments about its own point are known.</summary>
    /// <param name="cx">The point's x.</param>
    /// <param name="cy">The point's y.</param>
    public PlanMoments MovedTo(double cx, double cy) => new(
        A, X + cx * A, Y + cy * A, XX + 2 * cx * X + cx * cx * A, YY + 2 * cy * Y + cy * cy * A, XY + cx * Y + cy * X + cx * cy * A);
}
