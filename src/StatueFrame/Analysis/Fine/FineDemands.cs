using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>The forces of a fine model, one set a load case; on the base they are those of the other model, by equilibrium.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class FineDemands(FineResponse response) : PartDemands
{
    private readonly StatueModel reduced = response.Model.Reduced;

    public override void Bars(int ring, BarVisitor visit)
    {
        foreach (FineCase loadCase in response.Cases)
        {
            var state = new DemandState(Headings.Describe(loadCase.Heading), shaken: FineCase.AllByFineModel);
            foreach (FineBar bar in response.Model.ByRing.GetValueOrDefault(reduced.Rings[ring].Ring) ?? [])
                visit(bar.Bar, SkinAssumption.Shell, loadCase.EndsOf(bar), state);
        }
    }

    public override void Members(int number, MemberVisitor visit)
    {
        SegmentModel segment = reduced.Segments[number];
        // Which braces go slack is found by the other model; here each acts as half of its pair.
        if (segment.IsTensionOnly)
            return;
        Span<double> u = stackalloc double[FrameElement.Size];
        var forces = new double[segment.Members.Count * MemberForces.Count];
        foreach (FineCase loadCase in response.Cases)
        {
            segment.Element.Gather(loadCase.Displacements, u);
            segment.MemberForces(segment.Element, u, forces, loadCase.Between(segment));
            DemandState state = loadCase.State;
            for (int i = 0; i < segment.Members.Count; i++)
                visit(i, MemberForces.Of(forces.AsSpan(i * MemberForces.Count, MemberForces.Count)), state);
        }
    }

    public override IEnumerable<EndForces> EndsOf(int number)
    {
        SegmentModel segment = reduced.Segments[number];
        foreach (FineCase loadCase in response.Cases)
        {
            (SectionForce bottom, SectionForce top) = segment.SectionForces(segment.Element, loadCase.Displacements, loadCase.Between(segment));
            yield return new EndForces(bottom, top, bottom.Axial.Newtons, loadCase.WeightFactor, loadCase.State);
        }
    }

    public override IEnumerable<BaseForces> OnBase() => [];
}
