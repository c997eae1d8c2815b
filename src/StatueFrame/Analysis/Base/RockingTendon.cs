using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// A pre-tensioned tendon that ties a rocking block to the ground: vertical, elastic, free to stretch over its whole length,
/// and anchored in the middle of the base.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Pretension">Force at rest, zero or more.</param>
/// <param name="Stiffness">Axial stiffness EA/L, zero or more.</param>
public sealed record RockingTendon(Force Pretension, ForcePerLength Stiffness)
{
    internal void Validate(Validator v)
    {
        v.NotNegative(Pretension, Pretension.Newtons, 1e10);
        v.NotNegative(Stiffness, Stiffness.NewtonsPerMeter, 1e12);
    }
}
