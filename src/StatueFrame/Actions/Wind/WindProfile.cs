using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// The undisturbed wind over the height at a site: mean speed, turbulence, and the peak velocity pressure that loads are
/// worked out from. Heights are above the GROUND; the analysis adds the height of pedestal and ground itself.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The public methods take any height from zero up to 2000 m; they throw
/// <see cref="InvalidStatueException"/> when the profile itself is not valid.
/// </remarks>
public abstract record WindProfile
{
    internal WindProfile() { }

    /// <summary>The profile on one line, as in "EN 1991-1-4, 26 m/s, terrain II".</summary>
    public abstract string Name { get; }

    /// <summary>Where the shape of the profile comes from.</summary>
    public abstract Source Source { get; }

    /// <summary>Density of the air ρ, 0.5 to 1.6 kg/m³; null takes the profile's own default, which is then listed as an assumption.</summary>
    public Density? AirDensity { get; init; }

    /// <summary>Every value that the profile took for the user.</summary>
    public abstract IReadOnlyList<Assumption> Assumptions { get; }

    /// <summary>The density of the air in use: the one given, or the default.</summary>
    public Density AirDensityInUse => Density.FromKilogramsPerCubicMeter(Rho);

    /// <summary>Mean wind speed.</summary>
    /// <param name="heightAboveGround">Height above ground, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The height is negative, not finite, or above 2000 m.</exception>
    /// <exception cref="InvalidStatueException">The profile is not valid.</exception>
    public Speed MeanSpeed(Length heightAboveGround) => Speed.FromMetersPerSecond(MeanSpeedSi(Checked(heightAboveGround)));

    /// <summary>Turbulence intensity: the standard deviation of the speed along the wind over the mean speed.</summary>
    /// <inheritdoc cref="MeanSpeed"/>
    public double TurbulenceIntensity(Length heightAboveGround) => TurbulenceIntensitySi(Checked(heightAboveGround));

    /// <summary>Speed of the gust that loads the structure.</summary>
    /// <inheritdoc cref="MeanSpeed"/>
    public Speed GustSpeed(Length heightAboveGround) => Speed.FromMetersPerSecond(GustSpeedSi(Checked(heightAboveGround)));

    /// <summary>Peak velocity pressure for design: pressures and forces are this times a coefficient.</summary>
    /// <inheritdoc cref="MeanSpeed"/>
    public Pressure PeakPressure(Length heightAboveGround) => Pressure.FromPascals(PeakPressureSi(Checked(heightAboveGround)));

    /// <summary>Length scale of turbulence: the mean size of the gusts along the wind.</summary>
    /// <inheritdoc cref="MeanSpeed"/>
    public Length TurbulenceLengthScale(Length heightAboveGround) => Length.FromMeters(TurbulenceLengthScaleSi(Checked(heightAboveGround)));

    /// <summary>What is outside the range that the profile is meant for, one sentence each; empty when nothing is.</summary>
    /// <param name="greatestHeight">Height above ground of the top of the structure.</param>
    /// <exception cref="ArgumentOutOfRangeException">The height is negative, not finite, or above 2000 m.</exception>
    /// <exception cref="InvalidStatueException">The profile is not valid.</exception>
    public IReadOnlyList<string> RangeWarnings(Length greatestHeight) => [.. RangeWarnings(Checked(greatestHeight))];

    internal abstract double MeanSpeedSi(double z);

    internal abstract double TurbulenceIntensitySi(double z);

    internal abstract double PeakPressureSi(double z);

    internal abstract double TurbulenceLengthScaleSi(double z);

    internal virtual double GustSpeedSi(double z) => Math.Sqrt(2 * PeakPressureSi(z) / Rho);

    /// <summary>The same wind with all speeds multiplied by <paramref name="factor"/>; turbulence intensity stays.</summary>
    internal abstract WindProfile AtSpeed(double factor);

    internal abstract IEnumerable<string> RangeWarnings(double greatestHeight);

    /// <summary>Gusts per standard deviation, g: the peak pressure is (1 + 2 g I) times the mean one.</summary>
    internal virtual double GustPeakFactor => 3.5;

    /// <summary>Over which time the mean speed is taken, s.</summary>
    internal virtual double AveragingTimeSi => 600;

    /// <summary>What speeds mean, for whoever reads an anemometer.</summary>
    internal virtual string SpeedsInWords => "Mean and gust speeds are as the wind profile has them.";

    /// <summary>What must be known of this wind when its speeds are read backwards from what they do, one sentence each.</summary>
    internal virtual IEnumerable<string> SpeedWarnings => [];

    /// <summary>Whether its speeds are those of a design for strength, so that no load factor comes on top.</summary>
    internal virtual bool IsForStrength => false;

    /// <summary>Whether its speeds are characteristic, so that load factors must come on top.</summary>
    internal virtual bool IsCharacteristic => false;

    /// <summary>Whether the peak pressure on a part is that at its highest point, rather than at its middle.</summary>
    internal virtual bool IsReadAtTop => false;

    /// <summary>The rule for lattices in the open that goes with it.</summary>
    internal virtual LatticeRule LatticeRule => LatticeRule.En1993_3_1;

    /// <summary>The gust factor of a rigid structure.</summary>
    internal virtual (double Value, Source Source) RigidGustFactor =>
        (1.0, Source.En1991_1_4("6.2 (1): c_s c_d = 1 for structures that do not respond dynamically"));

    /// <summary>By what the load of its mean speed is multiplied besides.</summary>
    internal virtual double LoadOfMean => 1;

    /// <summary>The spectrum of its gusts comes from here.</summary>
    internal virtual Source SpectrumSource => Source.En1991_1_4("B.1 (B.2)");

    /// <summary>Why the structural factor of EN 1991-1-4 is only borrowed; null when it is of that standard.</summary>
    internal virtual Assumption? StructuralFactorAssumption =>
        new("structural factor for a wind that is not of EN 1991-1-4", "its annexes, with the mean speed, turbulence and peak factor of the given wind", Source.Assumed("gusts"));

    internal double Rho => AirDensity?.KilogramsPerCubicMeter ?? DefaultDensity;

    private protected abstract double DefaultDensity { get; }

    internal virtual void Validate(Validator v)
    {
        if (AirDensity is { } density)
            v.Positive(density, density.KilogramsPerCubicMeter, 0.5, 1.6, nameof(AirDensity));
    }

    /// <summary>The profile's name.</summary>
    public sealed override string ToString() => Name;

    private protected double Checked(Length height)
    {
        double z = height.Meters;
        if (!(z >= 0 && z <= 2000))
            throw new ArgumentOutOfRangeException(nameof(height), Invariant($"A height above ground must be from 0 to 2000 m, is {z} m."));
        var v = new Validator();
        Validate(v);
        v.ThrowIfAny();
        return z;
    }
}
