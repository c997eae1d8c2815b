using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Wind by ASCE/SEI 7: from the basic 3-second gust speed of the map and the exposure to the design velocity pressure
/// q = 0.613 K_z K_zt K_d K_e V² (V in m/s, q in Pa). The 2022 edition moves K_d from the pressure to the load equations;
/// here it is in <see cref="WindProfile.PeakPressure"/> for both editions, so that loads are the same product: do not
/// apply it again. The map speeds are for strength design: their load factor is 1.0.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The metric form of the formulas is used, which rounds 33 ft to 10 m. The mean
/// speed contains √K_zt, as the gust speed does, which the standard leaves out of its gust factor: vortices, galloping, comfort
/// and gusts meet the wind that blows on the hill. Source: ASCE/SEI 7-16 and 7-22, 26.5 to 26.11.
/// </remarks>
public sealed record AsceWind : WindProfile
{
    /// <summary>Edition of the standard.</summary>
    public required AsceEdition Edition { get; init; }

    /// <summary>Basic wind speed V: the 3-second gust at 33 ft over exposure C, from the map of the risk category; 10 to 130 m/s.</summary>
    public required Speed BasicSpeed { get; init; }

    /// <summary>Exposure B, C or D.</summary>
    public required AsceExposure Exposure { get; init; }

    /// <summary>
    /// Topographic factor K_zt for all heights, at least 1; null takes 1, or that of <see cref="Orography"/>. Give the greatest
    /// over the height.
    /// </summary>
    public double? TopographicFactor { get; init; }

    /// <summary>The rise the statue stands on, for K_zt by height (26.8); null takes flat ground. Not with <see cref="TopographicFactor"/>.</summary>
    public Orography? Orography { get; init; }

    /// <summary>
    /// Wind directionality factor K_d, from 0.8 to 1; null takes 1, which makes no reduction. Table 26.6-1 has 0.85 for
    /// buildings, and for chimneys, tanks and similar structures 0.90 when square, 0.95 or 1.0 when round.
    /// </summary>
    public double? DirectionalityFactor { get; init; }

    /// <summary>Elevation of the ground above sea level, for K_e; null takes K_e = 1, which is safe above the sea.</summary>
    public Length? GroundElevation { get; init; }

    /// <inheritdoc/>
    public override string Name => Invariant($"{EditionSource("").Document}, {BasicSpeed.MetersPerSecond:g4} m/s, exposure {Exposure}");

    /// <inheritdoc/>
    public override Source Source => EditionSource("26.10 (26.10-1)");

    /// <inheritdoc/>
    public override IReadOnlyList<Assumption> Assumptions => [.. Defaults()];

    /// <summary>Ground elevation factor K_e = exp(−0.000119 z_e), z_e in meters (Table 26.9-1).</summary>
    public double ElevationFactor => Math.Exp(-0.000119 * (GroundElevation?.Meters ?? 0));

    /// <summary>Velocity pressure exposure coefficient K_z = 2.01 (z/z_g)^(2/α), in the 2022 edition 2.41 (z/z_g)^(2/α).</summary>
    /// <param name="heightAboveGround">Height above ground; below 15 ft the value at 15 ft holds.</param>
    /// <exception cref="ArgumentOutOfRangeException">The exposure or the edition is unknown.</exception>
    public double ExposureCoefficient(Length heightAboveGround) =>
        Constants.Kz(heightAboveGround.Meters);

    /// <summary>Topographic factor K_zt = (1 + K₁K₂K₃)² of the rise, or the one given (26.8).</summary>
    /// <param name="heightAboveGround">Height above the ground of the site.</param>
    /// <exception cref="ArgumentOutOfRangeException">The height is not from 0 to 2000 m, or the exposure is unknown.</exception>
    public double TopographicFactorAt(Length heightAboveGround) => KztSi(Checked(heightAboveGround));

    private double KztSi(double z) => TopographicFactor ?? (Orography is { } rise ? AsceTopography.Factor(rise, Exposure, z) : 1);

    internal AsceTerrain Constants => AsceTerrain.Of(Edition, Exposure);

