using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Checks;

/// <summary>A fitting with the most that acts on it in a situation, all at one time. SI units.</summary>
/// <param name="Fitting">The fitting; its fixing may be missing.</param>
/// <param name="Weight">Its weight with its factor.</param>
/// <param name="Vertical">What shakes it up and down, N.</param>
/// <param name="Shaken">What shakes it sideways, N.</param>
/// <param name="Wind">Wind and pressure pulses on it.</param>
/// <param name="Design">Rules of the bolts.</param>
internal readonly record struct FittingLoad(Fitting Fitting, double Weight, double Vertical, double Shaken, double Wind, BarDesign Design);

/// <summary>
/// The bolts of fittings under weight, wind, and what earthquakes, vortices and shocks shake them with where they hang; and what fittings put
/// on the horizontals of a level, which bear it as they bear the standoffs.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class FittingSheet(StatueModel model, Criteria criteria, SituationDemands demands, FootEnvelope feet, SheetWriter lists)
{
    private static readonly Source bolts = new("EN 1993-1-8:2005", "Table 3.4, shear and tension together");
    private static readonly Source boltsAisc = new("AISC 360-16 and 360-22", "J3.7 (J3-3): 1.3 less the share of shear");
    private static readonly Source lever = Source.Assumed("members: half of the bolts pull over the lever between the outermost; common practice, no source");
    private static readonly Assumption stiff = new("fittings", "stiff, shaken as what they hang on; weight, wind and shaking at their most, all at one time; gusts do not shake them", Source.CommonPractice);

    internal static readonly FormulaEntry<FittingLoad> FixingEntry = new(
        "fittings.fixing", "bolts that hold a fitting", Nature.Strength, "every fitting", "shear and tension of a bolt together", "1", "no strength situation was given")
    {
        Where = (in FittingLoad load) => load.Fitting.Name,
        Rule = (in FittingLoad load) => load.Design.IsAisc ? boltsAisc : bolts,
        Lacks = (in FittingLoad load) => load.Fitting.Fixing is null ? $"what fixes it is not described ({nameof(Fitting)}.{nameof(Fitting.Fixing)})"
            : load.Design.Code == DesignCode.AllowableStress ? "bolts of fittings are checked by EN 1993-1-8 or AISC 360; give one of these codes for the tower" : null,
        Run = Bolted,
    };

    public void Add()
    {
        if (model.Statue.Fittings.Count == 0)
            return;
        int firstCheck = lists.Checks.Count;
        double weightFactor = demands.Response.Cases.Max(loadCase => loadCase.WeightFactor);
        FactoredAction? wind = demands.Situation.Wind;
        // At its peak: the fitting is stiff. A pulse on named bands spares it.
        double pulses = demands.Situation.Actions.Sum(a => a.Action is PressurePulse { Bands.Count: 0 } pulse ? Math.Abs(a.Factor) * pulse.Peak.Pascals : 0);
        BarDesign design = criteria.Apply(BarDesign.For(StructuralSteel.S355, criteria.TowerCodeInUse));
        for (int i = 0; i < model.Statue.Fittings.Count; i++)
        {
            Fitting fitting = model.Statue.Fittings[i];
            double m = fitting.Mass.Kilograms;
            Vector3D at = fitting.At?.Meters ?? model.PlaceOf(fitting.On).Center;
            (double across, double up) = demands.AccelerationsAt(model, i, at);
            double height = Math.Max(0, model.Statue.BaseAboveGround.Meters + at.Z);
            double pressed = pulses + (wind is { Action: WindAction blowing, Factor: var factor } ? Math.Abs(factor) * blowing.GustFactorOfRest * blowing.Profile.PeakPressureSi(height) : 0);
            var load = new FittingLoad(fitting, weightFactor * SelfWeight.Gravity * m, m * up, m * across, pressed * (fitting.WindArea?.SquareMeters ?? 0), design);
            lists.Run(FixingEntry, [load]);
            double sideways = load.Shaken + load.Wind;
            feet.Put(fitting.On, at, new Vector3D(sideways, sideways, load.Weight + load.Vertical));
        }
        lists.Assume([stiff, .. MemberSheet.FactorsOf(design, criteria)], firstCheck);
    }

    private static (double Demand, double Capacity) Bolted(Working? w, in FittingLoad load)
    {
        FittingFixing fixing = load.Fitting.Fixing!;
        double W = w.Given("W", load.Weight, Dimension.Force, "weight"), F_v = w.Given("F_v", load.Vertical, Dimension.Force, "shaken up and down");
        double F_h = w.Given("F_h", load.Shaken, Dimension.Force, "shaken sideways"), F_w = w.Given("F_w", load.Wind, Dimension.Force, "wind and pressure pulses on it");
        double n = w.Given("n", fixing.Count, Dimension.Number, "bolts"), s = w.Given("s", fixing.Lever.Meters, Dimension.SmallLength, "between the outermost bolts"), e = w.Given("e", fixing.Reach.Meters, Dimension.SmallLength, "reach of its center of mass");
        double V = w.Let("V", W + F_v, Dimension.Force, lever, "down"), H = w.Let("H", F_h + F_w, Dimension.Force, lever, "sideways, any way");
        double T_1 = w.Let("T_1", H / n + 2 * (V + H) * e / (n * s), Dimension.Force, lever, "tension of a bolt"), V_1 = w.Let("V_1", Math.Sqrt(V * V + H * H) / n, Dimension.Force, lever, "shear of a bolt");
        double F_tR = w.Given("F_tR", BoltStrength.Tension(w, fixing.Bolt, load.Design), Dimension.Force, "strength of a bolt in tension"), F_vR = w.Given("F_vR", BoltStrength.Shear(w, fixing.Bolt, 1, load.Design), Dimension.Force, "in shear");
        double u = load.Design.IsAisc
            ? w.Let("u", (T_1 / F_tR + V_1 / F_vR) / 1.3, Dimension.Number, boltsAisc)
            : w.Let("u", V_1 / F_vR + T_1 / (1.4 * F_tR), Dimension.Number, bolts);
        return (w.Let("u", Math.Max(u, Math.Max(T_1 / F_tR, V_1 / F_vR)), Dimension.Number), 1);
    }
}
