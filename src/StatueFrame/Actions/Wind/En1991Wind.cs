using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Wind by EN 1991-1-4: from the fundamental basic wind velocity of the map and the terrain category to the mean velocity
/// v_m(z) = c_r c_o v_b, the turbulence intensity I_v(z) = k_I / (c_o ln(z/z₀)), and the peak velocity pressure
/// q_p(z) = (1 + 7 I_v) ½ρv_m² that forces are worked out from, on each band with z_e at its highest point. Recommended values; a national annex may differ.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Valid up to 200 m above ground. Source: EN 1991-1-4:2005, 4.2 to 4.5, 7.6 (3) (reference height, from memory),
/// A.3 and B.1.
/// </remarks>
public sealed record En1991Wind : WindProfile
{
    /// <summary>
    /// Fundamental basic wind velocity v_b,0: the 10-minute mean at 10 m over terrain II with a yearly probability of 0.02,
    /// from the national map. A characteristic value: the wind's partial factor is still to be applied. 5 to 100 m/s.
    /// </summary>
    public required Speed FundamentalVelocity { get; init; }

    /// <summary>Terrain category.</summary>
    public required TerrainCategory Terrain { get; init; }

    /// <summary>Directional factor c_dir, 0.3 to 1.5; null takes 1.</summary>
    public double? DirectionFactor { get; init; }

    /// <summary>Season factor c_season, 0.3 to 1.5; null takes 1.</summary>
    public double? SeasonFactor { get; init; }

    /// <summary>Turbulence factor k_I, 0.3 to 2; null takes 1.</summary>
    public double? TurbulenceFactor { get; init; }

    /// <summary>Orography factor c_o, the same at all heights, 0.5 to 2.5; null takes <see cref="Orography"/>, and 1 without that.</summary>
    public double? OrographyFactor { get; init; }

    /// <summary>The rise of the ground from which c_o(z) is worked out; not together with <see cref="OrographyFactor"/>.</summary>
    public Orography? Orography { get; init; }

    /// <summary>
    /// A building more than twice as tall as what stands round the statue, which turns the wind down on it (A.4): the wind of z_n then blows
    /// at all heights below z_n. Null for none.
    /// </summary>
    public TallNeighbor? Neighbor { get; init; }

    /// <summary>Smoother ground not far upwind, whose wind still blows here (A.2); null for none.</summary>
    public SmootherTerrain? Upwind { get; init; }

    /// <summary>Buildings close together all round, in terrain IV, that lift the wind's profile (A.5); null for none.</summary>
    public CloseBuildings? Buildings { get; init; }

    /// <inheritdoc/>
    public override string Name => Invariant($"EN 1991-1-4, {FundamentalVelocity.MetersPerSecond:g4} m/s, terrain {(Terrain == TerrainCategory.Zero ? "0" : Terrain.ToString())}");

    /// <inheritdoc/>
    public override Source Source => Source.En1991_1_4("4.2 to 4.5");

    /// <summary>Basic wind velocity v_b = c_dir c_season v_b,0, (4.1).</summary>
    public Speed BasicVelocity => Speed.FromMetersPerSecond(BasicVelocitySi);

    /// <inheritdoc/>
    public override IReadOnlyList<Assumption> Assumptions => [.. Defaults()];

    internal override string SpeedsInWords => "Mean speeds are over 10 minutes; gust speeds are those of the peak pressure.";

    internal override bool IsCharacteristic => true;

    internal override bool IsReadAtTop => true;

    internal override Assumption? StructuralFactorAssumption => null;

    private protected override double DefaultDensity => 1.25;

    private double BasicVelocitySi => (DirectionFactor ?? 1) * (SeasonFactor ?? 1) * FundamentalVelocity.MetersPerSecond;

    /// <summary>Exposure factor c_e(z) = q_p(z) / (½ρv_b²), (4.9).</summary>
    /// <inheritdoc cref="WindProfile.MeanSpeed"/>
    public double ExposureFactor(Length heightAboveGround)
    {
        double vb = BasicVelocitySi;
        return PeakPressure(heightAboveGround).Pascals / (0.5 * Rho * vb * vb);
    }

    /// <summary>Power spectral density of the gusts, non-dimensional: S_L = n S_v / σ_v², (B.2).</summary>
    /// <param name="heightAboveGround">Height above ground, zero or more.</param>
    /// <param name="frequency">Frequency n, greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    /// <exception cref="InvalidStatueException">The profile is not valid.</exception>
    public double PowerSpectralDensity(Length heightAboveGround, Frequency frequency)
    {
        double n = GustInput.Positive(frequency.Hertz, 1000, nameof(frequency));
        return En1991StructuralFactor.Spectrum(n * TurbulenceLengthScale(heightAboveGround).Meters / MeanSpeed(heightAboveGround).MetersPerSecond);
    }

    internal override double MeanSpeedSi(double z)
    {
        (double z0, double zMin) = Roughness(TerrainInUse);
        double kr = 0.19 * Math.Pow(z0 / 0.05, 0.07), met = Met(z);
        return kr * Math.Log(Math.Max(met, zMin) / z0) * OrographyFactorSi(met) * BasicVelocitySi;
    }

