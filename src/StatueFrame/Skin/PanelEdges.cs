namespace StatueFrame;

/// <summary>How the edges of a sheet panel are held by the armature.</summary>
public enum PanelEdges
{
    /// <summary>Simply supported: free to turn, as over narrow saddles.</summary>
    Supported,

    /// <summary>Clamped, as a sheet that runs on over wide bars into like panels under the same pressure.</summary>
    Clamped,
}
