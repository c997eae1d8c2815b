using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// The effective length factor K of a strut with rotational springs at its ends: it buckles like a pin-ended strut K
/// times as long. K solves the exact characteristic equation of the elastic strut.
/// </summary>
/// <remarks>
/// <para>
/// With u = π/K and springs ρ = kL/(EI). Ends held in place:
/// u³ sin u + (ρ₁ + ρ₂) u (sin u − u cos u) + ρ₁ρ₂ (2 − 2 cos u − u sin u) = 0, u from π to 2π. One end free to move
/// sideways: (ρ₁ρ₂ − u²) sin u + (ρ₁ + ρ₂) u cos u = 0, u from 0 to π. Both are multiplied through by (1 − r₁)(1 − r₂),
/// r = ρ/(1 + ρ), so that hinges and clamps are no special cases. Timoshenko and Gere, Theory of Elastic Stability,
/// chapter 2 (derived anew). Shear flexibility is left out.
/// </para>
/// <para>Stateless; safe to use from many threads.</para>
/// </remarks>
public static class EffectiveLength
{
    /// <summary>The factor K for bending stiffness and springs.</summary>
    /// <param name="flexuralRigidity">EI, N·m²; positive.</param>
    /// <param name="length">Length; positive.</param>
    /// <param name="first">Spring at the first end; null is rigid.</param>
    /// <param name="second">Spring at the second end; null is rigid.</param>
    /// <param name="sway">True when the second end is free to move sideways.</param>
    /// <exception cref="ArgumentException">An input is out of range, or the strut is a mechanism: free to sway on two hinges.</exception>
    public static double Factor(double flexuralRigidity, Length length, RotationalStiffness? first, RotationalStiffness? second, bool sway)
    {
        double scale = CheckInput.Positive(length.Meters, nameof(length)) / CheckInput.Positive(flexuralRigidity, nameof(flexuralRigidity));
        double K = Factor(Spring(first, nameof(first)) * scale, Spring(second, nameof(second)) * scale, sway);
        return double.IsFinite(K) ? K : throw new ArgumentException("The strut is a mechanism: it can sway on two hinges.", nameof(second));
    }

    /// <summary>The factor K for dimensionless springs ρ = kL/(EI) from 0 to +∞; +∞ for a mechanism.</summary>
    internal static double Factor(double first, double second, bool sway)
    {
        double r1 = double.IsPositiveInfinity(first) ? 1 : first / (1 + first), r2 = double.IsPositiveInfinity(second) ? 1 : second / (1 + second);
        double both = r1 * r2, one = r1 * (1 - r2) + r2 * (1 - r1), none = (1 - r1) * (1 - r2);
        if (sway && both + one <= 0)
            return double.PositiveInfinity;
        // The equation is positive from the low end of its range to its one root.
        double low = sway ? 0 : Math.PI, high = sway ? Math.PI : 2 * Math.PI;
        for (int i = 0; i < 60; i++)
        {
            double u = 0.5 * (low + high), sin = Math.Sin(u), cos = Math.Cos(u);
            double value = sway
                ? (both - none * u * u) * sin + one * u * cos
                : none * u * u * u * sin + one * u * (sin - u * cos) + both * (2 - 2 * cos - u * sin);
            if (value > 0)
                low = u;
            else
                high = u;
        }
        return Math.PI / (0.5 * (low + high));
    }

    private static double Spring(RotationalStiffness? spring, string name) =>
        spring is { } k ? CheckInput.NotNegative(k.NewtonMetersPerRadian, name) : double.PositiveInfinity;
}
