using UnitsNet;

namespace StatueFrame;

/// <summary>
/// What a metal loses in its first year, from the air: r = a P_d^p exp(h RH + f) + c S_d^s exp(k RH + m T), in µm, with T in °C, RH in
/// %, the depositions in mg/(m²·d), and f = g (T − 10) with one g up to 10 °C and another above.
/// </summary>
/// <remarks>
/// Source: ISO 9223:2012, equations (1) to (4), coefficients from memory; those of carbon steel agree with a public
/// implementation. The estimate is uncertain by a factor of about 1.5 either way. Stateless; safe to use from many threads.
/// </remarks>
internal static class DoseResponse
{
    private sealed record Coefficients(double A, double P, double H, double Cold, double Warm, double C, double S, double K, double M);

    private static readonly Coefficients carbonSteel = new(1.77, 0.52, 0.020, 0.150, -0.054, 0.102, 0.62, 0.033, 0.040);
    private static readonly Coefficients zinc = new(0.0129, 0.44, 0.046, 0.038, -0.071, 0.0175, 0.57, 0.008, 0.085);
    private static readonly Coefficients copper = new(0.0053, 0.26, 0.059, 0.126, -0.080, 0.01025, 0.27, 0.036, 0.049);
    private static readonly Coefficients aluminum = new(0.0042, 0.73, 0.025, 0.009, -0.043, 0.0018, 0.60, 0.020, 0.094);

    internal static readonly Source Source = new("ISO 9223:2012", "equations (1) to (4), from memory");

    /// <summary>
    /// The first year's loss; null for metals without a function (stainless steel, lead). Iron counts as carbon steel,
    /// bronze and brass as copper.
    /// </summary>
    /// <param name="metal">The metal.</param>
    /// <param name="air">The air.</param>
    /// <exception cref="InvalidStatueException">The air has problems, all of which are listed.</exception>
    public static Length? FirstYear(MetalFamily metal, AirConditions air)
    {
        ArgumentNullException.ThrowIfNull(air);
        var v = new Validator();
        air.Validate(v);
        v.ThrowIfAny();
        return CorrosivityTable.Standard(metal) switch
        {
            null => null,
            MetalFamily.CarbonSteel => Of(carbonSteel, air),
            MetalFamily.Zinc => Of(zinc, air),
            MetalFamily.Copper => Of(copper, air),
            _ => Of(aluminum, air),
        };
    }

    private static Length Of(Coefficients c, AirConditions air)
    {
        double T = air.Celsius, RH = air.Percent, f = (T <= 10 ? c.Cold : c.Warm) * (T - 10);
        return Length.FromMicrometers(
            c.A * Math.Pow(air.Pd, c.P) * Math.Exp(c.H * RH + f) + c.C * Math.Pow(air.Sd, c.S) * Math.Exp(c.K * RH + c.M * T));
    }
}
