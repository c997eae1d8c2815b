using UnitsNet;

namespace StatueFrame;

/// <summary>A load that comes and goes at one place: people on a platform, a rope's pull, a lift's reaction.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ImposedLoad : StatueAction
{
    /// <summary>Short name, as in "visitors".</summary>
    public required string Name { get; init; }

    /// <summary>The level or band it acts on, as in "L7", "band 3" or "wing/band 2".</summary>
    public required string On { get; init; }

    /// <summary>Force downwards; −1e8 to 1e8 N, as the other two.</summary>
    public Force Down { get; init; }

    /// <summary>Horizontal force along x.</summary>
    public Force AlongX { get; init; }

    /// <summary>Horizontal force along y.</summary>
    public Force AlongY { get; init; }

    /// <summary>Where it acts, in the statue's axes; null for the center of what carries it.</summary>
    public Point3? At { get; init; }

    /// <inheritdoc/>
    public override string Title => Name;

    internal override void Validate(Validator v)
    {
        v.Named(Name);
        v.Within(Down, Down.Newtons, -1e8, 1e8);
        v.Within(AlongX, AlongX.Newtons, -1e8, 1e8);
        v.Within(AlongY, AlongY.Newtons, -1e8, 1e8);
        At?.Validate(v.At(nameof(At)));
    }
}
