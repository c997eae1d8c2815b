using UnitsNet;

namespace StatueFrame;

/// <summary>What vortex shedding and galloping of a statue need beside its modes and the wind.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record AcrossWindInput
{
    /// <summary>Damping of the structure; without it nothing is checked.</summary>
    public DampingModel? Damping { get; init; }

    /// <summary>The cross-sections of the skin of trunk and limbs; a body whose skin has none is not checked. Bare tubes, boxes and cores have their own.</summary>
    public ValueList<BodySection> Sections { get; init; } = [];

    /// <summary>The greatest amplitude allowed anywhere on the statue; 1 µm to 10 m. Without it an amplitude is told but not checked.</summary>
    public Length? AmplitudeLimit { get; init; }

    /// <summary>Modes above this frequency, 0.001 to 1000 Hz, are left out; null takes all that were computed.</summary>
    public Frequency? CutOff { get; init; }

    /// <summary>Expected life in years, for the number of cycles, 0.01 to 1000; null takes 50.</summary>
    public double? LifeYears { get; init; }

    /// <summary>Bandwidth factor ε₀, 0.01 to 1; the standard has 0.1 to 0.3, and null takes 0.3.</summary>
    public double? BandwidthFactor { get; init; }

    /// <summary>The model for the amplitude of vortex resonance, which the national annex may choose; the worse of both by default.</summary>
    public VortexApproach Approach { get; init; }

    /// <summary>What turbulence leaves of the negative damping of the air, K_a over K_a,max of the spectral model, 0.01 to 1; null takes 1, as in smooth wind.</summary>
    public double? TurbulenceReduction { get; init; }

    internal double LifeYearsInUse => LifeYears ?? 50;

    internal double BandwidthFactorInUse => BandwidthFactor ?? 0.3;

    internal void Validate(Validator v, IReadOnlyList<string> bodies)
    {
        Damping?.Validate(v.At(nameof(Damping)));
        foreach ((int i, BodySection section, Validator at) in v.Items(Sections, StatueSize.Limbs + 1))
        {
            string body = section.Body;
            if (!bodies.Contains(body))
                at.Add(nameof(BodySection.Body), $"there is no body \"{body}\"", NearNames.Closest(body, bodies));
            if (Sections.Take(i).Any(s => s?.Body == body))
                at.Add(nameof(BodySection.Body), $"\"{body}\" has two sections", "Give each body one.");
            if (!Enum.IsDefined(section.Shape))
                at.Add(nameof(BodySection.Shape), $"is not a known shape: {section.Shape}", "Take one of the named shapes.");
        }
        if (AmplitudeLimit is { } limit)
            v.Positive(limit, limit.Meters, 1e-6, 10, nameof(AmplitudeLimit));
        if (CutOff is { } cut)
            v.Positive(cut, cut.Hertz, 1e-3, 1000, nameof(CutOff));
        if (LifeYears is { } years)
            v.InRange(years, 0.01, 1000, "It is the life for the count of cycles, near 50 years.", nameof(LifeYears));
        if (!Enum.IsDefined(Approach))
            v.Add(nameof(Approach), $"is not a known model: {Approach}", "Take one of the named models.");
        if (TurbulenceReduction is { } left)
            v.InRange(left, 0.01, 1, "It is K_a over K_a,max: 1 in smooth wind.", nameof(TurbulenceReduction));
        if (BandwidthFactor is { } factor)
            v.InRange(factor, 0.01, 1, "The standard has 0.1 to 0.3.", nameof(BandwidthFactor));
    }
}
