using System.Text;
using MathNet.Numerics.RootFinding;

namespace StatueFrame.Studies;

/// <summary>
/// The region of two inputs, as thickness and length of the bars, in which several limits hold: the curve of each limit,
/// the intervals between them, and the point with the widest margin.
/// </summary>
/// <remarks>
/// Along each column of the first input every limit is sampled, and every change between holding and failing is found by
/// Brent's method to the accuracy asked for. Where three samples show a dip that could cross the limit, its vertex is sampled
/// too; narrower ones can be missed. Immutable and safe to share between threads.
/// </remarks>
public sealed class DesignWindow
{
    private DesignWindow(WindowInput x, WindowInput y, ValueList<LimitPoint> curves, ValueList<WindowInterval> intervals, (double X, double Y, double Margin)? widest) =>
        (X, Y, Curves, Intervals, Widest) = (x, y, curves, intervals, widest);

    /// <summary>The first input.</summary>
    public WindowInput X { get; }

    /// <summary>The second input.</summary>
    public WindowInput Y { get; }

    /// <summary>Where limits are just met, column by column.</summary>
    public ValueList<LimitPoint> Curves { get; }

    /// <summary>Where all limits hold, column by column.</summary>
    public ValueList<WindowInterval> Intervals { get; }

    /// <summary>The point with the least greatest utilization, and 1 less it; null when the window is empty.</summary>
    public (double X, double Y, double Margin)? Widest { get; }

