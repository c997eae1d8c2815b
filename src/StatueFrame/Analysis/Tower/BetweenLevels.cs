using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// What acts on a segment between its levels, which the frame knows as forces at its two ends: its own weight, and wind and ice where no skin
/// covers it. SI units, in the statue's axes.
/// </summary>
/// <param name="WeightFactor">How many times its own weight acts.</param>
/// <param name="Lower">What of wind and ice went to its lower level, N.</param>
/// <param name="Upper">What of them went to its upper level, N.</param>
internal readonly record struct BetweenLevels(double WeightFactor, Vector3D Lower, Vector3D Upper)
{
    /// <summary>All of it over the mass of the segment, m/s²: on a lattice wind and ice are spread as its mass is.</summary>
    public Vector3D PerMass(double mass) => new Vector3D(0, 0, -WeightFactor * SelfWeight.Gravity) + (mass > 0 ? 1 / mass * (Lower + Upper) : Vector3D.Zero);

    public BetweenLevels And(Vector3D lower, Vector3D upper) => this with { Lower = Lower + lower, Upper = Upper + upper };
}
