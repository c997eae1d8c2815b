using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Analysis;

/// <summary>The forces of what acts steadily with those of a shock, at the times at which they are the greatest.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="response">What acts steadily; one load case, as a shock has no wind beside it.</param>
/// <param name="shock">The shock.</param>
/// <param name="damping">The damping that it was worked out with.</param>
internal sealed class ShockDemands(Response response, ShockResponse shock, DampingModel damping) : PartDemands
{
    private readonly LoadCase rest = response.Cases[0];

    public override IEnumerable<Assumption> Assumptions => [.. damping.Assumptions, .. shock.Assumptions];

    public override (double Least, double Greatest)[] LatticeOf(SegmentModel segment)
    {
        (double Least, double Greatest)[] all = new SteadyDemands(response).LatticeOf(segment);
        ReadOnlySpan<(double Least, double Greatest)> moved = shock.Tower.MembersOf(segment);
        for (int i = 0; i < all.Length; i++)
        {
            all[i] = (all[i].Least + moved[i].Least, all[i].Greatest + moved[i].Greatest);
            if (segment.IsTensionOnly && segment.Members[i].Pair >= 0)
                all[i].Least = Math.Max(0, all[i].Least);
        }
        return all;
    }

    public override IEnumerable<EndForces> EndsOf(SegmentModel segment)
    {
        EndForces still = new SteadyDemands(response).EndsOf(segment).First();
        yield return still with { When = "at rest" };
        foreach ((int sample, double[] cuts) in shock.Tower.EndsOf(segment))
        {
            SectionForce bottom = SectionForce.Of(cuts.AsSpan(0, Frame.NodeSize)), top = SectionForce.Of(cuts.AsSpan(Frame.NodeSize));
            yield return still with { Bottom = Sum(still.Bottom, bottom), Top = Sum(still.Top, top), When = At(sample) };
        }
    }

    public override IEnumerable<BaseForces> OnBase()
    {
        foreach (int sample in WorstTimes.Of(shock.Reactions))
        {
            ReadOnlySpan<double> r = shock.Reactions.Slice(Frame.NodeSize * sample, Frame.NodeSize);
            yield return new BaseForces(new BaseReaction(new Resultant(new Vector3D(r[0], r[1], r[2]), new Vector3D(r[3], r[4], r[5]))), rest, At(sample));
        }
    }

    private static SectionForce Sum(SectionForce a, SectionForce b) => new(a.Forces + b.Forces, a.Moments + b.Moments);

    private string At(int sample) => Invariant($"shock after {sample * shock.Step.Seconds:0.####} s");
}
