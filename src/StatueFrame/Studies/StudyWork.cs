using System.Runtime.ExceptionServices;

namespace StatueFrame.Studies;

/// <summary>Independent pieces of a study on all cores.</summary>
internal static class StudyWork
{
    /// <summary>
    /// Does every piece once, on as many threads as there are cores. A piece that throws ends the work, and its own exception
    /// comes out: that of the lowest number when there are several.
    /// </summary>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static void ForEach(int count, CancellationToken cancellation, Action<int> work)
    {
        var thrown = new Exception?[count];
        Parallel.For(0, count, new ParallelOptions { CancellationToken = cancellation }, (i, state) =>
        {
            if (state.LowestBreakIteration < i)
                return;
            try
            {
                work(i);
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                thrown[i] = e;
                state.Break();
            }
        });
        if (Array.Find(thrown, e => e is not null) is { } first)
            ExceptionDispatchInfo.Throw(first);
    }
}
