using static System.FormattableString;

namespace StatueFrame;

/// <summary>A pulse that rises straight to its peak and falls straight to zero.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Rise">The part of the duration that the rise takes, 0 to 1: 0 jumps to the peak, ½ is symmetric.</param>
public sealed record TrianglePulse(double Rise = 0) : PressureShape
{
    /// <inheritdoc/>
    public override string Name => Rise == 0 ? "falling triangle" : Invariant($"triangle that rises for {Rise:0.###} of its duration");

    /// <inheritdoc/>
    public override double Area => 0.5;

    internal override ReadOnlySpan<double> Corners => Rise is > 0 and < 1 ? new[] { 0, Rise, 1 } : [0, 1];

    internal override double Inside(double x) => x < Rise ? x / Rise : Rise < 1 ? (1 - x) / (1 - Rise) : 1;

    internal override void Validate(Validator v) => v.InRange(Rise, 0, 1, "It is a part of the duration.");
}
