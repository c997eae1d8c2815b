using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// The spectrum of EN 1998-1, horizontal or vertical: elastic, S_e(T), or for design with a behavior factor, S_d(T).
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Source: EN 1998-1:2004, 3.2.2.2 (3.2) to (3.6), 3.2.2.3 (3.8) to (3.11) and
/// 3.2.2.5 (3.13) to (3.16), with its recommended values. It covers periods up to 4 s.
/// </remarks>
public sealed record En1998Spectrum : DesignSpectrum
{
    /// <summary>Peak ground acceleration on rock a_gR of the hazard map, 0.01 to 20 m/s².</summary>
    public required Acceleration ReferenceAcceleration { get; init; }

    /// <summary>The ground below the statue.</summary>
    public required GroundType Ground { get; init; }

    /// <summary>Type of spectrum; type 1 unless it is said.</summary>
    public En1998SpectrumType Type { get; init; } = En1998SpectrumType.Type1;

    /// <summary>Importance factor γ_I, 0.4 to 3; the design ground acceleration is a_g = γ_I·a_gR.</summary>
    public double ImportanceFactor { get; init; } = 1;

    /// <summary>Behavior factor q, 1 to 10; null for the elastic spectrum.</summary>
    public double? BehaviorFactor { get; init; }

    /// <summary>Whether it is the vertical spectrum.</summary>
    public bool IsVertical { get; init; }

    /// <summary>Soil factor and corner periods from a national annex or a site study; null takes the recommended ones.</summary>
    public SpectrumShape? Shape { get; init; }

    /// <summary>a_vg/a_g of the vertical spectrum, 0.1 to 2; null takes 0.9 (type 1) or 0.45 (type 2).</summary>
    public double? VerticalRatio { get; init; }

    /// <summary>Lower bound β of the design spectrum over a_g, 0 to 1; 0.2 is recommended.</summary>
    public double LowerBound { get; init; } = 0.2;

    /// <inheritdoc/>
    public override Source Source => En1998(IsVertical ? "3.2.2.3" : BehaviorFactor is null ? "3.2.2.2" : "3.2.2.5");

    /// <summary>The displacement behavior factor q_d = q. Source: EN 1998-1:2004, 4.3.4 (2).</summary>
    public override double DisplacementFactor => BehaviorFactor ?? 1;

    /// <summary>Damping correction η = √(10/(5 + ξ)) ≥ 0.55, with ξ in percent. Source: EN 1998-1:2004, (3.6).</summary>
    /// <param name="dampingRatio">Damping ratio, 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is out of range.</exception>
    public static double DampingCorrection(double dampingRatio) => dampingRatio is >= 0 and < 1
        ? Math.Max(0.55, Math.Sqrt(10 / (5 + 100 * dampingRatio)))
        : throw new ArgumentOutOfRangeException(nameof(dampingRatio), Invariant($"Must be from 0 to below 1, is {dampingRatio}."));

    /// <summary>The vertical spectrum of the same place.</summary>
    /// <param name="behaviorFactor">q for vertical motion, at most 1.5 unless it is justified; null for the elastic spectrum.</param>
    public En1998Spectrum Vertical(double? behaviorFactor = null) =>
        this with { IsVertical = true, BehaviorFactor = behaviorFactor, Shape = null };

    internal SpectrumShape ShapeInUse =>
        Shape ?? (IsVertical ? SpectrumShape.Vertical : SpectrumShape.Horizontal(Type, Ground));

    internal override double LongestPeriod => 4;

    internal override IEnumerable<Assumption> Assumptions
    {
        get
        {
            if (Shape is null)
                yield return new Assumption(IsVertical ? "vertical spectrum" : "horizontal spectrum", Invariant($"S {ShapeInUse.S}, T_B {ShapeInUse.TB} s, T_C {ShapeInUse.TC} s, T_D {ShapeInUse.TD} s"), En1998(IsVertical ? "Table 3.4, recommended values" : "Tables 3.2 and 3.3, recommended values"));
            if (IsVertical && VerticalRatio is null)
                yield return new Assumption("vertical over horizontal ground acceleration", Invariant($"{VerticalRatioInUse}"), En1998("Table 3.4, recommended value"));
        }
    }

    internal override IEnumerable<string> Warnings =>
        IsVertical && BehaviorFactor > 1.5 ? ["A behavior factor above 1.5 for vertical motion needs a justification (EN 1998-1:2004, 3.2.2.5 (6))."] : [];

    private double VerticalRatioInUse => VerticalRatio ?? (Type == En1998SpectrumType.Type1 ? 0.9 : 0.45);

    internal override double AtSi(double T)
    {
        (double S, double TB, double TC, double TD) = ShapeInUse;
        double ag = ImportanceFactor * ReferenceAcceleration.MetersPerSecondSquared;
        if (IsVertical)
            (ag, S) = (VerticalRatioInUse * ag, 1);
        bool isElastic = BehaviorFactor is null;
        double start = isElastic ? 1 : 2.0 / 3;
        double plateau = isElastic ? (IsVertical ? 3 : 2.5) * DampingCorrection(DampingRatio) : 2.5 / BehaviorFactor!.Value;
        double shape = T < TB ? start + T / TB * (plateau - start)
            : T <= TC ? plateau
            : T <= TD ? plateau * TC / T
            : plateau * TC * TD / (T * T);
        return isElastic || T <= TC ? ag * S * shape : Math.Max(ag * S * shape, LowerBound * ag);
    }

    internal override DesignSpectrum? WithDamping(double ratio) =>
        BehaviorFactor is null ? this with { DampingRatio = ratio } : base.WithDamping(ratio);

    internal override void Validate(Validator v)
    {
        v.Within(ReferenceAcceleration, ReferenceAcceleration.MetersPerSecondSquared, 0.01, 20);
        v.Defined(Ground);
        v.Defined(Type);
        v.InRange(ImportanceFactor, 0.4, 3, "Importance factors lie near 0.8 to 1.4.");
        if (BehaviorFactor is { } q)
            v.InRange(q, 1, 10, "Behavior factors lie near 1.5 to 6; towers without ductile detailing have 1.5.", nameof(BehaviorFactor));
        if (VerticalRatio is { } ratio)
            v.InRange(ratio, 0.1, 2, "It is near 0.45 to 0.9.", nameof(VerticalRatio));
        v.InRange(LowerBound, 0, 1, "0.2 is recommended.");
        v.InRange(DampingRatio, 0.001, 0.5, "It is a part of critical damping, as in 0.05.");
        Shape?.Validate(v.At(nameof(Shape)));
        if (BehaviorFactor is not null && DampingRatio != 0.05)
            v.Add(nameof(DampingRatio), "must be 0.05 when a behavior factor is given", "The behavior factor holds the influence of damping (EN 1998-1:2004, 3.2.2.5 (3)).");
    }

    private static Source En1998(string place) => new("EN 1998-1:2004", place);
}
