namespace StatueFrame;

/// <summary>The shape of a rise that speeds up the wind. Source: EN 1991-1-4:2005, A.3.</summary>
public enum OrographyKind
{
    /// <summary>A hill or a ridge: the ground falls again downwind of the crest.</summary>
    HillOrRidge,

    /// <summary>A cliff or an escarpment: the ground stays high downwind of the crest (slope under 0.05).</summary>
    CliffOrEscarpment,
}
