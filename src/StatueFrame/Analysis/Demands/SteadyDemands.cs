namespace StatueFrame.Analysis;

/// <summary>The forces of what acts steadily, one set a load case.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SteadyDemands(Response response) : PartDemands
{
    public override bool IsSteady => true;

    public override (double Least, double Greatest)[] LatticeOf(SegmentModel segment)
    {
        ReadOnlySpan<LatticeEnvelope.Extreme> extremes = response.Lattice.Of(segment);
        var all = new (double, double)[extremes.Length];
        for (int i = 0; i < all.Length; i++)
            all[i] = (extremes[i].Least, extremes[i].Greatest);
        return all;
    }

    public override IEnumerable<EndForces> EndsOf(SegmentModel segment)
    {
        foreach (LoadCase loadCase in response.Cases)
        {
            (SectionForce bottom, SectionForce top) = loadCase.SectionForcesOf(segment);
            yield return new EndForces(bottom, top, bottom.Axial.Newtons, loadCase.WeightFactor, Headings.Describe(loadCase.Heading));
        }
    }

    public override IEnumerable<BaseForces> OnBase() =>
        response.Cases.Select(loadCase => new BaseForces(loadCase.Base, loadCase, Headings.Describe(loadCase.Heading)));
}
