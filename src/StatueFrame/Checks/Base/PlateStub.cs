namespace StatueFrame.Checks;

/// <summary>
/// How an anchor bar bends its base plate: of all the ways in which the plate can fold, the one that bears the least pull.
/// SI units.
/// </summary>
/// <remarks>
/// Of EN 1993-1-8:2005, Table 6.6, carried over to bars on every side: by itself, folding about its nearest point of what
/// stands on the plate; and with any number of its neighbors beyond a face, folding along that face, at most over the whole
/// width of the plate. Immutable and safe to share between threads.
/// </remarks>
/// <param name="m">Lever of the bar from the fold; zero where it stands at the foot.</param>
/// <param name="l">Length of plate that folds for this bar.</param>
internal readonly record struct PlateStub(double m, double l)
{
    /// <summary>A lever below this is none.</summary>
    private const double LeastLever = 1e-3;

    /// <summary>The weakest way.</summary>
    /// <param name="plate">The plate.</param>
    /// <param name="bar">The bar.</param>
    /// <param name="bars">All bars through the plate.</param>
    /// <param name="isRound">Whether what stands on it is round.</param>
    public static PlateStub Of(BasePlate plate, AnchorBar bar, IReadOnlyList<AnchorBar> bars, bool isRound)
    {
        PlateStub weakest = Alone(plate, bar, bars, isRound);
        foreach (bool alongX in (ReadOnlySpan<bool>)[true, false])
        {
            foreach (int sign in (ReadOnlySpan<int>)[1, -1])
                weakest = Weaker(weakest, BeyondFace(plate, bar, bars, alongX, sign));
        }
        return weakest;
    }

    private static PlateStub Weaker(PlateStub a, PlateStub b) => b.m > 0 && (a.m == 0 || b.l / b.m < a.l / a.m) ? b : a;

    /// <summary>The bar by itself, about the nearest point of what stands on the plate.</summary>
    private static PlateStub Alone(BasePlate plate, AnchorBar bar, IReadOnlyList<AnchorBar> bars, bool isRound)
    {
        (double dx, double dy) = (Math.Abs(bar.X.Meters - plate.X.Meters), Math.Abs(bar.Y.Meters - plate.Y.Meters));
        double radius = 0.5 * Math.Min(plate.FootX.Meters, plate.FootY.Meters), r = double.Hypot(dx, dy);
        double m = isRound ? r - radius : double.Hypot(Math.Max(0, dx - 0.5 * plate.FootX.Meters), Math.Max(0, dy - 0.5 * plate.FootY.Meters));
        if (m <= LeastLever)
            return default;
        double e = Math.Max(0, Math.Min(0.5 * plate.WidthX.Meters - dx, 0.5 * plate.WidthY.Meters - dy));
        double l = Math.Min(Math.Min(2 * Math.PI * m, Math.PI * m + 2 * e), Math.Min(4 * m + 1.25 * e, 2 * m + 0.625 * e + e));
        if (!isRound || bars.Count < 3)
            return new PlateStub(m, l);
        // Bars round a tube: each has no more of the tube's wall than half the way to its neighbors.
        double[] apart = [.. bars.Select(other => double.Hypot((other.X - bar.X).Meters, (other.Y - bar.Y).Meters)).Where(d => d > 1e-6).Order()];
        return new PlateStub(m, apart.Length < 2 ? l : Math.Min(l, 0.5 * (apart[0] + apart[1]) * radius / r));
    }

    /// <summary>The bar with its neighbors beyond one face of what stands on the plate.</summary>
    private static PlateStub BeyondFace(BasePlate plate, AnchorBar bar, IReadOnlyList<AnchorBar> bars, bool alongX, int sign)
    {
        double foot = 0.5 * (alongX ? plate.FootX : plate.FootY).Meters, end = 0.5 * (alongX ? plate.WidthX : plate.WidthY).Meters, half = 0.5 * (alongX ? plate.WidthY : plate.WidthX).Meters;
        double Out(AnchorBar b) => sign * (alongX ? b.X - plate.X : b.Y - plate.Y).Meters;
        double Along(AnchorBar b) => (alongX ? b.Y - plate.Y : b.X - plate.X).Meters;
        double m = Out(bar) - foot, e = Math.Max(0, end - Out(bar)), own = Along(bar);
        if (m <= LeastLever)
            return default;
        double[] row = [.. bars.Where(b => Out(b) - foot > LeastLever).Select(Along).Order()];
        double least = double.PositiveInfinity;
        for (int i = 0; i < row.Length && row[i] <= own; i++)
        {
            for (int j = row.Length - 1; j >= i && row[j] >= own; j--)
            {
                double span = row[j] - row[i], side = Math.Max(0, Math.Min(half - row[j], half + row[i]));
                double straight = Math.Min(2 * half, span + Math.Min(4 * m + 1.25 * e, 2 * m + 0.625 * e + side)), curved = 2 * span + Math.Min(2 * Math.PI * m, Math.PI * m + 2 * side);
                least = Math.Min(least, Math.Min(straight, curved) / (j - i + 1));
            }
        }
        return new PlateStub(m, least);
    }
}
