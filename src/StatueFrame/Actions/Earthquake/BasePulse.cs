using UnitsNet;

namespace StatueFrame;

/// <summary>A pulse of the ground's horizontal acceleration in one direction; before and after it the ground has none.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Shape">Its shape in time.</param>
/// <param name="Peak">Peak acceleration, above zero, at most 1000 m/s².</param>
/// <param name="Duration">How long it lasts, 1 ms to 100 s.</param>
public sealed record BasePulse(PulseShape Shape, Acceleration Peak, Duration Duration)
{
    internal double AtSi(double t)
    {
        double T = Duration.Seconds, a = Peak.MetersPerSecondSquared;
        if (t < 0 || t > T)
            return 0;
        return Shape switch
        {
            PulseShape.Rectangle => a,
            PulseShape.HalfSine => a * Math.Sin(Math.PI * t / T),
            PulseShape.FullSine => a * Math.Sin(2 * Math.PI * t / T),
            PulseShape.FullCosine => a * Math.Cos(2 * Math.PI * t / T),
            _ => a * (1 - t / T),
        };
    }

    internal void Validate(Validator v)
    {
        v.Defined(Shape);
        v.Positive(Peak, Peak.MetersPerSecondSquared, 1e-6, 1000);
        v.Positive(Duration, Duration.Seconds, 0.001, 100);
    }
}
