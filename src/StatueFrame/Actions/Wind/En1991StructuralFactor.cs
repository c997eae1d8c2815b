using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Structural factor c_s c_d of EN 1991-1-4 with its parts: c_s because peak pressures do not act all over the structure at
/// once, c_d because it sways in resonance with the gusts. By procedure 1 (Annex B) or procedure 2 (Annex C).
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. For structures like Figure 6.1 whose swaying along the wind in the first
/// mode, of one sign over the height, governs. Source: EN 1991-1-4:2005, 6.3.1, Annexes B and C.
/// </remarks>
public sealed record En1991StructuralFactor
{
    private const double AveragingTime = 600, LeastUpcrossing = 0.08;

    private En1991StructuralFactor() { }

    /// <summary>Mean velocity v_m at the reference height z_s.</summary>
    public Speed MeanSpeed { get; private init; }

    /// <summary>Turbulence intensity I_v at z_s.</summary>
    public double TurbulenceIntensity { get; private init; }

    /// <summary>Turbulent length scale L at z_s, (B.1).</summary>
    public Length LengthScale { get; private init; }

    /// <summary>Density of the air ρ.</summary>
    public Density AirDensity { get; private init; }

    /// <summary>Natural frequency n₁ of swaying along the wind.</summary>
    public Frequency Frequency { get; private init; }

    /// <summary>Total logarithmic decrement δ: structural, aerodynamic and of dampers, (F.15).</summary>
    public double LogDecrement { get; private init; }

    /// <summary>Non-dimensional frequency f_L = n₁ L / v_m.</summary>
    public double NonDimensionalFrequency { get; private init; }

    /// <summary>Non-dimensional power spectral density S_L at f_L, (B.2).</summary>
    public double SpectralDensity { get; private init; }

    /// <summary>Background factor B², (B.3) or (C.1).</summary>
    public double BackgroundFactor { get; private init; }

    /// <summary>Aerodynamic admittance R_h of the height, (B.7); null in procedure 2.</summary>
    public double? HeightAdmittance { get; private init; }

    /// <summary>Aerodynamic admittance R_b of the width, (B.8); null in procedure 2.</summary>
    public double? WidthAdmittance { get; private init; }

    /// <summary>Size reduction of the resonance: R_h R_b in procedure 1, K_s of (C.3) in procedure 2.</summary>
    public double SizeReduction { get; private init; }

    /// <summary>Mode factor of the accelerations: K_x of (B.11) in procedure 1, K_y K_z of Table C.1 in procedure 2.</summary>
    public double ModeFactor { get; private init; }

    private double GustPeakFactor { get; init; }

    /// <summary>Resonance response factor R², (B.6) or (C.2).</summary>
    public double ResonanceFactor => Math.PI * Math.PI / (2 * LogDecrement) * SpectralDensity * SizeReduction;

    /// <summary>Up-crossing frequency ν, at least 0.08 Hz, (B.5).</summary>
    public Frequency UpcrossingFrequency => Frequency.FromHertz(
        Math.Max(LeastUpcrossing, Frequency.Hertz * Math.Sqrt(ResonanceFactor / (BackgroundFactor + ResonanceFactor))));

    /// <summary>Peak factor k_p, at least 3, (B.4).</summary>
    public double PeakFactor => PeakFactorAt(UpcrossingFrequency.Hertz);

    /// <summary>Size factor c_s, (6.2).</summary>
    public double SizeFactor => BackgroundGust / FullGust;

    /// <summary>Dynamic factor c_d, (6.3).</summary>
    public double DynamicFactor => ResponseGust / BackgroundGust;

    /// <summary>Structural factor c_s c_d, (6.1).</summary>
    public double Factor => ResponseGust / FullGust;

    // Peak over mean: of the pressure, of the pressure averaged over the structure, and of the response. EN has g = 3.5.
    private double FullGust => 1 + 2 * GustPeakFactor * TurbulenceIntensity;

    private double BackgroundGust => 1 + 2 * GustPeakFactor * TurbulenceIntensity * Math.Sqrt(BackgroundFactor);

    private double ResponseGust => 1 + 2 * PeakFactor * TurbulenceIntensity * Math.Sqrt(BackgroundFactor + ResonanceFactor);

    /// <summary>c_s c_d by procedure 1, Annex B.</summary>
    /// <param name="wind">The wind.</param>
    /// <param name="height">Height h of the top above ground, above 0 to 2000 m.</param>
    /// <param name="width">Width b across the wind, above 0 to 2000 m.</param>
    /// <param name="referenceHeight">Reference height z_s of Figure 6.1, above ground; 0.6 h for a structure that stands on it.</param>
    /// <param name="frequency">Natural frequency n₁ of swaying along the wind, above 0 to 1000 Hz.</param>
    /// <param name="logDecrement">Total logarithmic decrement of damping δ, as in 0.05, above 0 to 3; 2π times the damping ratio.</param>
    /// <param name="modeExponent">Exponent ζ of the mode shape (z/h)^ζ, from 0 to 5; for accelerations only.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    /// <exception cref="InvalidStatueException">The wind is not valid.</exception>
    public static En1991StructuralFactor AnnexB(
        WindProfile wind, Length height, Length width, Length referenceHeight, Frequency frequency, double logDecrement, double modeExponent = 1)
    {
        Require(wind, height, width, referenceHeight, frequency, logDecrement, modeExponent);
        return AnnexB(wind, height.Meters, width.Meters, referenceHeight.Meters, frequency.Hertz, logDecrement, modeExponent);
    }

