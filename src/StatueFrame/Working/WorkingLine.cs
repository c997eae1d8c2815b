namespace StatueFrame;

/// <summary>One line of a <see cref="Working"/>. The kinds of line are the nested records; there are no others.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record WorkingLine
{
    private WorkingLine() { }

    /// <summary>A value the calculation starts from.</summary>
    /// <param name="Symbol">Its name.</param>
    /// <param name="Value">The value in SI units.</param>
    /// <param name="Dimension">What it measures.</param>
    /// <param name="Meaning">What it is; may be empty.</param>
    /// <param name="Source">Where it comes from; may be null.</param>
    public sealed record Given(FormulaNode Symbol, double Value, Dimension Dimension, string Meaning, Source? Source) : WorkingLine;

    /// <summary>A value that was computed.</summary>
    /// <param name="Symbol">Its name.</param>
    /// <param name="Formula">The formula that was computed.</param>
    /// <param name="Substituted">
    /// The formula with the values of earlier lines in it. Null when no earlier line has a part of it, and when it would
    /// not give the value, as when a name was used for two things.
    /// </param>
    /// <param name="Value">The value in SI units.</param>
    /// <param name="Dimension">What it measures.</param>
    /// <param name="Meaning">What it is; may be empty.</param>
    /// <param name="Source">Where the formula comes from; may be null.</param>
    public sealed record Computed(
        FormulaNode Symbol, FormulaNode Formula, FormulaNode? Substituted, double Value, Dimension Dimension, string Meaning, Source? Source)
        : WorkingLine;

    /// <summary>Quantities that several causes add to: each is the sum of what the causes give, times their factors.</summary>
    /// <param name="Quantities">The sums.</param>
    /// <param name="Terms">What each cause gives, in the order in which they are added.</param>
    public sealed record Superposition(ValueList<Sum> Quantities, ValueList<Term> Terms) : WorkingLine;

    /// <summary>One quantity of a <see cref="Superposition"/>.</summary>
    /// <param name="Symbol">Its name.</param>
    /// <param name="Value">The sum in SI units.</param>
    /// <param name="Dimension">What it measures.</param>
    public sealed record Sum(FormulaNode Symbol, double Value, Dimension Dimension);

    /// <summary>One cause in a <see cref="Superposition"/>.</summary>
    /// <param name="Cause">What it is, as in "self-weight".</param>
    /// <param name="Factor">The factor on it.</param>
    /// <param name="Values">What it gives at the factor 1, in SI units, to each quantity.</param>
    public sealed record Term(string Cause, double Factor, ValueList<double> Values);

    /// <summary>A remark.</summary>
    /// <param name="Text">One sentence.</param>
    public sealed record Note(string Text) : WorkingLine;

    /// <summary>The start of a part of the calculation.</summary>
    /// <param name="Text">What the part finds.</param>
    public sealed record Heading(string Text) : WorkingLine;
}
