namespace StatueFrame.Checks;

/// <summary>
/// Sizes of what acts on one part, each without sign, that use it no more than the worst that was found elsewhere: states within them
/// need no look. Formulas grow with each of the sizes as long as they give no more than 1.
/// </summary>
/// <remarks>For one thread.</remarks>
internal sealed class SafeBox(int count)
{
    /// <summary>How much farther than a state needs the box tries to grow, so that the next one is in it.</summary>
    private const double Ahead = 1.3;

    /// <summary>The most states that are looked at one by one after a try that failed.</summary>
    private const int LongestWait = 32;

    private readonly double[] held = new double[count], tried = new double[count];
    private bool isSet;
    private int wait, left;

    /// <summary>Whether a state is within the box.</summary>
    public bool Holds(ReadOnlySpan<double> sizes)
    {
        if (!isSet)
            return false;
        for (int i = 0; i < held.Length; i++)
        {
            // Not within either when a size is not a number.
            if (!(sizes[i] <= held[i]))
                return false;
        }
        return true;
    }

    /// <summary>Whether the box can grow over a state; if not, it is to be looked at by itself.</summary>
    /// <param name="sizes">Sizes of the state.</param>
    /// <param name="isSafe">Whether no use of the part with given sizes is greater than the worst, or than 1.</param>
    public bool Grow(ReadOnlySpan<double> sizes, Predicate<double[]> isSafe)
    {
        if (left-- > 0)
            return false;
        if (Try(sizes, Ahead, isSafe) || Try(sizes, 1, isSafe))
        {
            wait = 0;
            return true;
        }
        left = wait = Math.Min(LongestWait, 1 + 2 * wait);
        return false;
    }

    private bool Try(ReadOnlySpan<double> sizes, double times, Predicate<double[]> isSafe)
    {
        for (int i = 0; i < tried.Length; i++)
            tried[i] = sizes[i] <= held[i] ? held[i] : times * sizes[i];
        if (!isSafe(tried))
            return false;
        tried.CopyTo(held, 0);
        return isSet = true;
    }
}
