namespace StatueFrame.Analysis;

/// <summary>What a line of a <see cref="LineModel"/> stands for.</summary>
public enum LineKind
{
    /// <summary>A leg of a lattice, a tube, a mast or a core.</summary>
    Tower,

    /// <summary>A brace or a horizontal of a lattice.</summary>
    Brace,

    /// <summary>The plan outline of a skin at a band's edge.</summary>
    Outline,

    /// <summary>A line up the skin, from edge to edge of a band.</summary>
    Rib,

    /// <summary>A standoff.</summary>
    Standoff,

    /// <summary>A bracket under a standoff.</summary>
    Bracket,
}
