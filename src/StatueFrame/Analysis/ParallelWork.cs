using System.Runtime.ExceptionServices;

namespace StatueFrame.Analysis;

/// <summary>Independent pieces of work on all cores; each must write to its own place only.</summary>
internal static class ParallelWork
{
    /// <summary>Whether this thread does a piece already: work within a piece stays on its thread, so that cores and limits are kept.</summary>
    [ThreadStatic]
    private static bool isBusy;

    /// <summary>
    /// Does every piece once. A piece that throws ends the work, and its own exception comes out: that of the lowest number when
    /// there are several.
    /// </summary>
    /// <param name="count">How many pieces.</param>
    /// <param name="work">Does the piece of a number, from 0.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="threads">How many threads at most; null for as many as there are cores.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static void ForEach(int count, Action<int> work, CancellationToken cancellation = default, int? threads = null)
    {
        var thrown = new Exception?[count];
        var options = new ParallelOptions { MaxDegreeOfParallelism = isBusy ? 1 : threads ?? Environment.ProcessorCount, CancellationToken = cancellation };
        Parallel.For(0, count, options, (i, state) =>
        {
            if (state.LowestBreakIteration < i)
                return;
            bool wasBusy = isBusy;
            isBusy = true;
            try
            {
                work(i);
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                thrown[i] = e;
                state.Break();
            }
            finally
            {
                isBusy = wasBusy;
            }
        });
        if (Array.Find(thrown, e => e is not null) is { } first)
            ExceptionDispatchInfo.Throw(first);
    }
}
