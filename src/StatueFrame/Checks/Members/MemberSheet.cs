using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Writes the checks of tower and limb members in one strength situation into a sheet.</summary>
/// <remarks>For one thread; used once. Of a lattice segment the worst leg, brace and horizontal is listed, of a tube its worse end.</remarks>
internal sealed class MemberSheet(StatueModel model, Criteria criteria, Response response, PartDemands demands, SheetLists lists)
{
    private static readonly Assumption crossings = new("crossing braces", "joined where they cross: half their length about the weak axis, all of it about the axis along a leg", Source.CommonPractice);
    private static readonly Assumption axial = new("lattice members", "axial force alone: bending from stiff joints and from wind between joints is not counted", Source.CommonPractice);
    private static readonly Assumption coldFormed = new("buckling curve of tubes", "c, as of cold-formed ones", Source.En1993_1_1("Table 6.2"));
    private static readonly Assumption tubeCritical = new("critical force of tubes", "their axial force times the buckling factor of the whole statue", Source.Assumed("members"));
    private static readonly Assumption fraction = new("allowable stress of tower members that no code covers", "yield strength / 1.5", Source.CommonPractice);

    private readonly string situation = response.Situation.Name;
    private readonly double amplification = Amplification(response.Stability, demands.IsSteady);

    public void Add()
    {
        if (response.Stability.Amplification is null)
        {
            lists.Checks.Add(Check.NotChecked(new CheckSubject("tower.compression", "members of tower and limbs", "", situation), "the statue does not stand under these loads", Source.Assumed("members")));
            return;
        }
        foreach (BodyModel body in model.Bodies)
        {
            foreach (SegmentModel segment in body.Segments)
                Add(body, segment);
            AddUndescribed(body);
        }
    }

    private void Add(BodyModel body, SegmentModel segment)
    {
        int firstCheck = lists.Checks.Count;
        switch (segment.Segment)
        {
            case LatticeSegment lattice:
                BarDesign design = DesignFor(lattice.Material);
                foreach (LatticeRole role in (ReadOnlySpan<LatticeRole>)[LatticeRole.Leg, LatticeRole.Brace, LatticeRole.Horizontal])
                    AddLattice(body, segment, lattice, role, design);
                lists.Assume(Assumptions(lattice, design), firstCheck);
                break;
            case MemberSegment member:
                BarDesign tubeDesign = DesignFor(member.Material);
                AddTube(body, segment, member, tubeDesign);
                lists.Assume(Assumptions(member, tubeDesign), firstCheck);
                break;
        }
    }

    /// <summary>The worst of the like members of a segment, once in compression and once in tension.</summary>
    private void AddLattice(BodyModel body, SegmentModel segment, LatticeSegment lattice, LatticeRole role, BarDesign design)
    {
        (double Least, double Greatest)[] extremes = demands.LatticeOf(segment);
        LoadedMember? pressed = null, pulled = null;
        double worstPressed = 0, worstPulled = 0;
        for (int i = 0; i < extremes.Length; i++)
        {
            LatticeMember member = segment.Members[i];
            if (member.Role != role)
                continue;
            // Compression is the worse the longer the member, tension the greater the force.
            double length = (member.To - member.From).Length, ofPressed = -extremes[i].Least * length * length, ofPulled = extremes[i].Greatest;
            if (extremes[i].Least < 0 && (pressed is null || Extremes.Exceeds(ofPressed, worstPressed)))
                (pressed, worstPressed) = (Loaded(body, segment, lattice, member, extremes[i].Least), ofPressed);
            if (extremes[i].Greatest > 0 && (pulled is null || Extremes.Exceeds(ofPulled, worstPulled)))
                (pulled, worstPulled) = (Loaded(body, segment, lattice, member, extremes[i].Greatest), ofPulled);
        }
        if (pressed is not null)
        {
            lists.Checks.Add(MemberChecks.Compression(pressed, design));
            lists.Checks.Add(MemberChecks.Slenderness(pressed, design));
        }
        if (pulled is not null)
            lists.Checks.Add(MemberChecks.Tension(pulled, design));
        LoadedMember? joined = Greater(pressed, pulled);
        if (joined?.Connection is null)
            return;
        lists.Checks.Add(ConnectionChecks.Fasteners(joined, design));
        lists.Checks.Add(ConnectionChecks.Distances(joined, design));
        if (pulled is not null)
            lists.Checks.Add(ConnectionChecks.Block(pulled, design));
    }

