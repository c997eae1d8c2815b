using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The peak of one effect of gusts, and what the profile's peak pressure on each single part gives to it: bands first, then bare tower and fittings.</summary>
/// <remarks>Immutable and safe to share between threads. SI units.</remarks>
/// <param name="Group">The body, <see cref="Standoffs"/> or "points".</param>
/// <param name="Where">The cut, ring or point.</param>
/// <param name="What">What of it, as in "bending".</param>
/// <param name="Heading">The wind's heading.</param>
/// <param name="ByPart">That of each part, at its peak pressure; together zero or more.</param>
/// <param name="OffCenterByPart">The same of the share of the wind that presses off the middle.</param>
/// <param name="AsideByPart">What that adds by being off the middle as far as it may be.</param>
/// <param name="Peak">The peak by random vibration.</param>
/// <param name="Deviation">The standard deviation about the mean.</param>
internal sealed record GustDemand(string Group, string Where, string What, Angle Heading, double[] ByPart, double[] OffCenterByPart, double[] AsideByPart, double Peak, double Deviation)
{
    /// <summary>What is below this part of the greatest effect of its kind governs nothing.</summary>
    private const double Small = 0.02;

    /// <summary>A body with less than this part of the statue's greatest effect has none but for rounding.</summary>
    private const double Nothing = 1e-9;

    /// <summary>The effect that no factor on the pressure is for, but <see cref="WindAction.Eccentricity"/>.</summary>
    public const string Twist = "twist";

    /// <summary>The moment about axes across a body.</summary>
    public const string Bending = "bending";

    /// <summary>The group of the effects on bars.</summary>
    public const string Standoffs = "standoffs";

    /// <summary>What is not looked at.</summary>
    public static Assumption LeftOut { get; } = new(
        "effects of gusts left out", "below 2 % of the greatest of their kind and body; standoffs on a rigid ring stressed below a twentieth of their yield strength; bodies that meet no wind, which inertia alone shakes; lift", Source.Assumed("gusts"));

    /// <summary>The effect of the peak pressure with a gust factor on each part, amid the figure or off its middle.</summary>
    public double With(double[] factors) =>
        Math.Max(DenseVector.Dot(factors, ByPart), DenseVector.Dot(factors, OffCenterByPart) + Math.Abs(DenseVector.Dot(factors, AsideByPart)));

    /// <summary>The same with bare tower and fittings as one last part.</summary>
    public GustDemand WithRestAsOne(int bands)
    {
        return this with { ByPart = Folded(ByPart), OffCenterByPart = Folded(OffCenterByPart), AsideByPart = Folded(AsideByPart) };

        double[] Folded(double[] byPart) => [.. byPart[..bands], byPart[bands..].Sum()];
    }

    /// <summary>
    /// The effects of a wind, each in the heading in which its peak is greatest, against the greatest that the factors in use
    /// give in any heading.
    /// </summary>
    /// <param name="model">The statue.</param>
    /// <param name="modes">Its modes.</param>
    /// <param name="wind">The wind.</param>
    /// <param name="damping">Damping in still air; null takes that of welded lattice towers.</param>
    /// <param name="assumptions">Receives every value taken for the user.</param>
    public static IReadOnlyList<(GustDemand Demand, double InUse)> Of(StatueModel model, ModalResponse modes, WindAction wind, DampingModel? damping, List<Assumption> assumptions)
    {
        var greatest = new Dictionary<(string, string, string), (GustDemand Demand, double InUse)>();
        double[]? factors = null;
        foreach (Angle heading in Different(model, wind))
        {
            GustResponse gusts = GustResponse.Of(model, modes, wind, heading, damping);
            assumptions.AddRange(gusts.Assumptions);
            foreach (GustDemand demand in gusts.Effects())
            {
                var key = (demand.Group, demand.Where, demand.What);
                double inUse = demand.With(factors ??= [.. demand.ByPart.Select((_, a) => a < model.BandCount ? wind.GustFactorOf(a) : wind.GustFactorOfRest)]);
                greatest[key] = !greatest.TryGetValue(key, out (GustDemand Demand, double InUse) known) ? (demand, inUse)
                    : (Extremes.Exceeds(demand.Peak, known.Demand.Peak) ? demand : known.Demand, Math.Max(inUse, known.InUse));
            }
        }
        // A bare tower that is alike on both sides is twisted by rounding alone.
        double bending = greatest.Values.Where(found => found.Demand.What == Bending).Select(found => found.Demand.Peak).DefaultIfEmpty().Max();
        Dictionary<string, double> statue = greatest.Values.GroupBy(found => found.Demand.What).ToDictionary(what => what.Key, what => what.Max(found => found.InUse));
        return [.. greatest.Values.GroupBy(found => (found.Demand.Group, found.Demand.What)).SelectMany(kind =>
        {
            // Where no wind comes down, as above the last band or in a limb without skin, only a little inertia does. Twist that nothing is for stays.
            double most = kind.Max(found => found.Demand.Peak), mostInUse = kind.Max(found => found.InUse);
            bool isMet = mostInUse > Nothing * statue[kind.Key.What], lacksTwist = kind.Key.What == Twist && !wind.PressesOffCenter;
            return kind.Where(found => found.Demand.Peak > Small * most && !(kind.Key.What == Twist && most <= Nothing * bending) && (lacksTwist || (isMet && found.InUse > Small * mostInUse)));
        })];
    }

    /// <summary>The headings without those whose opposite meets the same parts with the same forces at the same places: gusts in it do the same.</summary>
    private static List<Angle> Different(StatueModel model, WindAction wind)
    {
        var kept = new List<(Angle Heading, StatueWind Met)>();
        foreach (Angle heading in wind.Headings)
        {
            var met = new StatueWind(model, wind, heading);
            if (!kept.Exists(other => IsOpposite(other.Met, met)))
                kept.Add((heading, met));
        }
        return kept.ConvertAll(k => k.Heading);
    }

    private static bool IsOpposite(StatueWind a, StatueWind b)
    {
        const double same = 1e-9;
        if ((a.Direction + b.Direction).Length > same)
            return false;
        if (a.Parts.Length != b.Parts.Length)
            return false;
        for (int i = 0; i < a.Parts.Length; i++)
        {
            // What lifts or twists does not turn round with the wind.
            if (a.Parts[i].MeanUp != 0 || a.Parts[i].MeanTwist != 0)
                return false;
            if (Math.Abs(a.Parts[i].MeanForce - b.Parts[i].MeanForce) > same * a.Parts[i].MeanForce || Math.Abs(a.Parts[i].MeanAside - b.Parts[i].MeanAside) > same * a.Parts[i].MeanForce || (a.Parts[i].At - b.Parts[i].At).Length > same)
                return false;
        }
        return true;
    }
}
