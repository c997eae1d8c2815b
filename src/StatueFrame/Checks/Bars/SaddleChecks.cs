using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Saddles: whether they hold by friction, and whether moving parts keep clear of the tower.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class SaddleChecks
{
    private static readonly Source slip = new("EN 1993-1-8:2005", "3.9.1, (3.6); friction by test for other surfaces");
    private static readonly Source gapRule = Source.Assumed("bars: clearance is the gap less the movement");

    /// <summary>A saddle with the force that its friction has to hold, N, and the reason why it cannot be checked.</summary>
    internal readonly record struct SaddleLoad(BarEnd End, double Force) : ITraced
    {
        public CheckedBar Bar => End.Bar!;

        /// <summary>How the forces of the skin end come about.</summary>
        public DemandOrigin? Origin => End.Origin();
    }

    internal static readonly FormulaEntry<SaddleLoad> SlipEntry = new(
        "bars.saddle-slip", "slip of a clamped saddle", Nature.Strength, "every saddle that holds, every state", "force of the bar along the skin",
        "friction by the clamping force", "no strength situation was given")
    {
        Dimension = Dimension.Force,
        Where = (in SaddleLoad load) => load.Bar.Where,
        Rule = (in SaddleLoad _) => slip,
        Run = (Working? w, in SaddleLoad load) => Held(w, load, "force along the saddle"),
    };

    internal static readonly FormulaEntry<SaddleLoad> StopEntry = new(
        "bars.saddle-hold", "what holds the skin on a saddle that slides square to it", Nature.Strength, "every saddle that slides, every state",
        "what pushes the skin along the slide", "friction at its least, and the strength of a stop", "no strength situation was given")
    {
        Dimension = Dimension.Force,
        Where = (in SaddleLoad load) => load.Bar.Where,
        Rule = (in SaddleLoad _) => slip,
        Run = (Working? w, in SaddleLoad load) =>
        {
            if (load.Bar.Standoff.Saddle is { } saddle)
            {
                (double F, double F_s) = Held(w, load, "what pushes the skin along the slide");
                if (saddle.Stop is not { } stop)
                    return (F, F_s);
                double F_stop = w.Given("F_stop", stop.Newtons, Dimension.Force, "design strength of the stop");
                return (F, w.Let("F_R", F_s + F_stop, Dimension.Force));
            }
            w?.Note($"Nothing is described that holds it (Standoff.{nameof(Standoff.Saddle)}).");
            return (w.Given("F", load.Force, Dimension.Force, "what pushes the skin along the slide"), 0);
        },
    };

    /// <summary>A gap with the movement that it must leave room for, m.</summary>
    internal readonly record struct GapLoad(string Where, double? Gap, double Movement, string When);

    internal static readonly FormulaEntry<GapLoad> ClearanceEntry = new(
        "bars.clearance", "clearance to the tower", Nature.Service, "every bar, every heading", "movement of the skin end towards the tower", "gap", "no situation moves a bar")
    {
        Dimension = Dimension.SmallLength,
        Where = (in GapLoad load) => load.Where,
        Rule = (in GapLoad _) => gapRule,
        Lacks = (in GapLoad load) => load.Gap is null ? $"it is not described (Standoff.{nameof(Standoff.Clearance)})" : null,
        Run = (Working? w, in GapLoad load) =>
        {
            if (load.When.Length > 0)
                w?.Note($"Worst of all states: {load.When}.");
            return Room(w, load.Gap!.Value, load.Movement, 0);
        },
    };

    private static (double, double) Held(Working? w, in SaddleLoad load, string what)
    {
        if (w is not null && load.End.When is { Length: > 0 } when)
            w.Note($"Worst of all states: {when}.");
        Saddle saddle = load.Bar.Standoff.Saddle!;
        return (w.Given("F", load.Force, Dimension.Force, what), SlipResistance(w, saddle.Clamp.Newtons, saddle.LeastFriction ?? saddle.Friction, saddle.Faces, load.Bar.Design.GammaM3));
    }

    /// <summary>The force along a clamped saddle against its friction: μ × clamping force × faces/γ_M3.</summary>
    /// <param name="force">Force along the saddle.</param>
    /// <param name="clamp">Clamping force, all bolts together, after losses.</param>
    /// <param name="friction">Coefficient of friction μ, above 0 to 1; by test.</param>
    /// <param name="faces">Faces that rub, 1 or 2.</param>
    /// <param name="gammaM3">Safety factor, 1 to 3.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Check Slip(Force force, Force clamp, double friction, int faces = 1, double gammaM3 = 1.25, string where = "", string situation = "")
    {
        double F = Math.Abs(CheckInput.Finite(force.Newtons, nameof(force))), C = CheckInput.NotNegative(clamp.Newtons, nameof(clamp));
        CheckInput.Within(friction, 1e-3, 1, nameof(friction));
        CheckInput.Within(faces, 1, 2, nameof(faces));
        CheckInput.Within(gammaM3, 1, 3, nameof(gammaM3));
        return Check.Of(SlipEntry.Subject(where, situation), Dimension.Force, slip, w =>
            (w.Given(F, Dimension.Force, "force along the saddle"), SlipResistance(w, C, friction, faces, gammaM3)));
    }

    /// <summary>
    /// The gap between a moving bar or skin and the tower against its movement, with a distance that must be left.
    /// </summary>
    /// <param name="gap">Free distance in the unloaded statue, as built.</param>
    /// <param name="movement">Movement towards the tower, zero or more.</param>
    /// <param name="reserve">What must be left, for tolerances, ice and dirt.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is negative or not finite.</exception>
    public static Check Clearance(Length gap, Length movement, Length reserve, string where = "", string situation = "")
    {
        double g = CheckInput.NotNegative(gap.Meters, nameof(gap)), delta = CheckInput.NotNegative(movement.Meters, nameof(movement));
        double r = CheckInput.NotNegative(reserve.Meters, nameof(reserve));
        return Check.Of(ClearanceEntry.Subject(where, situation), Dimension.SmallLength, gapRule, w => Room(w, g, delta, r));
    }

    private static (double, double) Room(Working? w, double g, double delta, double r)
    {
        w.Given(delta, Dimension.SmallLength, "movement towards the tower");
        w.Given(r, Dimension.SmallLength, "reserve");
        double needed = w.Let("needed", delta + r, Dimension.SmallLength, gapRule);
        return (needed, w.Given(g, Dimension.SmallLength, "gap"));
    }

    /// <summary>Friction that holds a saddle, N.</summary>
    internal static double SlipResistance(Working? w, double clamp, double mu, double faces, double gammaM3)
    {
        w.Given(clamp, Dimension.Force, "clamping force");
        w.Given(mu, Dimension.Number, "coefficient of friction");
        w.Given(faces, Dimension.Number, "faces that rub");
        w.Given(gammaM3, Dimension.Number);
        return w.Let("F_s", faces * mu * clamp / gammaM3, Dimension.Force, slip);
    }
}
