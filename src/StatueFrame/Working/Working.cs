namespace StatueFrame;

/// <summary>
/// The working of a calculation: what was given, which formulas were computed, with which numbers and results. A
/// working is a listener that a pure function tells its steps while it computes, by
/// <see cref="WorkingExtensions.Given(Working?, double, Dimension, string, Source?, string)"/> and
/// <see cref="WorkingExtensions.Let"/>; the printed formula is the source text of the expression that was computed.
/// </summary>
/// <remarks>
/// <para>
/// Null is the listener that is not there: then the steps cost no more than a test, and nothing is allocated, if the
/// sources are held in static fields. Use <c>w?.Note($"…")</c> for notes, which then are not even formatted.
/// </para>
/// <para>
/// Formulas should hold in any units: a number with a hidden unit, as the 10 m in (z / 10)^0.16, is to be a
/// <c>Given</c> with its dimension.
/// </para>
/// <para>For one thread while it listens; then it may be read by many.</para>
/// </remarks>
public sealed class Working
{
    // Two ways to compute one formula may differ by rounding, not by more.
    private const double Rounding = 1e-9;

    private readonly List<WorkingLine> lines = [];
    private Dictionary<FormulaNode, FormulaNode.Quantity> known = [];

    /// <summary>The lines in the order they were computed.</summary>
    public IReadOnlyList<WorkingLine> Lines => lines;

    /// <summary>The working of a calculation.</summary>
    /// <param name="calculation">The pure function to listen to.</param>
    public static Working Of(Action<Working> calculation)
    {
        var working = new Working();
        calculation(working);
        return working;
    }

    /// <summary>Adds a remark.</summary>
    /// <param name="text">One sentence.</param>
    public void Note(string text) => lines.Add(new WorkingLine.Note(text));

    /// <summary>
    /// Opens a part under a heading, with names of its own: a function called from another may use the same symbols for
    /// other things. The names from before are back when the part is disposed of: <c>using var part = w?.Part("…");</c>.
    /// </summary>
    /// <param name="heading">What the part finds.</param>
    public IDisposable Part(string heading)
    {
        lines.Add(new WorkingLine.Heading(heading));
        var part = new OpenPart(this, known);
        known = [];
        return part;
    }

    /// <summary>The working as plain text with aligned columns, at most 110 wide.</summary>
    /// <param name="units">The units to print in.</param>
    public string ToText(DisplayUnits units = DisplayUnits.Metric) => WorkingText.Of(lines, units);

    /// <summary>The working as plain text in metric units.</summary>
    public override string ToString() => ToText();

    internal void AddGiven(string symbol, double value, Dimension dimension, string meaning, Source? source)
    {
        FormulaNode name = FormulaNode.Parse(symbol);
        Know(name, value, dimension);
        lines.Add(new WorkingLine.Given(name, value, dimension, meaning, source));
    }

    internal void AddComputed(
        string symbol, double value, Dimension dimension, Source? source, string meaning, string formula, string listener)
    {
        FormulaNode name = FormulaNode.Parse(symbol);
        FormulaNode computed = WithoutListener(FormulaNode.Parse(formula), listener);
        lines.Add(new WorkingLine.Computed(name, computed, Substitute(computed, value), value, dimension, meaning, source));
        Know(name, value, dimension);
    }

    /// <summary>Adds quantities that several causes add to, under names that later lines know.</summary>
    internal void AddSuperposition(IEnumerable<(string Symbol, double Value, Dimension Dimension)> sums, IEnumerable<WorkingLine.Term> terms)
    {
        var quantities = sums.Select(sum => new WorkingLine.Sum(FormulaNode.Parse(sum.Symbol), sum.Value, sum.Dimension)).ToValueList();
        foreach (WorkingLine.Sum sum in quantities)
            Know(sum.Symbol, sum.Value, sum.Dimension);
        lines.Add(new WorkingLine.Superposition(quantities, terms.ToValueList()));
    }

    private void Know(FormulaNode name, double value, Dimension dimension)
    {
        if (name is not (FormulaNode.Number or FormulaNode.Verbatim))
            known[name] = new FormulaNode.Quantity(value, dimension, name);
    }

    /// <summary>The formula with the known values in it; null when there are none, or when it would print a wrong sum.</summary>
    private FormulaNode? Substitute(FormulaNode formula, double value)
    {
        FormulaNode substituted = formula.Replace(known.GetValueOrDefault);
        bool isSame = substituted == formula;
        bool isWrong = FormulaValue.Of(substituted) is { } again && !(Math.Abs(again - value) <= Rounding * Math.Abs(value)) && !again.Equals(value);
        return isSame || isWrong ? null : substituted;
    }

    private static FormulaNode WithoutListener(FormulaNode formula, string listener)
    {
        var itself = new FormulaNode.Symbol(listener);
        return formula.Replace(WithoutArgument);

        FormulaNode? WithoutArgument(FormulaNode node) =>
            node is FormulaNode.Call call && call.Arguments.Contains(itself)
                ? new FormulaNode.Call(call.Function, call.Arguments.Where(a => a != itself).Select(a => a.Replace(WithoutArgument)).ToValueList())
                : null;
    }

    private sealed class OpenPart(Working working, Dictionary<FormulaNode, FormulaNode.Quantity> before) : IDisposable
    {
        public void Dispose() => working.known = before;
    }
}
