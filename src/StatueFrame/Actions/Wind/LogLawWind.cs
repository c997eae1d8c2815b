using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Wind by the logarithmic law of the atmosphere near the ground: mean speed v_m(z) = v_m(z_ref) ln((z−d)/z₀) /
/// ln((z_ref−d)/z₀), turbulence intensity I(z) = 1/ln((z−d)/z₀), both constant below a minimum height. A gust speed is
/// turned into the mean at the reference height; the law is always that of the mean.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source of the form: EN 1991-1-4, 4.3.2 (4.4) and 4.4 (4.7) with k_I = c_o = 1.</remarks>
public sealed record LogLawWind : SiteWind
{
    /// <summary>Speed at the reference height, 1 to 150 m/s.</summary>
    public required Speed ReferenceSpeed { get; init; }

    /// <summary>Height above ground of the reference speed, 1 to 500 m and at least d + 4 z₀; usually 10 m.</summary>
    public required Length ReferenceHeight { get; init; }

    /// <summary>Roughness length z₀ of the terrain upwind: from 0.0001 m (calm sea) to 3 m (city); 0.05 m for open country.</summary>
    public required Length RoughnessLength { get; init; }

    /// <summary>Height d by which roofs or treetops lift the profile, 0 to 60 m; null takes 0, which is safe.</summary>
    public Length? DisplacementHeight { get; init; }

    /// <summary>Height below which the wind is taken as constant, d + 4 z₀ to 200 m; null takes d plus the greater of 2 m and 10 z₀.</summary>
    public Length? MinimumHeight { get; init; }

    /// <inheritdoc/>
    public override string Name => Invariant($"logarithmic law, {ReferenceSpeed.MetersPerSecond:g4} m/s {(SpeedIs == WindSpeedBasis.GustSpeed ? "gust" : "mean")} at {ReferenceHeight.Meters:g4} m, z₀ {RoughnessLengthSi:g3} m");

    /// <inheritdoc/>
    public override Source Source => Source.User;

    private protected override double RoughnessLengthSi => RoughnessLength.Meters;

    private double Displacement => DisplacementHeight?.Meters ?? 0;

    private double MinimumHeightSi => MinimumHeight?.Meters ?? Displacement + Math.Max(2, 10 * RoughnessLengthSi);

    internal override double MeanSpeedSi(double z)
    {
        double logRef = Log(ReferenceHeight.Meters);
        double v = ReferenceSpeed.MetersPerSecond;
        if (SpeedIs == WindSpeedBasis.GustSpeed)
            v /= Math.Sqrt(GustRatio(1 / logRef));
        return v * (Log(z) / logRef);
    }

    internal override double TurbulenceIntensitySi(double z) => 1 / Log(z);

    private double Log(double z) => Math.Log((Math.Max(z, MinimumHeightSi) - Displacement) / RoughnessLengthSi);

    internal override WindProfile AtSpeed(double factor) => this with { ReferenceSpeed = factor * ReferenceSpeed };

    internal override IEnumerable<string> RangeWarnings(double greatestHeight)
    {
        if (greatestHeight > 200)
            yield return Invariant($"Logarithmic law: the top is {greatestHeight:g4} m above ground; the law is not meant for heights above 200 m.");
    }

    private protected override IEnumerable<Assumption> Defaults()
    {
        foreach (Assumption assumption in base.Defaults())
            yield return assumption;
        if (DisplacementHeight is null)
            yield return new Assumption("displacement height of the wind profile", "0 m", Source.En1991_1_4("A.5"));
        if (MinimumHeight is null)
            yield return new Assumption("wind near the ground", Invariant($"constant below {MinimumHeightSi:g3} m"), Source.Assumed("wind"));
    }

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.Positive(ReferenceSpeed, ReferenceSpeed.MetersPerSecond, 1, 150);
        bool heightIsGood = v.Positive(ReferenceHeight, ReferenceHeight.Meters, 1, 500);
        bool roughnessIsGood = v.Positive(RoughnessLength, RoughnessLength.Meters, 1e-4, 3);
        if (DisplacementHeight is { } d)
            heightIsGood &= v.NotNegative(d, d.Meters, 60, nameof(DisplacementHeight));
        if (!heightIsGood || !roughnessIsGood)
            return;
        double least = Displacement + 4 * RoughnessLengthSi;
        if (ReferenceHeight.Meters < least)
            v.Add(nameof(ReferenceHeight), Invariant($"must be at least d + 4 z₀ = {least:g3} m"), "Nearer to the roughness the law means nothing.");
        if (MinimumHeight is { } min && !(min.Meters >= least && min.Meters <= 200))
            v.Add(nameof(MinimumHeight), Invariant($"must be from d + 4 z₀ = {least:g3} m to 200 m, is {min.Meters:g4} m"), "Nearer to the roughness the law means nothing.");
    }
}
