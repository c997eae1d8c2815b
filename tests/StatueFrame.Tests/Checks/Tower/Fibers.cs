namespace StatueFrame.Tests.Checks.Cores;

/// <summary>Sums over a grid of small squares: an independent way to integrate over a section.</summary>
internal static class Fibers
{
    /// <summary>∫σ, ∫σx, ∫σy over a section of a number of fibers a side.</summary>
    public static (double N, double X, double Y) Sum(BlockSection section, int count, Func<double, double, double> stress)
    {
        (double wx, double wy) = section.Widths;
        double N = 0, X = 0, Y = 0, A = wx * wy / ((double)count * count);
        for (int i = 0; i < count; i++)
        {
            double x = wx * ((i + 0.5) / count - 0.5);
            for (int j = 0; j < count; j++)
            {
                double y = wy * ((j + 0.5) / count - 0.5);
                if (!Inside(section, x, y))
                    continue;
                double F = A * stress(x, y);
                (N, X, Y) = (N + F, X + F * x, Y + F * y);
            }
        }
        return (N, X, Y);
    }

    private static bool Inside(BlockSection section, double x, double y) => section switch
    {
        RectangularBlock r => !(Math.Abs(x) < r.HollowX.Meters / 2 && Math.Abs(y) < r.HollowY.Meters / 2),
        RoundBlock c => x * x + y * y is var q && q <= c.Diameter.Meters * c.Diameter.Meters / 4 && q >= c.Hollow.Meters * c.Hollow.Meters / 4,
        _ => throw new NotSupportedException(),
    };
}
