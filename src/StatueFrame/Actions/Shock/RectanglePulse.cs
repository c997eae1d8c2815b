namespace StatueFrame;

/// <summary>A pulse that is there at once, stays, and is gone at once: the worst of its peak and duration.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record RectanglePulse : PressureShape
{
    /// <inheritdoc/>
    public override string Name => "rectangle";

    /// <inheritdoc/>
    public override double Area => 1;

    internal override ReadOnlySpan<double> Corners => [0, 1];

    internal override double Inside(double x) => 1;

    internal override void Validate(Validator v)
    {
    }
}
