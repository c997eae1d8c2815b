namespace StatueFrame;

/// <summary>How two sheets meet at a seam.</summary>
public enum SeamKind
{
    /// <summary>One sheet over the other: one shear plane, the force off its line.</summary>
    Lapped,

    /// <summary>Edge to edge, with a strap behind that both are riveted to, as on faces and hands.</summary>
    FlushWithStrap,
}
