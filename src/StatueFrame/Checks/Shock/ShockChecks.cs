using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Checks of what a shock does: stress in bars, overturning, clearance of the skin.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class ShockChecks
{
    private static readonly Source Theory = Source.Assumed("shock");

    /// <summary>The greatest stress of a bar against a part of its yield strength.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="fraction">The part of the yield strength that counts, above 0 to 1; in an accidental situation often 1.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check BarStress(ShockBar bar, double fraction, string situation)
    {
        var subject = new CheckSubject("shock.bar-stress", "stress in a standoff in a shock", bar.Where, situation);
        double f_y = bar.Standoff.Material.YieldStrength.Pascals;
        if (bar.HasYielded)
            return Check.NotChecked(subject, "the bar yields; its stress says no more, its slip and the skin's movement do", Theory);
        double b = bar.Standoff.Section.Width.Meters, t = bar.Standoff.Section.Thickness.Meters;
        BarForces forces = bar.Forces;
        double N = Math.Abs(forces.Axial.Newtons);
        bool atTower = AtTower(forces, b, t);
        double M_weak = Math.Abs((atTower ? forces.WeakMomentAtTower : forces.WeakMomentAtSkin).NewtonMeters);
        double M_strong = Math.Abs((atTower ? forces.StrongMomentAtTower : forces.StrongMomentAtSkin).NewtonMeters);
        return Check.Of(subject, Dimension.Stress, Theory, w =>
        {
            w?.Note(Invariant($"Worst moment, {bar.Stress.Time.Seconds:0.####} s after the shock began, at the {(atTower ? "tower" : "skin")} end; weight included."));
            w.Given(b, Dimension.SmallLength, "width");
            w.Given(t, Dimension.SmallLength, "thickness");
            w.Given(N, Dimension.Force, "axial force");
            w.Given(M_weak, Dimension.Moment, "moment about the weak axis");
            w.Given(M_strong, Dimension.Moment, "moment about the strong axis");
            w.Given(f_y, Dimension.Stress, "yield strength", bar.Standoff.Material.Source);
            w.Given(fraction, Dimension.Number, "part of it that counts");
            double sigma = w.Let("sigma", N / (b * t) + 6 * M_weak / (b * t * t) + 6 * M_strong / (t * b * b), Dimension.Stress, meaning: "greatest normal stress");
            return (sigma, w.Let("sigma_max", fraction * f_y, Dimension.Stress));
        });
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

    private static bool AtTower(BarForces f, double b, double t)
    {
        double tower = Math.Abs(f.WeakMomentAtTower.NewtonMeters) / t + Math.Abs(f.StrongMomentAtTower.NewtonMeters) / b;
        double skin = Math.Abs(f.WeakMomentAtSkin.NewtonMeters) / t + Math.Abs(f.StrongMomentAtSkin.NewtonMeters) / b;
        return tower >= skin;
    }
}
