namespace StatueFrame;

/// <summary>
/// Kind of structure for its structural damping in the fundamental mode. Source: EN 1991-1-4:2005, Table F.2.
/// </summary>
public enum DampingCategory
{
    /// <summary>Steel building: δ_s = 0.05.</summary>
    SteelBuilding,

    /// <summary>Building of concrete and steel: δ_s = 0.08.</summary>
    MixedBuilding,

    /// <summary>Reinforced concrete building: δ_s = 0.10.</summary>
    ConcreteBuilding,

    /// <summary>Reinforced concrete tower or chimney: δ_s = 0.03.</summary>
    ConcreteTower,

    /// <summary>Welded steel tube or stack without liner and without insulation: δ_s = 0.012.</summary>
    WeldedSteelTube,

    /// <summary>Welded steel tube or stack without liner, insulated outside: δ_s = 0.020.</summary>
    InsulatedSteelTube,

    /// <summary>Steel lattice tower, welded: δ_s = 0.02.</summary>
    WeldedLattice,

    /// <summary>Steel lattice tower with high-strength friction-grip bolts: δ_s = 0.03.</summary>
    FrictionBoltedLattice,

    /// <summary>Steel lattice tower with ordinary bolts: δ_s = 0.05.</summary>
    BoltedLattice,
}
