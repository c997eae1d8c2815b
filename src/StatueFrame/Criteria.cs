using StatueFrame.Checks;

namespace StatueFrame;

/// <summary>What is enough: the limits that a check sheet compares the response with.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Criteria
{
    /// <summary>The greatest sway allowed at named points.</summary>
    public ValueList<SwayLimit> Sway { get; init; } = [];

    /// <summary>
    /// The fraction of the yield or proof strength that a standoff's stress may reach in a strength situation; null takes
    /// 1/1.5, which the sheet lists as assumed. With factored actions use 1/γ_M.
    /// </summary>
    public double? BarStressFraction { get; init; }

    /// <summary>The least buckling factor at which forces without second-order effects are good enough; 10 by default.</summary>
    public double LeastBucklingFactor { get; init; } = 10;

    /// <summary>The code that standoffs are checked by; EN 1993 by default. Metals it does not cover are checked by allowable stress.</summary>
    public DesignCode BarCode { get; init; } = DesignCode.En1993;

    /// <summary>Damping of the structure; null takes that of welded lattice towers for gusts, listed as assumed, and leaves vortices unchecked.</summary>
    public DampingModel? Damping { get; init; }

    /// <summary>Cross-sections and limits for vortex shedding and galloping; null leaves them unchecked.</summary>
    public AcrossWindInput? AcrossWind { get; init; }

    /// <summary>What must hold in a shock; null takes the tower's plan as the base, and leaves clearance unchecked.</summary>
    public ShockLimits? Shock { get; init; }

    /// <summary>Where people stand and feel the sway.</summary>
    public ValueList<Platform> Platforms { get; init; } = [];

    /// <summary>How many modes the sheet lists, 1 to 100.</summary>
    public int Modes { get; init; } = 6;

    internal void Validate(Validator v, StatueNames names)
    {
        foreach ((_, SwayLimit sway, Validator at) in v.Items(Sway, StatueSize.Points))
        {
            at.Positive(sway.Limit, sway.Limit.Meters, 1e-6, 10, nameof(SwayLimit.Limit));
            at.Required(sway.Source, nameof(SwayLimit.Source));
            names.RequirePoint(at, nameof(SwayLimit.Point), sway.Point);
        }
        if (BarStressFraction is { } fraction)
            v.InRange(fraction, 0.05, 1, "It is allowable stress over yield strength.", nameof(BarStressFraction));
        foreach ((_, Platform platform, Validator at) in v.Items(Platforms, StatueSize.Points))
        {
            names.RequirePoint(at, nameof(Platform.Point), platform.Point);
            at.Named(platform.Situation, nameof(Platform.Situation));
            at.Defined(platform.Use, nameof(Platform.Use));
        }
        Damping?.Validate(v.At(nameof(Damping)));
        AcrossWind?.Validate(v.At(nameof(AcrossWind)), names.SkinnedBodies);
        Shock?.Validate(v.At(nameof(Shock)));
        v.Defined(BarCode);
        v.InRange(LeastBucklingFactor, 1, 100, "10 is usual for elastic analysis.");
        v.InRange(Modes, 1, 100, "It is how many modes the sheet lists.");
    }
}
