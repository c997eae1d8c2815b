using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Checks of what a shock does: stress in bars, overturning, clearance of the skin.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class ShockChecks
{
    private static readonly Source Theory = Source.Assumed("shock");

    /// <summary>The greatest stress of a bar on its rigid ring against a part of its yield strength; a sheet looks at every bound and every force.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="fraction">The part of the yield strength that counts, above 0 to 1; in an accidental situation often 1.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check BarStress(ShockBar bar, double fraction, string situation)
    {
        if (bar.HasYielded)
            return BarChecks.BendingEntry.NotChecked("the bar yields; its stress says no more, its slip and the skin's movement do", bar.Where, situation);
        var rules = new CheckedBar(bar.Standoff, 1, BarDesign.For(bar.Standoff.Material) with { AllowableFraction = fraction }, bar.Where);
        string when = Invariant($"{bar.Stress.Time.Seconds:0.####} s after the shock began");
        return BarChecks.BendingEntry.With(BarLoad.Of(rules, SkinAssumption.RigidRing, bar.Forces.Ends, new DemandState(when)), situation);
    }

    /// <summary>The overturning moment against the one at which an edge of the base lifts.</summary>
    /// <param name="overturning">Overturning at its worst moment.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check Overturning(ShockOverturning overturning, string situation)
    {
        double M = overturning.Moment.NewtonMeters, M_edge = overturning.Resistance.NewtonMeters;
        return Check.Of(new CheckSubject("shock.overturning", "lifting of the base in a shock", Situation: situation), Dimension.Moment, Theory, w =>
        {
            w?.Note(Invariant($"Worst moment, {overturning.Time.Seconds:0.####} s after the shock began; {overturning.Base}. Lifting is not yet toppling."));
            w.Given(M, Dimension.Moment, "overturning moment about the base's center");
            w.Given(M_edge, Dimension.Moment, "what presses then, times the distance to the edge");
            return (M, M_edge);
        });
    }

    /// <summary>The movement of the skin against the tower against the gap.</summary>
    /// <param name="bar">The bar at which it moves the farthest.</param>
    /// <param name="gap">The gap.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check Clearance(ShockBar bar, Length gap, string situation)
    {
        double d = bar.Movement.Value.Meters, clear = gap.Meters;
        return Check.Of(new CheckSubject("shock.clearance", "movement of the skin against the tower in a shock", bar.Where, situation), Dimension.SmallLength, Source.User, w =>
        {
            w?.Note(Invariant($"Worst moment, {bar.Movement.Time.Seconds:0.####} s after the shock began; from rest."));
            w.Given(d, Dimension.SmallLength, "movement");
            w.Given(clear, Dimension.SmallLength, "gap");
            return (d, clear);
        });
    }
}
