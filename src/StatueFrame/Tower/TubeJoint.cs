namespace StatueFrame;

/// <summary>
/// How the lower end of a tube or mast is joined to what stands below it: by a bolted flange (<see cref="FlangeJoint"/>)
/// or by a weld all round (<see cref="WeldedTubeJoint"/>).
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record TubeJoint
{
    private protected TubeJoint()
    {
    }

    /// <summary>Looks at the joint at the end of a member of a section.</summary>
    /// <summary>Mass of what the tube itself leaves out, kg.</summary>
    /// <param name="tube">The tube that stands on the joint.</param>
    internal virtual double Mass(MemberSegment tube) => 0;

    internal abstract void Validate(Validator v, Section? section);
}
