using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Stiffness of bars and of what they clamp.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class JointStiffness
{
    /// <summary>A bar that stretches: k = E A/L.</summary>
    /// <param name="modulus">E.</param>
    /// <param name="area">A.</param>
    /// <param name="length">L.</param>
    public static ForcePerLength Bar(Pressure modulus, Area area, Length length) => ForcePerLength.FromNewtonsPerMeter(
        CheckInput.Positive(modulus.Pascals, nameof(modulus)) * CheckInput.Positive(area.SquareMeters, nameof(area)) / CheckInput.Positive(length.Meters, nameof(length)));

    /// <summary>
    /// A frustum of a hollow cone that a washer or plate presses, spreading at a half angle α from the vertical:
    /// k = π E d tan α / ln[((2 t tan α + D − d)(D + d)) / ((2 t tan α + D + d)(D − d))].
    /// </summary>
    /// <param name="modulus">E of the clamped part.</param>
    /// <param name="hole">d, diameter of the hole; positive.</param>
    /// <param name="seat">D, diameter of the seat; above d.</param>
    /// <param name="thickness">t, depth of the frustum.</param>
    /// <param name="halfAngle">α, 30° in the textbooks; above 0 to 60°.</param>
    /// <remarks>Source: Shigley's Mechanical Engineering Design, joints: member stiffness (from memory). Two equal frusta back to back have half of k.</remarks>
    public static ForcePerLength Frustum(Pressure modulus, Length hole, Length seat, Length thickness, Angle halfAngle)
    {
        double E = CheckInput.Positive(modulus.Pascals, nameof(modulus)), d = CheckInput.Positive(hole.Meters, nameof(hole));
        double D = CheckInput.Positive(seat.Meters, nameof(seat)), t = CheckInput.Positive(thickness.Meters, nameof(thickness));
        double tan = Math.Tan(CheckInput.Within(halfAngle.Radians, 1e-3, Math.PI / 3, nameof(halfAngle)));
        if (D <= d)
            throw new ArgumentOutOfRangeException(nameof(seat), seat, "The seat must be wider than the hole.");
        double spread = 2 * t * tan;
        return ForcePerLength.FromNewtonsPerMeter(Math.PI * E * d * tan / Math.Log((spread + D - d) * (D + d) / ((spread + D + d) * (D - d))));
    }

    /// <summary>Springs one after the other: 1/k = Σ 1/k_i.</summary>
    /// <param name="parts">The springs, at least one.</param>
    public static ForcePerLength Series(params ReadOnlySpan<ForcePerLength> parts)
    {
        double give = 0;
        foreach (ForcePerLength part in parts)
            give += 1 / CheckInput.Positive(part.NewtonsPerMeter, nameof(parts));
        return ForcePerLength.FromNewtonsPerMeter(1 / CheckInput.Positive(give, nameof(parts)));
    }
}
