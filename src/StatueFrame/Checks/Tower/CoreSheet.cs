using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Writes the checks of masonry and concrete cores in one situation into a sheet: the worst cut and heading of every segment.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class CoreSheet(StatueModel model, Criteria criteria, SituationDemands demands, SheetWriter lists)
{
    /// <summary>What is left of nothing by rounding, relative.</summary>
    private const double Rounding = 1e-9;

    private readonly string situation = demands.Situation.Name;

    public void Add()
    {
        SegmentModel[] segments = [.. model.Bodies.SelectMany(body => body.Segments)];
        if (!Array.Exists(segments, s => s.Segment is BlockSegment))
            return;
        int first = lists.Checks.Count;
        int index = 0;
        foreach (BodyModel body in model.Bodies)
        {
            for (int i = 0; i < body.Segments.Length; i++, index++)
            {
                if (body.Segments[i].Segment is BlockSegment block)
                    AddSegment([.. Cuts(body, i, block, index)], block);
            }
        }
        lists.Assume(Assumptions(segments), first);
    }

    private void AddSegment(BlockCut[] cuts, BlockSegment block)
    {
        bool isReinforced = block is ConcreteSegment { Reinforcement: not null };
        if (demands.Situation.LimitState != LimitState.Strength)
        {
            if (!isReinforced)
                lists.AddWorst(cuts.Select(cut => (BlockChecks.Kern(cut), cut.Origin)));
            return;
        }
        if (isReinforced)
        {
            lists.AddWorst(cuts.Select(cut => (BlockChecks.Interaction(cut, criteria.BaseInUse), cut.Origin)));
            lists.AddWorst(cuts.Select(cut => (BlockChecks.Shear(cut), cut.Origin)));
            return;
        }
        lists.AddWorst(cuts.Select(cut => (BlockChecks.Overturning(cut, criteria.BaseInUse), cut.Origin)));
        lists.AddWorst(cuts.Select(cut => (BlockChecks.ToeStress(cut), cut.Origin)));
        lists.AddWorst(cuts.Select(cut => (BlockChecks.Capacity(cut, criteria.BaseInUse), cut.Origin)));
        lists.AddWorst(cuts.Select(cut => (BlockChecks.Shear(cut), cut.Origin)));
    }

    /// <summary>Both ends of a segment in every load case, direction or time.</summary>
    private IEnumerable<BlockCut> Cuts(BodyModel body, int segment, BlockSegment block, int index)
    {
        SegmentModel part = body.Segments[segment];
        foreach (EndForces forces in demands.EndsOf(index))
        {
            foreach (bool top in new[] { false, true })
            {
                BaseLoad load = Of(top ? forces.Top : forces.Bottom);
                // A free end carries nothing, but for rounding.
                if (top && forces.Top.Forces.Length <= Rounding * forces.Bottom.Forces.Length && forces.Top.Moments.Length <= Rounding * Math.Max(forces.Bottom.Moments.Length, forces.Bottom.Forces.Length * part.Span))
                    continue;
                yield return Cut(load);

                BlockCut Cut(BaseLoad l) => new()
                {
                    Section = block.SectionAt(top ? 1 : 0),
                    Material = block.Stuff,
                    Reinforcement = (block as ConcreteSegment)?.Reinforcement,
                    Compression = Force.FromNewtons(l.N),
                    ShearX = Force.FromNewtons(l.Vx),
                    ShearY = Force.FromNewtons(l.Vy),
                    MomentX = Torque.FromNewtonMeters(-l.my),
                    MomentY = Torque.FromNewtonMeters(l.mx),
                    FreeHeight = Length.FromMeters((body.Levels[^1].Center - body.Levels[segment + (top ? 1 : 0)].Center).Length),
                    Where = $"{part.Name}, {(top ? "top" : "foot")}{(forces.State.When.Length > 0 ? ", " : "")}{forces.State.When}",
                    Situation = situation,
                    Origin = DemandOrigin.OfCut(forces, index, top),
                };
            }
        }
    }

    private IEnumerable<Assumption> Assumptions(SegmentModel[] segments)
    {
        foreach (Assumption factor in criteria.BaseInUse.Assumptions())
            yield return factor;
        foreach (BlockMaterial material in segments.Select(s => s.Segment).OfType<BlockSegment>().Select(s => s.Stuff).Distinct())
        {
            if (material.Gamma == (material is Masonry ? 2.5 : 1.5))
                yield return new Assumption($"partial factor of {material.Name}", FormattableString.Invariant($"{material.Gamma}"), new Source(material is Masonry ? "EN 1996-1-1:2005, 2.4.3" : "EN 1992-1-1:2004, Table 2.1N", "default"));
        }
        yield return new Assumption("stiffness of cores", "that of the whole section, not cracked", Source.Assumed("cores"));
    }

    private static BaseLoad Of(SectionForce f) => new(
        -f.Axial.Newtons, f.ShearX.Newtons, f.ShearY.Newtons, f.MomentY.NewtonMeters, -f.MomentX.NewtonMeters, f.Torsion.NewtonMeters);
}
