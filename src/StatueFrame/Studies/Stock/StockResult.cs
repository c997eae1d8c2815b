using System.Text;

namespace StatueFrame.Studies;

/// <summary>The best choice of stock sizes, with what is proven of it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record StockResult
{
    internal StockResult()
    {
    }

    /// <summary>The chosen sizes, in the order of the inputs; empty when no choice is good enough, or none was found in time.</summary>
    public required ValueList<(string Input, string Size)> Choice { get; init; }

    /// <summary>The statue of the choice; null when there is none.</summary>
    public required Statue? Statue { get; init; }

    /// <summary>Its sheet; null when there is none.</summary>
    public required CheckSheet? Sheet { get; init; }

    /// <summary>What was to be least, for the choice; null when there is none.</summary>
    public required double? Objective { get; init; }

    /// <summary>How many choices there are.</summary>
    public required double Combinations { get; init; }

    /// <summary>How many sheets were made.</summary>
    public required int Checked { get; init; }

    /// <summary>Choices no dearer than the best that were ruled out unseen, because a stronger one fails.</summary>
    public required int RuledOut { get; init; }

    /// <summary>
    /// True when no choice is better: each cheaper one was checked and failed, or was ruled out by what was declared of the
    /// sizes. False when the search was cut short or <see cref="Contradiction"/> tells of a claim that does not hold.
    /// </summary>
    public required bool IsProven { get; init; }

    /// <summary>What was declared and does not hold; empty when nothing contradicted it.</summary>
    public required string Contradiction { get; init; }

    /// <summary>The choice and the certificate, on a few lines.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        foreach ((string input, string size) in Choice)
            text.Append($"{input}: {size}\n");
        if (Choice.Count == 0)
            text.Append(IsProven ? "no choice is good enough\n" : "none was found\n");
        text.Append(FormattableString.Invariant($"{(IsProven ? "proven" : "NOT PROVEN")}: {Checked} of {Combinations:0} choices checked, {RuledOut} ruled out by stronger ones that fail\n"));
        if (Contradiction.Length > 0)
            TextLayout.AppendWrapped(text, "", $"what was declared does not hold: {Contradiction}");
        return text.ToString();
    }
}
