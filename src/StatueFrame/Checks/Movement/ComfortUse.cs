namespace StatueFrame.Checks;

/// <summary>What people do where the sway is felt.</summary>
public enum ComfortUse
{
    /// <summary>Homes; peak acceleration once a year.</summary>
    Residence,

    /// <summary>Offices and the like, and visitors' galleries by analogy; peak acceleration once a year.</summary>
    Office,
}
