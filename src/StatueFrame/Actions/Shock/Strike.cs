using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A moving mass that strikes one place: a boat's fender, a swinging load, a stone. The impulse is J = (1 + e) v / (1/m + 1/M),
/// with the coefficient of restitution e and the mass M that the struck point sets against the blow in its direction. The
/// mass then leaves; it does not ride on.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. M is that of the rigid level or band alone at the first moment, before
/// bars bend: a contact that lasts long against their vibration passes on more. Then give the impulse as a <see cref="Blow"/>.
/// </remarks>
public sealed record Strike : PlacedShock
{
    /// <summary>The striking mass, 1 g to 1e7 kg.</summary>
    public required Mass Mass { get; init; }

    /// <summary>Its speed along the heading before it strikes, 1e-3 to 1000 m/s.</summary>
    public required Speed Speed { get; init; }

    /// <summary>
    /// Coefficient of restitution e: speed of parting over speed of approach, 0 to 1. 0 is dead, 1 bounces and passes on the most.
    /// </summary>
    public required double Restitution { get; init; }

    private protected override void ValidateSize(Validator v)
    {
        v.Positive(Mass, Mass.Kilograms, 1e-3, 1e7);
        v.Positive(Speed, Speed.MetersPerSecond, 1e-3, 1000);
        v.InRange(Restitution, 0, 1, "It is speed of parting over speed of approach.");
    }

    /// <summary>The impulse that passes, J = (1 + e) v m M/(m + M). Source: momentum and Newton's law of restitution.</summary>
    /// <param name="mass">The striking mass m, kg; positive.</param>
    /// <param name="speed">Its speed v, m/s.</param>
    /// <param name="restitution">e, 0 to 1.</param>
    /// <param name="struckMass">M, kg: the struck body's own mass, or less where it turns away; infinite for a fixed one.</param>
    /// <returns>The impulse, N·s.</returns>
    public static double ImpulseOf(double mass, double speed, double restitution, double struckMass) =>
        (1 + restitution) * speed / (1 / mass + 1 / struckMass);
}
