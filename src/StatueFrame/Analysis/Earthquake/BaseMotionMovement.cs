using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The movement of a point while the ground shakes: histories at all samples, and their peaks.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BaseMotionMovement
{
    internal BaseMotionMovement()
    {
    }

    /// <summary>The point, level or band.</summary>
    public required string Point { get; init; }

    /// <summary>Displacement relative to the base along x, m, at 0, h, 2h, ….</summary>
    public required ValueList<double> X { get; init; }

    /// <summary>Displacement relative to the base along y, m.</summary>
    public required ValueList<double> Y { get; init; }

    /// <summary>Displacement relative to the base along z, m.</summary>
    public required ValueList<double> Z { get; init; }

    /// <summary>Absolute acceleration along x, m/s².</summary>
    public required ValueList<double> AccelerationX { get; init; }

    /// <summary>Absolute acceleration along y, m/s².</summary>
    public required ValueList<double> AccelerationY { get; init; }

    /// <summary>Absolute acceleration along z, m/s².</summary>
    public required ValueList<double> AccelerationZ { get; init; }

    /// <summary>Greatest horizontal displacement relative to the base, without direction.</summary>
    public Length PeakSway => Length.FromMeters(PeakOf(X, Y));

    /// <summary>Greatest absolute horizontal acceleration, without direction.</summary>
    public Acceleration PeakAcceleration => Acceleration.FromMetersPerSecondSquared(PeakOf(AccelerationX, AccelerationY));

    /// <summary>Greatest absolute vertical acceleration.</summary>
    public Acceleration PeakVerticalAcceleration => Acceleration.FromMetersPerSecondSquared(AccelerationZ.Max(Math.Abs));

    /// <summary>The peaks on one line.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Point}: sway {PeakSway.Millimeters:0.0} mm, {PeakAcceleration.MetersPerSecondSquared:0.00} m/s²");

    private static double PeakOf(ValueList<double> x, ValueList<double> y)
    {
        double most = 0;
        for (int i = 0; i < x.Count; i++)
            most = Math.Max(most, x[i] * x[i] + y[i] * y[i]);
        return Math.Sqrt(most);
    }
}
