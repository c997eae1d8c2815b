using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>How a point of the statue moves in gusts.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record GustMovement
{
    internal GustMovement()
    {
    }

    /// <summary>The point, level or band.</summary>
    public required string Point { get; init; }

    /// <summary>Sway along the wind.</summary>
    public required GustEffect<Length> Sway { get; init; }

    /// <summary>
    /// Sway across the wind, positive to the left of it, that gusts along the wind cause by eccentricity. What vortices and
    /// gusts across the wind add is not in it.
    /// </summary>
    public required GustEffect<Length> SwayAcross { get; init; }

    /// <summary>Twist about z, anticlockwise seen from above.</summary>
    public required GustEffect<Angle> Twist { get; init; }

    /// <summary>Acceleration along the wind, of the modes; its mean and background are zero.</summary>
    public required GustEffect<Acceleration> Acceleration { get; init; }

    /// <summary>Acceleration across the wind that gusts along the wind cause.</summary>
    public required GustEffect<Acceleration> AccelerationAcross { get; init; }

    /// <summary>The sway on one line.</summary>
    public override string ToString() => FormattableString.Invariant($"{Point}: sway {Sway}");
}
