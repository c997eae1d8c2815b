namespace StatueFrame.Studies;

/// <summary>A part that comes in stock sizes: a list of sizes, and how a statue is made with one.</summary>
/// <remarks>Immutable and safe to share between threads when its function is.</remarks>
public sealed class StockInput
{
    private readonly Func<Statue, int, Statue> change;

    private StockInput(string name, ValueList<string> sizes, bool strengthens, Func<Statue, int, Statue> change) => (Name, Sizes, Strengthens, this.change) = (name, sizes, strengthens, change);

    /// <summary>What is chosen, as in "body bars".</summary>
    public string Name { get; }

    /// <summary>The sizes in words, as they were given.</summary>
    public ValueList<string> Sizes { get; }

    /// <summary>
    /// True when it was declared that a later size never makes a check fail that an earlier one passes, all else alike. Then what
    /// one failure rules out need not be checked; the search looks for contradictions.
    /// </summary>
    public bool Strengthens { get; }

    /// <summary>A part and its sizes.</summary>
    /// <param name="name">What is chosen.</param>
    /// <param name="sizes">The sizes, from small to large: the objective must not fall from one to the next.</param>
    /// <param name="change">Makes the statue with a size.</param>
    /// <param name="strengthens">
    /// Whether a later size never makes a check fail that an earlier one passes. Say so for legs under wind; do not for standoffs
    /// under heat, where a thicker bar is stressed more.
    /// </param>
    /// <exception cref="ArgumentException">There is no size.</exception>
    public static StockInput Of<T>(string name, IReadOnlyList<T> sizes, Func<Statue, T, Statue> change, bool strengthens = false)
    {
        ArgumentNullException.ThrowIfNull(sizes);
        ArgumentNullException.ThrowIfNull(change);
        if (sizes.Count == 0)
            throw new ArgumentException($"There must be at least one size of {name}.", nameof(sizes));
        T[] kept = [.. sizes];
        return new StockInput(name, kept.Select(size => FormattableString.Invariant($"{size}")).ToValueList(), strengthens, (statue, i) => change(statue, kept[i]));
    }

    internal Statue With(Statue statue, int size) => change(statue, size);
}
