namespace StatueFrame.Studies;

/// <summary>How samples are drawn.</summary>
public enum SamplingRule
{
    /// <summary>Independent random numbers.</summary>
    MonteCarlo,

    /// <summary>Halton's low-discrepancy sequence with random shifts, in eight independent parts that give the error.</summary>
    LowDiscrepancy,
}
