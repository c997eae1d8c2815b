namespace StatueFrame;

/// <summary>What a body's cross-section is like for the wind that flows round it.</summary>
public enum BluffShape
{
    /// <summary>Round without sharp edges, taken as a circle.</summary>
    Round,

    /// <summary>Round, with ice that may make it gallop.</summary>
    RoundWithIce,

    /// <summary>With sharp edges, taken as the rectangle that has the section's width and depth.</summary>
    SharpEdged,
}
