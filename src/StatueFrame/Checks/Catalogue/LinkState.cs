namespace StatueFrame.Checks;

/// <summary>Whether a link of the load path is held.</summary>
public enum LinkState
{
    /// <summary>All checks of it were done and hold.</summary>
    Holds,

    /// <summary>It carries load, and no check says whether it can: something is not described, or the library has no method.</summary>
    Open,

    /// <summary>A check of it fails.</summary>
    Fails,
}
