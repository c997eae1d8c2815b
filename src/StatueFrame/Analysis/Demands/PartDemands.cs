namespace StatueFrame.Analysis;

/// <summary>Takes one state of a standoff.</summary>
/// <param name="bar">The bar.</param>
/// <param name="skin">The bound on the skin that it is found under.</param>
/// <param name="ends">What acts on its ends.</param>
/// <param name="state">The state it is of.</param>
internal delegate void BarVisitor(BarModel bar, SkinAssumption skin, in BarEnds ends, DemandState state);

/// <summary>Takes one state of a lattice member.</summary>
/// <param name="member">Its number in its segment.</param>
/// <param name="forces">What it carries.</param>
/// <param name="state">As of a bar.</param>
internal delegate void MemberVisitor(int member, in MemberForces forces, DemandState state);

/// <summary>Takes one movement of a standoff.</summary>
/// <param name="bar">The bar.</param>
/// <param name="towards">How far its skin end comes nearer to the tower, square to the skin, m; zero or more.</param>
/// <param name="state">The state it is of.</param>
internal delegate void ApproachVisitor(BarModel bar, double towards, DemandState state);

/// <summary>
/// What the parts of a statue have to bear in a situation, whatever causes it: load case by load case, with the peaks of an
/// earthquake in every direction, or at the worst times of a shock. Every state that may be the worst for some check is told.
/// </summary>
/// <remarks>Rings and segments go by their numbers in the statue, which all models of one statue share.</remarks>
internal abstract class PartDemands
{
    /// <summary>The states of all bars of a ring, under every bound on the skin.</summary>
    /// <param name="ring">The ring's number in the statue.</param>
    /// <param name="visit">Takes them.</param>
    public abstract void Bars(int ring, BarVisitor visit);

    /// <summary>How far the skin ends of all bars of a ring come nearer to the tower, each under its worse bound; a source that does not move them otherwise tells nothing.</summary>
    /// <param name="ring">The ring's number in the statue.</param>
    /// <param name="visit">Takes them.</param>
    public virtual void Approaches(int ring, ApproachVisitor visit) { }

    /// <summary>The states of all members of a lattice segment.</summary>
    /// <param name="segment">The segment's number in the statue.</param>
    /// <param name="visit">Takes them.</param>
    public abstract void Members(int segment, MemberVisitor visit);

    /// <summary>The forces at both ends of a segment, for every time that may be the worst for some check.</summary>
    /// <param name="segment">The segment's number in the statue.</param>
    public abstract IEnumerable<EndForces> EndsOf(int segment);

    /// <summary>The forces on the base, for every time that may be the worst for some check.</summary>
    public abstract IEnumerable<BaseForces> OnBase();
}
