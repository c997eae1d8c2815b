using StatueFrame.Analysis;

namespace StatueFrame.Studies;

/// <summary>Which of several damaged statues is the worst.</summary>
internal static class RemovalOrder
{
    /// <summary>The first with the greatest utilization: of the whole sheet, then of what the removal made worse.</summary>
    public static WorstRemoval FirstWorst(this IReadOnlyList<WorstRemoval> removals)
    {
        WorstRemoval worst = removals[0];
        foreach (WorstRemoval other in removals)
        {
            double there = Governing(other), here = Governing(worst);
            if (Exceeds(there, here) || (!Exceeds(here, there) && Exceeds(other.Worsened?.Utilization ?? 0, worst.Worsened?.Utilization ?? 0)))
                worst = other;
        }
        return worst;
    }

    private static bool Exceeds(double a, double b) => double.IsInfinity(a) ? !double.IsInfinity(b) : Extremes.Exceeds(a, b);

    private static double Governing(WorstRemoval removal) =>
        removal.Screened.Falls is not null ? double.PositiveInfinity : removal.Sheet.Governing?.Utilization ?? 0;
}
