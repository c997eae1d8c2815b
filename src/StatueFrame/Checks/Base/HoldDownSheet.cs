using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Writes the checks of plates and anchor bars in one situation into a sheet: the worst heading and bar of each kind.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class HoldDownSheet(Statue statue, HoldDown holdDown, BaseDesign design, BaseState[] states, string situation, SheetLists lists)
{
    private static readonly Source notDescribed = Source.Assumed("base");

    private readonly PlanArea plan = holdDown.Plan;
    private readonly BaseBlock? block = BaseBlock.Under(statue);

    public void AddStrength()
    {
        int first = lists.Checks.Count;
        lists.Checks.Add(BaseState.Worst(Each(s => BaseChecks.Overturning(holdDown, s.Load, design, s.Where, situation))));
        if (block is null)
        {
            foreach ((string id, string title) in new[] { ("base.bearing", "pressure under the base plates"), ("base.sliding", "sliding of the base"), ("base.anchor-tension", "tension in an anchor bar"), ("base.breakout", "concrete cone of the anchor bars in tension") })
                lists.Checks.Add(Check.NotChecked(new CheckSubject(id, title, Situation: situation), "what the plates stand on is not described (Statue.Pedestal, Statue.Foundation)", notDescribed));
        }
        else
        {
            AddPlates(block);
            if (holdDown.Bars.Count > 0)
                AddBars(block);
        }
        Assume(first);
    }

    public void AddService()
    {
        int first = lists.Checks.Count;
        var subject = new CheckSubject("base.separation", "opening of the pre-tensioned base", Situation: situation);
        if (block is null)
            lists.Checks.Add(Check.NotChecked(subject, "what the plates stand on is not described (Statue.Pedestal, Statue.Foundation)", notDescribed));
        else if (holdDown.Bars.All(bar => bar.PreTension.Newtons == 0))
            lists.Checks.Add(Check.NotChecked(subject, "the bars are not pre-tensioned", notDescribed));
        else
            lists.Checks.Add(BaseState.Worst(Each(s => BaseChecks.Separation(holdDown, block.Material, s.Load, s.Where, situation))));
        Assume(first);
    }

    private Check[] Each(Func<BaseState, Check> check) => Array.ConvertAll(states, s => check(s));

    private void AddPlates(BaseBlock on)
    {
        lists.Checks.Add(BaseState.Worst(Each(s => BaseChecks.Bearing(holdDown, on.Section, on.Material, on.Height, s.Load, design, s.Where, situation))));
        if (design.IsAmerican)
            lists.Checks.Add(BaseState.Worst(Each(s => BaseChecks.PlateBending(holdDown, on.Material, s.Load, s.Where, situation))));
        lists.Checks.Add(BaseState.Worst(Each(s => BaseChecks.Sliding(holdDown, on.Material, s.Load, design, s.Where, situation))));
    }

    private void AddBars(BaseBlock on)
    {
        BarPull? tension = null, shear = null, both = null;
        (BaseState State, BaseGroup Group)? pulled = null;
        bool unbalanced = false;
        foreach (BaseState s in states)
        {
            if (BaseGroup.Solve(holdDown, plan, on.Material, s.Load.N, s.Load.mx, s.Load.my, preTensioned: true) is not { } group)
            {
                unbalanced = true;
                continue;
            }
            double[] V = Shears(s.Load, group);
            for (int i = 0; i < V.Length; i++)
            {
                AnchorBar bar = holdDown.Bars[i];
                double T = group.Forces[i], t = T / AnchorChecks.TensionResistance(null, bar, design), v = V[i] / AnchorChecks.ShearResistance(null, bar, design);
                Keep(ref tension, new BarPull(i, T, V[i], s.Where, t));
                Keep(ref shear, new BarPull(i, T, V[i], s.Where, v));
                Keep(ref both, new BarPull(i, T, V[i], s.Where, t * t + v * v));
            }
            if (BaseGroup.Solve(holdDown, plan, on.Material, s.Load.N, s.Load.mx, s.Load.my, preTensioned: false) is not { } bare)
                unbalanced = true;
            else if (pulled is null || Extremes.Exceeds(Sum(bare), Sum(pulled.Value.Group)))
                pulled = (s, bare);
        }
        if (unbalanced)
            lists.Warnings.Add($"{situation}: in some heading plates and bars cannot balance the load on the base.");
        if (tension is null || shear is null || both is null || pulled is null)
        {
            lists.Checks.Add(Check.NotChecked(new CheckSubject("base.anchor-tension", "tension in an anchor bar", Situation: situation), "plates and bars cannot balance the load", notDescribed));
            return;
        }
        lists.Checks.Add(AnchorChecks.Tension(holdDown.Bars[tension.Bar], Force.FromNewtons(tension.T), design, tension.Where, situation));
        lists.Checks.Add(AnchorChecks.Shear(holdDown.Bars[shear.Bar], Force.FromNewtons(shear.V), design, shear.Where, situation));
        lists.Checks.Add(AnchorChecks.Interaction(holdDown.Bars[both.Bar], Force.FromNewtons(both.T), Force.FromNewtons(both.V), design, both.Where, situation));
        AddAnchorage(tension, pulled.Value.State, pulled.Value.Group);
        lists.Results.Add(new ResultLine(situation, "greatest force in an anchor bar", tension.T, Dimension.Force, tension.Where));
        lists.Results.Add(new ResultLine(situation, "least part of the base plates that is pressed", PressedLeast(on), Dimension.Percent));
    }

    private double PressedLeast(BaseBlock on) => states.Min(s =>
        BaseGroup.Solve(holdDown, plan, on.Material, s.Load.N, s.Load.mx, s.Load.my, preTensioned: true)?.PressedFraction ?? 0);

    /// <summary>What holds the bars at their deep end.</summary>
    private void AddAnchorage(BarPull tension, BaseState state, BaseGroup bare)
    {
        AnchorBar worst = holdDown.Bars[tension.Bar];
        Force T = Force.FromNewtons(tension.T);
        (BaseBlock? at, bool isOneConcrete, double weightAbove) = BaseBlock.At(statue, worst.Embedment.Meters);
        var cone = new CheckSubject("base.breakout", "concrete cone of the anchor bars in tension", state.Where, situation);
        if (at is null)
        {
            lists.Checks.Add(Check.NotChecked(cone, "the bars reach below what is described (Statue.Pedestal, Statue.Foundation)", notDescribed));
            return;
        }
        if (isOneConcrete && at.Material is Concrete concrete)
        {
            lists.Checks.Add(AnchorChecks.Breakout(holdDown.Bars, bare.BarForces, block!.Section, concrete, design, state.Where, situation));
        }
        else
        {
            lists.Checks.Add(Check.NotChecked(cone, "the bars pass through masonry: cones are for concrete; the weight above their ends is looked at instead (base.anchorage-weight)", notDescribed));
            double pull = Sum(bare), factor = Math.Min(1, state.WeightFactor);
            lists.Checks.Add(Check.Of(new CheckSubject("base.anchorage-weight", "weight above the ends of the anchor bars", state.Where, situation), Dimension.Force, notDescribed, w =>
            {
                double T_all = w.Given("T_all", pull, Dimension.Force, "pull of all bars, without pre-tension"), W = w.Given("W", weightAbove, Dimension.Force, "courses above the ends of the bars");
                double gamma = w.Given("gamma", factor, Dimension.Number, "favorable factor of weight");
                return (T_all, w.Let("W_d", gamma * W, Dimension.Force));
            }));
        }
        if (holdDown.Girder is { } girder)
        {
            lists.Checks.Add(AnchorChecks.GirderBending(girder, T, design, tension.Where, situation));
            lists.Checks.Add(AnchorChecks.GirderBearing(girder, T, at.Material, tension.Where, situation));
        }
        if (holdDown.Girder is null || worst.HeadWidth is not null)
            lists.Checks.Add(AnchorChecks.PullOut(worst, T, at.Material, design, tension.Where, situation));
    }

    /// <summary>Shear of each bar: what friction and key leave, shared evenly, and twist in proportion to the distance from the bars' middle.</summary>
    private double[] Shears(in BaseLoad load, BaseGroup group)
    {
        int n = holdDown.Bars.Count;
        double left = Math.Max(0, load.V - holdDown.Friction * group.BedForce.Newtons - holdDown.KeyResistance.Newtons) / n;
        double cx = holdDown.Bars.Average(bar => bar.X.Meters), cy = holdDown.Bars.Average(bar => bar.Y.Meters);
        double[] r = [.. holdDown.Bars.Select(bar => Math.Sqrt(Math.Pow(bar.X.Meters - cx, 2) + Math.Pow(bar.Y.Meters - cy, 2)))];
        double polar = r.Sum(x => x * x), twist = Math.Abs(load.Twist);
        return Array.ConvertAll(r, x => left + (holdDown.BarsTakeTwist ? twist * x / polar : 0));
    }

    private void Assume(int first)
    {
        var assumed = new List<Assumption>(design.Assumptions());
        if (block is not null && holdDown.BedDepth is null)
            assumed.Add(new Assumption("bed under the base plates", FormattableString.Invariant($"squeezed over {holdDown.BedDepthInUse:0.###} m, as deep as the bars stretch"), notDescribed));
        if (holdDown.Bars.Any(bar => bar.PreTension.Newtons > 0))
        {
            if (holdDown.Losses is null)
                assumed.Add(new Assumption("losses of pre-tension by embedding, heat and relaxation", "none", notDescribed));
            if (block is { Material.CreepCoefficient: null })
                assumed.Add(new Assumption($"creep of {block.Material.Name}", "none", notDescribed));
        }
        lists.Assume(assumed, first);
    }

    private static double Sum(BaseGroup group)
    {
        double sum = 0;
        foreach (double force in group.Forces)
            sum += force;
        return sum;
    }

    private static void Keep(ref BarPull? worst, BarPull demand)
    {
        if (worst is null || Extremes.Exceeds(demand.Use, worst.Use))
            worst = demand;
    }

    private sealed record BarPull(int Bar, double T, double V, string Heading, double Use)
    {
        public string Where => $"bar {Bar + 1}, {Heading}";
    }
}
