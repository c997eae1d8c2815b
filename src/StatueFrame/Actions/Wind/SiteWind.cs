using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Wind that the user describes by speeds of their own rather than by a standard's map and terrain. The speeds are gusts
/// or means; one is worked out from the other by the peak pressure q_p = (1 + 2 g I) ½ρv_m², with the turbulence
/// intensity I and the peak factor g. That is the linearized form of EN 1991-1-4 (4.8), which leaves out the term (g I)²;
/// with g = 3.5 it reads 1 + 7 I.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record SiteWind : WindProfile
{
    internal SiteWind() { }

    /// <summary>Whether the given speeds are gusts or means.</summary>
    public required WindSpeedBasis SpeedIs { get; init; }

    /// <summary>Peak factor g, standard deviations between mean and gust, from 1 to 5; null takes 3.5 (EN 1991-1-4, 4.5).</summary>
    public double? PeakFactor { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Assumption> Assumptions => [.. Defaults()];

    internal override double GustPeakFactor => PeakFactor ?? 3.5;

    private protected override double DefaultDensity => 1.25;

    private protected abstract double RoughnessLengthSi { get; }

    internal override double PeakPressureSi(double z)
    {
        double v = MeanSpeedSi(z);
        return GustRatio(TurbulenceIntensitySi(z)) * 0.5 * Rho * v * v;
    }

    internal override double TurbulenceLengthScaleSi(double z) => En1991Wind.LengthScale(Math.Max(z, 2), RoughnessLengthSi);

    /// <summary>Peak pressure over mean pressure at a turbulence intensity.</summary>
    private protected double GustRatio(double intensity) => 1 + 2 * GustPeakFactor * intensity;

    private protected virtual IEnumerable<Assumption> Defaults()
    {
        if (AirDensity is null)
            yield return new Assumption("density of air", "1.25 kg/m³", Source.En1991_1_4("4.5(1) note 2"));
        if (PeakFactor is null)
            yield return new Assumption("peak factor of gusts", "3.5, so that q_p = (1 + 7 I) ½ρv_m²", Source.En1991_1_4("4.5(1) (4.8)"));
        yield return new Assumption("length scale of turbulence", FormattableString.Invariant($"that of terrain with a roughness length of {RoughnessLengthSi:g3} m"), Source.En1991_1_4("B.1 (B.1)"));
    }

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.Defined(SpeedIs);
        if (PeakFactor is { } g)
            v.InRange(g, 1, 5, "3.5 is usual.", nameof(PeakFactor));
    }

    private protected static Assumption AssumedRoughness { get; } = new(
        "roughness length of the terrain", "0.05 m (terrain II: low vegetation, isolated obstacles)", Source.En1991_1_4("Table 4.1"));

    private protected static void ValidateRoughness(Validator v, Length? roughness, string member)
    {
        if (roughness is { } z0)
            v.Positive(z0, z0.Meters, 1e-4, 3, member);
    }

    private protected static void ValidateIntensity(Validator v, double? intensity, string member)
    {
        if (intensity is { } i)
            v.InRange(i, 0.01, 0.8, "Give a ratio, as in 0.18.", member);
    }
}
