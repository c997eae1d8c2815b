namespace StatueFrame.Checks;

/// <summary>What a <see cref="Check"/> found. Silence never reads as a pass: what could not be checked says so.</summary>
public enum Verdict
{
    /// <summary>The demand is at most the capacity.</summary>
    Pass,

    /// <summary>The demand is more than the capacity, or there is no capacity.</summary>
    Fail,

    /// <summary>No verdict was possible; <see cref="Check.Reason"/> says why.</summary>
    NotChecked,
}
