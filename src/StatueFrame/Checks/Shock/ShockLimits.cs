using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>What a statue must keep to in a shock, beside the strength of its bars.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ShockLimits
{
    /// <summary>The gap that the skin has to what stands inside it, 1 mm to 10 m; null leaves it unchecked.</summary>
    public Length? Clearance { get; init; }

    /// <summary>Width of the base across any heading, 0.05 to 200 m; null takes the tower's plan at its first level.</summary>
    public Length? BaseWidth { get; init; }

    /// <summary>Pre-tension of all hold-downs together, acting at the base's center, 0 to 1e9 N; zero unless given.</summary>
    public Force HoldDown { get; init; }

    internal void Validate(Validator v)
    {
        if (Clearance is { } gap)
            v.Positive(gap, gap.Meters, 0.001, 10, nameof(Clearance));
        if (BaseWidth is { } width)
            v.Positive(width, width.Meters, 0.05, 200, nameof(BaseWidth));
        v.NotNegative(HoldDown, HoldDown.Newtons, 1e9);
    }
}
