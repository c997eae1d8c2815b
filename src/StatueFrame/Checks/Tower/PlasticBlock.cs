using MathNet.Numerics.RootFinding;

namespace StatueFrame.Checks;

/// <summary>The even stress block that balances a thrust.</summary>
/// <remarks>Stateless; safe to use from many threads. SI units.</remarks>
internal static class PlasticBlock
{
    private const double Fine = 1e-14;
    private const int Most = 100;

    /// <summary>
    /// Of all even blocks with their centroid at the thrust, the greatest is cut off by a straight line. Its direction is
    /// found within a right angle either side of the thrust's, its distance for each direction, both by Brent's method.
    /// </summary>
    /// <param name="plan">The section, its centroid at the origin.</param>
    /// <param name="ex">Place of the thrust along x.</param>
    /// <param name="ey">Place of the thrust along y.</param>
    public static double AreaOf(PlanArea plan, double ex, double ey)
    {
        double e = Math.Sqrt(ex * ex + ey * ey);
        if (e <= 1e-12 * plan.Size)
            return plan.Whole.A;
        if (plan.Gauge(ex, ey) >= 1)
            return 0;
        double at = Math.Atan2(ey, ex);
        (double area, double aside) = Cut(plan, at, ex, ey);
        if (Math.Abs(aside) <= Fine * plan.Size)
            return area;
        // The centroid lies aside the one way at one end, the other way at the other: the thrust's own direction parts them.
        double low = aside > 0 ? at - Math.PI / 2 : at, high = aside > 0 ? at : at + Math.PI / 2;
        return Cut(plan, Root(angle => Cut(plan, angle, ex, ey).Aside, low, high, Fine), ex, ey).Area;
    }

    /// <summary>Where a rising function is zero; the end that is nearer to it when rounding leaves no change of sign.</summary>
    private static double Root(Func<double, double> f, double low, double high, double accuracy) =>
        f(low) >= 0 ? low : f(high) <= 0 ? high : Brent.FindRoot(f, low, high, accuracy, Most);

    /// <summary>The part beyond a line square to a direction whose centroid is level with the thrust; how far aside its centroid lies.</summary>
    private static (double Area, double Aside) Cut(PlanArea plan, double angle, double ex, double ey)
    {
        (double sin, double cos) = Math.SinCos(angle);
        double low = -plan.Reach(-cos, -sin), high = plan.Reach(cos, sin), level = ex * cos + ey * sin;
        if (level <= 0)
            return (plan.Whole.A, -(ey * cos - ex * sin));
        PlanMoments part = plan.Where(-Root(Beyond, low, high, Fine * plan.Size), cos, sin);
        return (part.A, (part.Y * cos - part.X * sin) / part.A - (ey * cos - ex * sin));

        // How far the centroid of what lies beyond a line is beyond the thrust; at the edge, where nothing is left, it is the edge's.
        double Beyond(double h)
        {
            PlanMoments m = plan.Where(-h, cos, sin);
            return (m.A > 0 ? (m.X * cos + m.Y * sin) / m.A : h) - level;
        }
    }
}
