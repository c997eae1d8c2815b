namespace StatueFrame.Checks;

/// <summary>The rules that a bar is checked by.</summary>
public enum DesignCode
{
    /// <summary>EN 1993-1-1, 1-8 and 1-4 with partial factors; forces are design values.</summary>
    En1993,

    /// <summary>AISC 360-16 and 360-22, load and resistance factors; forces are factored.</summary>
    AiscLrfd,

    /// <summary>AISC 360-16 and 360-22, allowable strength; forces are not factored.</summary>
    AiscAsd,

    /// <summary>A fraction of the yield strength, by elastic theory; for metals that no code covers.</summary>
    AllowableStress,
}
