using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>Where a body is sliced, and how its outlines become stations.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SkinSlicing
{
    /// <summary>
    /// Heights of the stations along the body's axis, ascending; null for <see cref="Bands"/> even ones. Sheet beyond the
    /// ends counts with the bands there.
    /// </summary>
    public ValueList<Length>? Elevations { get; init; }

    /// <summary>Number of bands when <see cref="Elevations"/> gives none: 1 to 2000; 30 by default.</summary>
    public int Bands { get; init; } = 30;

    /// <summary>Vertices of each outline, at even steps round it: 8 to 1000; 96 by default.</summary>
    public int OutlinePoints { get; init; } = 96;

    /// <summary>What to do with several outlines in one slice.</summary>
    public SeveralOutlines Several { get; init; } = SeveralOutlines.Refuse;

    /// <summary>
    /// Narrowest outline, 0.05 to 10 m: even stations keep away from ends that are narrower; 0.1 m by default.
    /// </summary>
    public Length LeastWidth { get; init; } = Length.FromMeters(0.1);

    internal void Validate()
    {
        if (Elevations is { } z)
        {
            if (z.Count is < 2 or > 2001)
                throw new ArgumentException("Elevations must be 2 to 2001.");
            for (int i = 0; i < z.Count; i++)
            {
                if (!double.IsFinite(z[i].Meters) || (i > 0 && !(z[i].Meters - z[i - 1].Meters >= 1e-3)))
                    throw new ArgumentException("Elevations must ascend by at least 1 mm.");
            }
        }
        ArgumentOutOfRangeException.ThrowIfLessThan(Bands, 1, nameof(Bands));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(Bands, 2000, nameof(Bands));
        ArgumentOutOfRangeException.ThrowIfLessThan(OutlinePoints, 8, nameof(OutlinePoints));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(OutlinePoints, 1000, nameof(OutlinePoints));
        if (!Enum.IsDefined(Several))
            throw new ArgumentOutOfRangeException(nameof(Several));
        if (!(LeastWidth.Meters is >= 0.05 and <= 10))
            throw new ArgumentOutOfRangeException(nameof(LeastWidth), LeastWidth, "must be 0.05 to 10 m");
    }
}
