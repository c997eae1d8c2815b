namespace StatueFrame.Analysis;

/// <summary>
/// How standoffs yield: as hinges at their two ends, (N/N_p)² + (M_weak/M_weak,p)² + (M_strong/M_strong,p)² = 1, each
/// elastic up to there. Torsion and shear stay elastic.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BarYielding
{
    /// <summary>
    /// Stiffness after yielding over stiffness before, 0 to 0.9: 0 is elastic–perfectly plastic, above it hardening is
    /// kinematic.
    /// </summary>
    public double Hardening { get; init; }

    /// <summary>
    /// Whether a hinge takes the full plastic moment, 1.5 times that of first yield; true unless given. False yields with
    /// the outermost fiber.
    /// </summary>
    public bool FullyPlastic { get; init; } = true;

    /// <summary>Yield strength in use over the material's own, 0.1 to 3: above 1 for fast straining or overstrength.</summary>
    public double StrengthFactor { get; init; } = 1;

    internal void Validate(Validator v)
    {
        v.InRange(Hardening, 0, 0.9, "Steel lies near 0.01.");
        v.InRange(StrengthFactor, 0.1, 3, "It multiplies the yield strength.");
    }
}
