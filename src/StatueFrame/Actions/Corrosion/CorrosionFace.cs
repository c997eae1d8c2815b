namespace StatueFrame;

/// <summary>The faces that weather, each in its own air behind its own coating.</summary>
internal enum CorrosionFace
{
    SkinOutside,
    SkinInside,
    Standoff,
    CoveredTower,
    BareTower,
}
