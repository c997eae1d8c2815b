namespace StatueFrame.Works;

/// <summary>What an inspector found of a part.</summary>
public enum PartCondition
{
    /// <summary>Nothing to see but age.</summary>
    Sound,

    /// <summary>Worn or corroded; it works as it should.</summary>
    Worn,

    /// <summary>Bent, cracked or loose; it works in part.</summary>
    Damaged,

    /// <summary>Broken, off, or gone: it carries nothing.</summary>
    Failed,
}
