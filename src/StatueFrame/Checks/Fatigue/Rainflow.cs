using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Counts the cycles of a stress history by the rainflow method of ASTM E1049-85, 5.4.4.</summary>
/// <remarks>
/// Closed loops count as whole cycles, the rest as half cycles. Points that are no reversals are dropped first.
/// Stateless; safe to use from many threads.
/// </remarks>
public static class Rainflow
{
    /// <summary>The cycles of a history, equal ranges gathered, by rising range.</summary>
    /// <param name="history">Stresses in the order of time.</param>
    /// <param name="name">A name for the blocks.</param>
    /// <exception cref="ArgumentOutOfRangeException">A stress is not finite.</exception>
    public static ValueList<StressBlock> Count(IEnumerable<Pressure> history, string name = "") =>
        Count([.. history.Select(s => CheckInput.Finite(s.Pascals, nameof(history)))])
            .GroupBy(c => c.Range).OrderBy(g => g.Key)
            .Select(g => new StressBlock(Pressure.FromPascals(g.Key), g.Sum(c => c.Cycles), name)).ToValueList();

    /// <summary>The cycles one by one, each whole or half, in the order they close.</summary>
    internal static List<(double Range, double Cycles)> Count(ReadOnlySpan<double> history)
    {
        var cycles = new List<(double, double)>();
        double[] open = new double[history.Length];
        int n = 0, start = 0;
        foreach (double point in Reversals(history))
        {
            open[n++] = point;
            while (n - start >= 3)
            {
                double X = Math.Abs(open[n - 1] - open[n - 2]), Y = Math.Abs(open[n - 2] - open[n - 3]);
                if (X < Y)
                    break;
                if (n - start == 3)
                {
                    cycles.Add((Y, 0.5));
                    start++;
                }
                else
                {
                    cycles.Add((Y, 1));
                    open[n - 3] = open[n - 1];
                    n -= 2;
                }
            }
        }
        for (int i = start; i < n - 1; i++)
            cycles.Add((Math.Abs(open[i + 1] - open[i]), 0.5));
        return cycles;
    }

    /// <summary>The peaks and valleys, with the first and the last point.</summary>
    private static List<double> Reversals(ReadOnlySpan<double> history)
    {
        var reversals = new List<double>();
        foreach (double point in history)
        {
            int n = reversals.Count;
            if (n > 0 && point == reversals[n - 1])
                continue;
            if (n > 1 && (point > reversals[n - 1]) == (reversals[n - 1] > reversals[n - 2]))
                reversals[n - 1] = point;
            else
                reversals.Add(point);
        }
        return reversals;
    }
}
