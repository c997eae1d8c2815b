namespace StatueFrame.Checks;

/// <summary>How the skin end of a standoff is held when it buckles; the tower end is held in place.</summary>
public enum BarRestraint
{
    /// <summary>Neither end can move sideways; both ends turn against their springs. Effective length factor 0.5 to 1.</summary>
    Held,

    /// <summary>The skin end moves sideways and turns against its spring, as on a rigid ring. Factor 1 and more.</summary>
    Sway,

    /// <summary>The skin end is free to move and to turn, as under limp skin: a cantilever. Factor 2 and more.</summary>
    Free,
}
