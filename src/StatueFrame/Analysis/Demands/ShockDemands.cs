using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Analysis;

/// <summary>The forces of what acts steadily with those of a shock, at the times at which they are the greatest.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="response">What acts steadily; one load case, as a shock has no wind beside it.</param>
/// <param name="shock">The shock.</param>
internal sealed class ShockDemands(Response response, ShockResponse shock) : PartDemands
{
    private readonly SteadyDemands still = new(response);
    private readonly ShockStrips strips = new(response.Model, response.Situation);
    private const string Shock = "shock, peaks at one time";

    private readonly LoadCase rest = response.Cases[0];
    private readonly DemandState atRest = new("at rest", response.Cases[0]), shaken = new(Shock, response.Cases[0], "shock: peaks with its factor");

    public override void Bars(int ring, BarVisitor visit)
    {
        (RingElement element, int band) = response.Model.Rings[ring];
        still.Bars(ring, (BarModel bar, SkinAssumption skin, in BarEnds ends, DemandState _) =>
        {
            visit(bar, skin, ends, atRest);
            if (skin == SkinAssumption.RigidRing)
            {
                (BarEnds pressed, BarEnds pulled) = shock.BarPeaks!.PeaksOf(ring, bar);
                visit(bar, skin, ends + pressed.AsPeaks(), shaken);
                visit(bar, skin, ends + pulled.AsPeaks(), shaken);
            }
            else if (strips.PeakOf(element, bar, band, skin, out BarEnds peak, out double _))
            {
                visit(bar, skin, ends + peak, shaken);
                visit(bar, skin, ends + -1 * peak, shaken);
            }
        });
    }

    /// <summary>At rest, and by all that the shock moves a skin end against its tower end, whichever way, on the ring or alone with its strip.</summary>
    public override void Approaches(int ring, ApproachVisitor visit)
    {
        (RingElement element, int band) = response.Model.Rings[ring];
        int first = response.Model.Rings.Take(ring).Sum(before => before.Ring.Bars.Length);
        still.Approaches(ring, (bar, towards, _) =>
        {
            double moved = shock.Bars[first + bar.Index].Movement.Value.Meters;
            foreach (SkinAssumption skin in SkinBounds.All)
            {
                if (skin != SkinAssumption.RigidRing && strips.PeakOf(element, bar, band, skin, out BarEnds _, out double alone))
                    moved = Math.Max(moved, alone);
            }
            visit(bar, towards + moved, shaken);
        });
    }

    public override void Members(int number, MemberVisitor visit)
    {
        SegmentModel segment = response.Model.Segments[number];
        var forces = new double[segment.Members.Count * MemberForces.Count];
        rest.MemberForces(segment, forces);
        Span<double> sum = stackalloc double[MemberForces.Count];
        for (int i = 0; i < segment.Members.Count; i++)
        {
            ReadOnlySpan<double> own = forces.AsSpan(i * MemberForces.Count, MemberForces.Count);
            visit(i, MemberForces.Of(own), atRest);
            bool goesSlack = segment.IsTensionOnly && segment.Members[i].Pair >= 0;
            ReadOnlySpan<(double Least, double Greatest)> moved = shock.Tower.MembersOf(segment, i);
            foreach (bool pulled in (ReadOnlySpan<bool>)[false, true])
            {
                sum[0] = own[0] + (pulled ? moved[0].Greatest : moved[0].Least);
                sum[0] = goesSlack ? Math.Max(0, sum[0]) : sum[0];
                // The other forces each the way it goes farther: taking the peaks at one time is on the safe side.
                for (int k = 1; k < sum.Length; k++)
                    sum[k] = own[k] + moved[k].Greatest >= -(own[k] + moved[k].Least) ? own[k] + moved[k].Greatest : own[k] + moved[k].Least;
                visit(i, MemberForces.Of(sum), shaken);
            }
        }
    }

    public override IEnumerable<EndForces> EndsOf(int number)
    {
        SegmentModel segment = response.Model.Segments[number];
        EndForces first = still.EndsOf(number).First();
        yield return first with { State = atRest };
        foreach ((int sample, double[] cuts) in shock.Tower.EndsOf(segment))
        {
            SectionForce bottom = SectionForce.Of(cuts.AsSpan(0, Frame.NodeSize)), top = SectionForce.Of(cuts.AsSpan(Frame.NodeSize));
            yield return first with { Bottom = Sum(first.Bottom, bottom), Top = Sum(first.Top, top), State = At(sample) };
        }
    }

    public override IEnumerable<BaseForces> OnBase()
    {
        // The reactions hold what acts steadily as it was given; here it may be changed.
        var changed = new Resultant(rest.Resultant.Force - shock.AtRest.Force, rest.Resultant.Moment - shock.AtRest.Moment);
        foreach (int sample in WorstTimes.Of(shock.Reactions))
        {
            ReadOnlySpan<double> r = shock.Reactions.Slice(Frame.NodeSize * sample, Frame.NodeSize);
            var given = new Resultant(new Vector3D(r[0], r[1], r[2]), new Vector3D(r[3], r[4], r[5]));
            yield return new BaseForces(new BaseReaction(given + changed), rest, At(sample));
        }
    }

    private static SectionForce Sum(SectionForce a, SectionForce b) => new(a.Forces + b.Forces, a.Moments + b.Moments);

    private DemandState At(int sample) => new(Invariant($"shock after {sample * shock.Step.Seconds:0.####} s"), rest, "shock at that time, with its factor");
}
