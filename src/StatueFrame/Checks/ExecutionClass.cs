namespace StatueFrame;

/// <summary>How strictly steel is made and inspected. Source of the terms: EN 1090-2:2018, 4.1.2.</summary>
public enum ExecutionClass
{
    /// <summary>The least strict.</summary>
    EXC1,

    /// <summary>Usual buildings.</summary>
    EXC2,

    /// <summary>Structures that fatigue, or on which much hangs.</summary>
    EXC3,

    /// <summary>Structures with extreme consequences.</summary>
    EXC4,
}
