namespace StatueFrame;

/// <summary>A pulse like half a wave: sin(πt/t_d). Blows of soft bodies look much like it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record HalfSinePulse : PressureShape
{
    /// <inheritdoc/>
    public override string Name => "half sine";

    /// <inheritdoc/>
    public override double Area => 2 / Math.PI;

    internal override ReadOnlySpan<double> Corners => [0, 1];

    internal override double Inside(double x) => Math.Sin(Math.PI * x);

    internal override void Validate(Validator v)
    {
    }
}
