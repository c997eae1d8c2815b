namespace StatueFrame.Analysis;

/// <summary>How the skin shares its load among the bars of a band: the truth lies between the two.</summary>
public enum SkinAssumption
{
    /// <summary>The band is a rigid ring that shares the load by the bars' stiffness.</summary>
    RigidRing,

    /// <summary>
    /// The skin is so limp that each bar takes the wind, the weight and the ice of its own strip, as a cantilever.
    /// Imposed loads and fittings on the band are not part of it.
    /// </summary>
    LimpSkin,
}
