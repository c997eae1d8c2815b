namespace StatueFrame.Analysis;

/// <summary>
/// The forces that tower, limbs and base have to bear in a situation: load case by load case, with the peaks of an earthquake
/// in every direction, or at the worst times of a shock.
/// </summary>
internal abstract class PartDemands
{
    /// <summary>False when an earthquake or a shock is in the forces.</summary>
    public virtual bool IsSteady => false;

    /// <summary>What is taken where an earthquake or a shock is in the forces.</summary>
    public virtual IEnumerable<Assumption> Assumptions => [];

    /// <summary>The least and the greatest axial force of each of a segment's lattice members, N; compression is negative.</summary>
    public abstract (double Least, double Greatest)[] LatticeOf(SegmentModel segment);

    /// <summary>The forces at both ends of a segment, for every time that may be the worst for some check.</summary>
    public abstract IEnumerable<EndForces> EndsOf(SegmentModel segment);

    /// <summary>The forces on the base, for every time that may be the worst for some check.</summary>
    public abstract IEnumerable<BaseForces> OnBase();
}
