namespace StatueFrame.Studies;

/// <summary>The reliability of a check by the first-order method.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ReliabilityResult
{
    internal ReliabilityResult()
    {
    }

    /// <summary>The reliability index β: distance of the design point from the origin of normal space; negative when the mean point fails.</summary>
    public required double Beta { get; init; }

    /// <summary>Φ(−β), the first-order probability of failure.</summary>
    public required double FailureProbability { get; init; }

    /// <summary>The likeliest point of failure, in the units of the inputs.</summary>
    public required ValueList<double> DesignPoint { get; init; }

    /// <summary>The direction cosines α at the design point; their squares, which add up to 1, say which input matters.</summary>
    public required ValueList<double> Direction { get; init; }

    /// <summary>Evaluations of the margin.</summary>
    public required int Evaluations { get; init; }
}
