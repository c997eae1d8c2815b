namespace StatueFrame.Shape;

/// <summary>What becomes of the sheet's thickness when a statue is scaled.</summary>
public enum SheetRule
{
    /// <summary>It is scaled with everything else.</summary>
    Scaled,

    /// <summary>It stays, as when the same sheet is hammered over a larger form.</summary>
    Kept,
}
