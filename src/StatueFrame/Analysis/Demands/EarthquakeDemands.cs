using StatueFrame.Mechanics;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Analysis;

/// <summary>
/// The forces of what acts steadily with the peaks of an earthquake: lattice members by their own peaks, pulled and pressed;
/// cuts by the peaks of shear and bending towards each of many directions, with the peaks of axial force, up and down, and
/// of torsion. Taking these peaks at one time is on the safe side.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="response">What acts steadily.</param>
/// <param name="earthquake">The earthquake.</param>
/// <param name="factor">Factor on it, zero or more.</param>
internal sealed class EarthquakeDemands(Response response, EarthquakeResponse earthquake, double factor) : PartDemands
{
    /// <summary>Every 15°, from the direction that is bent most.</summary>
    private const int Directions = 24;

    public override IEnumerable<Assumption> Assumptions =>
    [
        .. earthquake.Assumptions,
        new Assumption("peaks of an earthquake in tower, limbs and base", "axial force, shear, bending and torsion at one time, added to what else acts", Source.Assumed("earthquake")),
    ];

    public override (double Least, double Greatest)[] LatticeOf(SegmentModel segment)
    {
        (double Least, double Greatest)[] all = new SteadyDemands(response).LatticeOf(segment);
        double[] peaks = earthquake.MemberPeaks(segment);
        for (int i = 0; i < all.Length; i++)
        {
            double peak = factor * peaks[i];
            all[i] = (all[i].Least - peak, all[i].Greatest + peak);
            if (segment.IsTensionOnly && segment.Members[i].Pair >= 0)
                all[i].Least = Math.Max(0, all[i].Least);
        }
        return all;
    }

    public override IEnumerable<EndForces> EndsOf(SegmentModel segment)
    {
        (CutPeaks bottom, CutPeaks top) = earthquake.EndPeaks(segment);
        foreach (EndForces steady in new SteadyDemands(response).EndsOf(segment))
        {
            foreach ((double direction, int sign, string when) in States(bottom.MainDirection))
            {
                yield return steady with
                {
                    Bottom = With(steady.Bottom, bottom.State(direction, sign)),
                    Top = With(steady.Top, top.State(direction, sign)),
                    When = when,
                };
            }
        }
    }

    public override IEnumerable<BaseForces> OnBase()
    {
        CutPeaks peaks = earthquake.BasePeaks;
        foreach (LoadCase loadCase in response.Cases)
        {
            foreach ((double direction, int sign, string when) in States(peaks.MainDirection))
            {
                (Vector3D force, Vector3D moment) = peaks.State(direction, sign);
                Vector3D m = loadCase.Resultant.Moment;
                yield return new BaseForces(new BaseReaction(new Resultant(loadCase.Resultant.Force + factor * force, m + factor * Alike(moment, m))), loadCase, when);
            }
        }
    }

    private static IEnumerable<(double Direction, int AxialSign, string When)> States(double first)
    {
        for (int i = 0; i < Directions; i++)
        {
            double direction = first + 2 * Math.PI * i / Directions, degrees = Angle.FromRadians(direction).Degrees;
            degrees = Math.Round(degrees < 0 ? degrees + 360 : degrees, 1) % 360;
            yield return (direction, -1, Invariant($"earthquake towards {degrees:0.#}°, pressed"));
            yield return (direction, 1, Invariant($"earthquake towards {degrees:0.#}°, lifted"));
        }
    }

    private SectionForce With(SectionForce steady, (Vector3D Force, Vector3D Moment) peak) =>
        new(steady.Forces + factor * peak.Force, steady.Moments + factor * Alike(peak.Moment, steady.Moments));

    /// <summary>A peak moment with its twist the way the steady one twists.</summary>
    private static Vector3D Alike(Vector3D peak, Vector3D steady) => new(peak.X, peak.Y, Math.CopySign(peak.Z, steady.Z));
}