    /// <summary>Finds a window.</summary>
    /// <param name="x">The first input.</param>
    /// <param name="y">The second input.</param>
    /// <param name="limits">
    /// The utilization of each limit by name at a point; 1 is just met, infinite or not a number is not met. It must be a pure
    /// function and give the same names everywhere.
    /// </param>
    /// <param name="columns">Values of the first input, 2 to 1000.</param>
    /// <param name="samples">Values of the second input that are tried in a column, 3 to 1000.</param>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <param name="accuracy">How near to a limit its curve is, as a part of the range; 1e-14 to 0.1.</param>
    /// <exception cref="ArgumentException">A range does not ascend, or the names differ.</exception>
    /// <exception cref="OperationCanceledException">The study was stopped.</exception>
    public static DesignWindow Of(
        WindowInput x, WindowInput y, Func<double, double, IReadOnlyList<(string Limit, double Utilization)>> limits, int columns = 25, int samples = 15, StudyOptions? options = null,
        double accuracy = 1e-12)
    {
        x.Validate(nameof(x));
        y.Validate(nameof(y));
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(columns, 1000);
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 3);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(samples, 1000);
        if (!(accuracy is >= 1e-14 and <= 0.1))
            throw new ArgumentOutOfRangeException(nameof(accuracy), accuracy, "It must be from 1e-14 to 0.1.");
        options ??= new StudyOptions();
        var found = new (List<LimitPoint> Curves, List<WindowInterval> Intervals, double BestY, double Best)[columns];
        options.For(columns, i => found[i] = Column(x.Least + (x.Greatest - x.Least) * i / (columns - 1), y, limits, samples, accuracy));
        ValueList<WindowInterval> intervals = found.SelectMany(c => c.Intervals).ToValueList();
        return new DesignWindow(x, y, found.SelectMany(c => c.Curves).ToValueList(), intervals, WidestOf(x, y, found, limits, accuracy, options with { Progress = null }));
    }

    /// <summary>The curves and intervals as comma-separated values.</summary>
    /// <param name="units">The units to print in.</param>
    public string ToCsv(DisplayUnits units = DisplayUnits.Metric)
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["limit", CsvText.Head(X.Name, X.Dimension, units), CsvText.Head(Y.Name, Y.Dimension, units), "holds"]);
        foreach (LimitPoint point in Curves)
            CsvText.AppendLine(text, [point.Limit, CsvText.Number(point.X, X.Dimension, units), CsvText.Number(point.Y, Y.Dimension, units), point.OkAbove ? "above" : "below"]);
        return text.ToString();
    }

    private static (List<LimitPoint>, List<WindowInterval>, double, double) Column(
        double x, WindowInput y, Func<double, double, IReadOnlyList<(string Limit, double Utilization)>> limits, int samples, double accuracy)
    {
        double range = y.Greatest - y.Least;
        var at = new List<double>();
        var u = new List<IReadOnlyList<(string Limit, double Utilization)>>();
        for (int j = 0; j < samples; j++)
            Sample(j, y.Least + range * j / (samples - 1));
        for (int j = at.Count - 2; j > 0; j--)
        {
            foreach (double dip in Dips(at, u, j).Where(v => at.TrueForAll(other => Math.Abs(v - other) > 0.01 * range / samples)).Order().ToList())
                Sample(at.FindIndex(other => other > dip), dip);
        }
        samples = at.Count;
        // Beyond a wall nothing is known: the wall itself bounds what is.
        var walls = new bool[samples];
        var curves = new List<LimitPoint>();
        var crossings = new List<double> { y.Least, y.Greatest };
        for (int k = 0; k < u[0].Count; k++)
        {
            for (int j = 1; j < samples; j++)
            {
                (double before, double after) = (Excess(u[j - 1][k].Utilization), Excess(u[j][k].Utilization));
                if (before <= 0 == after <= 0)
                    continue;
                double failing = after <= 0 ? u[j - 1][k].Utilization : u[j][k].Utilization;
                if (double.IsNaN(failing) && walls[j])
                    continue;
                walls[j] |= double.IsPositiveInfinity(failing);
                int limit = k;
                double root = Root(v => Excess(limits(x, v)[limit].Utilization), at[j - 1], at[j], accuracy * (at[j] - at[j - 1]));
                crossings.Add(root);
                // Where a limit begins to be unknown is no curve of its own.
                if (!double.IsNaN(failing))
                    curves.Add(new LimitPoint(u[0][k].Limit, x, root, OkAbove: after <= 0));
            }
        }
        crossings.Sort();
        var intervals = new List<WindowInterval>();
        for (int j = 1; j < crossings.Count; j++)
        {
            (double from, double to) = (crossings[j - 1], crossings[j]);
            if (to - from <= accuracy * range || !(Greatest(limits(x, (from + to) / 2)) <= 1))
                continue;
            if (intervals.Count > 0 && intervals[^1].To == from)
                intervals[^1] = intervals[^1] with { To = to };
            else
                intervals.Add(new WindowInterval(x, from, to));
        }
        int best = Enumerable.Range(0, samples).MinBy(j => Greatest(u[j]));
        return (curves, intervals, at[best], Greatest(u[best]));

        void Sample(int place, double value)
        {
            IReadOnlyList<(string Limit, double Utilization)> found = limits(x, value);
            if (u.Count > 0 && !found.Select(l => l.Limit).SequenceEqual(u[0].Select(l => l.Limit)))
                throw new ArgumentException($"The limits at ({x}, {value}) have other names than at ({x}, {at[0]}).", nameof(limits));
            at.Insert(place, value);
            u.Insert(place, found);
        }
    }

    /// <summary>Where parabolas through three samples on one side of a limit turn back, near to it or beyond.</summary>
    private static IEnumerable<double> Dips(List<double> at, List<IReadOnlyList<(string Limit, double Utilization)>> u, int j)
    {
        for (int k = 0; k < u[j].Count; k++)
        {
            (double a, double b, double c) = (Excess(u[j - 1][k].Utilization), Excess(u[j][k].Utilization), Excess(u[j + 1][k].Utilization));
            if (a <= 0 != b <= 0 || b <= 0 != c <= 0 || Math.Abs(b) > Math.Min(Math.Abs(a), Math.Abs(c)))
                continue;
            double left = (b - a) / (at[j] - at[j - 1]), right = (c - b) / (at[j + 1] - at[j]), bend = (right - left) / (at[j + 1] - at[j - 1]);
            if (bend == 0)
                continue;
            double vertex = Math.Clamp((at[j - 1] + at[j]) / 2 - left / (2 * bend), at[j - 1], at[j + 1]);
            double there = b + (vertex - at[j]) * (left + bend * (vertex - at[j - 1]));
            if (there <= 0 != b <= 0 || Math.Abs(there) < 0.5 * Math.Abs(b))
                yield return vertex;
        }
    }

    /// <summary>
    /// From the best sample, a search along six directions: whenever none of them betters the point, the
    /// directions are turned and every second time the step is halved, so that a ridge between two limits does not hold it up.
    /// </summary>
    private static (double, double, double)? WidestOf(
        WindowInput x, WindowInput y, (List<LimitPoint>, List<WindowInterval>, double BestY, double Best)[] columns, Func<double, double, IReadOnlyList<(string, double)>> limits,
        double accuracy, StudyOptions options)
    {
        const int Directions = 6, Turns = 2;
        const double Golden = 2.399963229728653;
        int start = Enumerable.Range(0, columns.Length).MinBy(i => columns[i].Best);
        double width = x.Greatest - x.Least, height = y.Greatest - y.Least;
        (double X, double Y, double U) best = (x.Least + width * start / (columns.Length - 1), columns[start].BestY, columns[start].Best);
        var tried = new (double X, double Y, double U)[Directions];
        int turn = 0;
        for (double step = 0.5 / columns.Length; step > Math.Max(accuracy, 1e-9);)
        {
            options.For(Directions, i =>
            {
                double angle = Golden * turn + 2 * Math.PI * i / Directions;
                (double px, double py) = (Math.Clamp(best.X + Math.Cos(angle) * step * width, x.Least, x.Greatest), Math.Clamp(best.Y + Math.Sin(angle) * step * height, y.Least, y.Greatest));
                tried[i] = (px, py, Greatest(limits(px, py)));
            });
            (double X, double Y, double U) next = tried.MinBy(t => t.U);
            if (next.U < best.U)
                best = next;
            else if (++turn % Turns == 0)
                step /= 2;
        }
        return best.U <= 1 ? (best.X, best.Y, 1 - best.U) : null;
    }

    private static double Greatest(IReadOnlyList<(string, double Utilization)> limits)
    {
        double greatest = 0;
        foreach ((_, double u) in limits)
            greatest = double.IsNaN(u) ? double.PositiveInfinity : Math.Max(greatest, u);
        return greatest;
    }

    /// <summary>u − 1 made finite and bounded, so that root finding keeps its bracket: 1 − 1/u has the same root.</summary>
    private static double Excess(double u) => !(u > 0) ? double.IsNaN(u) ? 1 : -1 : double.IsPositiveInfinity(u) ? 1 : u < 1 ? u - 1 : 1 - 1 / u;

    internal static double Root(Func<double, double> f, double low, double high, double accuracy) =>
        Brent.TryFindRoot(f, low, high, accuracy, 200, out double root) ? root : Bisection.FindRoot(f, low, high, accuracy, 200);
}
