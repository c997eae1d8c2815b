namespace StatueFrame;

/// <summary>One thing that is wrong with a statue's file or a table, or that cannot be put in one.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Line">The line of the text, from 1; 0 when there is no text, as when writing.</param>
/// <param name="Path">Where, as in <c>statue.skin.stations[3].thickness</c>; empty for the file as a whole.</param>
/// <param name="Message">What is wrong, as in "needs a length, has the unit \"kg\"".</param>
/// <param name="Hint">How to mend it; may be empty.</param>
public sealed record StatueFileProblem(int Line, string Path, string Message, string Hint = "")
{
    /// <summary>The problem on one line.</summary>
    public override string ToString()
    {
        string where = string.Join(", ", new[] { Line > 0 ? $"line {Line}" : "", Path }.Where(part => part.Length > 0));
        return $"{where}{(where.Length > 0 ? ": " : "")}{Message}{(Hint.Length > 0 ? ". " : "")}{Hint}";
    }
}
