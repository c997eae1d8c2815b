namespace StatueFrame;

/// <summary>
/// The strip of a band that one bar serves when the skin is limp: half the gap to the next bar on either side along the
/// outline, and half the gap to the next ring above and below.
/// </summary>
/// <param name="From">Where the strip begins, as a fraction of the outline's perimeter, anticlockwise.</param>
/// <param name="To">Where it ends; at or above <paramref name="From"/>, so above 1 when it runs on across the start.</param>
/// <param name="Height">Height of the strip along the body's axis, m.</param>
/// <param name="Mass">Mass of sheet and armature in the strip, kg.</param>
internal readonly record struct BandShare(double From, double To, double Height, double Mass)
{
    /// <summary>The strip's area over that of a band whose height along the axis is <paramref name="bandHeight"/>, m.</summary>
    public double PartOf(double bandHeight) => (To - From) * Height / bandHeight;

    /// <summary>
    /// Splits a closed outline among bars. Bars at one place share what lies around them evenly; the shares make up the
    /// whole outline.
    /// </summary>
    /// <param name="at">Where the bars are, as fractions of the perimeter, in any order.</param>
    /// <returns>For each bar, where its share begins and ends.</returns>
    public static (double From, double To)[] Split(ReadOnlySpan<double> at)
    {
        int n = at.Length;
        var shares = new (double From, double To)[n];
        if (n == 1)
        {
            shares[0] = (0, 1);
            return shares;
        }
        double[] sorted = at.ToArray();
        var order = new int[n];
        for (int i = 0; i < n; i++)
            order[i] = i;
        Array.Sort(sorted, order);
        for (int i = 0; i < n; i++)
        {
            double before = i > 0 ? sorted[i - 1] : sorted[n - 1] - 1;
            double after = i + 1 < n ? sorted[i + 1] : sorted[0] + 1;
            double from = 0.5 * (before + sorted[i]), to = 0.5 * (sorted[i] + after);
            shares[order[i]] = from < 0 ? (from + 1, to + 1) : (from, to);
        }
        return shares;
    }
}
