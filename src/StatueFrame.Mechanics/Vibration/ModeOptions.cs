namespace StatueFrame.Mechanics.Vibration;

/// <summary>How natural modes are looked for and reported.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ModeOptions
{
    /// <summary>The point about which rotations of the base turn, for participation in rotation; the origin unless given. m.</summary>
    public Vector3D Point { get; init; }

    /// <summary>
    /// Added to every ω² while solving, (rad/s)²; zero unless given. An unsupported frame needs a positive value, best near
    /// the square of its lowest elastic circular frequency; results do not depend on it beyond rounding.
    /// </summary>
    public double Shift { get; init; }
}
