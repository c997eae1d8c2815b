using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Buildings that stand close together all round, in terrain IV: the wind goes over them, and its profile begins h_dis above the ground.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1991-1-4:2005, A.5 (A.15), from memory.</remarks>
public sealed record CloseBuildings
{
    /// <summary>Their average height h_ave; 15 m may be taken where nothing else is known.</summary>
    public required Length AverageHeight { get; init; }

    /// <summary>Distance x from the statue to those upwind; from six times their height on they do nothing.</summary>
    public required Length Distance { get; init; }

    /// <summary>Height of the statue with its pedestal above ground; what it stands in the lee of is at most six tenths of it.</summary>
    public required Length StatueHeight { get; init; }

    /// <summary>h_dis: min(0.8 h_ave, 0.6 h) up to 2 h_ave, min(1.2 h_ave − 0.2 x, 0.6 h) up to 6 h_ave, 0 beyond.</summary>
    public Length DisplacementHeight => Length.FromMeters(DisplacementSi);

    internal double DisplacementSi
    {
        get
        {
            double average = AverageHeight.Meters, x = Distance.Meters;
            return Math.Max(0, Math.Min(Math.Min(0.8 * average, 1.2 * average - 0.2 * x), 0.6 * StatueHeight.Meters));
        }
    }

    internal void Validate(Validator v)
    {
        v.Positive(AverageHeight, AverageHeight.Meters, 1, 200);
        v.Within(Distance, Distance.Meters, 0, 10_000);
        v.Positive(StatueHeight, StatueHeight.Meters, 0.1, 1000);
    }
}
