namespace StatueFrame;

/// <summary>How much hangs on a structure. Source: EN 1990:2002+A1:2005, Table B1.</summary>
public enum ConsequenceClass
{
    /// <summary>Low: people do not normally enter or stand beneath; K_FI 0.9.</summary>
    CC1,

    /// <summary>Medium; K_FI 1.0.</summary>
    CC2,

    /// <summary>High: many people in or beneath, as at a public figure with galleries; K_FI 1.1.</summary>
    CC3,
}