    private static LoadedMember? Greater(LoadedMember? a, LoadedMember? b) =>
        a is null ? b : b is null ? a : Math.Abs(a.N) >= Math.Abs(b.N) ? a : b;

    private LoadedMember Loaded(BodyModel body, SegmentModel segment, LatticeSegment lattice, LatticeMember member, double force) =>
        Loaded(lattice, member, Force.FromNewtons(amplification * force), $"{segment.Name}, {member.Label}", situation, FamilyOf(body));

    /// <summary>A lattice member under an axial force.</summary>
    internal static LoadedMember Loaded(LatticeSegment lattice, LatticeMember member, Force axial, string where, string situation, string family)
    {
        bool isLeg = member.Role == LatticeRole.Leg, crosses = member.Pair >= 0 && lattice.Bracing == Bracing.Cross;
        MemberConnection? joint = isLeg ? lattice.LegSplice : lattice.BraceJoint;
        return new LoadedMember
        {
            Section = member.Section,
            Material = lattice.Material,
            Length = Length.FromMeters((member.To - member.From).Length),
            Axial = axial,
            WeakFactor = crosses ? 0.5 : 1,
            IsLeg = isLeg,
            Ends = isLeg ? MemberEnds.Centered : joint?.Ends ?? MemberEnds.OneLeg,
            Connection = joint,
            Where = where,
            Situation = situation,
            Family = family,
        };
    }

    private void AddTube(BodyModel body, SegmentModel segment, MemberSegment member, BarDesign design)
    {
        LoadedMember? worst = null;
        double worstStress = 0;
        foreach (EndForces ends in demands.EndsOf(segment))
        {
            foreach ((SectionForce forces, double t) in (ReadOnlySpan<(SectionForce, double)>)[(ends.Bottom, 0), (ends.Top, 1)])
            {
                Section section = member.SectionAt(t);
                SectionProperties p = section.Properties;
                double c = Math.Cos(member.Roll.Radians), s = Math.Sin(member.Roll.Radians);
                double M_x = forces.MomentX.NewtonMeters, M_y = forces.MomentY.NewtonMeters;
                double strong = Math.Abs(c * M_y - s * M_x), weak = Math.Abs(c * M_x + s * M_y);
                if (section.OutlineDiameter is not null)
                    (strong, weak) = (Math.Sqrt(M_x * M_x + M_y * M_y), 0);
                double stress = Math.Abs(forces.Axial.Newtons) / p.A + strong / p.Wy + weak / p.Wz;
                if (worst is not null && !Extremes.Exceeds(stress, worstStress))
                    continue;
                worstStress = stress;
                worst = Loaded(body, segment, member, section, forces, strong, weak, t == 0 ? "bottom" : "top", ends);
            }
        }
        if (worst is not null)
            lists.Checks.Add(MemberChecks.Bending(worst, design));
        AddTubeJoint(body, segment, member, design);
    }

    /// <summary>The lower joint of a tube in its worst load case.</summary>
    private void AddTubeJoint(BodyModel body, SegmentModel segment, MemberSegment member, BarDesign design)
    {
        if (member is not { LowerJoint: { } joint, Section: Tube tube })
            return;
        LoadedMember[] cases = [.. demands.EndsOf(segment).Select(ends =>
            Loaded(body, segment, member, tube, ends.Bottom, double.Hypot(ends.Bottom.MomentX.NewtonMeters, ends.Bottom.MomentY.NewtonMeters), 0, "bottom", ends))];
        if (cases.Length > 0)
            lists.Checks.Add(TubeJointChecks.Joint(cases.FirstGreatest(c => TubeJointChecks.Utilization(null, c, joint, design)), joint, design));
    }

