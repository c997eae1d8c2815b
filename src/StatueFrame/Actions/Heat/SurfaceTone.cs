namespace StatueFrame;

/// <summary>How a surface takes the sun, by EN 1991-1-5, Table 5.2.</summary>
public enum SurfaceTone
{
    /// <summary>Bright light surface, absorptivity 0.5.</summary>
    Bright,

    /// <summary>Light colored surface, absorptivity 0.7.</summary>
    Light,

    /// <summary>Dark surface, absorptivity 0.9, as weathered copper or bronze.</summary>
    Dark,
}
