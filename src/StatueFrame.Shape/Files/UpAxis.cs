namespace StatueFrame.Shape;

/// <summary>Which axis of a file points up.</summary>
public enum UpAxis
{
    /// <summary>x up: the file's y, z, x become x, y, z.</summary>
    X,

    /// <summary>y up, as in glTF: the file's x, −z, y become x, y, z.</summary>
    Y,

    /// <summary>z up: the axes stay.</summary>
    Z,
}
