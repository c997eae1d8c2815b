namespace StatueFrame.Studies;

/// <summary>
/// The cheapest point of a lattice that is good enough, by best-first search: points are looked at from cheap to dear, so that
/// the first good one is the best, and every cheaper one is known to be bad.
/// </summary>
/// <remarks>
/// Needs a cost that does not fall along any axis, which is watched. Along axes declared to strengthen, a bad point rules out
/// all that are not stronger. Batches have one size on any number of threads, so that the search looks at the same points.
/// </remarks>
internal sealed class LatticeSearch
{
    private const int Batch = 8, MostCompanies = 64;

    private readonly int[] sizes;
    private readonly bool[] strengthens;
    private readonly Func<int[], double> cost;
    private readonly Func<int[], bool> isGood;
    private readonly List<int[]> bad = [];
    private readonly HashSet<string> known = [];
    private readonly PriorityQueue<int[], (double Cost, string Key)> open = new(Comparer<(double Cost, string Key)>.Create(
        (a, b) => a.Cost != b.Cost ? a.Cost.CompareTo(b.Cost) : string.CompareOrdinal(a.Key, b.Key)));

    private LatticeSearch(int[] sizes, bool[] strengthens, Func<int[], double> cost, Func<int[], bool> isGood) =>
        (this.sizes, this.strengthens, this.cost, this.isGood) = (sizes, strengthens, cost, isGood);

    /// <summary>What a search found.</summary>
    /// <param name="Best">The best point; null when there is none, or none was found before the limit.</param>
    /// <param name="Cost">Its cost.</param>
    /// <param name="Checked">Points that were looked at.</param>
    /// <param name="RuledOut">Points met that a bad one ruled out unseen.</param>
    /// <param name="IsProven">Whether every cheaper point was looked at or ruled out, and no claim was contradicted.</param>
    /// <param name="Contradiction">The claim that did not hold; empty when all held.</param>
    public sealed record Found(int[]? Best, double Cost, int Checked, int RuledOut, bool IsProven, string Contradiction);

    public static Found Run(int[] sizes, bool[] strengthens, Func<int[], double> cost, Func<int[], bool> isGood, int most, int audits, StudyOptions options) =>
        new LatticeSearch(sizes, strengthens, cost, isGood).Run(most, audits, options);

