using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// The acceleration of the ground in time, with up to three components, straight between samples; afterwards the ground is
/// still.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BaseMotionRecord
{
    /// <summary>The most samples of a component.</summary>
    internal const int MostSamples = 1_000_000;

    /// <summary>Short name.</summary>
    public required string Name { get; init; }

    /// <summary>Time between samples, 0.1 ms to 1 s.</summary>
    public required Duration Step { get; init; }

    /// <summary>Acceleration along x at 0, h, 2h, …, m/s²; empty for none.</summary>
    public ValueList<double> X { get; init; } = [];

    /// <summary>Acceleration along y, m/s²; empty for none.</summary>
    public ValueList<double> Y { get; init; } = [];

    /// <summary>Acceleration along z, upwards, m/s²; empty for none.</summary>
    public ValueList<double> Z { get; init; } = [];

    /// <summary>What all accelerations are multiplied by, 0.001 to 1000.</summary>
    public double Scale { get; init; } = 1;

    /// <summary>Time from the first sample to the last of the longest component.</summary>
    public Duration Duration => Duration.FromSeconds(Math.Max(0, SampleCount - 1) * Step.Seconds);

    /// <summary>Number of samples of the longest component.</summary>
    public int SampleCount => Math.Max(X.Count, Math.Max(Y.Count, Z.Count));

    /// <summary>A component with its scale, as long as the longest; 0, 1, 2 along x, y, z.</summary>
    internal double[] Component(int axis)
    {
        ValueList<double> given = axis switch { 0 => X, 1 => Y, _ => Z };
        var samples = new double[SampleCount];
        for (int i = 0; i < given.Count; i++)
            samples[i] = Scale * given[i];
        return samples;
    }

    internal void Validate(Validator v)
    {
        v.Named(Name);
        v.Positive(Step, Step.Seconds, 1e-4, 1);
        v.InRange(Scale, 0.001, 1000, "It is a plain factor; 9.80665 turns g into m/s².");
        ValidateComponent(v, X, nameof(X));
        ValidateComponent(v, Y, nameof(Y));
        ValidateComponent(v, Z, nameof(Z));
        if (X is { Count: 0 } && Y is { Count: 0 } && Z is { Count: 0 })
            v.Add(nameof(X), "must not be empty when Y and Z are", "Give at least one component.");
    }

    private static void ValidateComponent(Validator v, ValueList<double>? samples, string member)
    {
        if (samples is null)
        {
            v.Add(member, "is missing (null)", "Give it a list; the empty one is [].");
            return;
        }
        if (!v.AtMost(samples.Count, MostSamples, member))
            return;
        if (samples.Count == 1)
            v.Add(member, "has a single sample", "Give at least two, or none.");
        for (int i = 0; i < samples.Count; i++)
        {
            if (double.IsFinite(samples[i]) && Math.Abs(samples[i]) <= 1e4)
                continue;
            v.Add($"{member}[{i}]", Invariant($"is not an acceleration: {samples[i]}"), "Accelerations are finite numbers in m/s².");
            return;
        }
    }
}
