using System.Numerics;
using StatueFrame.Mechanics.Statics;
using static System.FormattableString;

namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// The steady response to loads that swing as f·cos(Ωt), as a sum of modes with modal damping. The modes that are not in
/// the set are taken to follow statically: u = K⁻¹f + Σ φ (φᵀf) (H(Ω) − 1/ω²), with H = 1/(ω² − Ω² + 2iζωΩ).
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The motion of a freedom is the real part of its complex amplitude times
/// exp(iΩt).
/// </remarks>
public sealed class HarmonicResponse
{
    private readonly ModeSet modes;
    private readonly double[] damping;
    private readonly double[] modalForces;
    private readonly double[] remainder;

    /// <summary>Prepares the response to one pattern of loads with one damping ratio for all modes.</summary>
    /// <param name="statics">First-order statics of the same frame, for the static correction; null leaves it out.</param>
    /// <param name="modes">The modes.</param>
    /// <param name="damping">Damping ratio of every mode; 0 ≤ ζ &lt; 1.</param>
    /// <param name="loads">A full vector of amplitudes, in phase; N, N·m.</param>
    public HarmonicResponse(LinearStatics? statics, ModeSet modes, double damping, ReadOnlySpan<double> loads)
        : this(statics, modes, [.. Enumerable.Repeat(damping, modes.Count)], loads)
    {
    }

    /// <summary>Prepares the response with a damping ratio for each mode.</summary>
    /// <exception cref="ArgumentException">The statics are those of another frame, or an array does not fit.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A damping ratio lies outside 0 ≤ ζ &lt; 1.</exception>
    public HarmonicResponse(LinearStatics? statics, ModeSet modes, ReadOnlySpan<double> damping, ReadOnlySpan<double> loads)
    {
        if (statics is not null && statics.Frame != modes.Frame)
            throw new ArgumentException("Statics and modes must be those of one frame.", nameof(statics));
        if (damping.Length != modes.Count)
            throw new ArgumentException($"Expected {modes.Count} damping ratios, one a mode, not {damping.Length}.", nameof(damping));
        foreach (double ratio in damping)
        {
            if (ratio is not (>= 0 and < 1))
                throw new ArgumentOutOfRangeException(nameof(damping), ratio, "A damping ratio must lie in 0 ≤ ζ < 1.");
        }
        modes.Frame.RequireFull(loads, nameof(loads));
        this.modes = modes;
        this.damping = damping.ToArray();
        modalForces = new double[modes.Count];
        remainder = statics is null ? new double[loads.Length] : statics.Solve(loads);
        for (int mode = 0; mode < modes.Count; mode++)
        {
            modalForces[mode] = modes.ModalForce(mode, loads);
            double omega = modes.CircularFrequency(mode);
            if (statics is not null)
                DenseVector.AddScaled(remainder, -modalForces[mode] / (omega * omega), modes.Shape(mode));
        }
    }

    /// <summary>The complex amplitude of the displacement of one freedom; m or rad.</summary>
    /// <param name="freedom">6 · node + freedom, from 0.</param>
    /// <param name="frequency">Frequency of the loads, Hz; zero or more, and not exactly that of an undamped mode.</param>
    /// <exception cref="ArgumentException">The frequency is that of an undamped mode: the response has no bound.</exception>
    public Complex Of(int freedom, double frequency)
    {
        Complex sum = remainder[freedom];
        for (int mode = 0; mode < modes.Count; mode++)
            sum += modes.Shape(mode)[freedom] * Coordinate(mode, frequency);
        return sum;
    }

    /// <summary>The complex amplitudes of all freedoms, as a full vector; m, rad.</summary>
    /// <param name="frequency">Frequency of the loads, Hz; zero or more, and not exactly that of an undamped mode.</param>
    /// <exception cref="ArgumentException">The frequency is that of an undamped mode: the response has no bound.</exception>
    public Complex[] At(double frequency)
    {
        var sum = new Complex[remainder.Length];
        for (int i = 0; i < sum.Length; i++)
            sum[i] = remainder[i];
        for (int mode = 0; mode < modes.Count; mode++)
        {
            Complex coordinate = Coordinate(mode, frequency);
            ReadOnlySpan<double> shape = modes.Shape(mode);
            for (int i = 0; i < sum.Length; i++)
                sum[i] += shape[i] * coordinate;
        }
        return sum;
    }

    private Complex Coordinate(int mode, double frequency)
    {
        if (!double.IsFinite(frequency) || frequency < 0)
            throw new ArgumentOutOfRangeException(nameof(frequency), frequency, "A frequency must be zero or positive.");
        double omega = modes.CircularFrequency(mode), driven = 2 * Math.PI * frequency;
        var dynamicStiffness = new Complex(omega * omega - driven * driven, 2 * damping[mode] * omega * driven);
        if (dynamicStiffness == Complex.Zero)
            throw new ArgumentException(Invariant($"At {frequency} Hz mode {mode} resonates without damping; the response has no bound."), nameof(frequency));
        return modalForces[mode] / dynamicStiffness;
    }
}
