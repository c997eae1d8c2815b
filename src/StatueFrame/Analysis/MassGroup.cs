namespace StatueFrame.Analysis;

/// <summary>What a mass belongs to, for the table of masses.</summary>
public enum MassGroup
{
    /// <summary>Members of the trunk's tower.</summary>
    Tower,

    /// <summary>Horizontals and plan bracing in the levels of the trunk's tower.</summary>
    LevelFrames,

    /// <summary>Sheets and armature of the trunk.</summary>
    Skin,

    /// <summary>Standoffs of trunk and limbs.</summary>
    Standoffs,

    /// <summary>Brackets under standoffs of trunk and limbs.</summary>
    Brackets,

    /// <summary>Inner structure, sheets and armature of the limbs.</summary>
    Limbs,

    /// <summary>What rides on the statue.</summary>
    Fittings,
}
