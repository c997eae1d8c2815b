using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>
/// The modes of a statue as a wind from one heading meets them. Modes of one frequency have no directions of their own:
/// those of a round or square statue are turned in their common space until the air damps each by itself, so that one
/// sways along the wind and takes all of its damping. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads; its arrays must not be written to.</remarks>
internal sealed class WindModes
{
    /// <summary>Frequencies nearer than this, relative, count as one.</summary>
    private const double Same = 2e-3;

    private readonly double[] shapes, accelerations, motion, twist;
    private readonly int size, parts;

    public WindModes(StatueModel model, ModeSet modes, StatueWind wind)
    {
        (Count, size, parts) = (modes.Count, modes.Frame.FreedomCount, wind.Parts.Length);
        Omega = new double[Count];
        AirRatio = new double[Count];
        shapes = new double[Count * size];
        accelerations = new double[Count * size];
        (motion, twist) = (new double[Count * parts], new double[Count * parts]);
        for (int i = 0; i < Count; i++)
        {
            for (int a = 0; a < parts; a++)
                (motion[i * parts + a], twist[i * parts + a]) = wind.MotionAlong(model, a, modes.Shape(i));
        }
        for (int first = 0, end; first < Count; first = end)
        {
            end = first + 1;
            while (end < Count && modes.CircularFrequency(end) < (1 + Same) * modes.CircularFrequency(end - 1))
                end++;
            Turn(modes, wind, first, end - first);
        }
        for (int i = 0; i < Count; i++)
            DenseVector.AddScaled(accelerations.AsSpan(i * size, size), Omega[i] * Omega[i], Shape(i));
    }

    public int Count { get; }

    /// <summary>Circular frequencies, rad/s.</summary>
    public double[] Omega { get; }

    /// <summary>Damping ratios of the air, ξ_a = Σ ρ C_f A V φ² / 2ω, φ² the mean over the width of each part.</summary>
    public double[] AirRatio { get; }

    /// <summary>A mass-normalized shape as a full vector.</summary>
    public ReadOnlySpan<double> Shape(int mode) => shapes.AsSpan(mode * size, size);

    /// <summary>Its accelerations ω²φ, a full vector.</summary>
    public ReadOnlySpan<double> Accelerations(int mode) => accelerations.AsSpan(mode * size, size);

    /// <summary>Motion along the wind of each part's pressure center.</summary>
    public ReadOnlySpan<double> MotionAlong(int mode) => motion.AsSpan(mode * parts, parts);

    /// <summary>How much further the left edge of each part goes along the wind than its right edge.</summary>
    private ReadOnlySpan<double> Twist(int mode) => twist.AsSpan(mode * parts, parts);

    private void Turn(ModeSet modes, StatueWind wind, int first, int count)
    {
        double[] damping = new double[count * count], turns = new double[count * count], values = new double[count];
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j < count; j++)
                damping[i * count + j] = AirDamping(wind, MotionAlong(first + i), MotionAlong(first + j)) + AirDamping(wind, Twist(first + i), Twist(first + j)) / 12;
        }
        if (count == 1)
            turns[0] = 1;
        else
            DenseEigen.Solve(damping, turns, values, new double[2 * count]);
        values = count == 1 ? damping : values;
        int[] order = [.. Enumerable.Range(0, count).OrderByDescending(i => values[i])];
        double[] before = motion[(first * parts)..((first + count) * parts)], twisted = twist[(first * parts)..((first + count) * parts)];
        Array.Clear(motion, first * parts, count * parts);
        Array.Clear(twist, first * parts, count * parts);
        for (int i = 0; i < count; i++)
        {
            int mode = first + i;
            double square = 0;
            for (int j = 0; j < count; j++)
            {
                double part = turns[order[i] * count + j], w = modes.CircularFrequency(first + j);
                square += part * part * w * w;
                DenseVector.AddScaled(shapes.AsSpan(mode * size, size), part, modes.Shape(first + j));
                DenseVector.AddScaled(motion.AsSpan(mode * parts, parts), part, before.AsSpan(j * parts, parts));
                DenseVector.AddScaled(twist.AsSpan(mode * parts, parts), part, twisted.AsSpan(j * parts, parts));
            }
            Omega[mode] = Math.Sqrt(square);
            AirRatio[mode] = Math.Max(0, values[order[i]]) / (2 * Omega[mode]);
        }
    }

    /// <summary>Σ ρ C_f A V φ_i φ_j, with ρ C_f A V = 2F/V.</summary>
    private static double AirDamping(StatueWind wind, ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        double sum = 0;
        for (int a = 0; a < first.Length; a++)
            sum += 2 * wind.Parts[a].MeanForce / wind.Parts[a].Speed * first[a] * second[a];
        return sum;
    }
}
