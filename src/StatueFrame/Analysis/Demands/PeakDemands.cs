using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// The forces of what acts steadily with the peaks of what shakes the statue, as an earthquake: bars and lattice members at the peaks of each of their
/// forces and corners, both ways; cuts by the peaks of shear and bending towards each of many directions, with the peaks of axial force, up and down, and
/// of torsion. Taking these peaks at one time is on the safe side.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="response">What acts steadily.</param>
/// <param name="peaks">The peaks of what shakes the statue.</param>
/// <param name="factor">Factor on them, zero or more.</param>
/// <param name="what">What shakes it, in words: "earthquake", "gusts".</param>
internal sealed class PeakDemands(Response response, DynamicPeaks peaks, double factor, string what) : PartDemands
{
    private readonly SteadyDemands rest = new(response);
    private readonly string beside = FormattableString.Invariant($"{what}: peaks with their factor, {factor:0.###}");

    public override void Bars(int ring, BarVisitor visit)
    {
        (RingElement element, int band) = response.Model.Rings[ring];
        var still = new List<(SkinAssumption Skin, BarEnds Ends, DemandState State)>[element.Bars.Length];
        Dictionary<DemandState, DemandState> shaken = response.Cases.ToDictionary(loadCase => loadCase.State, loadCase => Shaken(loadCase));
        rest.Bars(ring, (BarModel bar, SkinAssumption skin, in BarEnds ends, DemandState state) =>
        {
            visit(bar, skin, ends, state);
            (still[bar.Index] ??= []).Add((skin, ends, shaken[state]));
        });
        peaks.Bars.Visit(element, band, (BarModel bar, SkinAssumption skin, in BarEnds peak) =>
        {
            foreach ((SkinAssumption under, BarEnds ends, DemandState state) in still[bar.Index] ?? [])
            {
                if (under != skin)
                    continue;
                visit(bar, skin, ends + factor * peak, state);
                visit(bar, skin, ends + -factor * peak, state);
            }
        });
    }

    public override void Approaches(int ring, ApproachVisitor visit)
    {
        (RingElement element, int band) = response.Model.Rings[ring];
        double[] shaken = peaks.Bars.Approaches(element, band);
        Dictionary<DemandState, DemandState> states = response.Cases.ToDictionary(loadCase => loadCase.State, loadCase => Shaken(loadCase));
        rest.Approaches(ring, (bar, towards, state) => visit(bar, towards + factor * shaken[bar.Index], states[state]));
    }

    public override void Members(int number, MemberVisitor visit)
    {
        rest.Members(number, visit);
        SegmentModel segment = response.Model.Segments[number];
        double[][] states = peaks.MemberStates(segment);
        var forces = new double[segment.Members.Count * MemberForces.Count];
        Span<double> sum = stackalloc double[MemberForces.Count];
        foreach (LoadCase loadCase in response.Cases)
        {
            loadCase.MemberForces(segment, forces);
            DemandState shaken = Shaken(loadCase);
            for (int i = 0; i < segment.Members.Count; i++)
            {
                bool goesSlack = segment.IsTensionOnly && segment.Members[i].Pair >= 0;
                foreach (double sign in (ReadOnlySpan<double>)[1, -1])
                {
                    for (int state = 0; state < states[i].Length; state += MemberForces.Count)
                    {
                        for (int k = 0; k < sum.Length; k++)
                            sum[k] = forces[i * sum.Length + k] + sign * factor * states[i][state + k];
                        sum[0] = goesSlack ? Math.Max(0, sum[0]) : sum[0];
                        visit(i, MemberForces.Of(sum), shaken);
                    }
                }
            }
        }
    }

    private DemandState Shaken(LoadCase steady, string? direction = null) => new(
        string.Join(", ", new[] { direction ?? what, steady.When }.Where(part => part.Length > 0)), steady, beside);

    public override IEnumerable<EndForces> EndsOf(int number)
    {
        (CutPeaks bottom, CutPeaks top) = peaks.EndPeaks(response.Model.Segments[number]);
        double first = bottom.MainDirection;
        foreach (EndForces steady in rest.EndsOf(number))
        {
            foreach ((var below, var above) in bottom.States(first, what).Zip(top.States(first, what)))
            {
                yield return steady with
                {
                    Bottom = With(steady.Bottom, below.Force, below.Moment, below.TorsionIsOpen),
                    Top = With(steady.Top, above.Force, above.Moment, above.TorsionIsOpen),
                    State = Shaken(steady.State.Steady!, below.When),
                };
            }
        }
    }

    public override IEnumerable<BaseForces> OnBase()
    {
        CutPeaks onBase = peaks.OnBase;
        foreach (LoadCase loadCase in response.Cases)
        {
            foreach ((Vector3D force, Vector3D moment, bool torsionIsOpen, string when) in onBase.States(onBase.MainDirection, what))
            {
                Vector3D m = loadCase.Resultant.Moment;
                yield return new BaseForces(
                    new BaseReaction(new Resultant(loadCase.Resultant.Force + factor * force, m + factor * (torsionIsOpen ? Alike(moment, m) : moment))), loadCase, Shaken(loadCase, when));
            }
        }
    }

    private SectionForce With(SectionForce steady, Vector3D force, Vector3D moment, bool torsionIsOpen) =>
        new(steady.Forces + factor * force, steady.Moments + factor * (torsionIsOpen ? Alike(moment, steady.Moments) : moment));

    /// <summary>A peak moment with its twist the way the steady one twists.</summary>
    private static Vector3D Alike(Vector3D peak, Vector3D steady) => new(peak.X, peak.Y, Math.CopySign(peak.Z, steady.Z));
}
