using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// Picks, out of forces and moments on the base in time, those times that can be the worst for a check: the greatest moment
/// and the greatest eccentricity towards each of 24 directions, the greatest shear, and the greatest and least pressure.
/// </summary>
internal static class WorstTimes
{
    private const int Directions = 24, Few = 3;

    /// <summary>The numbers of the samples, in order.</summary>
    /// <param name="reactions">Forces and moments along and about x, y, z, six a sample.</param>
    public static int[] Of(ReadOnlySpan<double> reactions)
    {
        Span<double> cos = stackalloc double[Directions], sin = stackalloc double[Directions], greatest = stackalloc double[2 * Directions + Few];
        var at = new int[greatest.Length];
        greatest.Fill(double.NegativeInfinity);
        for (int d = 0; d < Directions; d++)
            (sin[d], cos[d]) = Math.SinCos(2 * Math.PI * d / Directions);
        for (int i = 0; i < reactions.Length / Frame.NodeSize; i++)
        {
            ReadOnlySpan<double> r = reactions.Slice(Frame.NodeSize * i, Frame.NodeSize);
            double down = -r[2];
            for (int d = 0; d < Directions; d++)
            {
                double tipping = cos[d] * r[4] - sin[d] * r[3];
                Look(greatest, at, d, tipping, i);
                if (down > 0)
                    Look(greatest, at, Directions + d, tipping / down, i);
            }
            Look(greatest, at, 2 * Directions, r[0] * r[0] + r[1] * r[1], i);
            Look(greatest, at, 2 * Directions + 1, down, i);
            Look(greatest, at, 2 * Directions + 2, -down, i);
        }
        return [.. at.Distinct().Order()];
    }

    private static void Look(Span<double> greatest, int[] at, int slot, double value, int sample)
    {
        if (value > greatest[slot])
            (greatest[slot], at[slot]) = (value, sample);
    }
}
