using UnitsNet;

namespace StatueFrame;

/// <summary>Vibration by vortex resonance of a body in one mode, with the parts it is made of.</summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1991-1-4:2005, E.1.</remarks>
public sealed record VortexResult
{
    internal VortexResult() { }

    /// <summary>Number of the strip, from 1, whose width sets the critical speed.</summary>
    public required int ReferenceStrip { get; init; }

    /// <summary>Its width b.</summary>
    public required Length Width { get; init; }

    /// <summary>Its cross-section.</summary>
    public required BluffSection Section { get; init; }

    /// <summary>Natural frequency n.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>Logarithmic decrement δ.</summary>
    public required double LogDecrement { get; init; }

    /// <summary>Equivalent mass per length m_e.</summary>
    public required LinearDensity EquivalentMass { get; init; }

    /// <summary>Density of the air ρ.</summary>
    public required Density AirDensity { get; init; }

    /// <summary>Mean wind speed v_m where the vortices are shed: the greater of those at the reference and amid the correlation length.</summary>
    public required Speed MeanSpeed { get; init; }

    /// <summary>Critical wind speed v_crit = b n / St, at which vortices come in step with the mode, (E.2).</summary>
    public required Speed CriticalSpeed { get; init; }

    /// <summary>Scruton number Sc = 2 δ m_e / (ρ b²), (E.4).</summary>
    public required double ScrutonNumber { get; init; }

    /// <summary>Reynolds number at the critical speed, (E.5).</summary>
    public required double ReynoldsNumber { get; init; }

    /// <summary>Basic lateral force coefficient c_lat,0.</summary>
    public required double BasicLateralCoefficient { get; init; }

    /// <summary>Lateral force coefficient c_lat, less than the basic one where the critical speed is rare, Table E.3.</summary>
    public required double LateralCoefficient { get; init; }

    /// <summary>Mode shape factor K, (E.9).</summary>
    public required double ModeFactor { get; init; }

    /// <summary>Effective correlation length L_j at the reference strip, Table E.4.</summary>
    public required Length CorrelationLength { get; init; }

    /// <summary>Effective correlation length factor K_w, at most 0.6, (E.8).</summary>
    public required double CorrelationFactor { get; init; }

    /// <summary>Greatest amplitude on this body, across wind and axis, by the model asked for: (E.7), (E.13), or the greater of both.</summary>
    public required Length Amplitude { get; init; }

    /// <summary>Greatest amplitude y_F,max by approach 1, (E.7).</summary>
    public required Length ResonanceAmplitude { get; init; }

    /// <summary>The vibration by approach 2; null where it was not asked for or does not hold.</summary>
    public SpectralVortices? Spectral { get; init; }

    /// <summary>Number of load cycles in the life N, at least 10⁴, (E.10).</summary>
    public required double Cycles { get; init; }

    /// <summary>Inertia force per length of each strip m (2πn)² Φ y, (E.6), with the sign of the mode.</summary>
    public required ValueList<ForcePerLength> InertiaForces { get; init; }

    /// <summary>Whether v_crit is above 1.25 v_m, so that vortex resonance need not be looked at, (E.1).</summary>
    public bool IsBeyondRange => CriticalSpeed.MetersPerSecond > VortexShedding.RangeFactor * MeanSpeed.MetersPerSecond;

    /// <summary>Greatest acceleration on this body (2πn)² y.</summary>
    public Acceleration PeakAcceleration =>
        Acceleration.FromMetersPerSecondSquared(Math.Pow(2 * Math.PI * Frequency.Hertz, 2) * Amplitude.Meters);

    /// <summary>Whether the iteration for the correlation length came to rest; if not, the amplitude is the greatest it met.</summary>
    public required bool Converged { get; init; }
}
