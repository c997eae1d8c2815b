using System.Text;

namespace StatueFrame.Studies;

/// <summary>Why two variants differ.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="From">The earlier variant.</param>
/// <param name="To">The later variant.</param>
/// <param name="Inputs">The inputs that changed.</param>
/// <param name="Reasons">The governing checks of the later one that moved, with the numbers that moved them; the greatest change first.</param>
public sealed record VariantDifference(string From, string To, ValueList<InputChange> Inputs, ValueList<CheckReason> Reasons)
{
    /// <summary>The difference as plain text, at most 110 wide.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        TextLayout.AppendWrapped(text, "", $"FROM {From} TO {To}");
        foreach (InputChange change in Inputs)
            TextLayout.AppendWrapped(text, "  ", change.ToString());
        if (Inputs.Count == 0)
            TextLayout.AppendWrapped(text, "  ", "no input that a file holds changed");
        text.Append("therefore\n");
        foreach (CheckReason reason in Reasons)
            TextLayout.AppendWrapped(text, "  ", reason.ToString());
        if (Reasons.Count == 0)
            TextLayout.AppendWrapped(text, "  ", "no governing check moved");
        return text.ToString();
    }
}
