using UnitsNet;

namespace StatueFrame;

/// <summary>
/// How the loss of a face grows with the years from that of the first: D = r t^b up to 20 years, and from then on at the
/// rate of the twentieth, D = r (20^b + b 20^(b − 1) (t − 20)).
/// </summary>
/// <remarks>
/// Source: ISO 9224:2012, equations (1) to (3) and Table 3; the equation beyond 20 years from memory. Table 3 goes on with
/// t^b to 100 years, which is less. Stateless; safe to use from many threads.
/// </remarks>
public static class CorrosionLaw
{
    private const double Bend = 20;

    internal static readonly Source Source = new("ISO 9224:2012", "equations (1) to (3), Table 3");

    /// <summary>
    /// The exponent b of a metal: 0.523 of carbon steel, 0.667 of copper, 0.813 of zinc, 0.728 of aluminum, and upper values
    /// 0.575, 0.726, 0.873, 0.807. Iron counts as carbon steel, bronze and brass as copper. Null for others.
    /// </summary>
    /// <param name="metal">The metal.</param>
    /// <param name="exponent">The average or the upper value.</param>
    public static double? Exponent(MetalFamily metal, LossExponent exponent = LossExponent.Average)
    {
        bool upper = exponent == LossExponent.Upper;
        return CorrosivityTable.Standard(metal) switch
        {
            MetalFamily.CarbonSteel => upper ? 0.575 : 0.523,
            MetalFamily.Zinc => upper ? 0.873 : 0.813,
            MetalFamily.Copper => upper ? 0.726 : 0.667,
            MetalFamily.Aluminum => upper ? 0.807 : 0.728,
            _ => null,
        };
    }

    /// <summary>Loss after so many years over that of the first.</summary>
    /// <param name="years">Years of exposure, zero or more.</param>
    /// <param name="exponent">The exponent b, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double TimeFactor(double years, double exponent)
    {
        if (!(years >= 0 && double.IsFinite(years)))
            throw new ArgumentOutOfRangeException(nameof(years), years, "Years are zero or more, and finite.");
        if (!(exponent is >= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(exponent), exponent, "The exponent is from 0 to 1.");
        if (years == 0)
            return 0;
        double b = exponent;
        return years <= Bend ? Math.Pow(years, b) : Math.Pow(Bend, b) + b * Math.Pow(Bend, b - 1) * (years - Bend);
    }

    /// <summary>The loss of one face.</summary>
    /// <param name="firstYear">The loss of the first year, zero or more.</param>
    /// <param name="time">Time of exposure, zero or more, in years of 365 days.</param>
    /// <param name="exponent">The exponent b, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static Length Loss(Length firstYear, Duration time, double exponent)
    {
        if (!(firstYear.Meters >= 0 && double.IsFinite(firstYear.Meters)))
            throw new ArgumentOutOfRangeException(nameof(firstYear), firstYear, "A loss is zero or more, and finite.");
        return firstYear * TimeFactor(time.Years365, exponent);
    }
}
