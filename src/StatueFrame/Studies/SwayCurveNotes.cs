using StatueFrame.Analysis;
using StatueFrame.Checks;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>What a sway curve rests on, and where it may be wrong.</summary>
internal static class SwayCurveNotes
{
    public static Assumption AllowableStress { get; } =
        new("allowable stress of standoffs", "yield or proof strength / 1.5", Source.CommonPractice);

    public static ValueList<Assumption> Assumptions(SwayCurve curve, SwayDynamics? dynamics)
    {
        // The curve takes the wind amid the figure.
        var all = (curve.Wind with { Eccentricity = 0 }).Assumptions(curve.Model.AllBandsHaveCoefficient, hasLimbs: false).ToList();
        if (dynamics is not null)
        {
            all.RemoveAll(a => a.Subject == "gust factor");
            all.AddRange(dynamics.Assumptions);
        }
        if (curve.Options.Limits.BarStressFraction is null && curve.Model.BarCount > 0)
            all.Add(AllowableStress);
        return all.Distinct().ToValueList();
    }

    public static ValueList<string> Warnings(SwayCurve curve)
    {
        StatueModel model = curve.Model;
        var all = new List<string>();
        all.AddRange(curve.Wind.Profile.RangeWarnings(model.GreatestHeightAboveGround));
        double lowest = model.Modes(1).First.Frequency.Hertz;
        if (curve.Options.Dynamics is null && lowest < DynamicChecks.RigidFrequency)
            all.Add(Invariant($"The lowest frequency is {lowest:0.00} Hz, below 1 Hz: gusts make the statue vibrate, and the gust values here are right only with a gust factor from the dynamic method."));
        all.AddRange(curve.Wind.Profile.SpeedWarnings);
        if (model.BarCount > 0 && curve.BarStressFraction > SwayCurve.DefaultBarStressFraction)
            all.Add(Invariant($"The bars' stresses are without load factors: a limit of {100 * curve.BarStressFraction:0} % of yield that is meant for factored actions is too high here."));
        if (AmplificationAtDesign(curve) is not { } amplification)
            all.Add("At the design speed the statue does not stand when second-order effects are counted.");
        else if (amplification > 1.1)
            all.Add(Invariant($"Second-order effects add up to {100 * (amplification - 1):0} % to the sway at the design speed; the values here are without them."));
        if (model.HasTensionOnly)
            all.Add("The bracing acts in tension only: each line was analyzed by itself, and a limit could be met between two lines and left again.");
        all.Add(curve.Options.Dynamics is null
            ? "Vibration is not in these values, neither resonance with gusts nor vortex shedding; at low speeds vortices may cause more sway than the wind's pressure."
            : "Vortex shedding is not in these values, unless the method for vibration has it; at low speeds it may cause more sway than the wind's pressure.");
        return all.ToValueList();
    }

    private static double? AmplificationAtDesign(SwayCurve curve)
    {
        WindAction wind = curve.Options.Heading is { } heading ? curve.Wind with { Headings = [heading] } : curve.Wind;
        return curve.Model.Respond(new Situation { Name = "design wind", Actions = [.. curve.Options.Calm, wind] }).Stability.Amplification;
    }
}
