using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// The motion of a frame under forces that change with time, as a sum of modes, each stepped exactly for forces that run
/// straight between samples. The frame starts at rest. Modes that are not in the set take no part.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class ModalTimeHistory
{
    private readonly double[][] coordinates = new double[3][];

    private ModalTimeHistory(ModeSet modes, double step, int stepCount)
    {
        Modes = modes;
        Step = step;
        StepCount = stepCount;
        for (int motion = 0; motion < coordinates.Length; motion++)
            coordinates[motion] = new double[modes.Count * (stepCount + 1)];
    }

    /// <summary>The modes.</summary>
    public ModeSet Modes { get; }

    /// <summary>Time between samples, s.</summary>
    public double Step { get; }

    /// <summary>Number of steps; there is one more sample, the first at rest or with the first force just put on.</summary>
    public int StepCount { get; }

    /// <summary>Steps all modes with one damping ratio.</summary>
    /// <param name="modes">The modes.</param>
    /// <param name="damping">Damping ratio of every mode; 0 ≤ ζ &lt; 1.</param>
    /// <param name="forces">The forces.</param>
    /// <param name="step">Time between samples, s.</param>
    /// <param name="stepCount">How many steps.</param>
    public static ModalTimeHistory Run(
        ModeSet modes, double damping, IReadOnlyList<ForceHistory> forces, double step, int stepCount)
    {
        var ratios = new double[modes.Count];
        Array.Fill(ratios, damping);
        return Run(modes, ratios, forces, step, stepCount);
    }

    /// <summary>Steps all modes, each with its own damping ratio.</summary>
    /// <exception cref="ArgumentException">There is not one damping ratio a mode, or a pattern does not fit the frame.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A damping ratio or the step lies outside its range.</exception>
    public static ModalTimeHistory Run(
        ModeSet modes, ReadOnlySpan<double> damping, IReadOnlyList<ForceHistory> forces, double step, int stepCount)
    {
        if (damping.Length != modes.Count)
            throw new ArgumentException($"Expected {modes.Count} damping ratios, one a mode, not {damping.Length}.", nameof(damping));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stepCount);
        foreach (ForceHistory force in forces)
        {
            modes.Frame.RequireFull(force.Pattern, nameof(forces));
            if (Array.Exists(force.Samples, sample => !double.IsFinite(sample)))
                throw new ArgumentException("A sample of a force history is not finite.", nameof(forces));
        }
        var history = new ModalTimeHistory(modes, step, stepCount);
        var modalForces = new double[stepCount + 1];
        for (int mode = 0; mode < modes.Count; mode++)
        {
            Array.Clear(modalForces);
            foreach (ForceHistory force in forces)
            {
                int length = Math.Min(force.Samples.Length, modalForces.Length);
                DenseVector.AddScaled(modalForces.AsSpan(0, length), modes.ModalForce(mode, force.Pattern), force.Samples);
            }
            history.StepMode(mode, new PiecewiseLinearOscillator(modes.CircularFrequency(mode), damping[mode], step), modalForces);
        }
        return history;
    }

    /// <summary>The coordinate of one mode at all samples.</summary>
    public ReadOnlySpan<double> Coordinate(int mode, Motion motion = Motion.Displacement) =>
        coordinates[(int)motion].AsSpan(mode * (StepCount + 1), StepCount + 1);

    /// <summary>The motion of all freedoms at one sample, as a full vector.</summary>
    public double[] At(int sample, Motion motion = Motion.Displacement)
    {
        var full = new double[Modes.Frame.FreedomCount];
        for (int mode = 0; mode < Modes.Count; mode++)
            DenseVector.AddScaled(full, Coordinate(mode, motion)[sample], Modes.Shape(mode));
        return full;
    }

    /// <summary>The motion of one freedom at all samples.</summary>
    /// <param name="freedom">6 · node + freedom, from 0.</param>
    /// <param name="motion">Displacement, velocity or acceleration, relative to the base.</param>
    public double[] Of(int freedom, Motion motion = Motion.Displacement)
    {
        var history = new double[StepCount + 1];
        for (int mode = 0; mode < Modes.Count; mode++)
            DenseVector.AddScaled(history, Modes.Shape(mode)[freedom], Coordinate(mode, motion));
        return history;
    }

    private void StepMode(int mode, PiecewiseLinearOscillator oscillator, ReadOnlySpan<double> force)
    {
        int first = mode * (StepCount + 1);
        double u = 0, v = 0;
        for (int i = 0; i <= StepCount; i++)
        {
            if (i > 0)
                oscillator.Step(ref u, ref v, force[i - 1], force[i]);
            coordinates[(int)Motion.Displacement][first + i] = u;
            coordinates[(int)Motion.Velocity][first + i] = v;
            coordinates[(int)Motion.Acceleration][first + i] = oscillator.Acceleration(u, v, force[i]);
        }
    }
}
