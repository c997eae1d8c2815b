namespace StatueFrame.Mechanics.Statics;

/// <summary>When the iteration of a second-order analysis stops.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SecondOrderOptions
{
    /// <summary>Largest change of a displacement between two rounds, relative to the largest; 1e-9 unless given.</summary>
    public double Tolerance { get; init; } = 1e-9;

    /// <summary>Most rounds before the frame is said not to settle; 50 unless given.</summary>
    public int MaximumIterations { get; init; } = 50;
}
