using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A single rise of the ground that speeds up the wind. Under <see cref="AsceWind"/> it gives K_zt of ASCE/SEI 7, 26.8. Under
/// <see cref="En1991Wind"/> it speeds up the mean wind by the factor c_o(z) = 1 + 2 s Φ on a slope Φ from 0.05 to
/// 0.3, and 1 + 0.6 s on a steeper one; s is read at the place of the site, relative to the crest, and at the height
/// above the ground there. For one rise in otherwise flat terrain, and one direction of the wind.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1991-1-4:2005, A.3 (A.1 to A.14).</remarks>
public sealed record Orography
{
    /// <summary>Hill or escarpment.</summary>
    public required OrographyKind Kind { get; init; }

    /// <summary>Height H of the crest above the ground at the foot of the upwind slope.</summary>
    public required Length Height { get; init; }

    /// <summary>Horizontal length L_u of the upwind slope; the slope is Φ = H/L_u.</summary>
    public required Length UpwindLength { get; init; }

    /// <summary>Horizontal length L_d of the downwind slope; must be given for a hill when the site is downwind of the crest.</summary>
    public Length? DownwindLength { get; init; }

    /// <summary>Horizontal distance x of the site from the crest, positive downwind.</summary>
    public required Length DistanceFromCrest { get; init; }

    /// <summary>The orography factor c_o at a height z (m) above the ground of the site.</summary>
    internal double FactorSi(double z)
    {
        double slope = Height.Meters / UpwindLength.Meters;
        return slope < 0.05 ? 1
            : slope < 0.3 ? 1 + 2 * Location(z, slope) * slope
            : 1 + 0.6 * Location(z, slope);
    }

    /// <summary>The location factor s.</summary>
    private double Location(double z, double slope)
    {
        double effective = slope < 0.3 ? UpwindLength.Meters : Height.Meters / 0.3;
        double x = DistanceFromCrest.Meters;
        double r = z / effective;
        if (r > 2)
            return 0;
        if (x <= 0)
            return Upwind(x / UpwindLength.Meters, r);
        if (Kind == OrographyKind.CliffOrEscarpment)
            return BehindEscarpment(x / effective, r);
        double behind = x / DownwindLength!.Value.Meters;
        return behind > 2 ? 0 : Crest(r) * Math.Exp((-0.3056 * r * r + 1.0212 * r - 1.7637) * behind);
    }

    private static double Upwind(double x, double r) =>
        x < -1.5 ? 0 : Crest(r) * Math.Exp((0.3542 * r * r - 1.0577 * r + 2.6456) * x);

    private static double Crest(double r) =>
        (((0.1552 * r - 0.8575) * r + 1.8133) * r - 1.9115) * r + 1.0124;

    private static double BehindEscarpment(double x, double r) =>
        x > 3.5 ? 0
        : x < 0.1 ? double.Lerp(Crest(r), FarBehindEscarpment(0.1, r), x / 0.1)
        : FarBehindEscarpment(x, r);

    private static double FarBehindEscarpment(double x, double r)
    {
        double u = Math.Log10(x), w = Math.Log10(Math.Max(r, 0.1));
        double A = ((-1.3420 * w - 0.8222) * w + 0.4609) * w - 0.0791;
        double B = ((-1.0196 * w - 0.8910) * w + 0.5343) * w - 0.1156;
        double C = ((0.8030 * w + 0.4236) * w - 0.5738) * w + 0.1606;
        return Math.Max(0, (A * u + B) * u + C);
    }

    internal void Validate(Validator v)
    {
        v.Defined(Kind);
        v.Positive(Height, Height.Meters, 1, 3000);
        v.Positive(UpwindLength, UpwindLength.Meters, 1, 50_000);
        v.Within(DistanceFromCrest, DistanceFromCrest.Meters, -100_000, 100_000);
        if (DownwindLength is { } length)
            v.Positive(length, length.Meters, 1, 50_000, nameof(DownwindLength));
        else if (Kind == OrographyKind.HillOrRidge && DistanceFromCrest.Meters > 0)
            v.Add(nameof(DownwindLength), "must be given for a site downwind of the crest of a hill", "It is the horizontal length of the downwind slope.");
    }
}
