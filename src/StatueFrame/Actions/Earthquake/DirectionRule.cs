namespace StatueFrame;

/// <summary>How the effects of the three components of an earthquake make one.</summary>
public enum DirectionRule
{
    /// <summary>
    /// 100 % of one with 30 % of each of the others, the worst of the three. Sources: EN 1998-1:2004, 4.3.3.5.1 (3) and
    /// 4.3.3.5.2 (4); ASCE/SEI 7-22, 12.5.3 and 12.5.4.
    /// </summary>
    HundredThirtyThirty,

    /// <summary>Square root of the sum of squares. Source: EN 1998-1:2004, 4.3.3.5.1 (2).</summary>
    SquareRootOfSquares,
}
