using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Runs every entry of members over every member of tower and limbs in every state of a strength situation: of a lattice segment
/// the worst leg, brace and horizontal is written, of a tube its worse end, and what was not done.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class MemberSheet(StatueModel model, Criteria criteria, SituationDemands demands, FootEnvelope feet, SheetWriter lists)
{
    internal static readonly Assumption Crossings = new("crossing braces", "joined where they cross, which holds them in the plane of the two, whatever the other carries: angles half their length about the weak axis, all of it about the axis along a leg; other sections all of their length", Source.CommonPractice);
    private static readonly Assumption axial = new("lattice members", "axial force and the bending of stiff joints; wind and weight between joints are not counted", Source.CommonPractice);
    private static readonly Assumption coldFormed = new("buckling curve of tubes", "c, as of cold-formed ones", Source.En1993_1_1("Table 6.2"));
    private static readonly Assumption tubeCritical = new("critical force of tubes", "their axial force times the buckling factor of the whole statue", Source.Assumed("members"));
    private static readonly Assumption fraction = new("allowable stress of tower members that no code covers", "yield strength / 1.5", Source.CommonPractice);

    private static readonly (string, Dimension)[] forces = [("N", Dimension.Force), ("M_strong", Dimension.Moment), ("M_weak", Dimension.Moment)];

    private readonly Stability stability = demands.Response.Stability;
    private readonly double amplification = Amplification(demands);

    public void Add()
    {
        if (stability.Amplification is null)
        {
            lists.Checks.Add(MemberEntries.Tower.Compression.NotChecked("the statue does not stand under these loads", "", lists.Situation));
            return;
        }
        int number = 0;
        foreach (BodyModel body in model.Bodies)
        {
            foreach (SegmentModel segment in body.Segments)
                Add(body, segment, number++);
            AddUndescribed(body);
        }
    }

    private void Add(BodyModel body, SegmentModel segment, int number)
    {
        int firstCheck = lists.Checks.Count;
        switch (segment.Segment)
        {
            case LatticeSegment lattice:
                BarDesign design = DesignFor(lattice.Material);
                AddLattice(MemberEntries.Of(body), body, segment, number, lattice, design);
                lists.Assume(Assumptions(lattice, design), firstCheck);
                break;
            case MemberSegment member:
                BarDesign tubeDesign = DesignFor(member.Material);
                AddTube(MemberEntries.Of(body), segment, body.Segments.ElementAtOrDefault(Array.IndexOf(body.Segments, segment) + 1), number, member, tubeDesign);
                lists.Assume(Assumptions(member, tubeDesign), firstCheck);
                break;
        }
    }

    /// <summary>
    /// All members of a segment, role by role. What depends on the axial force alone is asked at each member's least and
    /// greatest force, the rest at every state that no other of the member has all of as great.
    /// </summary>
    private void AddLattice(MemberEntries entries, BodyModel body, SegmentModel segment, int number, LatticeSegment lattice, BarDesign design)
    {
        double[] fromLevels = FromLevels(body, Array.IndexOf(body.Segments, segment), lattice);
        var states = new MemberStates[segment.Members.Count];
        for (int i = 0; i < states.Length; i++)
            states[i] = new MemberStates();
        demands.Members(number, (int member, in MemberForces forces, DemandState state) => states[member].Look(forces, state));
        foreach (LatticeRole role in Enum.GetValues<LatticeRole>())
        {
            int[] members = [.. Enumerable.Range(0, states.Length).Where(i => segment.Members[i].Role == role)];
            if (members.Length == 0)
                continue;
            MemberLoad[] pressed = Loads(members, m => m.Least, N => N < 0), pulled = Loads(members, m => m.Greatest, N => N > 0);
            lists.Run(entries.Compression, pressed);
            lists.Run(entries.Slenderness, design.IsAisc ? [.. pressed, .. pulled] : pressed);
            lists.Run(entries.Tension, pulled);
            lists.Run(entries.Bending, members.Where(i => !segment.Members[i].Pinned).SelectMany(i => states[i].Bent.Select(bent => Load(i, bent.Forces, bent.State, justAxial: false))));
            MemberLoad[] joined = [.. pressed.Concat(pulled).Where(load => load.Member.Connection is not null)];
            lists.Run(entries.Fasteners, joined);
            lists.Run(entries.Distances, joined.Take(1));
            lists.Run(entries.Block, pulled.Where(load => load.Member.Connection is not null));
            PlateSheet.Add(lists, joined, criteria);
        }

        MemberLoad[] Loads(int[] members, Func<MemberStates, (double N, DemandState? State)> extreme, Predicate<double> counts) =>
            [.. members.Where(i => counts(extreme(states[i]).N)).Select(i => Load(i, new MemberForces(extreme(states[i]).N, 0, 0, 0, 0, 0), extreme(states[i]).State!, justAxial: true))];

        MemberLoad Load(int i, in MemberForces forces, DemandState state, bool justAxial) => new(
            Loaded(segment, lattice, segment.Members[i], amplification, Bent(i, forces), $"{segment.Name}, {segment.Members[i].Label}"), design,
            Origin: OriginOf(number, i, forces, state, justAxial ? null : fromLevels[i]));

        MemberForces Bent(int i, in MemberForces forces) => fromLevels[i] == 0 || (forces.Strong == 0 && forces.Weak == 0 && forces.V == 0)
            ? forces
            : forces with { StrongStart = forces.Strong + fromLevels[i], WeakStart = forces.Weak + fromLevels[i] };
    }

    /// <summary>How the forces of a lattice member come about: its axial force, and at the joints where they are greatest its moments.</summary>
    /// <param name="segment">Number of its segment.</param>
    /// <param name="member">Its number there.</param>
    /// <param name="total">What it has.</param>
    /// <param name="state">The state.</param>
    /// <param name="fromLevels">What it takes besides from what stands on its levels, N·m; null leaves moments out.</param>
    private DemandOrigin OriginOf(int segment, int member, MemberForces total, DemandState state, double? fromLevels)
    {
        bool strongAtStart = Math.Abs(total.StrongStart) >= Math.Abs(total.StrongEnd), weakAtStart = Math.Abs(total.WeakStart) >= Math.Abs(total.WeakEnd);
        double strongSign = (strongAtStart ? total.StrongStart : total.StrongEnd) < 0 ? -1 : 1, weakSign = (weakAtStart ? total.WeakStart : total.WeakEnd) < 0 ? -1 : 1;
        double[] sums = Of(total);
        if (fromLevels is > 0 and { } more && (sums[1] != 0 || sums[2] != 0))
            (sums[1], sums[2]) = (sums[1] + more, sums[2] + more);
        else
            more = 0;
        return new DemandOrigin(state, fromLevels is null ? forces[..1] : forces, At, sums)
        {
            Besides = more > 0 ? [("what stands on the levels at its ends, the most of it", [0, more, more])] : [],
            Then = SecondOrder,
        };

        double[] Of(in MemberForces f) => fromLevels is null ? [f.N] : [f.N, strongSign * (strongAtStart ? f.StrongStart : f.StrongEnd), weakSign * (weakAtStart ? f.WeakStart : f.WeakEnd)];

        double[] At(LoadCase loadCase)
        {
            SegmentModel own = loadCase.Model.Segments[segment];
            var all = new double[own.Members.Count * MemberForces.Count];
            loadCase.MemberForces(own, all);
            return Of(MemberForces.Of(all.AsSpan(member * MemberForces.Count, MemberForces.Count)));
        }

        void SecondOrder(Working w)
        {
            if (amplification == 1)
                return;
            double k = w.Given("k", amplification, Dimension.Number, "second order: what the sway adds"), N = sums[0];
            w.Let("N_Ed", k * N, Dimension.Force);
            if (fromLevels is null)
                return;
            double M_strong = sums[1], M_weak = sums[2];
            w.Let("M_strongEd", k * M_strong, Dimension.Moment);
            w.Let("M_weakEd", k * M_weak, Dimension.Moment);
        }
    }

    /// <summary>The bending that legs take from what stands on the levels at their ends, N·m: half goes up and half down where legs go on.</summary>
    private double[] FromLevels(BodyModel body, int index, LatticeSegment lattice)
    {
        SegmentModel segment = body.Segments[index];
        var moments = new double[segment.Members.Count];
        foreach (bool top in (ReadOnlySpan<bool>)[false, true])
        {
            int level = top ? index + 1 : index, beyond = top ? index + 1 : index - 1;
            LevelSide[] sides = LevelSide.Of(body, level, feet);
            double part = beyond >= 0 && beyond < body.Segments.Length && body.Segments[beyond].Segment is LatticeSegment ? 0.5 : 1;
            for (int i = 0; i < moments.Length && sides.Length > 0; i++)
            {
                LatticeMember member = segment.Members[i];
                if (member.Role == LatticeRole.Leg && member.Bay == (top ? lattice.Bays : 1))
                    moments[i] = Math.Max(moments[i], part * LevelSide.MomentOnLeg(sides, member.Place - 1));
            }
        }
        return moments;
    }

    /// <summary>The states of one lattice member that can be the worst for something.</summary>
    private sealed class MemberStates
    {
        public (double N, DemandState? State) Least { get; private set; } = (double.PositiveInfinity, null);

        public (double N, DemandState? State) Greatest { get; private set; } = (double.NegativeInfinity, null);

        /// <summary>No other has as much axial force of one sign and as much of both moments.</summary>
        public List<(MemberForces Forces, DemandState State)> Bent { get; } = [];

        public void Look(in MemberForces forces, DemandState state)
        {
            Least = Least.N == double.PositiveInfinity || Extremes.Exceeds(-forces.N, -Least.N) ? (forces.N, state) : Least;
            Greatest = Greatest.N == double.NegativeInfinity || Extremes.Exceeds(forces.N, Greatest.N) ? (forces.N, state) : Greatest;
            for (int i = Bent.Count - 1; i >= 0; i--)
            {
                if (IsCovered(forces, Bent[i].Forces))
                    return;
                if (IsCovered(Bent[i].Forces, forces))
                    Bent.RemoveAt(i);
            }
            Bent.Add((forces, state));
        }

        private static bool IsCovered(in MemberForces a, in MemberForces by) =>
            a.N < 0 == by.N < 0 && Math.Abs(a.N) <= Math.Abs(by.N) && a.Strong <= by.Strong && a.Weak <= by.Weak && a.V <= by.V;
    }

    /// <summary>A lattice member with what it carries, times what second order makes of it.</summary>
    internal static LoadedMember Loaded(SegmentModel segment, LatticeSegment lattice, LatticeMember member, double amplification, in MemberForces forces, string where)
    {
        bool isLeg = member.Role == LatticeRole.Leg, crosses = member.Pair >= 0 && lattice.Bracing == Bracing.Cross;
        MemberConnection? joint = isLeg ? lattice.LegSplice : lattice.BraceJoint;
        // Legs beside a face without a diagonal are held at the levels alone.
        double free = isLeg && segment.LacksDiagonalBeside(member) ? lattice.Bays : 1;
        return new LoadedMember
        {
            Section = member.Section,
            Material = lattice.Material,
            Length = Length.FromMeters((member.To - member.From).Length),
            Axial = Force.FromNewtons(amplification * forces.N),
            StrongMoment = Torque.FromNewtonMeters(amplification * forces.Strong),
            WeakMoment = Torque.FromNewtonMeters(amplification * forces.Weak),
            Shear = Force.FromNewtons(amplification * forces.V),
            WeakFactor = crosses ? LoadedMember.CrossedFactor(member.Section) : free,
            StrongFactor = free,
            IsLeg = isLeg,
            Ends = isLeg ? MemberEnds.Centered : joint?.Ends ?? MemberEnds.OneLeg,
            Connection = joint,
            Where = where,
        };
    }

    private void AddTube(MemberEntries entries, SegmentModel segment, SegmentModel? above, int number, MemberSegment member, BarDesign design)
    {
        MemberLoad[] bottoms = [.. demands.EndsOf(number).Select(ends => Cut(segment, number, member, ends, atTop: false, design))];
        MemberLoad[] tops = [.. demands.EndsOf(number).Select(ends => Cut(segment, number, member, ends, atTop: true, design))];
        lists.Run(entries.Bending, bottoms.Concat(tops));
        if (member.Section is not Tube)
            return;
        if (member.LowerJoint is { } joint)
            lists.Run(entries.TubeJoint, bottoms.Select(bottom => bottom with { Joint = joint }));
        if (member.LowerJoint is FlangeJoint lower)
            lists.Run(entries.FlangeWeld, bottoms.Select(bottom => bottom with { Joint = lower }));
        // The lower of two flanges is welded to the tube below.
        if (above?.Segment is MemberSegment { LowerJoint: FlangeJoint upper })
            lists.Run(entries.FlangeWeld, tops.Select(top => top with { Joint = upper }));
    }

    private MemberLoad Cut(SegmentModel segment, int number, MemberSegment member, EndForces ends, bool atTop, BarDesign design)
    {
        SectionForce forces = atTop ? ends.Top : ends.Bottom;
        double N = forces.Axial.Newtons, factor = stability.BucklingFactor ?? Stability.GreatestFactor;
        string where = string.Join(", ", new[] { atTop ? "top" : "bottom", ends.State.When }.Where(part => part.Length > 0));
        return new MemberLoad(TubeAt(segment, member, forces, atTop ? 1 : 0, where) with
        {
            CriticalForce = Math.Max(N, ends.SteadyAxial) < -1 ? Force.FromNewtons(-factor * ends.SteadyAxial) : null,
            Amplification = amplification,
        }, design, Origin: DemandOrigin.OfCut(ends, number, atTop));
    }

    /// <summary>A tube in a cut.</summary>
    /// <param name="segment">The segment.</param>
    /// <param name="member">Its tube.</param>
    /// <param name="forces">The forces in the cut.</param>
    /// <param name="t">0 at the bottom, 1 at the top.</param>
    /// <param name="end">The cut in words.</param>
    internal static LoadedMember TubeAt(SegmentModel segment, MemberSegment member, SectionForce forces, double t, string end)
    {
        Section section = member.SectionAt(t);
        double c = Math.Cos(member.Roll.Radians), s = Math.Sin(member.Roll.Radians);
        double M_x = forces.MomentX.NewtonMeters, M_y = forces.MomentY.NewtonMeters;
        (double strong, double weak) = section.OutlineDiameter is not null ? (double.Hypot(M_x, M_y), 0) : (Math.Abs(c * M_y - s * M_x), Math.Abs(c * M_x + s * M_y));
        return new LoadedMember
        {
            Section = section,
            Material = member.Material,
            Length = Length.FromMeters(segment.Span),
            Axial = forces.Axial,
            StrongMoment = Torque.FromNewtonMeters(strong),
            WeakMoment = Torque.FromNewtonMeters(weak),
            Shear = Force.FromNewtons(double.Hypot(forces.ShearX.Newtons, forces.ShearY.Newtons)),
            Torsion = Torque.FromNewtonMeters(Math.Abs(forces.Torsion.NewtonMeters)),
            Where = $"{segment.Name}, {end}",
        };
    }

    /// <summary>One line for all that lacks a description, so that it does not read as a pass.</summary>
    private void AddUndescribed(BodyModel body)
    {
        MemberEntries entries = MemberEntries.Of(body);
        NotChecked(entries.LegSplices, entries.LegSplices.Needs, s => s is LatticeSegment { LegSplice: null });
        NotChecked(entries.BraceJoints, entries.BraceJoints.Needs, s => s is LatticeSegment { BraceJoint: null });
        NotChecked(PlateSheet.Gussets.Tension, $"gussets are not described ({nameof(MemberConnection)}.{nameof(MemberConnection.Plate)})", s => s is LatticeSegment { BraceJoint: { Plate: null } });
        NotChecked(PlateSheet.Splices.Tension, $"splice plates are not described ({nameof(MemberConnection)}.{nameof(MemberConnection.Plate)})", s => s is LatticeSegment { LegSplice: { Plate: null } });
        NotChecked(entries.TubeJoint, "their joints are not described, or are not of round tubes", s => s is MemberSegment { LowerJoint: null } or MemberSegment { Section: not Tube });
        NotChecked(entries.Core, entries.Core.Needs, s => s is CoreSegment);
        foreach (SegmentModel segment in body.Segments.Where(s => s.FacesWithoutDiagonal.Count > 0))
            lists.Warnings.Add($"{segment.Name} is not triangulated: no diagonal in {string.Join("; ", segment.FacesWithoutDiagonal)}. Its legs bend as posts there, and are checked so.");

        void NotChecked(CheckEntry entry, string reason, Func<TowerSegment, bool> lacks) =>
            lists.Missing(entry, reason, [.. body.Segments.Where(s => lacks(s.Segment)).Select(s => s.Name)]);
    }

    private BarDesign DesignFor(Material material) => DesignFor(material, criteria);

    /// <summary>The rules for members of a metal.</summary>
    internal static BarDesign DesignFor(Material material, Criteria criteria) =>
        criteria.Apply(BarDesign.For(material, criteria.TowerCodeInUse) with { AllowableFraction = criteria.TowerStressFraction ?? 1 / 1.5 });

    private IEnumerable<Assumption> Assumptions(TowerSegment segment, BarDesign design)
    {
        yield return new Assumption("second-order effects in members", Invariant($"first-order forces of members times {amplification:0.###}, the amplification of the sway or, if more, 1/(1 − 1/α_cr)"), Source.En1993_1_1("5.2.2 (5)"));
        if (segment is LatticeSegment lattice)
        {
            yield return axial;
            if (lattice.Bracing == Bracing.Cross)
                yield return Crossings;
        }
        else
        {
            yield return tubeCritical;
            if (design.Code == DesignCode.En1993 && design.Metal == MetalKind.StructuralSteel)
                yield return coldFormed;
        }
        foreach (Assumption factor in FactorsOf(design, criteria))
            yield return factor;
    }

    /// <summary>The factors of the rules for members that nobody gave.</summary>
    internal static IEnumerable<Assumption> FactorsOf(BarDesign design, Criteria criteria)
    {
        if (design.Code == DesignCode.En1993 && criteria.Annex is null)
            yield return new Assumption("partial factors of tower members", Invariant($"γ_M0 {design.GammaM0}, γ_M1 {design.GammaM1}, γ_M2 {design.GammaM2}"), Source.En1993_1_1("6.1 (1), recommended values"));
        if (design.Code == DesignCode.AllowableStress && criteria.TowerStressFraction is null)
            yield return fraction;
    }

    /// <summary>That of the sway and, where more, that of a shape alone that buckles: a limb's own, or of what shakes, is not in the sway.</summary>
    internal static double Amplification(SituationDemands demands)
    {
        Stability stability = demands.Response.Stability;
        double amplification = Math.Max(1, stability.Amplification ?? 1);
        return stability.BucklingFactor is > 1 and { } factor ? Math.Max(amplification, factor / (factor - 1)) : amplification;
    }
}
