namespace StatueFrame.Studies;

/// <summary>What kind of part is taken away.</summary>
public enum RemovalKind
{
    /// <summary>One standoff.</summary>
    Bar,

    /// <summary>One saddle: its bar hangs from the tower and holds no skin.</summary>
    Saddle,

    /// <summary>All standoffs of a ring.</summary>
    Ring,

    /// <summary>One brace of a lattice.</summary>
    Brace,

    /// <summary>One anchor bar of the hold-down.</summary>
    Anchor,

    /// <summary>Something of your own.</summary>
    Other,
}
