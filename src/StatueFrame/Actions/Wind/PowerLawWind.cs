using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Wind by a power law, v(z) = v_ref (z/z_ref)^α, constant below a minimum height. The law is that of the given speed,
/// gust or mean. The standard deviation of the gusts is the same at all heights, as it nearly is in the lowest 100 m.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source of the form: common practice (Davenport's power law).</remarks>
public sealed record PowerLawWind : SiteWind
{
    /// <summary>Speed at the reference height, 1 to 150 m/s.</summary>
    public required Speed ReferenceSpeed { get; init; }

    /// <summary>Height above ground of the reference speed, 1 to 500 m; usually 10 m.</summary>
    public required Length ReferenceHeight { get; init; }

    /// <summary>Exponent α, from 0 (constant wind) to 0.5; near 0.11 for gusts and 0.16 for means over open country.</summary>
    public required double Exponent { get; init; }

    /// <summary>
    /// Turbulence intensity at the reference height, 0.01 to 0.8. Must be given when the speed is a mean; with a gust speed, null takes
    /// 1/ln(z_ref/z₀).
    /// </summary>
    public double? TurbulenceIntensityAtReference { get; init; }

    /// <summary>Roughness length z₀, for turbulence only, 0.0001 to 3 m; null takes 0.05 m.</summary>
    public Length? RoughnessLength { get; init; }

    /// <summary>Height below which the wind is taken as constant, 0.1 to 100 m; null takes 2 m.</summary>
    public Length? MinimumHeight { get; init; }

    /// <inheritdoc/>
    public override string Name => Invariant($"power law, {ReferenceSpeed.MetersPerSecond:g4} m/s {(SpeedIs == WindSpeedBasis.GustSpeed ? "gust" : "mean")} at {ReferenceHeight.Meters:g4} m, exponent {Exponent:g3}");

    /// <inheritdoc/>
    public override Source Source => Source.User;

    private protected override double RoughnessLengthSi => RoughnessLength?.Meters ?? 0.05;

    private double MinimumHeightSi => MinimumHeight?.Meters ?? 2;

    private double ReferenceIntensity => TurbulenceIntensityAtReference ?? 1 / Math.Log(ReferenceHeight.Meters / RoughnessLengthSi);

    internal override double MeanSpeedSi(double z) => MeanAndDeviation(z).Mean;

    internal override double TurbulenceIntensitySi(double z)
    {
        (double mean, double deviation) = MeanAndDeviation(z);
        return deviation / mean;
    }

    // With the deviation σ constant, the gust speed v obeys v² = v_m² + 2gσv_m, which gives v_m from v.
    private (double Mean, double Deviation) MeanAndDeviation(double z)
    {
        double vRef = ReferenceSpeed.MetersPerSecond;
        double v = vRef * Math.Pow(Math.Max(z, MinimumHeightSi) / ReferenceHeight.Meters, Exponent);
        double I = ReferenceIntensity;
        if (SpeedIs == WindSpeedBasis.MeanSpeed)
            return (v, I * vRef);
        double sigma = I * vRef / Math.Sqrt(GustRatio(I));
        double half = GustPeakFactor * sigma;
        return (Math.Sqrt(half * half + v * v) - half, sigma);
    }

    internal override WindProfile AtSpeed(double factor) => this with { ReferenceSpeed = factor * ReferenceSpeed };

    internal override IEnumerable<string> RangeWarnings(double greatestHeight)
    {
        if (greatestHeight > 300)
            yield return Invariant($"Power law: the top is {greatestHeight:g4} m above ground; the law is not meant for heights above 300 m.");
    }

    private protected override IEnumerable<Assumption> Defaults()
    {
        foreach (Assumption assumption in base.Defaults())
            yield return assumption;
        if (RoughnessLength is null)
            yield return AssumedRoughness;
        if (TurbulenceIntensityAtReference is null)
            yield return new Assumption("turbulence intensity at the reference height", Invariant($"1/ln(z/z₀) = {ReferenceIntensity:f3}"), Source.En1991_1_4("4.4 (4.7)"));
        if (MinimumHeight is null)
            yield return new Assumption("wind near the ground", "constant below 2 m", Source.En1991_1_4("Table 4.1, terrain II"));
    }

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.Positive(ReferenceSpeed, ReferenceSpeed.MetersPerSecond, 1, 150);
        v.Positive(ReferenceHeight, ReferenceHeight.Meters, 1, 500);
        v.InRange(Exponent, 0, 0.5, "Near 0.16 for mean speeds over open country.");
        ValidateIntensity(v, TurbulenceIntensityAtReference, nameof(TurbulenceIntensityAtReference));
        ValidateRoughness(v, RoughnessLength, nameof(RoughnessLength));
        if (MinimumHeight is { } least)
            v.Positive(least, least.Meters, 0.1, 100, nameof(MinimumHeight));
        if (TurbulenceIntensityAtReference is null && SpeedIs == WindSpeedBasis.MeanSpeed)
            v.Add(nameof(TurbulenceIntensityAtReference), "must be given with a mean speed", "Gusts follow from it; near 0.19 at 10 m over open country.");
        else if (TurbulenceIntensityAtReference is null && ReferenceHeight.Meters < 4 * RoughnessLengthSi)
            v.Add(nameof(ReferenceHeight), "is too low over this roughness to tell the turbulence from it", "Give TurbulenceIntensityAtReference.");
    }
}
