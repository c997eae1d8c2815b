namespace StatueFrame;

/// <summary>
/// Terrain exposure constants of ASCE/SEI 7, Table 26.11-1, in SI units, with the factor in front of K_z that the edition
/// goes with.
/// </summary>
/// <param name="KzTop">K_z at and above the gradient height.</param>
/// <param name="Alpha">Exponent α of the gust profile.</param>
/// <param name="Gradient">Gradient height z_g, m.</param>
/// <param name="BBar">Mean hourly over basic speed at 10 m, b̄.</param>
/// <param name="AlphaBar">Exponent ᾱ of the mean hourly profile.</param>
/// <param name="C">Turbulence intensity at 10 m, c.</param>
/// <param name="Scale">Length scale of turbulence at 10 m, l, m.</param>
/// <param name="Epsilon">Exponent ε̄ of the length scale.</param>
/// <param name="ZMin">Least equivalent height z_min, m.</param>
internal readonly record struct AsceTerrain(
    double KzTop, double Alpha, double Gradient, double BBar, double AlphaBar, double C, double Scale, double Epsilon, double ZMin)
{
    private const double Foot = 0.3048;

    public static AsceTerrain Of(AsceEdition edition, AsceExposure exposure) => (edition, exposure) switch
    {
        (AsceEdition.Asce7_16, AsceExposure.B) => new(2.01, 7.0, 1200 * Foot, 0.45, 1 / 4.0, 0.30, 97.54, 1 / 3.0, 30 * Foot),
        (AsceEdition.Asce7_16, AsceExposure.C) => new(2.01, 9.5, 900 * Foot, 0.65, 1 / 6.5, 0.20, 152.4, 1 / 5.0, 15 * Foot),
        (AsceEdition.Asce7_16, AsceExposure.D) => new(2.01, 11.5, 700 * Foot, 0.80, 1 / 9.0, 0.15, 198.12, 1 / 8.0, 7 * Foot),
        (AsceEdition.Asce7_22, AsceExposure.B) => new(2.41, 7.5, 3280 * Foot, 0.47, 1 / 4.5, 0.30, 97.54, 1 / 3.0, 30 * Foot),
        (AsceEdition.Asce7_22, AsceExposure.C) => new(2.41, 9.8, 2460 * Foot, 0.66, 1 / 6.4, 0.20, 152.4, 1 / 5.0, 15 * Foot),
        (AsceEdition.Asce7_22, AsceExposure.D) => new(2.41, 11.5, 1935 * Foot, 0.78, 1 / 8.0, 0.15, 198.12, 1 / 8.0, 7 * Foot),
        _ => throw new ArgumentOutOfRangeException(nameof(exposure)),
    };

    /// <summary>Velocity pressure exposure coefficient K_z; constant below 15 ft and above the gradient height.</summary>
    public double Kz(double z) => KzTop * Math.Pow(Math.Clamp(z, 15 * Foot, Gradient) / Gradient, 2 / Alpha);

    /// <summary>Mean hourly speed at height z over the basic speed, (26.11-16).</summary>
    public double MeanRatio(double z) => BBar * Math.Pow(Math.Max(z, ZMin) / 10, AlphaBar);

    /// <summary>Turbulence intensity I_z, (26.11-7).</summary>
    public double Intensity(double z) => C * Math.Pow(10 / Math.Max(z, ZMin), 1 / 6.0);

    /// <summary>Integral length scale L_z, m, (26.11-9).</summary>
    public double LengthScale(double z) => Scale * Math.Pow(Math.Max(z, ZMin) / 10, Epsilon);
}
