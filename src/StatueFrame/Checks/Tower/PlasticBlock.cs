namespace StatueFrame.Checks;

/// <summary>The even stress block that balances a thrust.</summary>
/// <remarks>Stateless; safe to use from many threads. SI units.</remarks>
internal static class PlasticBlock
{
    /// <summary>
    /// Of all even blocks with their centroid at the thrust, the greatest is cut off by a straight line. Its direction is
    /// found by bisection within a right angle either side of the thrust's, its distance by bisection for each direction.
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
        double at = Math.Atan2(ey, ex), low = at - Math.PI / 2, high = at + Math.PI / 2;
        (double area, double aside) = Cut(plan, at, ex, ey);
        if (Math.Abs(aside) <= 1e-14 * plan.Size)
            return area;
        for (int i = 0; i < 60; i++)
        {
            double middle = i == 0 ? at : 0.5 * (low + high);
            (area, aside) = Cut(plan, middle, ex, ey);
            if (aside > 0)
                high = middle;
            else
                low = middle;
        }
        return area;
    }

    /// <summary>The part beyond a line square to a direction whose centroid is level with the thrust; how far aside its centroid lies.</summary>
    private static (double Area, double Aside) Cut(PlanArea plan, double angle, double ex, double ey)
    {
        (double sin, double cos) = Math.SinCos(angle);
        double low = -plan.Reach(-cos, -sin), high = plan.Reach(cos, sin), level = ex * cos + ey * sin;
        PlanMoments part = plan.Whole;
        for (int i = 0; i < 60; i++)
        {
            double h = 0.5 * (low + high);
            PlanMoments m = plan.Where(-h, cos, sin);
            if (m.A > 0 && m.X * cos + m.Y * sin < level * m.A)
                low = h;
            else
                high = h;
            if (m.A > 0)
                part = m;
        }
        return (part.A, (part.Y * cos - part.X * sin) / part.A - (ey * cos - ex * sin));
    }
}
