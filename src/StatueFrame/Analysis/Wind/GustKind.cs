namespace StatueFrame.Analysis;

/// <summary>The gusts that a statue feels, each independent of the others.</summary>
internal enum GustKind
{
    /// <summary>Along the wind, the mean over a band's width.</summary>
    Along,

    /// <summary>Along the wind, against one another on both sides of a band: moments about its middle, as a part of its width.</summary>
    Twisting,

    /// <summary>Across the wind, the mean over a band's width.</summary>
    Across,
}
