namespace StatueFrame;

/// <summary>
/// What joins two neighboring levels of a tower: one tapered member, a core given by its stiffness, or a lattice panel.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record TowerSegment
{
    private protected TowerSegment()
    {
    }

    internal abstract void Validate(Validator v);

    /// <summary>The outline that standoffs can attach to at one end when the level has no plan; null when there is none.</summary>
    internal virtual PlanCurve? OutlineAt(bool top) => null;
}