    private Found Run(int most, int audits, StudyOptions options)
    {
        string contradiction = "";
        int looked = 0;
        List<int[]> ruledOut = [];
        Probe();
        Add(new int[sizes.Length], double.NegativeInfinity);
        while (open.Count > 0)
        {
            options.Cancellation.ThrowIfCancellationRequested();
            var batch = new List<(int[] Point, double Cost)>();
            while (batch.Count < Batch && looked + batch.Count < most && open.TryDequeue(out int[]? point, out (double Cost, string) at))
            {
                if (IsRuledOut(point))
                {
                    ruledOut.Add(point);
                    Expand(point, at.Cost);
                }
                else
                {
                    batch.Add((point, at.Cost));
                    // What comes after it may be cheaper than the rest of the batch.
                    Expand(point, at.Cost);
                }
            }
            if (batch.Count == 0)
            {
                if (open.Count == 0)
                    Audit(double.PositiveInfinity);
                return new Found(null, double.NaN, looked, ruledOut.Count, open.Count == 0 && contradiction.Length == 0, contradiction);
            }
            var good = new bool[batch.Count];
            options.For(batch.Count, i => good[i] = isGood(batch[i].Point));
            looked += batch.Count;
            for (int i = 0; i < batch.Count; i++)
            {
                if (!good[i])
                    bad.Add(batch[i].Point);
                else if (bad.Find(b => IsNoStronger(batch[i].Point, b)) is { } stronger)
                    Contradict($"[{Key(batch[i].Point)}] passes although the stronger [{Key(stronger)}] does not");
            }
            options.Progress?.Report(Math.Min(1, (double)looked / most));
            int first = Array.IndexOf(good, true);
            if (first >= 0)
            {
                Audit(batch[first].Cost);
                return new Found(batch[first].Point, batch[first].Cost, looked, ruledOut.Count, contradiction.Length == 0, contradiction);
            }
        }
        Audit(double.PositiveInfinity);
        return new Found(null, double.NaN, looked, ruledOut.Count, contradiction.Length == 0, contradiction);

        // For every axis that strengthens, with the others at their strongest: the sizes too weak in any company, by halving.
        void Probe()
        {
            int[][] companies = [[.. sizes.Select((n, axis) => strengthens[axis] ? n - 1 : 0)]];
            for (int axis = 0; axis < sizes.Length; axis++)
            {
                if (!strengthens[axis])
                    companies = [.. companies.SelectMany(c => Enumerable.Range(0, sizes[axis]).Select(i => Moved(c, axis, i)))];
                if (companies.Length > MostCompanies)
                    return;
            }
            (int[] Company, int Axis)[] lines = [.. companies.SelectMany(c => Enumerable.Range(0, sizes.Length).Where(axis => strengthens[axis]).Select(axis => (c, axis)))];
            (int Bad, int Good)[] ends = [.. lines.Select(line => (-1, sizes[line.Axis]))];
            for (int[] halved = Halved(); halved.Length > 0 && looked + halved.Length <= most; halved = Halved())
            {
                int[][] points = [.. halved.Select(i => Moved(lines[i].Company, lines[i].Axis, (ends[i].Bad + ends[i].Good) / 2))];
                var good = new bool[points.Length];
                options.For(points.Length, i => good[i] = isGood(points[i]));
                looked += points.Length;
                for (int i = 0; i < points.Length; i++)
                {
                    int size = points[i][lines[halved[i]].Axis];
                    ends[halved[i]] = good[i] ? ends[halved[i]] with { Good = size } : ends[halved[i]] with { Bad = size };
                    if (!good[i])
                        bad.Add(points[i]);
                }
            }

            int[] Halved() => [.. Enumerable.Range(0, lines.Length).Where(i => ends[i].Good - ends[i].Bad > 1)];
        }

        static int[] Moved(int[] point, int axis, int to)
        {
            int[] moved = [.. point];
            moved[axis] = to;
            return moved;
        }

        void Contradict(string claim) => contradiction = contradiction.Length == 0 ? claim : contradiction;

        // Looks at some of the points that were ruled out unseen, spread over all of them.
        void Audit(double below)
        {
            int[][] cheaper = [.. ruledOut.Where(p => cost(p) <= below)];
            int[] picked = [.. Enumerable.Range(0, Math.Min(audits, cheaper.Length)).Select(i => (int)((long)i * cheaper.Length / Math.Min(audits, cheaper.Length)))];
            var passes = new bool[picked.Length];
            options.For(picked.Length, i => passes[i] = isGood(cheaper[picked[i]]));
            looked += picked.Length;
            if (Array.IndexOf(passes, true) is >= 0 and int wrong)
                Contradict($"[{Key(cheaper[picked[wrong]])}] was ruled out by a stronger one that fails, but passes");
        }

        void Expand(int[] point, double from)
        {
            for (int axis = 0; axis < sizes.Length; axis++)
            {
                if (point[axis] + 1 >= sizes[axis])
                    continue;
                int[] next = [.. point];
                next[axis]++;
                Add(next, from);
            }
        }

        void Add(int[] point, double from)
        {
            if (!known.Add(Key(point)))
                return;
            double c = cost(point);
            if (!(c >= from - 1e-9 * Math.Abs(from)) && double.IsFinite(from))
                Contradict($"the objective falls from {from:g6} to {c:g6} at [{Key(point)}]: sizes must go from cheap to dear");
            open.Enqueue(point, (c, Key(point)));
        }
    }

    private bool IsRuledOut(int[] point) => bad.Exists(b => IsNoStronger(point, b));

    /// <summary>No greater along every axis that strengthens, and the same along the others.</summary>
    private bool IsNoStronger(int[] point, int[] than)
    {
        for (int axis = 0; axis < sizes.Length; axis++)
        {
            if (strengthens[axis] ? point[axis] > than[axis] : point[axis] != than[axis])
                return false;
        }
        return Array.IndexOf(strengthens, true) >= 0 || point.AsSpan().SequenceEqual(than);
    }

    private static string Key(int[] point) => string.Join(',', point);
}
