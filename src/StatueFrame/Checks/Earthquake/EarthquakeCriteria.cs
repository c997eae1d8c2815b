using UnitsNet;

namespace StatueFrame;

/// <summary>What holds a statue up in an earthquake besides its strength: the base that its weight stands on.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record EarthquakeCriteria
{
    /// <summary>From the tower's base center to the edge that the statue tips over, along x, 0.01 to 100 m; null takes the nearer edge of the tower's plan at its first level.</summary>
    public Length? BaseHalfWidthX { get; init; }

    /// <summary>The same along y.</summary>
    public Length? BaseHalfWidthY { get; init; }

    /// <summary>Coefficient of friction below the base, 0.05 to 1; null leaves sliding unchecked.</summary>
    public double? Friction { get; init; }

    internal void Validate(Validator v)
    {
        if (BaseHalfWidthX is { } x)
            v.Positive(x, x.Meters, 0.01, 100, nameof(BaseHalfWidthX));
        if (BaseHalfWidthY is { } y)
            v.Positive(y, y.Meters, 0.01, 100, nameof(BaseHalfWidthY));
        if (Friction is { } mu)
            v.InRange(mu, 0.05, 1, "Coefficients of friction lie near 0.3 to 0.6.", nameof(Friction));
    }
}
