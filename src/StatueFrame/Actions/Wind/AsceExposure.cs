namespace StatueFrame;

/// <summary>Exposure: the terrain upwind of the site. Source: ASCE/SEI 7, 26.7.</summary>
public enum AsceExposure
{
    /// <summary>Exposure B: towns, suburbs, wooded country.</summary>
    B,

    /// <summary>Exposure C: open country with scattered low obstacles.</summary>
    C,

    /// <summary>Exposure D: flat ground without obstacles, or water.</summary>
    D,
}
