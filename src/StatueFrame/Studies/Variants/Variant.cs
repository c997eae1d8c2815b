namespace StatueFrame.Studies;

/// <summary>A change to a statue, with a name for the tables.</summary>
/// <remarks>Immutable and safe to share between threads when its function is.</remarks>
/// <param name="Name">The name of its row; unique in a study.</param>
/// <param name="Change">Makes the variant from the statue it is applied to, as in <c>s => s with { … }</c>.</param>
public sealed record Variant(string Name, Func<Statue, Statue> Change)
{
    /// <summary>One variant a value.</summary>
    /// <param name="name">What is varied, as in "thickness".</param>
    /// <param name="values">The values.</param>
    /// <param name="change">Makes the variant for a value.</param>
    public static ValueList<Variant> List<T>(string name, IEnumerable<T> values, Func<Statue, T, Statue> change) =>
        values.Select(value => new Variant(FormattableString.Invariant($"{name} {value}"), statue => change(statue, value))).ToValueList();

    /// <summary>Every variant of one list with every variant of another, the first applied first.</summary>
    /// <param name="first">The one list.</param>
    /// <param name="second">The other.</param>
    public static ValueList<Variant> Grid(IEnumerable<Variant> first, IEnumerable<Variant> second)
    {
        Variant[] inner = [.. second];
        return first.SelectMany(a => inner.Select(b => new Variant($"{a.Name}, {b.Name}", statue => b.Change(a.Change(statue))))).ToValueList();
    }

    /// <summary>Variants at random points of uncertain inputs; the same seed gives the same ones.</summary>
    /// <param name="inputs">What is varied, 1 to 64.</param>
    /// <param name="count">How many, 1 to 1 million.</param>
    /// <param name="change">Makes the variant for values of the inputs, in their order.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="rule">How points are drawn.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is out of range.</exception>
    public static ValueList<Variant> Sample(
        IReadOnlyList<Uncertain> inputs, int count, Func<Statue, IReadOnlyList<double>, Statue> change, ulong seed = 1, SamplingRule rule = SamplingRule.LowDiscrepancy)
    {
        Sampling.CheckInputs(inputs);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, 1_000_000);
        return Enumerable.Range(0, count).Select(i =>
        {
            double[] x = [.. inputs.Select((input, d) => input.Quantile(rule == SamplingRule.MonteCarlo ? RandomStream.Uniform(seed, i, d) : RandomStream.Halton(seed, i, d)))];
            string values = string.Join(", ", inputs.Select((input, d) => FormattableString.Invariant($"{input.Name} {x[d]:g4}")));
            return new Variant(FormattableString.Invariant($"{i + 1}: {values}"), statue => change(statue, x));
        }).ToValueList();
    }
}
