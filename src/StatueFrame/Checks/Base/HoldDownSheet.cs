using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Runs the checks of plates and of every anchor bar in every state of a situation, and writes the worst of each kind.</summary>
/// <param name="statue">The statue.</param>
/// <param name="holdDown">Its plates and bars.</param>
/// <param name="isRound">Whether what stands on the plates is round.</param>
/// <param name="design">Rules.</param>
/// <param name="states">What acts on the base.</param>
/// <param name="tipping">What acts on it where it is asked whether it tips over.</param>
/// <param name="situation">Name of the situation.</param>
/// <param name="lists">Where to write.</param>
/// <remarks>For one thread; used once.</remarks>
internal sealed class HoldDownSheet(Statue statue, HoldDown holdDown, bool isRound, BaseDesign design, BaseState[] states, BaseState[] tipping, string situation, SheetWriter lists)
{
    private static readonly Source notDescribed = Source.Assumed("base");

    private readonly PlanArea plan = holdDown.Plan;
    private readonly BaseBlock? block = BaseBlock.Under(statue);

    public void AddStrength()
    {
        int first = lists.Checks.Count;
        lists.AddWorst(tipping.Select(s => (BaseChecks.Overturning(holdDown, s.Load, design, s.Where, situation), (DemandOrigin?)s.Origin)));
        lists.Assume([BaseDesign.EquilibriumWeight], first);
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
            lists.AddWorst(Each(s => BaseChecks.Separation(holdDown, block.Material, s.Load, s.Where, situation)));
        Assume(first);
    }

    private (Check, DemandOrigin?)[] Each(Func<BaseState, Check> check) => Array.ConvertAll(states, s => (check(s), (DemandOrigin?)s.Origin));

    private void AddPlates(BaseBlock on)
    {
        lists.AddWorst(Each(s => BaseChecks.Bearing(holdDown, on.Section, on.Material, on.Height, s.Load, design, s.Where, situation)));
        if (design.IsAmerican)
            lists.AddWorst(Each(s => BaseChecks.PlateBending(holdDown, on.Material, s.Load, s.Where, situation)));
        lists.AddWorst(Each(s => BaseChecks.Sliding(holdDown, on.Material, s.Load, design, s.Where, situation)));
    }

    private void AddBars(BaseBlock on)
    {
        var all = new List<(Check Check, DemandOrigin? Origin)>();
        (double T, string Where) greatest = (0, "");
        var plates = new Worst<PlatePull>(PlateUplift.OfBase);
        foreach (BaseState s in states)
        {
            if (BaseGroup.Solve(holdDown, plan, on.Material, s.Load.N, s.Load.mx, s.Load.my, preTensioned: true) is not { } group
                || BaseGroup.Solve(holdDown, plan, on.Material, s.Load.N, s.Load.mx, s.Load.my, preTensioned: false) is not { } bare)
            {
                all.Add((Check.NotChecked(new CheckSubject("base.anchor-tension", "tension in an anchor bar", s.Where, situation), "plates and bars cannot balance the load", notDescribed), null));
                continue;
            }
            double[] V = Shears(s.Load, group);
            DemandOrigin origin = s.FreeBody(holdDown, group), bareOrigin = s.FreeBody(holdDown, bare);
            var found = new List<Check>();
            for (int i = 0; i < V.Length; i++)
            {
                AnchorBar bar = holdDown.Bars[i];
                string where = $"bar {i + 1}, {s.Where}";
                (Force T_i, Force V_i) = (Force.FromNewtons(group.Forces[i]), Force.FromNewtons(V[i]));
                found.AddRange([AnchorChecks.Tension(bar, T_i, design, where, situation), AnchorChecks.Shear(bar, V_i, design, where, situation), AnchorChecks.Interaction(bar, T_i, V_i, design, where, situation)]);
                found.AddRange(AtDeepEnd(i, T_i, where));
                BasePlate? plate = PlateUplift.Of(holdDown, bar);
                plates.Look(new PlatePull(where, plate, bar, plate is null ? [] : PlateUplift.BarsOf(plate, holdDown), isRound, bare.Forces[i], 1, design) { Origin = bareOrigin });
                if (group.Forces[i] > greatest.T)
                    greatest = (group.Forces[i], where);
            }
            found.AddRange(AllBars(s, bare));
            if (on.Material is Concrete top)
            {
                found.Add(ConcreteEdges.EdgeShear(holdDown.Bars, V, on.Section, top, Length.FromMeters(on.Height), design, s.Where, situation));
                found.Add(ConcreteEdges.PryOut(holdDown.Bars, V, on.Section, top, design, s.Where, situation));
                found.Add(ConcreteEdges.Splitting(holdDown.Bars, group.Forces.ToArray(), on.Section, top, s.Where, situation));
            }
            else if (V.Max() > 0)
            {
                found.Add(Check.NotChecked(new CheckSubject("base.edge-shear", "edge of the concrete in shear", s.Where, situation), "the bars take shear in masonry, for which there is no method", notDescribed));
            }
            all.AddRange(found.Select(check => (check, (DemandOrigin?)origin)));
        }
        foreach (IGrouping<string, (Check, DemandOrigin?)> kind in all.GroupBy(item => item.Check.Id))
            lists.AddWorst(kind);
        lists.Add(plates);
        if (greatest.T > 0)
            lists.Results.Add(new ResultLine(situation, "greatest force in an anchor bar", greatest.T, Dimension.Force, greatest.Where));
        lists.Results.Add(new ResultLine(situation, "least part of the base plates that is pressed", PressedLeast(on), Dimension.Percent));
    }

