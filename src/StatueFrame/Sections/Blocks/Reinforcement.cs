using UnitsNet;

namespace StatueFrame;

/// <summary>The vertical bars of a concrete section, in its plan.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Reinforcement
{
    /// <summary>The bars, 1 to 1000.</summary>
    public required ValueList<ReinforcingBar> Bars { get; init; }

    /// <summary>Characteristic yield strength f_yk, 100 to 1000 MPa.</summary>
    public required Pressure YieldStrength { get; init; }

    /// <summary>Young's modulus; 200 GPa by default (EN 1992-1-1, 3.2.7 (4)).</summary>
    public Pressure YoungsModulus { get; init; } = 200.Gigapascals;

    /// <summary>Partial factor γ_S, 1 to 1.5; 1.15 by default (EN 1992-1-1, Table 2.1N).</summary>
    public double PartialFactor { get; init; } = 1.15;

    /// <summary>A ring of bars on a circle, the first on the x axis.</summary>
    /// <param name="count">How many, 3 to 1000.</param>
    /// <param name="circle">Diameter of the circle through the bars' centers.</param>
    /// <param name="bar">Diameter of a bar.</param>
    /// <param name="yieldStrength">f_yk.</param>
    public static Reinforcement Ring(int count, Length circle, Length bar, Pressure yieldStrength) => new()
    {
        Bars = [.. Enumerable.Range(0, Math.Clamp(count, 0, 1000)).Select(i =>
            new ReinforcingBar(0.5 * circle * Math.Cos(2 * Math.PI * i / count), 0.5 * circle * Math.Sin(2 * Math.PI * i / count), bar))],
        YieldStrength = yieldStrength,
    };

    internal void Validate(Validator v)
    {
        int count = 0;
        foreach ((_, ReinforcingBar bar, Validator at) in v.Items(Bars, 1000))
        {
            count++;
            at.Within(bar.X, bar.X.Meters, -30, 30, nameof(bar.X));
            at.Within(bar.Y, bar.Y.Meters, -30, 30, nameof(bar.Y));
            at.Positive(bar.Diameter, bar.Diameter.Meters, 0.004, 0.1, nameof(bar.Diameter));
        }
        if (Bars is not null && count == 0)
            v.Add(nameof(Bars), "must not be empty", "Leave Reinforcement null for plain concrete.");
        v.Positive(YieldStrength, YieldStrength.Pascals, 1e8, 1e9);
        v.Positive(YoungsModulus, YoungsModulus.Pascals, 1e11, 3e11);
        v.InRange(PartialFactor, 1, 1.5, "It is 1.15 in EN 1992-1-1.");
    }
}
