using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>Adjusts one point: its plan place from distances, by repeated linearization, and its height.</summary>
internal static class PointAdjuster
{
    private const int MostSteps = 50;

    private sealed record Reading(string What, double Value, double X = 0, double Y = 0);

    public static AdjustedPoint Adjust(PointSurvey survey, string name)
    {
        Dictionary<string, ReferenceLine> lines = survey.Lines.ToDictionary(l => l.Name);
        LineReading[] distances = [.. survey.Distances.Where(d => d.Point == name)];
        HeightReading[] heights = [.. survey.Heights.Where(h => h.Point == name)];
        List<Reading> plan = [.. distances.SelectMany(d => Twice($"line {d.Line}", d.First, d.Second, lines[d.Line].X.Meters, lines[d.Line].Y.Meters))];
        List<Reading> level = [.. heights.SelectMany((h, i) => Twice(heights.Length == 1 ? "height" : $"height {i + 1}", h.First, h.Second, 0, 0))];
        (double X, double Y) middle = (survey.Lines.Average(l => l.X.Meters), survey.Lines.Average(l => l.Y.Meters));
        var blunders = new List<Blunder>();
        LinearAdjustment? Plan() => PlanOf(plan, survey.DistanceError.Meters, middle);
        LinearAdjustment? Level() => LinearAdjustment.Of(Ones(level.Count), [.. level.Select(r => r.Value)], Same(level.Count, survey.HeightError.Meters));
        LinearAdjustment xy = Snooped(name, plan, Plan, survey.BlunderLimit, blunders);
        LinearAdjustment z = Snooped(name, level, Level, survey.BlunderLimit, blunders);
        return new AdjustedPoint
        {
            Name = name,
            At = Point3.FromMeters(xy.Unknowns[0], xy.Unknowns[1], z.Unknowns[0]),
            Covariance = (xy.Covariance[0, 0], xy.Covariance[1, 1], xy.Covariance[0, 1], z.Covariance[0, 0]),
            ClosingError = Length.FromMeters(Math.Max(
                distances.Max(d => Math.Abs(d.First.Meters - d.Second.Meters)), heights.Max(h => Math.Abs(h.First.Meters - h.Second.Meters)))),
            Redundancy = xy.Freedom + z.Freedom,
            WeightedSquares = xy.Weighted + z.Weighted,
            Blunders = [.. blunders],
        };
    }

    private static Reading[] Twice(string what, Length first, Length second, double x, double y) =>
        [new(what + ", first reading", first.Meters, x, y), new(what + ", second reading", second.Meters, x, y)];

    /// <summary>
    /// Leaves out the reading with the greatest standardized residual while that passes the limit, one at a time. A reading
    /// that has a fellow with the same standardized residual cannot be told from it, and stands.
    /// </summary>
    private static LinearAdjustment Snooped(string point, List<Reading> readings, Func<LinearAdjustment?> adjust, double limit, List<Blunder> blunders)
    {
        LinearAdjustment? adjusted = adjust();
        while (adjusted is not null)
        {
            double[] w = adjusted.Standardized;
            double greatest = w.Max(Math.Abs);
            if (greatest <= limit)
                return adjusted;
            int[] worst = [.. Enumerable.Range(0, w.Length).Where(i => Math.Abs(w[i]) > (1 - 1e-6) * greatest)];
            if (worst.Length > 1)
            {
                blunders.AddRange(worst.Select(i => new Blunder(point, readings[i].What, w[i], LeftOut: false)));
                return adjusted;
            }
            blunders.Add(new Blunder(point, readings[worst[0]].What, w[worst[0]], LeftOut: true));
            readings.RemoveAt(worst[0]);
            adjusted = adjust();
        }
        throw new ArgumentException($"The readings of point \"{point}\" do not fix its place: its lines lie in one direction, or their distances do not meet.");
    }

    private static LinearAdjustment? PlanOf(List<Reading> readings, double sigma, (double X, double Y) middle)
    {
        (double x, double y) = Start(readings, middle);
        for (int step = 0; step < MostSteps; step++)
        {
            var design = new double[readings.Count, 2];
            var off = new double[readings.Count];
            for (int i = 0; i < off.Length; i++)
            {
                double dx = x - readings[i].X, dy = y - readings[i].Y, d = Math.Max(Math.Sqrt(dx * dx + dy * dy), 1e-9);
                (design[i, 0], design[i, 1]) = (dx / d, dy / d);
                off[i] = readings[i].Value - d;
            }
            if (LinearAdjustment.Of(design, off, Same(off.Length, sigma)) is not { } change)
                return null;
            (x, y) = (x + change.Unknowns[0], y + change.Unknowns[1]);
            if (!(Math.Abs(x) < 1e6 && Math.Abs(y) < 1e6))
                return null;
            if (Math.Max(Math.Abs(change.Unknowns[0]), Math.Abs(change.Unknowns[1])) < 1e-9)
            {
                change.Unknowns[0] = x;
                change.Unknowns[1] = y;
                return change;
            }
        }
        return null;
    }

    /// <summary>
    /// Where the differences of the squared distances meet; for lines in a row, which leave two such places, the one on
    /// the side of the frame's middle.
    /// </summary>
    private static (double X, double Y) Start(List<Reading> readings, (double X, double Y) middle)
    {
        double mx = readings.Average(r => r.X), my = readings.Average(r => r.Y);
        double mean = readings.Average(r => Square(r.X - mx) + Square(r.Y - my) - Square(r.Value));
        var A = new double[readings.Count, 2];
        var l = new double[readings.Count];
        for (int i = 0; i < l.Length; i++)
        {
            (A[i, 0], A[i, 1]) = (2 * (readings[i].X - mx), 2 * (readings[i].Y - my));
            l[i] = Square(readings[i].X - mx) + Square(readings[i].Y - my) - Square(readings[i].Value) - mean;
        }
        if (LinearAdjustment.Of(A, l, Same(l.Length, 1)) is { } found)
            return (mx + found.Unknowns[0], my + found.Unknowns[1]);
        // In a row: the best place along the row, and as far off it as the distances say.
        (double ux, double uy) = Direction(readings, mx, my);
        double along = 0, weight = 0;
        for (int i = 0; i < l.Length; i++)
        {
            double a = A[i, 0] * ux + A[i, 1] * uy;
            along += a * l[i];
            weight += a * a;
        }
        along = weight > 0 ? along / weight : 0;
        double off = Math.Sqrt(Math.Max(readings.Average(r => Square(r.Value) - Square(along - ((r.X - mx) * ux + (r.Y - my) * uy))), 1e-6));
        double side = (middle.X - mx) * -uy + (middle.Y - my) * ux >= 0 ? off : -off;
        return (mx + along * ux - side * uy, my + along * uy + side * ux);
    }

    private static (double X, double Y) Direction(List<Reading> readings, double mx, double my)
    {
        Reading farthest = readings.MaxBy(r => Square(r.X - mx) + Square(r.Y - my))!;
        double dx = farthest.X - mx, dy = farthest.Y - my, d = Math.Sqrt(dx * dx + dy * dy);
        return d > 0 ? (dx / d, dy / d) : (1, 0);
    }

    private static double[,] Ones(int n)
    {
        var ones = new double[n, 1];
        for (int i = 0; i < n; i++)
            ones[i, 0] = 1;
        return ones;
    }

    private static double[] Same(int n, double sigma)
    {
        var all = new double[n];
        Array.Fill(all, sigma);
        return all;
    }

    private static double Square(double v) => v * v;
}
