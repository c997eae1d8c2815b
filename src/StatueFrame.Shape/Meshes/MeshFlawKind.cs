namespace StatueFrame.Shape;

/// <summary>What may be wrong with a mesh.</summary>
public enum MeshFlawKind
{
    /// <summary>Vertices at the same place that are not joined.</summary>
    UnjoinedVertices,

    /// <summary>Triangles without area: two corners in one place, or all three on a line.</summary>
    DegenerateFaces,

    /// <summary>Needle-like triangles, less than a thousandth as high as long.</summary>
    Slivers,

    /// <summary>Triangles that are there more than once.</summary>
    DuplicateFaces,

    /// <summary>Edges at which more than two triangles meet.</summary>
    NonManifoldEdges,

    /// <summary>Loops of edges at which the surface ends.</summary>
    OpenEdges,

    /// <summary>Neighboring triangles that face opposite sides.</summary>
    FlippedFaces,

    /// <summary>Shells that cannot be given an outside, as a Möbius strip cannot.</summary>
    OneSidedShells,

    /// <summary>Closed shells that face inward.</summary>
    InwardShells,

    /// <summary>Closed shells inside another: a wall modeled with its thickness, or a part inside.</summary>
    NestedShells,
}
