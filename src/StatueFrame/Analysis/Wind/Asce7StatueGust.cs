using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The gust-effect factor of ASCE/SEI 7 for a statue and a heading, with all that was fed into it.</summary>
/// <remarks>Immutable and safe to share between threads. Source: ASCE/SEI 7-16 and 7-22, 26.11.</remarks>
public sealed record Asce7StatueGust
{
    internal Asce7StatueGust()
    {
    }

    /// <summary>The wind's heading.</summary>
    public required Angle Heading { get; init; }

    /// <summary>The mode taken, numbered from 1: the lowest with a tenth of the moving mass along the wind.</summary>
    public required int Mode { get; init; }

    /// <summary>Its natural frequency n₁.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>Height h of the top above ground, pedestal included.</summary>
    public required Length Height { get; init; }

    /// <summary>Mean width B across the wind: projected area, limbs included, over the statue's own height.</summary>
    public required Length Width { get; init; }

    /// <summary>Mean depth L along the wind, found in the same way.</summary>
    public required Length Depth { get; init; }

    /// <summary>Damping ratio β: structure, dampers and air.</summary>
    public required double DampingRatio { get; init; }

    /// <summary>G of a rigid structure, (26.11-6).</summary>
    public required Asce7GustFactor Rigid { get; init; }

    /// <summary>G_f of a flexible structure, (26.11-10).</summary>
    public required Asce7GustFactor Flexible { get; init; }

    /// <summary>Whether the statue is flexible by 26.2: n₁ below 1 Hz.</summary>
    public bool IsFlexible => Frequency.Hertz < 1;

    /// <summary>G_f below 1 Hz, G from there on; for <see cref="WindAction.GustEffectFactor"/>.</summary>
    public double Factor => IsFlexible ? Flexible.Factor : Rigid.Factor;

    /// <summary>Every value taken for the user.</summary>
    public required ValueList<Assumption> Assumptions { get; init; }
}
