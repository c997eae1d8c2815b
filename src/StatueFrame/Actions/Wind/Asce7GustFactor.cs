using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Gust-effect factor of ASCE/SEI 7 with its parts. It turns the pressure of a 3-second gust into the load of a whole
/// structure: gusts do not strike it all at once (Q), and a flexible one (below 1 Hz) answers by swaying (R).
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Both factors are for a structure that stands on the ground; with a
/// pedestal, h is the height of the top above ground. Source: ASCE/SEI 7-16 and 7-22, 26.11.4 and 26.11.5.
/// </remarks>
public sealed record Asce7GustFactor
{
    private const double gQ = 3.4, gV = 3.4;

    private Asce7GustFactor() { }

    /// <summary>Equivalent height z̄ = 0.6 h, at least z_min.</summary>
    public Length EquivalentHeight { get; private init; }

    /// <summary>Turbulence intensity I_z at z̄, (26.11-7).</summary>
    public double TurbulenceIntensity { get; private init; }

    /// <summary>Integral length scale of turbulence L_z at z̄, (26.11-9).</summary>
    public Length LengthScale { get; private init; }

    /// <summary>Mean hourly speed V̄_z at z̄, (26.11-16).</summary>
    public Speed MeanSpeed { get; private init; }

    /// <summary>Background response Q, (26.11-8).</summary>
    public double BackgroundResponse { get; private init; }

    /// <summary>Reduced frequency N₁ = n₁ L_z / V̄_z, (26.11-14); 0 when rigid.</summary>
    public double ReducedFrequency { get; private init; }

    /// <summary>R_n, (26.11-13); 0 when rigid.</summary>
    public double SpectrumFactor { get; private init; }

    /// <summary>R_h, for the height, (26.11-15); 1 when rigid.</summary>
    public double HeightFactor { get; private init; } = 1;

    /// <summary>R_B, for the width across the wind; 1 when rigid.</summary>
    public double WidthFactor { get; private init; } = 1;

    /// <summary>R_L, for the depth along the wind; 1 when rigid.</summary>
    public double DepthFactor { get; private init; } = 1;

    /// <summary>Resonant response R, (26.11-12); 0 when rigid.</summary>
    public double ResonantResponse { get; private init; }

    /// <summary>Peak factor of the resonant response g_R, (26.11-11); 0 when rigid.</summary>
    public double ResonantPeakFactor { get; private init; }

    /// <summary>The gust-effect factor: G (26.11-6) of a rigid structure, G_f (26.11-10) of a flexible one.</summary>
    public double Factor =>
        0.925 * (1 + 1.7 * TurbulenceIntensity * double.Hypot(gQ * BackgroundResponse, ResonantPeakFactor * ResonantResponse))
        / (1 + 1.7 * gV * TurbulenceIntensity);

    /// <summary>The gust-effect factor G of a rigid structure: lowest natural frequency of 1 Hz or more.</summary>
    /// <param name="wind">The wind.</param>
    /// <param name="height">Height h of the top above ground.</param>
    /// <param name="width">Width B across the wind.</param>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is not greater than zero, or beyond 2000 m.</exception>
    /// <exception cref="InvalidStatueException">The wind is not valid.</exception>
    public static Asce7GustFactor Rigid(AsceWind wind, Length height, Length width)
    {
        GustInput.Valid(wind);
        return Rigid(wind, GustInput.Positive(height.Meters, 2000, nameof(height)), GustInput.Positive(width.Meters, 2000, nameof(width)));
    }

    /// <summary>The gust-effect factor G_f of a flexible structure: lowest natural frequency below 1 Hz.</summary>
    /// <param name="wind">The wind.</param>
    /// <param name="height">Height h of the top above ground, above 0 to 2000 m.</param>
    /// <param name="width">Width B across the wind, above 0 to 2000 m.</param>
    /// <param name="depth">Depth L along the wind, above 0 to 2000 m.</param>
    /// <param name="frequency">Lowest natural frequency n₁ of swaying along the wind, 0.01 to 1000 Hz.</param>
    /// <param name="dampingRatio">Damping ratio β, as in 0.01, above 0 to 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    /// <exception cref="InvalidStatueException">The wind is not valid.</exception>
    public static Asce7GustFactor Flexible(AsceWind wind, Length height, Length width, Length depth, Frequency frequency, double dampingRatio)
    {
        GustInput.Valid(wind);
        ArgumentOutOfRangeException.ThrowIfLessThan(frequency.Hertz, 0.01, nameof(frequency));
        return Flexible(
            wind,
            GustInput.Positive(height.Meters, 2000, nameof(height)),
            GustInput.Positive(width.Meters, 2000, nameof(width)),
            GustInput.Positive(depth.Meters, 2000, nameof(depth)),
            GustInput.Positive(frequency.Hertz, 1000, nameof(frequency)),
            GustInput.Positive(dampingRatio, 0.5, nameof(dampingRatio)));
    }

    internal static Asce7GustFactor Rigid(AsceWind wind, double h, double B)
    {
        AsceTerrain terrain = wind.Constants;
        double z = Math.Max(0.6 * h, terrain.ZMin);
        double Lz = terrain.LengthScale(z);
        return new Asce7GustFactor
        {
            EquivalentHeight = Length.FromMeters(z),
            TurbulenceIntensity = terrain.Intensity(z),
            LengthScale = Length.FromMeters(Lz),
            MeanSpeed = Speed.FromMetersPerSecond(wind.MeanSpeedSi(z)),
            BackgroundResponse = Math.Sqrt(1 / (1 + 0.63 * Math.Pow((B + h) / Lz, 0.63))),
        };
    }

    internal static Asce7GustFactor Flexible(AsceWind wind, double h, double B, double L, double n1, double beta)
    {
        Asce7GustFactor rigid = Rigid(wind, h, B);
        double V = rigid.MeanSpeed.MetersPerSecond;
        double N1 = n1 * rigid.LengthScale.Meters / V;
        double Rn = 7.47 * N1 / Math.Pow(1 + 10.3 * N1, 5.0 / 3);
        double Rh = GustInput.Admittance(4.6 * n1 * h / V);
        double RB = GustInput.Admittance(4.6 * n1 * B / V);
        double RL = GustInput.Admittance(15.4 * n1 * L / V);
        double peak = Math.Sqrt(2 * Math.Log(3600 * n1));
        return rigid with
        {
            ReducedFrequency = N1,
            SpectrumFactor = Rn,
            HeightFactor = Rh,
            WidthFactor = RB,
            DepthFactor = RL,
            ResonantResponse = Math.Sqrt(Rn * Rh * RB * (0.53 + 0.47 * RL) / beta),
            ResonantPeakFactor = peak + 0.577 / peak,
        };
    }
}
