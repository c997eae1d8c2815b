using UnitsNet;

namespace StatueFrame;

/// <summary>The straps that hold the sheet to the bars of its armature: bridges over the bar, riveted to the sheet on both sides of it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SaddleStrap
{
    /// <summary>Two rivets do not fit across less, m.</summary>
    private const double LeastOfTwo = 0.01;

    /// <summary>Distance of straps along a bar, 20 mm to 500 mm, at least their width.</summary>
    public required Length Distance { get; init; }

    /// <summary>Width of a strap along the bar, 5 mm to 300 mm.</summary>
    public required Length Width { get; init; }

    /// <summary>Thickness of a strap, 0.2 mm to 20 mm.</summary>
    public required Length Thickness { get; init; }

    /// <summary>Its metal.</summary>
    public required Material Material { get; init; }

    /// <summary>The rivets to the sheet.</summary>
    public required Rivet Rivet { get; init; }

    /// <summary>Rivets of a strap, both sides together: 2 or 4; two of one side stand beside one another across the width.</summary>
    public int Rivets { get; init; } = 2;

    /// <summary>From the rivets to where the strap rises along the bar, 2 mm to 200 mm: the lever of its bending.</summary>
    public required Length Reach { get; init; }

    /// <summary>
    /// From the rivets to the end of the strap beyond them, which presses on the sheet as the strap bends and so pulls the rivets more, 2 mm
    /// to 200 mm; null takes 1.5 holes, which the sheet lists as assumed.
    /// </summary>
    public Length? EndDistance { get; init; }

    /// <summary>Fatigue strength of a strap at its holes, which counts for its rivets too; null leaves it open.</summary>
    public DetailCategory? FatigueDetail { get; init; }

    /// <summary>From the rivets to where the end presses, m: not beyond 1.25 of the reach, as EN 1993-1-8 has it for T-stubs.</summary>
    internal double PryingLever => Math.Min(EndDistance?.Meters ?? 1.5 * Rivet.d_0, 1.25 * Reach.Meters);

    /// <summary>The rivets of one side stand beside one another across the width.</summary>
    internal double NetWidth => Width.Meters - Rivets / 2 * Rivet.d_0;

    /// <summary>A strap on one line, as in "40×1.5 mm of copper, every 200 mm, 2 rivets of 5 mm".</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Width.Millimeters:0.##}×{Thickness.Millimeters:0.##} mm of {Material?.Name}, every {Distance.Millimeters:0.##} mm, {Rivets} rivets of {1000 * (Rivet?.d_0 ?? 0):0.##} mm");

    internal void Validate(Validator v)
    {
        v.Positive(Distance, Distance.Meters, 0.02, 0.5);
        v.Positive(Width, Width.Meters, 0.005, 0.3);
        v.Positive(Thickness, Thickness.Meters, 2e-4, 0.02);
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        v.Required(Rivet)?.Validate(v.At(nameof(Rivet)));
        if (Rivets is not (2 or 4))
            v.Add(nameof(Rivets), FormattableString.Invariant($"must be 2 or 4, is {Rivets}"), "One or two on each side of the bar.");
        else if (Rivet is not null && (NetWidth <= 0 || (Rivets > 2 && Width.Meters < LeastOfTwo)))
            v.Add(nameof(Width), FormattableString.Invariant($"leaves no metal beside its rivets: {Rivets / 2} of {1000 * Rivet.d_0:0.##} mm across {Width.Millimeters:0.##} mm"), "The rivets of one side stand beside one another; leave 1.2 holes to every edge.");
        if (Distance.Meters > 0 && Distance < Width)
            v.Add(nameof(Distance), FormattableString.Invariant($"must be at least the width, {Width.Millimeters:0.##} mm, is {Distance.Millimeters:0.##} mm"), "Straps stand apart along the bar.");
        v.Positive(Reach, Reach.Meters, 0.002, 0.2);
        if (EndDistance is { } end)
            v.Positive(end, end.Meters, 0.002, 0.2, nameof(EndDistance));
        FatigueDetail?.Validate(v.At(nameof(FatigueDetail)));
    }
}
