using UnitsNet;

namespace StatueFrame;

/// <summary>Onset of galloping of a body in one mode.</summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1991-1-4:2005, E.2.2.</remarks>
public sealed record GallopingResult
{
    internal GallopingResult() { }

    /// <summary>Natural frequency n.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>Logarithmic decrement δ.</summary>
    public required double LogDecrement { get; init; }

    /// <summary>Equivalent mass per length m_e.</summary>
    public required LinearDensity EquivalentMass { get; init; }

    /// <summary>Density of the air ρ.</summary>
    public required Density AirDensity { get; init; }

    /// <summary>Mean width b over the body, weighted with the square of the modal amplitude.</summary>
    public required Length Width { get; init; }

    /// <summary>Factor of galloping instability a_G, weighted with width and square of the amplitude; 0 when nothing gallops.</summary>
    public required double GallopingFactor { get; init; }

    /// <summary>Whether the factor 10 stands for one that is not known.</summary>
    public required bool AssumesFactor { get; init; }

    /// <summary>Scruton number with the mean width.</summary>
    public required double ScrutonNumber { get; init; }

    /// <summary>Onset wind speed v_CG = 2 Sc n b / a_G, (E.18); null when nothing gallops.</summary>
    public required Speed? OnsetSpeed { get; init; }

    /// <summary>Mean wind speed v_m where the modal amplitude is greatest.</summary>
    public required Speed MeanSpeed { get; init; }

    /// <summary>Critical speed of vortices where the modal amplitude is greatest.</summary>
    public required Speed VortexSpeed { get; init; }

    /// <summary>Whether 0.7 &lt; v_CG/v_crit &lt; 1.5, so that galloping and vortices act on one another, (E.20).</summary>
    public bool Interacts => OnsetSpeed is { } onset && onset / VortexSpeed is > 0.7 and < 1.5;
}
