using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The structural factor c_s c_d of EN 1991-1-4 for a statue and a heading, with all that was fed into it.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Source: EN 1991-1-4:2005, 6.3.1, Annexes B, C and F. The annexes are for
/// upright structures that sway in one mode of one sign; a statue with heavy limbs is not one: compare with
/// <see cref="GustResponse"/>.
/// </remarks>
public sealed record En1991StatueGust
{
    internal En1991StatueGust()
    {
    }

    /// <summary>The wind's heading.</summary>
    public required Angle Heading { get; init; }

    /// <summary>The mode taken, numbered from 1: the lowest with a tenth of the moving mass along the wind.</summary>
    public required int Mode { get; init; }

    /// <summary>Its natural frequency n₁.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>Height h of the statue, without pedestal.</summary>
    public required Length Height { get; init; }

    /// <summary>Mean width b: projected area, limbs included, over height.</summary>
    public required Length Width { get; init; }

    /// <summary>Reference height z_s above ground: pedestal and 0.6 h.</summary>
    public required Length ReferenceHeight { get; init; }

    /// <summary>Exponent ζ of the mode shape (z/h)^ζ, fitted to the trunk.</summary>
    public required double ModeExponent { get; init; }

    /// <summary>Equivalent mass m_e, (F.14).</summary>
    public required LinearDensity EquivalentMass { get; init; }

    /// <summary>Mean force coefficient c_f.</summary>
    public required double ForceCoefficient { get; init; }

    /// <summary>Logarithmic decrement in still air, of structure and dampers: δ_s + δ_d.</summary>
    public required double StructuralDecrement { get; init; }

    /// <summary>Logarithmic decrement of the air, δ_a, (F.18).</summary>
    public required double AerodynamicDecrement { get; init; }

    /// <summary>Total logarithmic decrement δ, (F.15).</summary>
    public double LogDecrement => StructuralDecrement + AerodynamicDecrement;

    /// <summary>By procedure 1, Annex B, which the standard recommends.</summary>
    public required En1991StructuralFactor AnnexB { get; init; }

    /// <summary>By procedure 2, Annex C.</summary>
    public required En1991StructuralFactor AnnexC { get; init; }

    /// <summary>c_s c_d by Annex B; for <see cref="WindAction.GustEffectFactor"/>.</summary>
    public double Factor => AnnexB.Factor;

    /// <summary>Peak acceleration along the wind where the mode is greatest, B.4.</summary>
    public Acceleration PeakAcceleration => AnnexB.PeakAcceleration(ForceCoefficient, Width, EquivalentMass);

    /// <summary>Every value taken for the user.</summary>
    public required ValueList<Assumption> Assumptions { get; init; }
}
