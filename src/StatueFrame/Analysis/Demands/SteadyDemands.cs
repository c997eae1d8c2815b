using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>The forces of what acts steadily, one set a load case.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SteadyDemands(Response response) : PartDemands
{
    public override void Bars(int ring, BarVisitor visit)
    {
        (RingElement element, int band) = response.Model.Rings[ring];
        Span<double> forces = stackalloc double[FrameElement.Size];
        foreach (LoadCase loadCase in response.Cases)
        {
            foreach (BarModel bar in element.Bars)
            {
                foreach (SkinAssumption skin in SkinBounds.All)
                {
                    if (loadCase.ForcesOf(element, bar, band, skin, forces))
                        visit(bar, skin, BarEnds.Of(forces), loadCase.State);
                }
            }
        }
    }

    public override void Approaches(int ring, ApproachVisitor visit)
    {
        (RingElement element, int band) = response.Model.Rings[ring];
        foreach (LoadCase loadCase in response.Cases)
        {
            foreach (BarModel bar in element.Bars)
                visit(bar, loadCase.Approach(element, bar, band), loadCase.State);
        }
    }

    public override void Members(int number, MemberVisitor visit)
    {
        SegmentModel segment = response.Model.Segments[number];
        var forces = new double[segment.Members.Count * MemberForces.Count];
        foreach (LoadCase loadCase in response.Cases)
        {
            loadCase.MemberForces(segment, forces);
            for (int i = 0; i < segment.Members.Count; i++)
                visit(i, MemberForces.Of(forces.AsSpan(i * MemberForces.Count, MemberForces.Count)), loadCase.State);
        }
    }

    public override IEnumerable<EndForces> EndsOf(int number)
    {
        SegmentModel segment = response.Model.Segments[number];
        foreach (LoadCase loadCase in response.Cases)
        {
            (SectionForce bottom, SectionForce top) = loadCase.SectionForcesOf(segment);
            yield return new EndForces(bottom, top, bottom.Axial.Newtons, loadCase.WeightFactor, loadCase.State);
        }
    }

    public override IEnumerable<BaseForces> OnBase() =>
        response.Cases.Select(loadCase => new BaseForces(loadCase.Base, loadCase, loadCase.State));
}
