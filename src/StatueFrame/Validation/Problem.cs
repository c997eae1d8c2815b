namespace StatueFrame;

/// <summary>One thing that is wrong with a description, with the path to it and a hint how to mend it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Path">Where, as in <c>Skin.Stations[3].Thickness</c>.</param>
/// <param name="Message">What is wrong, as in "must be greater than zero, is −2.4 mm".</param>
/// <param name="Hint">How to mend it; may be empty.</param>
public sealed record Problem(string Path, string Message, string Hint = "")
{
    /// <summary>The problem on one line.</summary>
    public override string ToString() => (Path.Length == 0 ? "" : $"{Path}: ") + Message + (Hint.Length == 0 ? "" : $". {Hint}");
}
