using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The bars that follow the skin's shape and carry the sheet between standoffs, and so the panels that the sheet is
/// divided into.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Armature
{
    /// <summary>Section of the bars; it bends about its weak axis when the sheet is pressed.</summary>
    public required Section Bar { get; init; }

    /// <summary>The metal of the bars.</summary>
    public required Material Material { get; init; }

    /// <summary>Distance b of neighboring bars, 50 mm to 3 m: the shorter way the sheet spans.</summary>
    public required Length Spacing { get; init; }

    /// <summary>Length a of a panel along the bars, between cross-bars or saddles, 50 mm to 10 m.</summary>
    public required Length PanelLength { get; init; }

    /// <summary>Distance of the standoffs that carry a bar, 50 mm to 5 m.</summary>
    public required Length Span { get; init; }

    /// <summary>True when bars run on over the standoffs, false when they end there.</summary>
    public bool IsContinuous { get; init; } = true;

    /// <summary>How the panels' edges are held.</summary>
    public PanelEdges Edges { get; init; } = PanelEdges.Supported;

    /// <summary>Radius of curvature of the panels across the bars; null takes them as flat.</summary>
    public Length? PanelRadius { get; init; }

    /// <summary>The straps that hold the sheet to the bars; null when they are not described, which leaves them open.</summary>
    public SaddleStrap? Straps { get; init; }

    /// <summary>Fatigue strength of a bar with what is joined to it; null leaves the bars' fatigue open.</summary>
    public DetailCategory? FatigueDetail { get; init; }

    /// <summary>Greatest deflection of a panel or bar over its span, 1/1000 to 1/10.</summary>
    public double DeflectionLimit { get; init; } = 1.0 / 50;

    internal void Validate(Validator v)
    {
        v.Required(Bar)?.Validate(v.At(nameof(Bar)));
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        v.Positive(Spacing, Spacing.Meters, 0.05, 3);
        v.Positive(PanelLength, PanelLength.Meters, 0.05, 10);
        v.Positive(Span, Span.Meters, 0.05, 5);
        v.Defined(Edges);
        if (PanelRadius is { } radius)
            v.Positive(radius, radius.Meters, 0.05, 1000, nameof(PanelRadius));
        Straps?.Validate(v.At(nameof(Straps)));
        FatigueDetail?.Validate(v.At(nameof(FatigueDetail)));
        v.InRange(DeflectionLimit, 1e-3, 0.1, "It is deflection over span, near 1/50 for thin sheet.");
    }
}
