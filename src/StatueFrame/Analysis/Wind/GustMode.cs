using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>A mode of vibration in the wind: its damping and its share in the sway.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Number">Its number, from 1. Modes of one frequency are turned until one of them sways along the wind.</param>
/// <param name="Frequency">Natural frequency.</param>
/// <param name="StructuralRatio">Damping ratio in still air: structure and dampers.</param>
/// <param name="AerodynamicRatio">Damping ratio of the air along the wind, ξ_a = Σ ρ C_f A V φ² / (2 ω), with φᵀMφ = 1.</param>
/// <param name="Overturning">Standard deviation of its part, beyond the quasi-static one, in the overturning moment.</param>
public sealed record GustMode(int Number, Frequency Frequency, double StructuralRatio, double AerodynamicRatio, Torque Overturning)
{
    /// <summary>Total damping ratio.</summary>
    public double Ratio => StructuralRatio + AerodynamicRatio;
}
