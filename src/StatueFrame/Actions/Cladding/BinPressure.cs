using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Pressure on a stout round body that stands on the ground, as a bin, silo or tank does: the series
/// C(α) = −0.5 + 0.4 cos α + 0.8 cos 2α + 0.3 cos 3α − 0.1 cos 4α − 0.05 cos 5α, times
/// 1 − 0.55 (C + 0.15) log₁₀(h/b) where C is below −0.15.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. For heights of 0.25 to 4 diameters. Source: AS/NZS 1170.2:2002, bins,
/// silos and tanks, after P. A. Macdonald, K. C. S. Kwok and J. D. Holmes, J. Wind Eng. Ind. Aerodyn. 31, 1988;
/// ASCE/SEI 7 has the same series for components of circular bins.
/// </remarks>
public sealed record BinPressure : ExternalPressure
{
    /// <summary>Diameter b, 0.05 to 100 m.</summary>
    public required Length Diameter { get; init; }

    /// <summary>Height h, 0.05 to 1000 m.</summary>
    public required Length Height { get; init; }

    /// <inheritdoc/>
    public override string Name => Invariant($"bin, {Diameter.Meters:g4} m across, {Height.Meters:g4} m high");

    /// <inheritdoc/>
    public override Source Source => new("AS/NZS 1170.2:2002", "bins, silos and tanks");

    internal override double At(double alpha, double area, double gust)
    {
        double c = Series(alpha);
        return c >= -0.15 ? c : c * (1 - 0.55 * (c + 0.15) * Math.Log10(Height.Meters / Diameter.Meters));
    }

    /// <summary>The coefficient of a bin as high as wide.</summary>
    internal static double Series(double alpha) =>
        -0.5 + 0.4 * Math.Cos(alpha) + 0.8 * Math.Cos(2 * alpha) + 0.3 * Math.Cos(3 * alpha) - 0.1 * Math.Cos(4 * alpha) - 0.05 * Math.Cos(5 * alpha);

    internal override IEnumerable<string> RangeWarnings(double gust)
    {
        double slenderness = Height.Meters / Diameter.Meters;
        if (slenderness is < 0.25 or > 4)
            yield return Invariant($"AS/NZS 1170.2, bins, silos and tanks: height over diameter is {slenderness:g3}, outside 0.25 to 4.");
    }

    internal override void Validate(Validator v)
    {
        v.Positive(Diameter, Diameter.Meters, 0.05, 100);
        v.Positive(Height, Height.Meters, 0.05, 1000);
    }
}
