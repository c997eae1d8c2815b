using UnitsNet;

namespace StatueFrame;

/// <summary>Masonry of stone or brick in mortar: strong in compression, without tension across its bed joints.</summary>
/// <remarks>Immutable and safe to share between threads. Source of the terms: EN 1996-1-1:2005, 3.6.</remarks>
public sealed record Masonry : BlockMaterial
{
    /// <summary>Initial shear strength f_vk0 of a bed joint without compression, 0 to 5 MPa; zero by default.</summary>
    public Pressure InitialShearStrength { get; init; }

    /// <summary>Friction of the bed joints, as part of f_vk, 0.1 to 1; 0.4 by default (EN 1996-1-1, 3.6.2).</summary>
    public double JointFriction { get; init; } = 0.4;

    /// <summary>Greatest shear strength f_vk whatever the compression, as 0.065 f_b; null for no such limit.</summary>
    public Pressure? GreatestShearStrength { get; init; }

    /// <summary>Partial factor γ_M, 1 to 5; 2.5 by default, amid the 1.5 to 3 of EN 1996-1-1, 2.4.3.</summary>
    public double PartialFactor { get; init; } = 2.5;

    internal override double Gamma => PartialFactor;

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.NotNegative(InitialShearStrength, InitialShearStrength.Pascals, 5e6);
        v.InRange(JointFriction, 0.1, 1, "It is 0.4 in EN 1996-1-1.");
        if (GreatestShearStrength is { } most)
            v.Positive(most, most.Pascals, 1e3, 2e7, nameof(GreatestShearStrength));
        v.InRange(PartialFactor, 1, 5, "It is 1.5 to 3 in EN 1996-1-1; see the National Annex.");
    }
}
