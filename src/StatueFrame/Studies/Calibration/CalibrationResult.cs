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

    /// <summary>True when the search settled.</summary>
    public required bool Converged { get; init; }
}
