namespace StatueFrame.Shape;

/// <summary>The kinds of mesh file that are read.</summary>
public enum MeshFormat
{
    /// <summary>STL, as text or binary; vertices at equal coordinates are joined.</summary>
    Stl,

    /// <summary>Wavefront OBJ: vertices and faces; everything else is passed over.</summary>
    Obj,

    /// <summary>PLY: text, or binary in either order of bytes.</summary>
    Ply,

    /// <summary>glTF 2.0, as JSON with its buffers inside or beside it, or as one binary file (GLB).</summary>
    Gltf,
}
