using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>A panel of sheet between armature bars, flat or curved to a cylinder across the bars.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SheetPanel
{
    private PlateBending? bending;

    /// <summary>Length of the panel along the bars, 0.02 to 20 m.</summary>
    public required Length Length { get; init; }

    /// <summary>Width of the panel across the bars, 0.02 to 20 m; the curved way when <see cref="Radius"/> is given.</summary>
    public required Length Width { get; init; }

    /// <summary>Sheet thickness, 0.1 to 30 mm.</summary>
    public required Length Thickness { get; init; }

    /// <summary>The metal.</summary>
    public required Material Material { get; init; }

    /// <summary>How the edges are held against turning.</summary>
    public PanelEdges Edges { get; init; } = PanelEdges.Supported;

    /// <summary>True when the edges cannot draw in, so that the sheet stretches; false lets them, which deflects and bends more.</summary>
    public bool EdgesHeldInPlane { get; init; }

    /// <summary>Radius of curvature, convex outward; null for a flat panel.</summary>
    public Length? Radius { get; init; }

    /// <summary>Where it is, as in "band 3".</summary>
    public string Where { get; init; } = "";

    /// <summary>The name of the situation.</summary>
    public string Situation { get; init; } = "";

    /// <summary>Copies all but what was computed.</summary>
    /// <param name="original">The panel that is copied.</param>
    private SheetPanel(SheetPanel original)
    {
        (Length, Width, Thickness, Material) = (original.Length, original.Width, original.Thickness, original.Material);
        (Edges, EdgesHeldInPlane, Radius, Where, Situation) = (original.Edges, original.EdgesHeldInPlane, original.Radius, original.Where, original.Situation);
    }

    internal double Long => Math.Max(Length.Meters, Width.Meters);

    internal double Short => Math.Min(Length.Meters, Width.Meters);

    internal double t => Thickness.Meters;

    internal double E => Material.YoungsModulus.Pascals;

    internal double nu => Material.PoissonRatio;

    internal double f_y => Material.YieldStrength.Pascals;

    internal double D => E * t * t * t / (12 * (1 - nu * nu));

    internal double Weight => Material.Density.KilogramsPerCubicMeter * SelfWeight.Gravity * t;

    /// <summary>The factors, when they are known from a panel of the same shape, metal and edges.</summary>
    internal PlateBending? KnownBending { get; init; }

    internal PlateBending Bending => KnownBending ?? (bending ??= PlateBending.Of(Long / Short, nu, Edges));

    internal CheckSubject Subject(string id, string title) => new(id, title, Where, Situation);

    internal void Validate()
    {
        var v = new Validator();
        v.Positive(Length, Length.Meters, 0.02, 20);
        v.Positive(Width, Width.Meters, 0.02, 20);
        v.Positive(Thickness, t, 1e-4, 0.03);
        v.Required(Material);
        v.Defined(Edges);
        if (Radius is { } radius)
            v.Within(radius, radius.Meters, Width.Meters / Math.PI, 1e4, nameof(Radius));
        v.ThrowIfAny();
    }

    /// <summary>Panels are equal when their descriptions are.</summary>
    /// <param name="other">The other panel.</param>
    public bool Equals(SheetPanel? other) =>
        other is not null && (Length, Width, Thickness, Material, Edges, EdgesHeldInPlane, Radius).Equals((other.Length, other.Width, other.Thickness, other.Material, other.Edges, other.EdgesHeldInPlane, other.Radius))
        && Where == other.Where && Situation == other.Situation;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Length, Width, Thickness, Material, Edges, Radius, Where);
}
