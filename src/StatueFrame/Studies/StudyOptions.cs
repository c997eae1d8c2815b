using StatueFrame.Analysis;

namespace StatueFrame.Studies;

/// <summary>How a long study runs: on how many cores, whom it tells, and how it is stopped.</summary>
/// <remarks>Immutable and safe to share between threads. The results never depend on it.</remarks>
public sealed record StudyOptions
{
    /// <summary>The most threads at once; null takes one a core.</summary>
    public int? Threads { get; init; }

    /// <summary>Told the part that is done, from 0 to 1; may be called from any thread.</summary>
    public IProgress<double>? Progress { get; init; }

    /// <summary>Stops the study, which then throws an <see cref="OperationCanceledException"/>.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>
    /// Runs a body for every index, in parallel; each must write to its own place only. A body that throws ends the work, and
    /// its own exception comes out: that of the lowest index when there are several.
    /// </summary>
    internal void For(int count, Action<int> body)
    {
        if (Threads is < 1)
            throw new ArgumentOutOfRangeException(nameof(Threads), Threads, "There must be at least one thread.");
        int done = 0;
        ParallelWork.ForEach(count, i =>
        {
            body(i);
            Progress?.Report((double)Interlocked.Increment(ref done) / count);
        }, Cancellation, Threads);
    }
}
