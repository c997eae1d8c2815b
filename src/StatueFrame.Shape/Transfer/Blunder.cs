using System.Globalization;

namespace StatueFrame.Shape;

/// <summary>A reading that does not fit the others.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Point">Name of the point.</param>
/// <param name="Reading">Which reading, as "line A3, second reading" or "height, first reading".</param>
/// <param name="Standardized">Its residual over the residual's standard error.</param>
/// <param name="LeftOut">
/// True when it was left out; false when it cannot be told from its fellow, and both stand: read the point anew.
/// </param>
public sealed record Blunder(string Point, string Reading, double Standardized, bool LeftOut)
{
    /// <summary>One line of text.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Point}: {Reading} is {Math.Abs(Standardized):f1} standard errors off; {(LeftOut ? "left out" : "it or its fellow is wrong, read anew")}");
}
