namespace StatueFrame.Mechanics;

/// <summary>The six freedoms of a node, in the order in which every vector and matrix of the kernel holds them.</summary>
[Flags]
public enum Freedoms
{
    /// <summary>No freedom.</summary>
    None = 0,
    /// <summary>Displacement along x, freedom 0.</summary>
    X = 1,
    /// <summary>Displacement along y, freedom 1.</summary>
    Y = 2,
    /// <summary>Displacement along z, freedom 2.</summary>
    Z = 4,
    /// <summary>Rotation about x, freedom 3.</summary>
    RotationX = 8,
    /// <summary>Rotation about y, freedom 4.</summary>
    RotationY = 16,
    /// <summary>Rotation about z, freedom 5.</summary>
    RotationZ = 32,
    /// <summary>The three displacements.</summary>
    Displacements = X | Y | Z,
    /// <summary>The three rotations.</summary>
    Rotations = RotationX | RotationY | RotationZ,
    /// <summary>All six freedoms.</summary>
    All = Displacements | Rotations,
}