    internal override double TurbulenceIntensitySi(double z)
    {
        (double z0, double zMin) = Roughness(TerrainInUse);
        double reached = Math.Max(Met(z), zMin);
        return (TurbulenceFactor ?? 1) / (OrographyFactorSi(reached) * Math.Log(reached / z0));
    }

    internal override double PeakPressureSi(double z)
    {
        double vm = MeanSpeedSi(z);
        return (1 + 7 * TurbulenceIntensitySi(z)) * 0.5 * Rho * vm * vm;
    }

    internal override double TurbulenceLengthScaleSi(double z)
    {
        (double z0, double zMin) = Roughness(TerrainInUse);
        return LengthScale(Math.Max(Met(z), zMin), z0);
    }

    /// <summary>The height whose wind is met at a height.</summary>
    private double Met(double z) => Math.Max(Math.Max(0, z - (Buildings?.DisplacementSi ?? 0)), Neighbor?.ReferenceHeightSi ?? 0);

    private TerrainCategory TerrainInUse => Upwind is { Reaches: true } smoother ? smoother.Terrain : Terrain;

    internal double OrographyFactorSi(double z) => OrographyFactor ?? Orography?.FactorSi(z) ?? 1;

    /// <summary>Turbulent length scale L(z) = 300 (z/200)^(0.67 + 0.05 ln z₀), in meters, (B.1).</summary>
    internal static double LengthScale(double z, double z0) => 300 * Math.Pow(z / 200, 0.67 + 0.05 * Math.Log(z0));

    /// <summary>Roughness length and minimum height, in meters, Table 4.1.</summary>
    internal static (double Z0, double ZMin) Roughness(TerrainCategory terrain) => terrain switch
    {
        TerrainCategory.Zero => (0.003, 1),
        TerrainCategory.I => (0.01, 1),
        TerrainCategory.II => (0.05, 2),
        TerrainCategory.III => (0.3, 5),
        TerrainCategory.IV => (1.0, 10),
        _ => throw new ArgumentOutOfRangeException(nameof(terrain)),
    };

    internal override WindProfile AtSpeed(double factor) => this with { FundamentalVelocity = factor * FundamentalVelocity };

    internal override IEnumerable<string> RangeWarnings(double greatestHeight)
    {
        if (greatestHeight > 200)
            yield return Invariant($"EN 1991-1-4, 1.1(2): the top is {greatestHeight:g4} m above ground; the standard ends at 200 m.");
        if (Buildings is { StatueHeight.Meters: var said } && said > 1.01 * greatestHeight)
            yield return Invariant($"EN 1991-1-4, A.5: the buildings close by shelter a statue of {said:g4} m; this one is {greatestHeight:g4} m high, and its wind is too mild.");
    }

    private IEnumerable<Assumption> Defaults()
    {
        if (AirDensity is null)
            yield return new Assumption("density of air", "1.25 kg/m³", Source.En1991_1_4("4.5(1) note 2"));
        if (DirectionFactor is null)
            yield return new Assumption("directional factor c_dir", "1.0", Source.En1991_1_4("4.2(2) note 2"));
        if (SeasonFactor is null)
            yield return new Assumption("season factor c_season", "1.0", Source.En1991_1_4("4.2(2) note 3"));
        if (TurbulenceFactor is null)
            yield return new Assumption("turbulence factor k_I", "1.0", Source.En1991_1_4("4.4(1) note 2"));
        if (OrographyFactor is null && Orography is null)
            yield return new Assumption("orography factor c_o", "1.0 (flat ground)", Source.En1991_1_4("4.3.1(1) note 1"));
        if (Neighbor is null || Upwind is null)
        {
            string[] taken = [.. Upwind is null ? ["the terrain's own all round"] : Array.Empty<string>(), .. Neighbor is null ? ["no building near that is far taller"] : Array.Empty<string>()];
            yield return new Assumption("surroundings", string.Join(", ", taken), Source.En1991_1_4("4.3.4 (1), A.2 and A.4"));
        }
    }

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.Positive(FundamentalVelocity, FundamentalVelocity.MetersPerSecond, 5, 100);
        v.Defined(Terrain);
        Factor(DirectionFactor, 0.3, 1.5, nameof(DirectionFactor));
        Factor(SeasonFactor, 0.3, 1.5, nameof(SeasonFactor));
        Factor(TurbulenceFactor, 0.3, 2, nameof(TurbulenceFactor));
        Factor(OrographyFactor, 0.5, 2.5, nameof(OrographyFactor));
        Orography?.Validate(v.At(nameof(Orography)));
        Neighbor?.Validate(v.At(nameof(Neighbor)));
        Upwind?.Validate(v.At(nameof(Upwind)), Terrain);
        Buildings?.Validate(v.At(nameof(Buildings)));
        if (Buildings is not null && TerrainInUse != TerrainCategory.IV)
            v.Add(nameof(Buildings), $"must not be given in terrain {TerrainInUse}", "They lift the wind in terrain IV alone.");
        if (OrographyFactor is not null && Orography is not null)
            v.Add(nameof(OrographyFactor), "must not be given together with Orography", "Leave out one of them.");

        void Factor(double? value, double least, double most, string member)
        {
            if (value is { } factor)
                v.InRange(factor, least, most, "1.0 is usual.", member);
        }
    }
}
