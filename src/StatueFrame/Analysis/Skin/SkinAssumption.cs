namespace StatueFrame.Analysis;

/// <summary>How the skin shares its load among the bars of a band: bounds and, where it was run, a finer model; the worst counts.</summary>
public enum SkinAssumption
{
    /// <summary>The band is a rigid ring that shares the load by the bars' stiffness.</summary>
    RigidRing,

    /// <summary>
    /// The skin is so limp that each bar takes the wind, the weight and the ice of its own strip, as a cantilever from its
    /// tower end, or from its saddle where a hinge at the tower end cannot hold it. What hangs on the band at a place of its
    /// own hangs on the nearest bar; what has no place is shared evenly.
    /// </summary>
    LimpSkin,

    /// <summary>
    /// Where saddles slide, the skin hands on what its slides let go: a bar takes 5/3 of its own strip. Bars whose saddles
    /// hold are not looked at so.
    /// </summary>
    SlidingSkin,

    /// <summary>The skin is a shell of triangles with every standoff at its place: no bound, but the demand of a <see cref="FineModel"/>.</summary>
    Shell,
}
