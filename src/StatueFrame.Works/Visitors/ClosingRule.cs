using UnitsNet;

namespace StatueFrame.Works;

/// <summary>When a place for visitors is closed.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Place">The place, as in "gallery in the wing".</param>
/// <param name="Point">The named point of the statue that stands for it.</param>
/// <param name="Sway">Greatest sway of that point while people are there.</param>
public sealed record ClosingRule(string Place, string Point, Length Sway)
{
    /// <summary>The place is closed at this part of the speed that brings the point to its limit, 0.5 to 1; 0.85 by default, for the time it takes to clear it (common practice, no source).</summary>
    public double Margin { get; init; } = 0.85;

    /// <summary>Greatest gust at the anemometer whatever the sway; null for none. 20 m/s is where people are blown over (common practice, no source).</summary>
    public Speed? GreatestGust { get; init; } = Speed.FromMetersPerSecond(20);

    internal void Validate(Validator v, Statue statue)
    {
        v.Named(Place);
        new StatueNames(statue).RequirePoint(v, nameof(Point), Point);
        v.Positive(Sway, Sway.Meters, 1e-4, 5);
        v.InRange(Margin, 0.5, 1, "It is the closing speed over that which brings the sway to its limit.");
        if (GreatestGust is { } gust)
            v.Positive(gust, gust.MetersPerSecond, 1, 100, nameof(GreatestGust));
    }
}
