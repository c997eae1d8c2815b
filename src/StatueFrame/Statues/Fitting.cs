using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Something permanent that rides on the statue: a stair, a platform, a lamp. Its mass counts in self-weight, in the
/// modes and in the totals. People and other passing loads are <see cref="ImposedLoad"/>s of a situation instead.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Fitting
{
    /// <summary>Short name, as in "stair" or "lamp".</summary>
    public required string Name { get; init; }

    /// <summary>The level or band that carries it, as in "L7", "band 3" or "wing/band 2".</summary>
    public required string On { get; init; }

    /// <summary>Its mass, above 0 to 1000 t.</summary>
    public required Mass Mass { get; init; }

    /// <summary>Position of its center of mass in the statue's axes; null for the center of what carries it.</summary>
    public Point3? At { get; init; }

    /// <summary>
    /// Force coefficient times area that it turns to the wind, 0 to 1000 m². Null takes 0, as of what is behind the skin, which
    /// the sheet lists as assumed.
    /// </summary>
    public Area? WindArea { get; init; }

    /// <summary>What holds it; null leaves it open.</summary>
    public FittingFixing? Fixing { get; init; }

    internal void Validate(Validator v)
    {
        Fixing?.Validate(v.At(nameof(Fixing)));
        v.Named(Name);
        v.Positive(Mass, Mass.Kilograms, 0, 1e6);
        At?.Validate(v.At(nameof(At)));
        if (WindArea is { } area)
            v.Within(area, area.SquareMeters, 0, 1000, nameof(WindArea));
    }
}
