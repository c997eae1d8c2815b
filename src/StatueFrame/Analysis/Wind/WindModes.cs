using StatueFrame.Mechanics;
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

    private readonly double[] shapes, participation, motion, twist;
    private readonly int size, bands;

    public WindModes(StatueModel model, ModeSet modes, BandWind wind)
    {
        (Count, size, bands) = (modes.Count, modes.Frame.FreedomCount, wind.Bands.Length);
        Omega = new double[Count];
        AirRatio = new double[Count];
        shapes = new double[Count * size];
        participation = new double[Count * Frame.NodeSize];
        (motion, twist) = (new double[Count * bands], new double[Count * bands]);
        for (int i = 0; i < Count; i++)
        {
            for (int a = 0; a < bands; a++)
                (motion[i * bands + a], twist[i * bands + a]) = wind.MotionAlong(model, a, modes.Shape(i));
        }
        for (int first = 0, end; first < Count; first = end)
        {
            end = first + 1;
            while (end < Count && modes.CircularFrequency(end) < (1 + Same) * modes.CircularFrequency(end - 1))
                end++;
            Turn(modes, wind, first, end - first);
        }
        // Moments about the origin.
        for (int i = 0; i < Count; i++)
        {
            Span<double> own = participation.AsSpan(i * Frame.NodeSize, Frame.NodeSize);
            for (int d = 0; d < Frame.NodeSize; d++)
                own[d] = model.Participation(Shape(i), d);
            Vector3D turned = model.BaseCenter.Cross(new Vector3D(own[0], own[1], own[2]));
            (own[3], own[4], own[5]) = (own[3] + turned.X, own[4] + turned.Y, own[5] + turned.Z);
        }
    }

    public int Count { get; }

    /// <summary>Circular frequencies, rad/s.</summary>
    public double[] Omega { get; }

    /// <summary>Damping ratios of the air, ξ_a = Σ ρ C_f A V φ² / 2ω, φ² the mean over the width of each band.</summary>
    public double[] AirRatio { get; }

    /// <summary>A mass-normalized shape as a full vector.</summary>
    public ReadOnlySpan<double> Shape(int mode) => shapes.AsSpan(mode * size, size);

    /// <summary>Participation in a rigid motion of the base, moments about the origin.</summary>
    public double Participation(int mode, int direction) => participation[mode * Frame.NodeSize + direction];

    /// <summary>Motion along the wind of each band's pressure center.</summary>
    public ReadOnlySpan<double> MotionAlong(int mode) => motion.AsSpan(mode * bands, bands);

    /// <summary>How much further the left edge of each band goes along the wind than its right edge.</summary>
    private ReadOnlySpan<double> Twist(int mode) => twist.AsSpan(mode * bands, bands);

    private void Turn(ModeSet modes, BandWind wind, int first, int count)
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
        double[] before = motion[(first * bands)..((first + count) * bands)], twisted = twist[(first * bands)..((first + count) * bands)];
        Array.Clear(motion, first * bands, count * bands);
        Array.Clear(twist, first * bands, count * bands);
        for (int i = 0; i < count; i++)
        {
            int mode = first + i;
            double square = 0;
            for (int j = 0; j < count; j++)
            {
                double part = turns[order[i] * count + j], w = modes.CircularFrequency(first + j);
                square += part * part * w * w;
                DenseVector.AddScaled(shapes.AsSpan(mode * size, size), part, modes.Shape(first + j));
                DenseVector.AddScaled(motion.AsSpan(mode * bands, bands), part, before.AsSpan(j * bands, bands));
                DenseVector.AddScaled(twist.AsSpan(mode * bands, bands), part, twisted.AsSpan(j * bands, bands));
            }
            Omega[mode] = Math.Sqrt(square);
            AirRatio[mode] = Math.Max(0, values[order[i]]) / (2 * Omega[mode]);
        }
    }

    /// <summary>Σ ρ C_f A V φ_i φ_j, with ρ C_f A V = 2F/V.</summary>
    private static double AirDamping(BandWind wind, ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        double sum = 0;
        for (int a = 0; a < first.Length; a++)
            sum += 2 * wind.Bands[a].MeanForce / wind.Bands[a].Speed * first[a] * second[a];
        return sum;
    }
}
