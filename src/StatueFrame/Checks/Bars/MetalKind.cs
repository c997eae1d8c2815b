namespace StatueFrame.Checks;

/// <summary>Which design rules cover a metal.</summary>
public enum MetalKind
{
    /// <summary>Structural steel: EN 1993-1-1 and AISC 360.</summary>
    StructuralSteel,

    /// <summary>Stainless steel: EN 1993-1-4; AISC 360 does not cover it.</summary>
    StainlessSteel,

    /// <summary>Wrought iron, bronze, copper and others, which none of these codes covers: allowable stress only.</summary>
    Other,
}
