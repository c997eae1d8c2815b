using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>A tower segment as numbers: its matrices, and what its lattice members carry and can carry. SI units.</summary>
/// <remarks>Immutable and safe to share between threads; the arrays must not be written to.</remarks>
internal sealed class SegmentPart
{
    private const int Size = FrameElement.Size;

    private SegmentPart(SegmentModel model, BodyModel body, Criteria criteria)
    {
        Segment = model.Segment;
        (Kilograms, Center) = (model.Mass, model.CenterOfMass);
        model.Element.AddStiffness(Stiffness);
        model.Element.AddMass(Mass);
        for (int i = 0; i < Size; i++)
            Lifted[i] = Mass[i * Size + 2] + Mass[i * Size + Frame.NodeSize + 2];
        Stiffenings = model.Element is Superelement sum ? sum.AxialStiffenings.ToArray()
            : AxialStiffening.Of(model.Element) is { } own ? [own] : [];
        Members = new MemberPart[model.Members.Count];
        AxialRows = new double[Members.Length * Size];
        if (Members.Length == 0)
            return;
        FindAxialRows(model);
        var lattice = (LatticeSegment)model.Segment;
        BarDesign design = MemberSheet.DesignFor(lattice.Material, criteria);
        string family = MemberSheet.FamilyOf(body);
        for (int i = 0; i < Members.Length; i++)
            Members[i] = SameAs(model.Members, i) is >= 0 and int like ? Members[like] : MemberOf(lattice, model.Members[i], design, family);
    }

    /// <summary>The description it was made from.</summary>
    public TowerSegment Segment { get; }

    public double[] Stiffness { get; } = new double[Size * Size];

    public double[] Mass { get; } = new double[Size * Size];

    /// <summary>Mass times a unit lift of both nodes.</summary>
    public double[] Lifted { get; } = new double[Size];

    public double Kilograms { get; }

    public Vector3D Center { get; }

    public AxialStiffening[] Stiffenings { get; }

    /// <summary>The members of a lattice; empty for other segments.</summary>
    public MemberPart[] Members { get; }

    /// <summary>For every member the axial force for a unit of each of the twelve displacements.</summary>
    public double[] AxialRows { get; }

    public static SegmentPart Of(SegmentModel model, BodyModel body, Criteria criteria) => new(model, body, criteria);

    private void FindAxialRows(SegmentModel model)
    {
        Span<double> u = stackalloc double[Size], axial = stackalloc double[Members.Length];
        for (int j = 0; j < Size; j++)
        {
            u.Clear();
            u[j] = 1;
            model.AxialForces(model.Element, u, axial);
            for (int i = 0; i < axial.Length; i++)
                AxialRows[i * Size + j] = axial[i];
        }
    }

    /// <summary>An earlier member that is the same for strength; −1 when there is none.</summary>
    private static int SameAs(IReadOnlyList<LatticeMember> members, int i)
    {
        double length = LengthOf(members[i]);
        for (int j = 0; j < i; j++)
        {
            if (members[j].Role == members[i].Role && ReferenceEquals(members[j].Section, members[i].Section)
                && members[j].Pair >= 0 == members[i].Pair >= 0 && Math.Abs(LengthOf(members[j]) - length) <= 1e-13 * length)
                return j;
        }
        return -1;
    }

    private static double LengthOf(LatticeMember member) => (member.To - member.From).Length;

    private static MemberPart MemberOf(LatticeSegment lattice, LatticeMember member, BarDesign design, string family)
    {
        LoadedMember pressed = MemberSheet.Loaded(lattice, member, Force.FromNewtons(-1), "", "", family);
        return new MemberPart(
            member.Role, LengthOf(member), MemberChecks.Compression(pressed, design).Capacity,
            MemberChecks.Tension(pressed with { Axial = Force.FromNewtons(1) }, design).Capacity, MemberChecks.Slenderness(pressed, design).Utilization);
    }
}

/// <summary>A lattice member: what it can carry. SI units; null where the rules do not reach it.</summary>
internal readonly record struct MemberPart(LatticeRole Role, double Length, double? Compression, double? Tension, double? Slenderness);
