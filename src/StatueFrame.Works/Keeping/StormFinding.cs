namespace StatueFrame.Works;

/// <summary>Whether a storm did what the calculation foresaw.</summary>
public enum StormFinding
{
    /// <summary>The measurement is too uncertain to say.</summary>
    NotKnown,

    /// <summary>Within what measurement and model leave open.</summary>
    AsForeseen,

    /// <summary>Clearly less: the calculation is on the safe side, or another heading was hit.</summary>
    Less,

    /// <summary>Clearly more, or clearly changed: find out why before the next storm.</summary>
    More,
}
