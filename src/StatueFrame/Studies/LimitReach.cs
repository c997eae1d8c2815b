namespace StatueFrame.Studies;

/// <summary>Whether the wind brings a quantity to its limit.</summary>
public enum LimitReach
{
    /// <summary>The limit is met at a speed up to the design speed.</summary>
    Reached,

    /// <summary>The limit is not met up to the design speed; nothing is said about higher speeds.</summary>
    NotReached,

    /// <summary>The limit is exceeded without any wind.</summary>
    ExceededInCalm,

    /// <summary>The quantity is not known, so that nothing can be said.</summary>
    NotKnown,
}
