namespace StatueFrame.Studies;

/// <summary>Design windows on a statue: every point is a whole sheet.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class StatueWindow
{
    /// <summary>What is not met where a statue cannot be built, as where bars are longer than there is room for.</summary>
    public const string Description = "description";

    /// <summary>Finds the window of two inputs in which limits of the sheet hold; a point costs one check of the statue.</summary>
    /// <param name="x">The first input, as the bars' thickness.</param>
    /// <param name="y">The second input, as their length.</param>
    /// <param name="change">Makes the statue for values of both, SI.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations to check; at least one.</param>
    /// <param name="limits">The limits; at least one.</param>
    /// <param name="columns">Values of the first input, 2 to 1000.</param>
    /// <param name="samples">Values of the second input that are tried in a column, 3 to 1000.</param>
    /// <param name="accuracy">How near to a limit its curve is, as a part of the range.</param>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <exception cref="ArgumentException">
    /// A range does not ascend, there is no limit, there is no valid statue at any point looked at, or no sheet holds a check of
    /// one of the limits.
    /// </exception>
    /// <exception cref="OperationCanceledException">The study was stopped.</exception>
    public static DesignWindow Of(
        WindowInput x, WindowInput y, Func<double, double, Statue> change, Criteria criteria, IReadOnlyList<Situation> situations, IReadOnlyList<StatueLimit> limits,
        int columns = 9, int samples = 7, double accuracy = 1e-4, StudyOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(criteria);
        if (limits.Count == 0)
            throw new ArgumentException("There must be at least one limit.", nameof(limits));
        Situation[] all = [.. situations];
        var seen = new bool[limits.Count];
        string? problem = null;
        DesignWindow window = DesignWindow.Of(x, y, Limits, columns, samples, options, accuracy);
        if (problem is not null && !seen.Contains(true))
            throw new ArgumentException($"Nowhere in the ranges is there a statue: {problem}", nameof(change));
        int never = Array.IndexOf(seen, false);
        return never < 0 ? window : throw new ArgumentException(
            $"No sheet holds a check of \"{limits[never].Name}\" ({string.Join(", ", limits[never].Checks)}): describe what it needs, add its situation, or leave the limit out.", nameof(limits));

        IReadOnlyList<(string, double)> Limits(double at, double by)
        {
            CheckSheet sheet;
            try
            {
                sheet = change(at, by).Check(criteria, all);
            }
            catch (InvalidStatueException e)
            {
                Interlocked.CompareExchange(ref problem, e.Problems[0].ToString(), null);
                return [(Description, double.PositiveInfinity), .. limits.Select(limit => (limit.Name, double.NaN))];
            }
            var found = new (string, double)[limits.Count + 1];
            found[0] = (Description, 0);
            for (int k = 0; k < limits.Count; k++)
            {
                double? u = limits[k].Of(sheet);
                if (u is not null)
                    Volatile.Write(ref seen[k], true);
                found[k + 1] = (limits[k].Name, u ?? double.NaN);
            }
            return found;
        }
    }

    /// <summary>The values of an input at which a number has the value that is wanted, as the thickness of the bars for a frequency of the skin.</summary>
    /// <param name="input">The input, with the range that is looked at.</param>
    /// <param name="number">The number, as a pure function of the input's SI value; not a number where there is none.</param>
    /// <param name="wanted">The value that is wanted.</param>
    /// <param name="samples">Values that are tried, 3 to 1000; two solutions between neighbors can be missed.</param>
    /// <param name="accuracy">How near the solutions are, as a part of the range.</param>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <returns>The solutions, ascending; none when the number has the value nowhere in the range.</returns>
    /// <exception cref="ArgumentException">The range does not ascend, or the wanted value is not finite.</exception>
    public static ValueList<double> Solve(WindowInput input, Func<double, double> number, double wanted, int samples = 9, double accuracy = 1e-6, StudyOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(number);
        input.Validate(nameof(input));
        if (!double.IsFinite(wanted))
            throw new ArgumentException("The wanted value must be finite.", nameof(wanted));
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 3);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(samples, 1000);
        double[] at = new double[samples], off = new double[samples];
        (options ?? new StudyOptions()).For(samples, i =>
        {
            at[i] = input.Least + (input.Greatest - input.Least) * i / (samples - 1);
            off[i] = number(at[i]) - wanted;
        });
        var roots = new List<double>();
        for (int i = 0; i < samples; i++)
        {
            if (off[i] == 0)
                roots.Add(at[i]);
            else if (i > 0 && off[i - 1] * off[i] < 0)
                roots.Add(DesignWindow.Root(v => number(v) - wanted, at[i - 1], at[i], accuracy * (input.Greatest - input.Least)));
        }
        return roots.ToValueList();
    }
}
