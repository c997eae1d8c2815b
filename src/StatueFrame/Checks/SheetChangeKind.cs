namespace StatueFrame.Checks;

/// <summary>What kind of difference a <see cref="SheetChange"/> is, the gravest first.</summary>
public enum SheetChangeKind
{
    /// <summary>A check has another verdict.</summary>
    Verdict,

    /// <summary>A check of the earlier sheet is no longer there.</summary>
    Disappeared,

    /// <summary>A check was not on the earlier sheet.</summary>
    Appeared,

    /// <summary>A check has become the governing one of the sheet or of its family.</summary>
    Governs,

    /// <summary>The numbers of a check, or the inputs assumed for it, have changed.</summary>
    Utilization,

    /// <summary>A result has changed, appeared or disappeared.</summary>
    Result,

    /// <summary>The title, an assumption or a warning has appeared or disappeared.</summary>
    Statement,
}
