namespace StatueFrame.Shape;

/// <summary>What to do with a slice that has several outlines side by side, as two legs have.</summary>
public enum SeveralOutlines
{
    /// <summary>Refuse it, naming the height and the places.</summary>
    Refuse,

    /// <summary>Take the one with the largest area. The sheet of the others still counts by the fold factor.</summary>
    Largest,

    /// <summary>Take the convex hull round all, which catches more wind than they do.</summary>
    Hull,
}
