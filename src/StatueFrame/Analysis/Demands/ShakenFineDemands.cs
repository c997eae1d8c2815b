namespace StatueFrame.Analysis;

/// <summary>
/// Standoffs under what acts steadily by the fine model, with the peaks that what shakes the statue gives them on rigid rings, both
/// ways. All else is left to the other model.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="response">What acts steadily.</param>
/// <param name="peaks">The peaks of what shakes the statue.</param>
/// <param name="factor">Factor on them, zero or more.</param>
/// <param name="what">What shakes it, in words: "earthquake", "vortices in mode 2".</param>
internal sealed class ShakenFineDemands(FineResponse response, DynamicPeaks peaks, double factor, string what) : PartDemands
{
    private readonly string shaken = FormattableString.Invariant($"{FineCase.AllByFineModel}; {what}: peaks on the rigid ring with their factor, {factor:0.###}");

    public override void Bars(int ring, BarVisitor visit)
    {
        (RingElement element, int band) = response.Model.Reduced.Rings[ring];
        var still = new List<(BarEnds Ends, DemandState State)>[element.Bars.Length];
        new FineDemands(response).Bars(ring, (BarModel bar, SkinAssumption _, in BarEnds ends, DemandState state) =>
            (still[bar.Index] ??= []).Add((ends, new DemandState(state.When.Length > 0 ? $"{what}, {state.When}" : what, shaken: shaken))));
        peaks.Bars.Visit(element, band, (BarModel bar, SkinAssumption skin, in BarEnds peak) =>
        {
            if (skin != SkinAssumption.RigidRing)
                return;
            foreach ((BarEnds ends, DemandState state) in still[bar.Index] ?? [])
            {
                visit(bar, SkinAssumption.Shell, ends + factor * peak, state);
                visit(bar, SkinAssumption.Shell, ends + -factor * peak, state);
            }
        });
    }

    public override void Members(int segment, MemberVisitor visit) { }

    public override IEnumerable<EndForces> EndsOf(int segment) => [];

    public override IEnumerable<BaseForces> OnBase() => [];
}
