namespace StatueFrame;

/// <summary>Reads charts of standards whose horizontal axis is logarithmic and whose curve is made of straight lines.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class SemiLogChart
{
    /// <summary>The ordinate at <paramref name="x"/>; beyond either end, that of the end.</summary>
    /// <param name="points">The corners of the curve, at least one; abscissas positive and ascending.</param>
    /// <param name="x">The abscissa; may be infinite.</param>
    public static double Read(ReadOnlySpan<(double X, double Y)> points, double x)
    {
        if (x <= points[0].X)
            return points[0].Y;
        for (int i = 1; i < points.Length; i++)
        {
            ((double x0, double y0), (double x1, double y1)) = (points[i - 1], points[i]);
            if (x <= x1)
                return y0 + Math.Log(x / x0) / Math.Log(x1 / x0) * (y1 - y0);
        }
        return points[^1].Y;
    }
}
