using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>How much of a steadily swinging force on the skin passes on at one frequency.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Frequency">Frequency of the force.</param>
/// <param name="Tower">Force in the tower over the force on the skin, by two masses.</param>
/// <param name="Bars">Force in the bars over the force on the skin, by two masses.</param>
/// <param name="OneMass">Force in the bars over the force on the skin, the tower held still.</param>
public sealed record TransmissibilityPoint(Frequency Frequency, double Tower, double Bars, double OneMass)
{
    /// <summary>
    /// The part of a swinging force on a mass that passes through its spring and damper into fixed ground:
    /// √(1 + (2ζr)²)/√((1 − r²)² + (2ζr)²). It is 1 at r = √2 whatever the damping, and less above.
    /// </summary>
    /// <param name="ratio">r: frequency of the force over the mass's own; zero or more.</param>
    /// <param name="damping">ζ, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is negative or not finite.</exception>
    /// <remarks>Source: Den Hartog, Mechanical Vibrations, 4th ed., section 2.12. Infinite at r = 1 without damping.</remarks>
    public static double OfOneMass(double ratio, double damping)
    {
        if (!(ratio >= 0 && double.IsFinite(ratio)))
            throw new ArgumentOutOfRangeException(nameof(ratio));
        if (!(damping >= 0 && double.IsFinite(damping)))
            throw new ArgumentOutOfRangeException(nameof(damping));
        double viscous = 2 * damping * ratio, stiff = (1 - ratio) * (1 + ratio);
        return Math.Sqrt((1 + viscous * viscous) / (stiff * stiff + viscous * viscous));
    }
}
