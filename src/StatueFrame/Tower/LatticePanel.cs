using StatueFrame.Mechanics;

namespace StatueFrame;

/// <summary>What a lattice member is there for.</summary>
internal enum LatticeRole
{
    Leg,
    Brace,
    Horizontal,
}

/// <summary>One member of a lattice panel, between two joints in the tower's own axes.</summary>
/// <param name="Role">Leg, brace or horizontal.</param>
/// <param name="Part">Which of the like members of its place it is, as in "brace b".</param>
/// <param name="Place">Number of its leg or face, from 1.</param>
/// <param name="Bay">Number of its bay, from 1.</param>
/// <param name="Start">Local number of its first joint's node: 0 the lower level, 1 the upper level, 2 and above interior.</param>
/// <param name="End">Local number of its second joint's node.</param>
/// <param name="From">Position of its first joint, m.</param>
/// <param name="To">Position of its second joint, m.</param>
/// <param name="Section">Its section.</param>
/// <param name="Pinned">Whether it is pin-ended, carrying axial force only.</param>
/// <param name="Pair">For crossing diagonals: the index of the other one, or its own when a tension-only brace has lost the other; otherwise −1.</param>
internal sealed record LatticeMember(
    LatticeRole Role, string Part, int Place, int Bay, int Start, int End, Vector3D From, Vector3D To, Section Section, bool Pinned, int Pair = -1)
{
    /// <summary>The face it lies in, from 0, between the legs of that number and the next; −1 for a leg.</summary>
    public int Face => Role == LatticeRole.Leg ? -1 : Place - 1;

    /// <summary>Where it stands in the panel, as in "leg 2, bay 1" or "brace b, face 3, bay 1".</summary>
    public string Label => Role == LatticeRole.Leg ? $"leg {Place}, bay {Bay}" : $"{Part}, face {Place}, bay {Bay}";
}

