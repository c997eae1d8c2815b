using System.Text;

namespace StatueFrame.Studies;

/// <summary>The best fit of a model to measurements.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record CalibrationResult
{
    internal CalibrationResult()
    {
    }

    /// <summary>The adjusted numbers.</summary>
    public required ValueList<AdjustedValue> Values { get; init; }

    /// <summary>What the fitted model gives for each measurement, in their order, SI.</summary>
    public required ValueList<double> Fitted { get; init; }

    /// <summary>Sum of squared residuals over their standard errors.</summary>
    public required double ChiSquare { get; init; }

    /// <summary>Measurements less adjusted numbers.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>
    /// Combinations that the data cannot tell: raising the named numbers by these relative amounts changes the fit by less
    /// than the measurements' errors.
    /// </summary>
    public required ValueList<string> CannotTell { get; init; }

    /// <summary>
    /// Pairs that the data tell apart poorly, each with its correlation: their errors go together by more than 0.95, so that one
    /// can make up for the other.
    /// </summary>
    public required ValueList<string> Entangled { get; init; }

    /// <summary>True when the search settled.</summary>
    public required bool Converged { get; init; }

    /// <summary>The fit on a few lines.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        foreach (AdjustedValue v in Values)
        {
            string interval = double.IsFinite(v.High) ? FormattableString.Invariant($"95 % from {v.Low:g4} to {v.High:g4}") : "not bounded by the data";
            text.Append(FormattableString.Invariant($"{v.Name}: {v.Value:g4}, {interval}{(v.IsAtBound ? ", at its bound" : "")}\n"));
        }
        text.Append(DegreesOfFreedom > 0
            ? FormattableString.Invariant($"chi-square {ChiSquare:g3} for {DegreesOfFreedom} degrees of freedom")
            : "too few measurements to tell how well the model fits");
        text.Append(Converged ? "\n" : "; NOT SETTLED\n");
        foreach (string direction in CannotTell)
            text.Append($"the data cannot tell: {direction}\n");
        foreach (string pair in Entangled)
            text.Append($"hardly told apart: {pair}\n");
        return text.ToString();
    }
}