    private double PressedLeast(BaseBlock on) => states.Min(s =>
        BaseGroup.Solve(holdDown, plan, on.Material, s.Load.N, s.Load.mx, s.Load.my, preTensioned: true)?.PressedFraction ?? 0);

    /// <summary>What holds one bar at its deep end.</summary>
    private IEnumerable<Check> AtDeepEnd(int number, Force T, string where)
    {
        AnchorBar bar = holdDown.Bars[number];
        if (BaseBlock.At(statue, bar.Embedment.Meters).At is not { } at)
            yield break;
        if (holdDown.Girder is { } girder)
        {
            yield return AnchorChecks.GirderBending(girder, T, design, where, situation);
            yield return AnchorChecks.GirderBearing(girder, T, at.Material, where, situation);
        }
        if (holdDown.Girder is null || bar.HeadWidth is not null)
            yield return AnchorChecks.PullOut(bar, T, at.Material, design, where, situation);
        if (at.Material is Concrete concrete && ConcreteEdges.BlowOut(number, holdDown.Bars, T, at.Section, concrete, design, where, situation) is { } side)
            yield return side;
    }

    /// <summary>What holds all bars together: the cone of the concrete they end in, or the weight of what is above their ends.</summary>
    private IEnumerable<Check> AllBars(BaseState state, BaseGroup bare)
    {
        foreach (IGrouping<double, AnchorBar> depth in holdDown.Bars.GroupBy(bar => bar.Embedment.Meters))
        {
            var cone = new CheckSubject("base.breakout", "concrete cone of the anchor bars in tension", state.Where, situation);
            (BaseBlock? at, bool isOneConcrete, double weightAbove) = BaseBlock.At(statue, depth.Key);
            if (at is null)
            {
                yield return Check.NotChecked(cone, "the bars reach below what is described (Statue.Pedestal, Statue.Foundation)", notDescribed);
            }
            else if (isOneConcrete && at.Material is Concrete concrete)
            {
                yield return AnchorChecks.Breakout(holdDown.Bars, bare.BarForces, block!.Section, concrete, design, state.Where, situation);
            }
            else
            {
                yield return Check.NotChecked(cone, "the bars pass through masonry: cones are for concrete; the weight above their ends is looked at instead (base.anchorage-weight)", notDescribed);
                double pull = Enumerable.Range(0, holdDown.Bars.Count).Where(i => holdDown.Bars[i].Embedment.Meters == depth.Key).Sum(i => bare.Forces[i]), factor = Math.Min(1, state.WeightFactor);
                yield return Check.Of(new CheckSubject("base.anchorage-weight", "weight above the ends of the anchor bars", state.Where, situation), Dimension.Force, notDescribed, w =>
                {
                    double T_all = w.Given("T_all", pull, Dimension.Force, "pull of all bars of this depth, without pre-tension"), W = w.Given("W", weightAbove, Dimension.Force, "courses above the ends of the bars");
                    double gamma = w.Given("gamma", factor, Dimension.Number, "favorable factor of weight");
                    return (T_all, w.Let("W_d", gamma * W, Dimension.Force));
                });
            }
        }
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
}
