namespace StatueFrame.Analysis;

/// <summary>
/// The greatest of several values. Of values that are equal but for rounding, as by symmetry, the first counts, so that
/// the same place is named on every machine.
/// </summary>
internal static class Extremes
{
    private const double Rounding = 1e-9;

    /// <summary>True when a value is greater than another by more than rounding.</summary>
    public static bool Exceeds(double value, double other) => value - other > Rounding * Math.Abs(other);

    /// <summary>The first of the items with the greatest value.</summary>
    public static T FirstGreatest<T>(this IReadOnlyList<T> items, Func<T, double> value)
    {
        T found = items[0];
        double greatest = value(found);
        for (int i = 1; i < items.Count; i++)
        {
            double candidate = value(items[i]);
            if (Exceeds(candidate, greatest))
                (found, greatest) = (items[i], candidate);
        }
        return found;
    }
}
