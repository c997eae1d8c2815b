using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Analysis;

/// <summary>
/// Closed formulas of a slender rigid block that rocks on its base without sliding, linear in small angles: a first answer,
/// and what <see cref="RockingBlock"/> is compared with.
/// </summary>
/// <remarks>
/// α is the slenderness angle, from the vertical to the line from a base corner to the center of mass; p = √(mgR/I) is the
/// frequency parameter with the distance R of the center from the corner and the inertia I about the corner.
/// Stateless; safe to use from many threads. Source: Housner 1963, Bulletin of the Seismological Society of America 53,
/// 403–417, from memory; derived in the theory page "toppling".
/// </remarks>
public static class HousnerBlock
{
    private const double HalfPi = 0.5 * Math.PI;

    /// <summary>p = √(3g/4R) of a solid rectangular block with the half-diagonal R, rad/s.</summary>
    /// <param name="halfDiagonal">R, above zero.</param>
    public static double FrequencyParameter(Length halfDiagonal) =>
        Math.Sqrt(3 * SelfWeight.Gravity / (4 * Positive(halfDiagonal.Meters, nameof(halfDiagonal))));

    /// <summary>Period of a full cycle of free rocking without loss, T = (4/p)·arcosh(1/(1 − θ₀/α)).</summary>
    /// <param name="p">Frequency parameter, rad/s, above zero.</param>
    /// <param name="amplitude">θ₀/α, from 0 to below 1.</param>
    public static Duration FreePeriod(double p, double amplitude)
    {
        Positive(p, nameof(p));
        if (!(amplitude is >= 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(amplitude), Invariant($"θ₀/α must be from 0 to below 1, is {amplitude}."));
        return Duration.FromSeconds(4 / p * Math.Acosh(1 / (1 - amplitude)));
    }

    /// <summary>Part of the angular velocity that is left after an impact of a solid rectangular block, 1 − (3/2) sin²α, not below zero.</summary>
    /// <param name="slenderness">α, above 0 to below 90°.</param>
    /// <remarks>Its square is the part of the kinetic energy that is left, Housner's r.</remarks>
    public static double Restitution(Angle slenderness)
    {
        double sin = Math.Sin(Slender(slenderness));
        return Math.Max(0, 1 - 1.5 * sin * sin);
    }

    /// <summary>The least horizontal acceleration that lifts an edge, g·tan α.</summary>
    /// <param name="slenderness">α, above 0 to below 90°.</param>
    public static Acceleration UpliftAcceleration(Angle slenderness) =>
        Acceleration.FromMetersPerSecondSquared(SelfWeight.Gravity * Math.Tan(Slender(slenderness)));

    /// <summary>
    /// The shortest time that a constant acceleration a must last to topple the block: cosh(pt) = 1 + 1/(2x(x − 1)) with
    /// x = a/(gα), which is t = −ln(1 − 1/x)/p.
    /// </summary>
    /// <param name="p">Frequency parameter, rad/s, above zero.</param>
    /// <param name="ratio">x, above 1; at or below 1 the block does not lift.</param>
    public static Duration ConstantPulse(double p, double ratio)
    {
        Positive(p, nameof(p));
        if (!(ratio > 1 && double.IsFinite(ratio)))
            throw new ArgumentOutOfRangeException(nameof(ratio), Invariant($"a/(gα) must be above 1, is {ratio}: at 1 the block just lifts."));
        return Duration.FromSeconds(-Math.Log(1 - 1 / ratio) / p);
    }

    /// <summary>
    /// Housner's least peak of a half-sine pulse that topples the block, a/(gα) = √(1 + (ω/p)²): it lets the sine run on after half a
    /// wave, and so lies too high for a pulse that ends there; see <see cref="HalfSinePulse"/>.
    /// </summary>
    /// <param name="ratio">ω/p, zero or more; the pulse lasts π/ω.</param>
    public static double HousnerHalfSine(double ratio) => Math.Sqrt(1 + Ratio(ratio) * ratio);

    /// <summary>
    /// The least peak of a half-sine pulse that topples the block without an impact, a/(gα) = 1/sin ψ where
    /// cos ψ + e^(−(π − ψ)p/ω) = (ω/p) sin ψ.
    /// </summary>
    /// <param name="ratio">ω/p, zero or more; the pulse lasts π/ω.</param>
    /// <remarks>
    /// The block lifts when the pulse reaches gα, at the phase ψ, and topples when its growing part is not negative at the
    /// pulse's end. Source: the correction of Housner's formula by Shi, Anooshehpoor, Zeng and Brune 1996, from memory, and
    /// derived in the theory page.
    /// </remarks>
    public static double HalfSinePulse(double ratio)
    {
        if (Ratio(ratio) == 0)
            return 1;
        // The left side falls and the right side rises with ψ up to a quarter turn.
        double low = 0, high = HalfPi;
        if (Excess(high) > 0)
            return 1;
        for (int i = 0; i < 200 && high - low > 0; i++)
        {
            double middle = 0.5 * (low + high);
            if (middle == low || middle == high)
                break;
            if (Excess(middle) > 0)
                low = middle;
            else
                high = middle;
        }
        return 1 / Math.Sin(0.5 * (low + high));

        double Excess(double psi) => Math.Cos(psi) + Math.Exp(-(Math.PI - psi) / ratio) - ratio * Math.Sin(psi);
    }

    private static double Slender(Angle angle) => angle.Radians is > 0 and < HalfPi
        ? angle.Radians
        : throw new ArgumentOutOfRangeException(nameof(angle), Invariant($"α must lie between 0 and 90°, is {angle.Degrees}°."));

    private static double Positive(double value, string name) => value > 0 && double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(name, Invariant($"Must be above zero, is {value}."));

    private static double Ratio(double ratio) => ratio >= 0 && double.IsFinite(ratio)
        ? ratio
        : throw new ArgumentOutOfRangeException(nameof(ratio), Invariant($"ω/p must be zero or more, is {ratio}."));
}
