namespace StatueFrame.Checks;

/// <summary>The rules and safety factors for cores, hold-down, pedestal and foundation. Change what the National Annex or the client asks for.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BaseDesign
{
    /// <summary>The rules; null follows the basis of design.</summary>
    public BaseCode? Code { get; init; }

    /// <summary>γ_Mc of concrete that fails under anchors, 1 to 3; 1.5 by default (EN 1992-4, Table 4.1).</summary>
    public double GammaMc { get; init; } = 1.5;

    /// <summary>γ_M0 of plates and girders, 1 to 2; 1.0 by default.</summary>
    public double GammaM0 { get; init; } = 1.0;

    /// <summary>γ_M2 of bars in tension and shear by EN 1993-1-8, 1 to 2; 1.25 by default.</summary>
    public double GammaM2 { get; init; } = 1.25;

    /// <summary>Safety against overturning beyond the actions' own factors, 1 to 3; 1 by default.</summary>
    public double OverturningMargin { get; init; } = 1;

    /// <summary>γ_R;h against sliding on the ground, 1 to 3; 1.1 by default (EN 1997-1, Table A.5, set R2).</summary>
    public double SlidingFactor { get; init; } = 1.1;

    /// <summary>γ_R;v on the bearing resistance of the ground, 1 to 5; 1.4 by default (EN 1997-1, Table A.5, set R2).</summary>
    public double BearingFactor { get; init; } = 1.4;

    /// <summary>ϕ of anchors whose concrete fails, without supplementary reinforcement, 0.3 to 1; 0.70 by default (ACI 318-19, Table 17.5.3).</summary>
    public double PhiConcrete { get; init; } = 0.70;

    /// <summary>What the weight that holds a statue down counts in overturning.</summary>
    internal static readonly Assumption EquilibriumWeight = new("weight in static equilibrium", "0.9 of its own value, other actions as given", Source.En1990("Table A1.2(A), recommended value"));

    internal bool IsAmerican => Code == BaseCode.American;

    internal IEnumerable<Assumption> Assumptions()
    {
        if (this != new BaseDesign { Code = Code })
            yield break;
        yield return IsAmerican
            ? new Assumption("factors of the base", FormattableString.Invariant($"ϕ {PhiConcrete} of anchors in concrete; margin against overturning {OverturningMargin}"), new Source("ACI 318-19", "Table 17.5.3, from memory"))
            : new Assumption("factors of the base", FormattableString.Invariant($"γ_Mc {GammaMc}, γ_M0 {GammaM0}, γ_M2 {GammaM2}; ground γ_R;h {SlidingFactor}, γ_R;v {BearingFactor}; margin against overturning {OverturningMargin}"), new Source("EN 1992-4:2018 Table 4.1, EN 1993-1-8, EN 1997-1 Table A.5", "recommended values, from memory"));
    }

    internal void Validate(Validator v)
    {
        if (Code is { } code)
            v.Defined(code, nameof(Code));
        v.InRange(GammaMc, 1, 3, "It is 1.5 in EN 1992-4.");
        v.InRange(GammaM0, 1, 2, "It is 1.0 in EN 1993-1-1.");
        v.InRange(GammaM2, 1, 2, "It is 1.25 in EN 1993-1-8.");
        v.InRange(OverturningMargin, 1, 3, "It is 1 with factored actions, 1.5 with unfactored ones.");
        v.InRange(SlidingFactor, 1, 3, "It is 1.1 in EN 1997-1, set R2.");
        v.InRange(BearingFactor, 1, 5, "It is 1.4 in EN 1997-1, set R2.");
        v.InRange(PhiConcrete, 0.3, 1, "It is 0.70 in ACI 318-19.");
    }
}