    /// <summary>c_s c_d by procedure 2, Annex C.</summary>
    /// <inheritdoc cref="AnnexB(WindProfile, Length, Length, Length, Frequency, double, double)" path="/*[self::exception or self::remarks]"/>
    /// <param name="wind">The wind.</param>
    /// <param name="height">Height h of the top above ground, above 0 to 2000 m.</param>
    /// <param name="width">Width b across the wind, above 0 to 2000 m.</param>
    /// <param name="referenceHeight">Reference height z_s of Figure 6.1, above ground; 0.6 h for a structure that stands on it.</param>
    /// <param name="frequency">Natural frequency n₁ of swaying along the wind, above 0 to 1000 Hz.</param>
    /// <param name="logDecrement">Total logarithmic decrement of damping δ, above 0 to 3.</param>
    /// <param name="modeExponent">
    /// Exponent ζ of the mode shape (z/h)^ζ, from 0 to 5. G_z = (2ζ+1)/(2(ζ+1)²) and K_z = (2ζ+1)/(ζ+1) are what Table C.1
    /// gives for ζ = 0, 1 and 2.
    /// </param>
    public static En1991StructuralFactor AnnexC(
        WindProfile wind, Length height, Length width, Length referenceHeight, Frequency frequency, double logDecrement, double modeExponent = 1)
    {
        Require(wind, height, width, referenceHeight, frequency, logDecrement, modeExponent);
        return AnnexC(wind, height.Meters, width.Meters, referenceHeight.Meters, frequency.Hertz, logDecrement, modeExponent);
    }

    /// <summary>Logarithmic decrement of aerodynamic damping δ_a = c_f ρ b v_m(z_s) / (2 n₁ m_e), (F.18).</summary>
    /// <param name="wind">The wind.</param>
    /// <param name="forceCoefficient">Force coefficient c_f along the wind, above 0 to 10.</param>
    /// <param name="width">Width b across the wind, above 0 to 2000 m.</param>
    /// <param name="referenceHeight">Reference height z_s above ground.</param>
    /// <param name="frequency">Natural frequency n₁, above 0 to 1000 Hz.</param>
    /// <param name="equivalentMass">Equivalent mass per length m_e, (F.14).</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    /// <exception cref="InvalidStatueException">The wind is not valid.</exception>
    public static double AerodynamicDecrement(
        WindProfile wind, double forceCoefficient, Length width, Length referenceHeight, Frequency frequency, LinearDensity equivalentMass)
    {
        GustInput.Valid(wind);
        return GustInput.Positive(forceCoefficient, 10, nameof(forceCoefficient)) * wind.Rho
            * GustInput.Positive(width.Meters, 2000, nameof(width))
            * wind.MeanSpeedSi(GustInput.Positive(referenceHeight.Meters, 2000, nameof(referenceHeight)))
            / (2 * GustInput.Positive(frequency.Hertz, 1000, nameof(frequency))
                * GustInput.Positive(equivalentMass.KilogramsPerMeter, 1e9, nameof(equivalentMass)));
    }

    /// <summary>
    /// Standard deviation of the acceleration along the wind, σ_a = c_f ρ b I_v v_m² R K_x Φ / m₁, (B.10).
    /// </summary>
    /// <param name="forceCoefficient">Force coefficient c_f along the wind, above 0 to 10.</param>
    /// <param name="width">Width b across the wind, above 0 to 2000 m.</param>
    /// <param name="equivalentMass">Equivalent mass per length m₁, (F.14).</param>
    /// <param name="modeOrdinate">Mode shape Φ at the place asked for, above 0 to 1; 1 where it is greatest.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public Acceleration AccelerationDeviation(double forceCoefficient, Length width, LinearDensity equivalentMass, double modeOrdinate = 1)
    {
        double v = MeanSpeed.MetersPerSecond;
        double force = GustInput.Positive(forceCoefficient, 10, nameof(forceCoefficient)) * AirDensity.KilogramsPerCubicMeter
            * GustInput.Positive(width.Meters, 2000, nameof(width)) * TurbulenceIntensity * v * v * Math.Sqrt(ResonanceFactor);
        return Acceleration.FromMetersPerSecondSquared(force * ModeFactor * GustInput.Positive(modeOrdinate, 1, nameof(modeOrdinate))
            / GustInput.Positive(equivalentMass.KilogramsPerMeter, 1e9, nameof(equivalentMass)));
    }

