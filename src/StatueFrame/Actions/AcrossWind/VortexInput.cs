using UnitsNet;

namespace StatueFrame;

/// <summary>A body in one of its modes, across the wind: what vortex shedding and galloping are worked out from.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record VortexInput
{
    /// <summary>The greatest frequency that is worked out, Hz: no wind sheds vortices faster from a statue.</summary>
    internal const double GreatestFrequency = 1000;

    /// <summary>The pieces of the body in order along its axis, without gaps; at least one.</summary>
    public required ValueList<VortexStrip> Strips { get; init; }

    /// <summary>Natural frequency n of the mode, 0.001 to 1000 Hz.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>
    /// Equivalent mass per length m_e, (F.14): the generalized mass of the mode over ∫φ² ds of this body, so that mass that
    /// moves elsewhere counts too.
    /// </summary>
    public required LinearDensity EquivalentMass { get; init; }

    /// <summary>Logarithmic decrement δ without the wind, of structure and dampers; 0.0001 to 3.</summary>
    public required double LogDecrement { get; init; }

    /// <summary>Density of the air ρ, 0.5 to 1.6 kg/m³; 1.25 kg/m³ by default.</summary>
    public Density AirDensity { get; init; } = Density.FromKilogramsPerCubicMeter(1.25);

    /// <summary>
    /// Number of the strip, from 1, whose width sets the critical speed; null looks at each in turn and takes the worst.
    /// The standard names the place of the greatest modal amplitude, which is enough where the width is much the same.
    /// </summary>
    public int? ReferenceStrip { get; init; }

    /// <summary>Expected life in years, for the number of cycles, 0.01 to 1000; 50 by default.</summary>
    public double LifeYears { get; init; } = 50;

    /// <summary>Bandwidth factor ε₀ of the range of speeds with vortex vibration, 0.01 to 1; the standard has 0.1 to 0.3, and 0.3 is taken by default.</summary>
    public double BandwidthFactor { get; init; } = 0.3;

    /// <summary>√2 times the mode of the Weibull distribution of wind speed v₀; 0.1 to 50 m/s; null takes a fifth of v_m.</summary>
    public Speed? WeibullSpeed { get; init; }

    /// <summary>The model for the amplitude; the worse of both by default.</summary>
    public VortexApproach Approach { get; init; }

    /// <summary>What turbulence leaves of the negative damping of the air, K_a over K_a,max of the spectral model, 0.01 to 1; 1 by default, as in smooth wind.</summary>
    public double TurbulenceReduction { get; init; } = 1;

    internal void Validate(Validator v)
    {
        if (Strips.Count == 0)
            v.Add(nameof(Strips), "must not be empty", "Give a strip for every band.");
        for (int i = 0; i < Strips.Count; i++)
        {
            VortexStrip strip = Strips[i];
            Validator at = v.At(nameof(Strips), i);
            at.Positive(strip.Length, strip.Length.Meters, 1e-4, 1000, nameof(strip.Length));
            at.Positive(strip.Width, strip.Width.Meters, 1e-3, 500, nameof(strip.Width));
            at.Positive(strip.MeanSpeed, strip.MeanSpeed.MetersPerSecond, 0, 200, nameof(strip.MeanSpeed));
            at.NotNegative(strip.Mass, strip.Mass.KilogramsPerMeter, 1e8, nameof(strip.Mass));
            if (!double.IsFinite(strip.Amplitude))
                at.Add(nameof(strip.Amplitude), "must be finite", "It is the mode's movement at the strip, in any scale.");
            if (strip.Section is null)
                at.Add(nameof(strip.Section), "must be given", "Use BluffSection.Round, Rectangle or Given.");
        }
        if (Strips.Count > 0 && Strips.All(s => s.Amplitude == 0))
            v.Add(nameof(Strips), "do not move in this mode: all amplitudes are zero", "Take a mode that moves the body across its axis.");
        v.Positive(Frequency, Frequency.Hertz, 1e-3, GreatestFrequency);
        // A body that hardly moves in its mode has an equivalent mass far above its own.
        v.Positive(EquivalentMass, EquivalentMass.KilogramsPerMeter, 1e-3, 1e12);
        v.InRange(LogDecrement, 1e-4, 3, "Logarithmic decrements lie near 0.01 to 0.1.");
        v.Positive(AirDensity, AirDensity.KilogramsPerCubicMeter, 0.5, 1.6);
        if (ReferenceStrip is { } strips && (strips < 1 || strips > Strips.Count))
            v.Add(nameof(ReferenceStrip), $"must be from 1 to {Strips.Count}, is {strips}", "It counts the strips from 1.");
        v.InRange(LifeYears, 0.01, 1000, "Design lives lie near 50 to 120 years.");
        v.InRange(BandwidthFactor, 0.01, 1, "The standard has 0.1 to 0.3.");
        if (!Enum.IsDefined(Approach))
            v.Add(nameof(Approach), $"is not a known model: {Approach}", "Take one of the named models.");
        v.InRange(TurbulenceReduction, 0.01, 1, "It is K_a over K_a,max: 1 in smooth wind.");
        if (WeibullSpeed is { } speed)
            v.Positive(speed, speed.MetersPerSecond, 0.1, 50, nameof(WeibullSpeed));
    }
}