    internal override double AveragingTimeSi => 3600;

    internal override string SpeedsInWords => "Mean speeds are over an hour; gust speeds are over 3 seconds.";

    internal override IEnumerable<string> SpeedWarnings
    {
        get
        {
            if (DirectionalityFactor is { } kd and < 1)
                yield return Invariant($"The gust values contain the directionality factor {kd:0.00}, which is for design: in a gust of the speed shown they may be 1/{kd:0.00} times as great.");
        }
    }

    internal override bool IsForStrength => true;

    internal override LatticeRule LatticeRule => LatticeRule.Asce7;

    internal override (double Value, Source Source) RigidGustFactor => (0.85, EditionSource("26.11.1, rigid structures"));

    internal override double LoadOfMean => DirectionalityInUse;

    internal override Source SpectrumSource => Source.Asce7_22("26.11 (26.11-13), shape");

    private protected override double DefaultDensity => 1.226 * ElevationFactor;

    private double DirectionalityInUse => DirectionalityFactor ?? 1;

    internal override double PeakPressureSi(double z)
    {
        double gust = GustSpeedSi(z);
        return DirectionalityInUse * 0.5 * Rho * gust * gust;
    }

    internal override double GustSpeedSi(double z) =>
        BasicSpeed.MetersPerSecond * Math.Sqrt(Constants.Kz(z) * KztSi(z));

    internal override double MeanSpeedSi(double z) => BasicSpeed.MetersPerSecond * Constants.MeanRatio(z) * Math.Sqrt(KztSi(z));

    internal override double TurbulenceIntensitySi(double z) => Constants.Intensity(z);

    internal override double TurbulenceLengthScaleSi(double z) => Constants.LengthScale(z);

    internal override WindProfile AtSpeed(double factor) => this with { BasicSpeed = factor * BasicSpeed };

    internal override IEnumerable<string> RangeWarnings(double greatestHeight)
    {
        if (greatestHeight > Constants.Gradient)
            yield return Invariant($"{EditionSource("Table 26.10-1")}: the top is {greatestHeight:g4} m above ground, above the gradient height of {Constants.Gradient:g4} m; the pressure is held constant there.");
    }

    internal Source EditionSource(string place) =>
        Edition == AsceEdition.Asce7_16 ? Source.Asce7_16(place) : Source.Asce7_22(place);

    private IEnumerable<Assumption> Defaults()
    {
        if (DirectionalityFactor is null)
            yield return new Assumption("wind directionality factor K_d", "1.0, no reduction; the table has 0.85 to 1.0 by kind of structure", EditionSource("Table 26.6-1"));
        if (TopographicFactor is null && Orography is null)
            yield return new Assumption("topographic factor K_zt", "1.0 (flat ground)", EditionSource("26.8"));
        if (AirDensity is null && GroundElevation is null)
            yield return new Assumption("ground elevation factor K_e", "1.0 (sea level)", EditionSource("26.9"));
        if (AirDensity is null)
            yield return new Assumption("density of air", "1.226 kg/m³ at sea level", EditionSource("26.10 (26.10-1.si)"));
    }

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.Defined(Edition);
        v.Positive(BasicSpeed, BasicSpeed.MetersPerSecond, 10, 130);
        v.Defined(Exposure);
        if (TopographicFactor is { } kzt)
            v.InRange(kzt, 1, 4, "1.0 on flat ground.", nameof(TopographicFactor));
        if (TopographicFactor is not null && Orography is not null)
            v.Add(nameof(Orography), "must not be given together with TopographicFactor", "The rise gives K_zt by height; leave out one of them.");
        Orography?.Validate(v.At(nameof(Orography)));
        if (DirectionalityFactor is { } kd)
            v.InRange(kd, 0.8, 1, "See Table 26.6-1.", nameof(DirectionalityFactor));
        if (GroundElevation is { } ze)
            v.Within(ze, ze.Meters, -500, 6000, nameof(GroundElevation));
        if (GroundElevation is not null && AirDensity is not null)
            v.Add(nameof(GroundElevation), "must not be given together with AirDensity", "Both set the density of the air; leave out one of them.");
    }
}