    /// <summary>Characteristic peak acceleration: the deviation times k_p at ν = n₁, B.4(4).</summary>
    /// <inheritdoc cref="AccelerationDeviation"/>
    public Acceleration PeakAcceleration(double forceCoefficient, Length width, LinearDensity equivalentMass, double modeOrdinate = 1) =>
        PeakFactorAt(Math.Max(LeastUpcrossing, Frequency.Hertz)) * AccelerationDeviation(forceCoefficient, width, equivalentMass, modeOrdinate);

    internal static En1991StructuralFactor AnnexB(WindProfile wind, double h, double b, double zs, double n1, double delta, double zeta)
    {
        double L = wind.TurbulenceLengthScaleSi(zs), fL = n1 * L / wind.MeanSpeedSi(zs);
        double Rh = GustInput.Admittance(4.6 * h / L * fL), Rb = GustInput.Admittance(4.6 * b / L * fL);
        double B2 = 1 / (1 + 0.9 * Math.Pow((b + h) / L, 0.63));
        return Create(wind, zs, n1, delta, B2, Rh * Rb, ModeFactorOf(wind, h, zs, zeta)) with { HeightAdmittance = Rh, WidthAdmittance = Rb };
    }

    internal static En1991StructuralFactor AnnexC(WindProfile wind, double h, double b, double zs, double n1, double delta, double zeta)
    {
        const double decay = 11.5;
        double L = wind.TurbulenceLengthScaleSi(zs), v = wind.MeanSpeedSi(zs);
        double B2 = 1 / (1 + 1.5 * Root(b / L, h / L, b * h / (L * L)));
        double y = 0.5 * decay * b * n1 / v;
        double z = (2 * zeta + 1) / (2 * (zeta + 1) * (zeta + 1)) * decay * h * n1 / v;
        double Ks = 1 / (1 + Root(y, z, 2 / Math.PI * y * z));
        return Create(wind, zs, n1, delta, B2, Ks, (2 * zeta + 1) / (zeta + 1));

        static double Root(double p, double q, double r) => Math.Sqrt(p * p + q * q + r * r);
    }

    /// <summary>The spectrum of gusts S_L(f_L) = 6.8 f_L / (1 + 10.2 f_L)^(5/3), (B.2).</summary>
    internal static double Spectrum(double fL) => 6.8 * fL / Math.Pow(1 + 10.2 * fL, 5.0 / 3);

    private static En1991StructuralFactor Create(WindProfile wind, double zs, double n1, double delta, double B2, double size, double mode)
    {
        double v = wind.MeanSpeedSi(zs), L = wind.TurbulenceLengthScaleSi(zs), fL = n1 * L / v;
        return new En1991StructuralFactor
        {
            MeanSpeed = Speed.FromMetersPerSecond(v),
            TurbulenceIntensity = wind.TurbulenceIntensitySi(zs),
            LengthScale = Length.FromMeters(L),
            AirDensity = Density.FromKilogramsPerCubicMeter(wind.Rho),
            Frequency = Frequency.FromHertz(n1),
            LogDecrement = delta,
            NonDimensionalFrequency = fL,
            SpectralDensity = Spectrum(fL),
            BackgroundFactor = B2,
            SizeReduction = size,
            ModeFactor = mode,
            GustPeakFactor = wind.GustPeakFactor,
        };
    }

    // K_x = ∫v_m²Φ dz / (v_m²(z_s) ∫Φ² dz), (B.11), by the midpoint rule; ∫Φ² is h/(2ζ+1).
    private static double ModeFactorOf(WindProfile wind, double h, double zs, double zeta)
    {
        const int steps = 64;
        double sum = 0;
        for (int i = 0; i < steps; i++)
        {
            double t = (i + 0.5) / steps;
            double v = wind.MeanSpeedSi(t * h);
            sum += v * v * Math.Pow(t, zeta);
        }
        double vs = wind.MeanSpeedSi(zs);
        return (2 * zeta + 1) * sum / (steps * vs * vs);
    }

    private static double PeakFactorAt(double upcrossing)
    {
        double root = Math.Sqrt(2 * Math.Log(upcrossing * AveragingTime));
        return Math.Max(3, root + 0.6 / root);
    }

    private static void Require(WindProfile wind, Length height, Length width, Length referenceHeight, Frequency frequency, double logDecrement, double modeExponent)
    {
        GustInput.Valid(wind);
        GustInput.Positive(height.Meters, 2000, nameof(height));
        GustInput.Positive(width.Meters, 2000, nameof(width));
        GustInput.Positive(referenceHeight.Meters, 2000, nameof(referenceHeight));
        GustInput.Positive(frequency.Hertz, 1000, nameof(frequency));
        GustInput.Positive(logDecrement, 3, nameof(logDecrement));
        if (!(modeExponent >= 0 && modeExponent <= 5))
            throw new ArgumentOutOfRangeException(nameof(modeExponent), Invariant($"Must be from 0 to 5, is {modeExponent}."));
    }
}
