namespace StatueFrame;

/// <summary>Zones of the vertical walls of a body with a rectangular plan. Source: EN 1991-1-4:2005, Figure 7.5.</summary>
public enum WallZone
{
    /// <summary>Side wall next to its windward edge, to e/5.</summary>
    A,

    /// <summary>Side wall from e/5 to e.</summary>
    B,

    /// <summary>Side wall beyond e.</summary>
    C,

    /// <summary>Windward wall.</summary>
    D,

    /// <summary>Leeward wall.</summary>
    E,
}
