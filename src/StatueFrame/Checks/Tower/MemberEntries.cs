using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>The entries of the catalogue for members, their joints and tubes, of the tower of limbs, across the plans of levels, or of strips of plates.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class MemberEntries
{
    private const string Strength = "no strength situation was given";

    public static readonly MemberEntries Tower = new("tower"), Limbs = new("limbs"), Levels = new("levels", "every member across the plan of a level"),
        Gussets = new("gussets", "the strip of every described gusset"), Splices = new("splices", "the plates of every described splice");

    private readonly string family;

    /// <param name="family">The family of its checks.</param>
    /// <param name="parts">What they are run over; null for members of towers and limbs.</param>
    private MemberEntries(string family, string? parts = null)
    {
        this.family = family;
        Compression = Of("compression", "buckling of a member in compression", parts ?? "every lattice member, every state", "axial compression", "buckling resistance", MemberChecks.Compression);
        Tension = Of("tension", "member in tension", parts ?? "every lattice member, every state", "axial tension", "yield of the gross, rupture of the net section", MemberChecks.Tension);
        Slenderness = Of("slenderness", "slenderness of a member", "every lattice member", "slenderness about the weak axis", "what is customary", MemberChecks.Slenderness, Nature.Range);
        Bending = Of("bending", "member under axial force, bending, shear and torsion", parts ?? "both ends of every tube, every stiffly joined lattice member, every state", "section and stability together", "1", MemberChecks.Bending);
        Fasteners = Of("connections", "fasteners of a member in shear and bearing", parts ?? "every described joint of a lattice member", "axial force", "shear and bearing of the fasteners", ConnectionChecks.Fasteners);
        Block = Of("block", "tearing of a block at a joint", parts ?? "every described joint of a lattice member", "axial tension", "tearing of the block", ConnectionChecks.Block);
        Distances = Of("distances", "distances of fasteners", parts ?? "every described joint of a lattice member", "least distances", "distances given", ConnectionChecks.Distances);
        TubeJoint = new MadeEntry<MemberLoad>(
            Id("tube-joints"), "joint of a tube", Nature.Strength, "every described lower joint of a round tube, every state", "flange, bolts or weld of the joint", "1", Strength,
            (load, situation) => TubeJointChecks.Joint(load.In(situation, family), load.Joint!, load.Design));
        FlangeWeld = new MadeEntry<MemberLoad>(
            Id("flange-welds"), "weld between flange and tube", Nature.Strength, "both sides of every flange, every state", "resultant along the weld", "throat, or the tube's wall", Strength,
            (load, situation) => TubeJointChecks.FlangeWeld(load.In(situation, family), (FlangeJoint)load.Joint!, load.Design));
        LegSplices = Plain("splices", "splices of legs", "splices are not described");
        BraceJoints = Plain("joints", "joints of braces", "joints are not described");
        Core = Plain("core", "strength of a core given by its stiffness", "its strength is not described");
    }

    public CheckEntry<MemberLoad> Compression { get; }

    public CheckEntry<MemberLoad> Tension { get; }

    public CheckEntry<MemberLoad> Slenderness { get; }

    public CheckEntry<MemberLoad> Bending { get; }

    public CheckEntry<MemberLoad> Fasteners { get; }

    public CheckEntry<MemberLoad> Block { get; }

    public CheckEntry<MemberLoad> Distances { get; }

    public CheckEntry<MemberLoad> TubeJoint { get; }

    public CheckEntry<MemberLoad> FlangeWeld { get; }

    /// <summary>Stands for the checks of splices that are not described.</summary>
    public CheckEntry LegSplices { get; }

    public CheckEntry BraceJoints { get; }

    public CheckEntry Core { get; }

    public IEnumerable<CheckEntry> All => [Compression, Tension, Slenderness, Bending, Fasteners, Block, Distances, TubeJoint, FlangeWeld, LegSplices, BraceJoints, Core];

    /// <summary>Those of members across the plan of a level.</summary>
    public IEnumerable<CheckEntry> OfBraces => [Compression, Tension, Fasteners, Block, Distances];

    public static MemberEntries Of(BodyModel body) => body.Prefix.Length == 0 ? Tower : Limbs;

    private string Id(string name) => $"{family}.{name}";

    private CheckEntry Plain(string name, string title, string needs) => new(Id(name), title, Nature.Strength, "what is not described", "", "", needs);

    private MadeEntry<MemberLoad> Of(string name, string title, string parts, string demand, string capacity, Func<LoadedMember, BarDesign, Check> check, Nature nature = Nature.Strength) =>
        new(Id(name), title, nature, parts, demand, capacity, Strength, (load, situation) => check(load.In(situation, family), load.Design));
}

/// <summary>A member in one state: the demand of its checks.</summary>
/// <param name="Member">The member with what it carries, second order in it.</param>
/// <param name="Design">The rules.</param>
/// <param name="Joint">The tube's joint at the cut; null for others.</param>
/// <param name="Origin">How its forces come about; null where it cannot be told.</param>
internal readonly record struct MemberLoad(LoadedMember Member, BarDesign Design, TubeJoint? Joint = null, DemandOrigin? Origin = null) : ITraced
{
    public LoadedMember In(string situation, string family) => Member with { Situation = situation, Family = family };
}
