namespace StatueFrame;

/// <summary>
/// Something the library took for the user: a default coefficient, a damping ratio, a fixity. Every assumption stands
/// on the check sheet, and the user can replace it by a value of their own.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Subject">What was assumed, as in "force coefficient of all bands".</param>
/// <param name="Value">The value or the statement taken, in words with its unit, as in "1.3".</param>
/// <param name="Source">Where the value comes from.</param>
public sealed record Assumption(string Subject, string Value, Source Source)
{
    /// <summary>What was assumed without its source, as checks that rest on it name it.</summary>
    public string Short => $"{Subject}: {Value}";

    /// <summary>Whether a factor was taken as 1, which changes nothing.</summary>
    internal bool IsNeutral => Value == "1" || Value == "1.0" || Value.StartsWith("1.0 (", StringComparison.Ordinal) || Value.StartsWith("1.0, no ", StringComparison.Ordinal);

    /// <summary>The assumption on one line.</summary>
    public override string ToString() => $"{Subject}: {Value} ({Source})";
}
