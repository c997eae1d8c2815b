namespace StatueFrame.Checks;

/// <summary>The rules that hold-down, concrete and pedestal are checked by.</summary>
public enum BaseCode
{
    /// <summary>EN 1992-1-1, EN 1992-4, EN 1993-1-8, EN 1996-1-1 and EN 1997-1 with partial factors.</summary>
    Eurocode,

    /// <summary>ACI 318-19 for concrete and anchors, AISC 360 and Design Guide 1 for plates, with load and resistance factors; masonry and ground as under Eurocode.</summary>
    American,
}