/// <summary>
/// The members and joints of a <see cref="LatticeSegment"/> between two levels. Joints at the two levels belong to the
/// rigid plans; joints between bays, and the middles of the horizontals that K-braces meet, are interior nodes.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class LatticePanel
{
    private readonly LatticeSegment segment;
    private readonly Vector3D[] bottom;
    private readonly Vector3D[] top;
    private readonly List<LatticeMember> members = [];
    private readonly List<Vector3D> interior = [];

    public LatticePanel(LatticeSegment segment, TowerLevel lower, TowerLevel upper)
    {
        this.segment = segment;
        bottom = Corners(lower);
        top = Corners(upper);
        int legs = bottom.Length, bays = segment.Bays;
        for (int joint = 1; joint < bays; joint++)
        {
            for (int leg = 0; leg < legs; leg++)
                interior.Add(Corner(leg, joint));
        }
        for (int bay = 0; bay < bays; bay++)
        {
            for (int leg = 0; leg < legs; leg++)
                Add(LatticeRole.Leg, "leg", leg, bay, Joint(leg, bay), Joint(leg, bay + 1), segment.Legs, pinned: false);
            for (int face = 0; face < legs; face++)
                AddFace(face, bay);
        }
        TakeOut(segment.Missing);
    }

    public IReadOnlyList<LatticeMember> Members => members;

    /// <summary>Positions of the interior nodes; local node number 2 comes first.</summary>
    public IReadOnlyList<Vector3D> Interior => interior;

    /// <summary>The faces that have no diagonal in some bay, as in "face 2, bay 1".</summary>
    public IReadOnlyList<string> FacesWithoutDiagonal =>
        [.. from bay in Enumerable.Range(1, segment.Bays) from face in Enumerable.Range(1, bottom.Length) where !HasDiagonal(face, bay) select $"face {face}, bay {bay}"];

    /// <summary>Whether a face on either side of a leg has no diagonal in the leg's bay.</summary>
    public bool LacksDiagonalBeside(LatticeMember leg) =>
        segment.Missing.Count > 0 && !(HasDiagonal(leg.Place, leg.Bay) && HasDiagonal(leg.Place == 1 ? bottom.Length : leg.Place - 1, leg.Bay));

    private bool HasDiagonal(int face, int bay) => members.Exists(m => m.Role == LatticeRole.Brace && m.Place == face && m.Bay == bay);

    /// <summary>
    /// Takes members out by their labels. A brace that loses its crossing partner stands alone; a tension-only one becomes a
    /// pair with itself, as it still goes slack.
    /// </summary>
    private void TakeOut(ValueList<string> missing)
    {
        if (missing.Count == 0)
            return;
        var newIndex = new int[members.Count];
        int kept = 0;
        for (int i = 0; i < newIndex.Length; i++)
            newIndex[i] = missing.Contains(members[i].Label) ? -1 : kept++;
        bool goesSlack = segment.Bracing == Bracing.TensionOnlyCross;
        LatticeMember[] left = [.. members.Select((member, i) => (member, i)).Where(m => newIndex[m.i] >= 0).Select(m => m.member with
        {
            Pair = m.member.Pair < 0 ? -1 : newIndex[m.member.Pair] >= 0 ? newIndex[m.member.Pair] : goesSlack ? newIndex[m.i] : -1,
        })];
        members.Clear();
        members.AddRange(left);
    }

    private static Vector3D[] Corners(TowerLevel level) =>
        Array.ConvertAll(level.Plan!.Legs, leg => level.Center + new Vector3D(leg.X, leg.Y, 0));

    private Vector3D Corner(int leg, int joint)
    {
        double t = (double)joint / segment.Bays;
        return (1 - t) * bottom[leg] + t * top[leg];
    }

    private (int Node, Vector3D At) Joint(int leg, int joint)
    {
        int node = joint == 0 ? 0 : joint == segment.Bays ? 1 : 2 + (joint - 1) * bottom.Length + leg;
        return (node, Corner(leg, joint));
    }

    private void AddFace(int face, int bay)
    {
        int left = face, right = (face + 1) % bottom.Length;
        switch (segment.Bracing)
        {
            case Bracing.Cross or Bracing.TensionOnlyCross:
                int first = members.Count;
                Add(LatticeRole.Brace, "brace a", face, bay, Joint(left, bay), Joint(right, bay + 1), segment.Braces, pinned: true, first + 1);
                Add(LatticeRole.Brace, "brace b", face, bay, Joint(right, bay), Joint(left, bay + 1), segment.Braces, pinned: true, first);
                break;
            case Bracing.SingleDiagonal:
                (int foot, int head) = (face + bay) % 2 == 0 ? (left, right) : (right, left);
                Add(LatticeRole.Brace, "brace", face, bay, Joint(foot, bay), Joint(head, bay + 1), segment.Braces, pinned: true);
                break;
            default:
                AddKBrace(left, right, face, bay);
                return;
        }
        if (bay + 1 < segment.Bays)
            Add(LatticeRole.Horizontal, "horizontal", face, bay, Joint(left, bay + 1), Joint(right, bay + 1), Horizontals, pinned: true);
    }

    private void AddKBrace(int left, int right, int face, int bay)
    {
        Vector3D at = 0.5 * (Corner(left, bay + 1) + Corner(right, bay + 1));
        int node = 1;
        if (bay + 1 < segment.Bays)
        {
            node = 2 + interior.Count;
            interior.Add(at);
            Add(LatticeRole.Horizontal, "horizontal a", face, bay, Joint(left, bay + 1), (node, at), Horizontals, pinned: false);
            Add(LatticeRole.Horizontal, "horizontal b", face, bay, (node, at), Joint(right, bay + 1), Horizontals, pinned: false);
        }
        Add(LatticeRole.Brace, "brace a", face, bay, Joint(left, bay), (node, at), segment.Braces, pinned: true);
        Add(LatticeRole.Brace, "brace b", face, bay, Joint(right, bay), (node, at), segment.Braces, pinned: true);
    }

    private Section Horizontals => segment.Horizontals ?? segment.Braces;

    private void Add(LatticeRole role, string part, int place, int bay, (int Node, Vector3D At) from, (int Node, Vector3D At) to, Section section, bool pinned, int pair = -1) =>
        members.Add(new LatticeMember(role, part, place + 1, bay + 1, from.Node, to.Node, from.At, to.At, section, pinned, pair));
}
