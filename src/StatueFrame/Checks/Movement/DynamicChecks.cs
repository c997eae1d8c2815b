using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Whether gusts may be taken as static loads.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class DynamicChecks
{
    /// <summary>Below this frequency a structure is flexible for gusts, Hz.</summary>
    internal const double RigidFrequency = 1;

    private static readonly Source Limit = Source.Asce7_22("26.2, definition of \"building or other structure, flexible\"");

    /// <summary>
    /// The lowest frequency against 1 Hz. Above it the statue is rigid for the wind, and static pressures with a rigid
    /// gust factor do. Below it, gusts need the dynamic method: then this is not a failure but a check that was not done,
    /// unless a gust factor from that method was given.
    /// </summary>
    /// <param name="first">The lowest mode.</param>
    /// <param name="wind">The wind.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check RigidForWind(ModeResult first, WindAction wind, string situation)
    {
        var subject = new CheckSubject("wind.rigid", "gusts as static loads", Situation: situation);
        double f = first.Frequency.Hertz;
        if (f < RigidFrequency && wind.GustByBand.Count > 0)
        {
            return Check.Of(subject, Dimension.Number, Source.Assumed("gusts"), w =>
            {
                w?.Note("Gust factors are given band by band; whether they hold the peaks by random vibration is a check of its own (wind.gust-effects).");
                return (0, 1);
            });
        }
        if (f < RigidFrequency)
        {
            return Check.NotChecked(subject, wind.GustEffectFactor is { } g
                ? Invariant($"the lowest frequency is {f:0.00} Hz, below 1 Hz: the gust factor {g:0.00} that was given must come from the dynamic method")
                : Invariant($"the lowest frequency is {f:0.00} Hz, below 1 Hz: gusts need the dynamic method"), Limit);
        }
        return Check.Of(subject, Dimension.Frequency, Limit, w =>
        {
            w.Given(f, Dimension.Frequency, "lowest natural frequency");
            return (RigidFrequency, f);
        });
    }

    /// <summary>
    /// The gust factor that the forces were worked out with against the one that the standard finds for the statue's own
    /// frequency, mode shape and damping. When it is too small, the forces are: give the wind a greater one.
    /// </summary>
    /// <param name="used">The factor in use, G or c_s c_d.</param>
    /// <param name="needed">The factor found.</param>
    /// <param name="source">The standard's procedure.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check GustFactor(double used, double needed, Source source, string situation) =>
        Check.Of(new CheckSubject("wind.gust-factor", "gust factor that the forces are worked out with", Situation: situation), Dimension.Number, source, w =>
        {
            w.Given(needed, Dimension.Number, "gust factor found for the statue", source);
            w.Given(used, Dimension.Number, "gust factor in use");
            return (needed, used);
        });

    /// <summary>The peak of an effect of gusts, by random vibration, against what the factors in use give in steady analysis.</summary>
    /// <param name="demand">The effect in the heading of its greatest peak.</param>
    /// <param name="inUse">Its greatest value with the factors in use, over all headings.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check GustEffect(GustDemand demand, double inUse, string situation)
    {
        CheckEntry entry = Catalogue.Find("wind.gust-effects")!;
        string where = demand.Group is GustDemand.Standoffs or "points" ? $"{demand.Where}, {demand.What}" : $"{demand.Group}, {demand.Where}, {demand.What}";
        Dimension dimension = demand.What switch { "bending" or GustDemand.Twist => Dimension.Moment, "shear" => Dimension.Force, "stress" => Dimension.Stress, _ => Dimension.SmallLength };
        return Check.Of(entry.Subject(where, situation), dimension, Source.Assumed("gusts"), w =>
        {
            w?.Note(Invariant($"Wind towards {demand.Heading.Degrees:0.#}°, characteristic, without weight. {(demand.What == GustDemand.Twist ? "More of WindAction.Eccentricity twists more" : "GustFactors.ByBand finds gust factors that are enough")}."));
            w.Given("peak", demand.Peak, dimension, "expected peak by random vibration of the whole statue");
            w.Given("steady", inUse, dimension, "by the peak pressure with the gust factors in use, amid the figure or three quarters of it off the middle, of all headings");
            return (demand.Peak, inUse);
        });
    }
}
