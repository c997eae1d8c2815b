namespace StatueFrame.Checks;

/// <summary>A line of the basis of design, as in "wind: EN 1991-1-4, 27 m/s, terrain 0".</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">What it is about.</param>
/// <param name="Value">What was chosen, in words.</param>
public sealed record BasisLine(string Name, string Value)
{
    /// <summary>The line.</summary>
    public override string ToString() => $"{Name}: {Value}";
}