    private LoadedMember Loaded(BodyModel body, SegmentModel segment, MemberSegment member, Section section, SectionForce forces, double strong, double weak, string end, EndForces ends)
    {
        const double GreatestFactor = 1e4;
        double N = forces.Axial.Newtons, factor = response.Stability.BucklingFactor ?? GreatestFactor;
        return new LoadedMember
        {
            Section = section,
            Material = member.Material,
            Length = Length.FromMeters(segment.Span),
            Axial = forces.Axial,
            StrongMoment = Torque.FromNewtonMeters(strong),
            WeakMoment = Torque.FromNewtonMeters(weak),
            Shear = Force.FromNewtons(Math.Sqrt(Math.Pow(forces.ShearX.Newtons, 2) + Math.Pow(forces.ShearY.Newtons, 2))),
            Torsion = Torque.FromNewtonMeters(Math.Abs(forces.Torsion.NewtonMeters)),
            CriticalForce = Math.Max(N, ends.SteadyAxial) < -1 ? Force.FromNewtons(-factor * ends.SteadyAxial) : null,
            Amplification = amplification,
            Where = $"{segment.Name}, {end}, {ends.When}",
            Situation = situation,
            Family = FamilyOf(body),
        };
    }

    /// <summary>One line for all that lacks a description, so that it does not read as a pass.</summary>
    private void AddUndescribed(BodyModel body)
    {
        string family = FamilyOf(body);
        NotChecked("splices", "splices of legs", "splices are not described", s => s is LatticeSegment { LegSplice: null });
        NotChecked("joints", "joints of braces", "joints are not described", s => s is LatticeSegment { BraceJoint: null });
        NotChecked("tube-joints", "joints of tubes and masts", "their joints are not described, or are not of round tubes", s => s is MemberSegment { LowerJoint: null } or MemberSegment { Section: not Tube });
        NotChecked("core", "strength of a core given by its stiffness", "its strength is not described", s => s is CoreSegment);

        void NotChecked(string name, string title, string reason, Func<TowerSegment, bool> lacks)
        {
            string[] segments = [.. body.Segments.Where(s => lacks(s.Segment)).Select(s => s.Name)];
            if (segments.Length == 0)
                return;
            string where = segments.Length == 1 ? segments[0] : Invariant($"{segments[0]} and {segments.Length - 1} more");
            lists.Checks.Add(Check.NotChecked(new CheckSubject($"{family}.{name}", title, where, situation), reason, Source.Assumed("members")));
        }
    }

    private BarDesign DesignFor(Material material) => DesignFor(material, criteria);

    /// <summary>The rules for members of a metal.</summary>
    internal static BarDesign DesignFor(Material material, Criteria criteria) =>
        BarDesign.For(material, criteria.TowerCode) with { AllowableFraction = criteria.TowerStressFraction ?? 1 / 1.5 };

    private IEnumerable<Assumption> Assumptions(TowerSegment segment, BarDesign design)
    {
        yield return new Assumption("second-order effects in members", Invariant($"first-order forces of members times {amplification:0.###}, the amplification of the sway"), Source.En1993_1_1("5.2.2 (5)"));
        if (segment is LatticeSegment lattice)
        {
            yield return axial;
            if (lattice.Bracing == Bracing.Cross)
                yield return crossings;
        }
        else
        {
            yield return tubeCritical;
            if (design.Code == DesignCode.En1993 && design.Metal == MetalKind.StructuralSteel)
                yield return coldFormed;
        }
        if (design.Code == DesignCode.En1993)
            yield return new Assumption("partial factors of tower members", Invariant($"γ_M0 {design.GammaM0}, γ_M1 {design.GammaM1}, γ_M2 {design.GammaM2}"), Source.En1993_1_1("6.1 (1), recommended values"));
        if (design.Code == DesignCode.AllowableStress && criteria.TowerStressFraction is null)
            yield return fraction;
    }

    /// <summary>Of the steady loads; what shakes has a sway of its own, which grows with the factor of buckling alone.</summary>
    private static double Amplification(Stability stability, bool isSteady)
    {
        double amplification = Math.Max(1, stability.Amplification ?? 1);
        return !isSteady && stability.BucklingFactor is > 1 and { } factor ? Math.Max(amplification, factor / (factor - 1)) : amplification;
    }

    internal static string FamilyOf(BodyModel body) => body.Prefix.Length == 0 ? "tower" : "limbs";
}
