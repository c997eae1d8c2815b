namespace StatueFrame;

/// <summary>Where two parts of a statue touch.</summary>
public enum ContactJoint
{
    /// <summary>Standoff and skin, at the saddle.</summary>
    Saddle,

    /// <summary>Standoff and tower, at the fixing.</summary>
    Fixing,

    /// <summary>Armature bar and the skin or the standoff it lies on.</summary>
    Armature,

    /// <summary>Rivets and the sheets they join.</summary>
    Seam,

    /// <summary>Two neighboring segments of a tower or limb.</summary>
    Splice,

    /// <summary>A limb and what it branches off.</summary>
    LimbRoot,

    /// <summary>Anchor bars and the tower's foot.</summary>
    Anchorage,

    /// <summary>Any other; the two metals are given.</summary>
    Other,
}
