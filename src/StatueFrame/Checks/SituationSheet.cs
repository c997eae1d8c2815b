using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Writes what one situation does, and whether it is enough, into a sheet.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class SituationSheet(StatueModel model, Criteria criteria, ModalResponse modes, SituationDemands demands, SheetWriter lists)
{
    /// <summary>Deflection over length of a cantilever above which the linear result is more than 5 % off.</summary>
    private const double SmallDeflectionLimit = 0.24;

    private readonly Response response = demands.Response;
    private static readonly (string, Dimension)[] sway = [("dx", Dimension.SmallLength), ("dy", Dimension.SmallLength)];

    private readonly string name = demands.Situation.Name;
    private readonly WindAction? wind = demands.Situation.Wind?.Action as WindAction;

    /// <summary>Adds the lines; every check says which assumed inputs of the situation it rests on.</summary>
    public void Add()
    {
        int firstCheck = lists.Checks.Count;
        lists.Situation = name;
        lists.Assumptions.AddRange(response.Situation.Factors);
        foreach (FactoredAction factored in response.Situation.Actions.Where(factored => Math.Abs(factored.Factor) < FactoredAction.Small))
            lists.Warnings.Add(Invariant($"{name}: {factored.Action.Title} counts {factored.Factor:g3} times: next to nothing of it is checked here."));
        LocalWind? local = null;
        lists.Guard("local wind", () => local = LocalWind.Of(model, response.Situation));
        lists.Guard("results", () =>
        {
            AccuracyChecks.Add(lists, AccuracyChecks.Displacements, response.SolutionError, name);
            if (demands.Shock is not null)
                AccuracyChecks.Add(lists, AccuracyChecks.Levels, AccuracyChecks.BetweenLevels(model), name);
            AddReactions();
            AddMovements();
        });
        var feet = new FootEnvelope(model);
        var bars = new BarSheet(model, criteria, demands, local, feet, lists);
        if (model.BarCount > 0)
        {
            lists.Guard("bars", AddBars);
            OnFineModel(() => lists.Guard("bars", bars.Add));
            lists.Guard("heat", () => HeatSheet.Add(model, criteria, response.Situation, lists));
        }
        if (demands.Fine is { } fine)
            lists.Guard("fine model", () => FineSheet.Add(fine, demands, criteria, lists));
        lists.Guard("tower", AddLattice);
        if (response.Situation.LimitState == LimitState.Strength)
        {
            lists.Guard("fittings", () => new FittingSheet(model, criteria, demands, feet, lists).Add());
            OnFineModel(() =>
            {
                lists.Guard("levels", () => new LevelSheet(model, criteria, demands, feet, lists).Add());
                lists.Guard("hubs", () => new HubSheet(model, criteria, demands, feet, lists).Add());
                lists.Guard("tower and limbs", () => new MemberSheet(model, criteria, demands, feet, lists).Add());
                lists.Guard("faces", () => AddFaces(bars, feet, firstCheck));
            });
        }
        lists.Guard("stability", AddStability);
        lists.Guard("base", () => new BaseSheet(model, criteria, demands, lists).Add());
        if (demands.Shock is { } shock)
            lists.Guard("shock", () => new ShockSheet(criteria, shock, lists).Add());
        if (wind is not null)
            lists.Guard("wind", () => new WindSheet(model, criteria, modes, response, wind, local, lists).Add());
        if (demands.Earthquake is { } earthquake)
            lists.Guard("earthquake", () => new EarthquakeSheet(model, criteria, response, earthquake, demands.EarthquakeFactor, lists).Add());
        // After all writers, so that none is left out; what a check does not rest on it does not name.
        lists.Assume(Inputs(), firstCheck);
        lists.Situation = "";
    }

    /// <summary>What brackets, standoffs, roots of limbs and horizontals stand on, which is weaker the more it is used by what else it carries: after all that says how much.</summary>
    private void AddFaces(BarSheet bars, FootEnvelope feet, int firstCheck)
    {
        var missing = new Dictionary<(CheckEntry Entry, string Reason), List<string>>();
        foreach ((BodyModel body, string name, string part, CheckEntry<FaceLoad> entry, FaceLoad load, Assumption[] assumed) in bars.Faces.Concat(new RootFaces(model, criteria, demands).All()).Concat(new LevelSheet(model, criteria, demands, feet, lists).Faces()))
        {
            if (load.Chord.Lacks is { } reason)
            {
                if (!missing.TryGetValue((entry, reason), out List<string>? where))
                    missing[(entry, reason)] = where = [];
                where.Add(part);
                continue;
            }
            int level = body.Tower.IndexOfLevel(name[body.Prefix.Length..]);
            string[] near = [$"{name}, side", .. body.Segments.Where((_, i) => i == level - 1 || i == level).Select(s => $"{s.Name}, ")];
            double? used = lists.Checks.Skip(firstCheck)
                .Where(check => check.Id is "levels.bending" or "tower.bending" or "limbs.bending" && Array.Exists(near, name => check.Where.StartsWith(name, StringComparison.Ordinal)))
                .Where(check => check.Id == "levels.bending" != load.Chord.IsUpright).Max(check => check.Utilization);
            lists.Run(entry, [load with { Chord = load.Chord with { Pressed = Math.Min(1, used ?? 1) } }], load.Design.Code == DesignCode.En1993 ? [.. assumed, FaceChecks.Factor] : assumed);
        }
        foreach (((CheckEntry entry, string reason), List<string> where) in missing)
            lists.Missing(entry, reason, where);
    }

    /// <summary>Writes checks that have the fine model as a source, where it was run: they rest on what it takes.</summary>
    private void OnFineModel(Action write)
    {
        int first = lists.Checks.Count;
        write();
        if (demands.Fine is not null)
            lists.Assume(FineSheet.Assumptions, first);
    }

    /// <summary>What was assumed of the inputs of the situation.</summary>
    private IEnumerable<Assumption> Inputs()
    {
        if (response.Situation.Factors.Count > 0)
        {
            foreach (Assumption assumption in criteria.Basis.AssumptionsIn(response.Situation))
                yield return assumption;
        }
        foreach (Assumption ice in response.Situation.Ice?.Assumptions() ?? [])
            yield return ice;
        foreach (Assumption heat in HeatSheet.Assumptions(model, response))
            yield return heat;
        if (demands.Shock is { } shock)
        {
            foreach (Assumption assumption in ShockSheet.DampingOf(criteria).Assumptions.Concat(shock.Assumptions))
                yield return assumption;
        }
        foreach (Assumption assumption in demands.Earthquake?.Assumptions ?? [])
            yield return assumption;
        if (demands.Earthquake is not null)
            yield return new Assumption("peaks of an earthquake in tubes, limbs and base", "axial force, shear, bending and torsion at one time, added to what else acts", Source.Assumed("earthquake"));
        if (demands.Shaking.Count > 0)
            yield return VortexForces.Basis;
        if (wind is null)
            yield break;
        if (model.Statue.Fittings.Any(fitting => fitting.WindArea is null))
            yield return new Assumption("wind on fittings without a WindArea", "none, as behind the skin", Source.Assumed("fittings"));
        lists.Warnings.AddRange(wind.Profile.RangeWarnings(model.GreatestHeightAboveGround));
        lists.Warnings.AddRange(BareTowerNotes.Warnings(model));
        foreach (Assumption assumption in wind.Assumptions(model.AllBandsHaveCoefficient, model.Statue.Limbs.Count > 0).Concat(BareTowerNotes.Assumptions(model, wind)))
            yield return assumption;
    }

    private void AddReactions()
    {
        LoadCase windCase = response.WindForceGoverns;
        if (response.Situation.Wind is not null)
            Add(name, "greatest wind force", windCase.WindForce.Newtons, Dimension.Force, Towards(windCase));
        LoadCase worst = response.OverturningGoverns;
        Add(name, "base shear", worst.Base.Shear.Newtons, Dimension.Force, Towards(worst));
        Add(name, "base vertical force", -worst.Base.ForceZ.Newtons, Dimension.Force, "downwards");
        Add(name, "base overturning moment", worst.Base.Overturning.NewtonMeters, Dimension.Moment, Towards(worst));
        if (double.IsFinite(worst.Base.Eccentricity))
            Add(name, "eccentricity of the base reaction", worst.Base.Eccentricity, Dimension.Length, Towards(worst));
        // What is below a millionth of what acts is rounding, which differs from machine to machine.
        if (response.Balance is var (applied, force, moment))
            Add(name, "balance, applied less carried", force <= 1e-6 * applied ? 0 : force, Dimension.Force, moment <= 1e-6 * applied * Math.Max(1, model.GreatestHeightAboveGround) ? "moments too" : Invariant($"and {moment:g3} N·m"));
        LoadCase twist = response.Cases.FirstGreatest(c => Math.Abs(c.Base.MomentZ.NewtonMeters));
        Add(name, "base twisting moment", Math.Abs(twist.Base.MomentZ.NewtonMeters), Dimension.Moment, Towards(twist));
    }

    private void AddMovements()
    {
        foreach (NamedPoint point in model.Statue.Points)
        {
            Movement movement = response.GreatestSway(point.Name);
            Add(name, $"sway at {point.Name}", movement.Sway.Meters, Dimension.SmallLength, Invariant($"{Towards(movement.Heading)}, twist {Math.Abs(movement.Twist.Degrees):0.000}°"));
        }
        if (criteria.Sway.Count == 0 || response.Situation.LimitState != LimitState.Service)
            return;
        ValueList<FactoredAction> weights = [.. response.Situation.Actions.Where(a => a.Action is SelfWeight)];
        LoadCase? still = weights.Count > 0 && model.Statue.Limbs.Count > 0 ? model.Respond(response.Situation with { Actions = weights }).Cases[0] : null;
        foreach (SwayLimit limit in criteria.Sway)
            OnFineModel(() => AddSway(limit, model.IsOnLimb(limit.Point) ? still?.Of(limit.Point).Z.Meters ?? 0 : null));
    }

    /// <summary>The sway of a point by the model that finds more, in the wind that moves it most.</summary>
    /// <param name="limit">The limit.</param>
    /// <param name="still">How far weights alone move a point of a limb along z, m; null for points of the trunk.</param>
    private void AddSway(SwayLimit limit, double? still)
    {
        LoadCase reduced = demands.Steady.SelectMany(r => r.Cases).ToArray().FirstGreatest(c => Way(c.Of(limit.Point)));
        if (demands.Fine is { } finer && finer.Cases.Select(c => c.Of(limit.Point)).ToArray().FirstGreatest(Way) is var fine && Extremes.Exceeds(Way(fine), Way(reduced.Of(limit.Point))))
            lists.Checks.Add(SwayChecks.Limit(fine, Towards(fine.Heading), still, limit, name));
        else
            lists.Checks.Add(SwayChecks.Limit(reduced.Of(limit.Point), reduced.State.When.Length > 0 ? reduced.State.When : Towards(reduced), still, limit, name).From(new DemandOrigin(reduced.State, still is null ? sway : [.. sway, ("z", Dimension.SmallLength)], Parts, Values(reduced.Of(limit.Point)))));

        double Way(Movement moved) => still is { } before ? double.Hypot(moved.Sway.Meters, moved.Z.Meters - before) : moved.Sway.Meters;

        double[] Parts(LoadCase loadCase) => Values(loadCase.Of(limit.Point));

        double[] Values(Movement movement) => still is null ? [movement.X.Meters, movement.Y.Meters] : [movement.X.Meters, movement.Y.Meters, movement.Z.Meters];
    }

    private void AddBars()
    {
        if (response.MostDeflectedBar is { } most)
        {
            Add(name, "greatest bar deflection", most.Deflection.Meters, Dimension.SmallLength, $"{most.Where}, {most.DeflectionAssumption.InWords()}, {Towards(most.DeflectionHeading)}");
            double relative = most.Deflection.Meters / most.Length.Meters;
            if (relative > SmallDeflectionLimit)
                lists.Warnings.Add(Invariant($"{name}: {most.Where} deflects by {100 * relative:0} % of its length; above {100 * SmallDeflectionLimit:0} % small-deflection results are more than 5 % off (Mattiasson 1981, Int. J. Num. Meth. Eng. 17)."));
        }
        if (response.WorstBar is { } worst)
            Add(name, "greatest bar stress", worst.Stress.Pascals, Dimension.Stress, $"{worst.Where}, {worst.StressAssumption.InWords()}, {Towards(worst.StressHeading)}");
    }

    private void AddLattice()
    {
        (MemberForce? tension, MemberForce? compression) = response.LatticeExtremes();
        if (tension?.Axial.Newtons > 0)
            Add(name, "greatest tension in a lattice member", tension.Axial.Newtons, Dimension.Force, $"{tension.Segment}, {tension.Member}, {Towards(tension.Heading)}");
        if (compression?.Axial.Newtons < 0)
            Add(name, "greatest compression in a lattice member", -compression.Axial.Newtons, Dimension.Force, $"{compression.Segment}, {compression.Member}, {Towards(compression.Heading)}");
    }

    private void AddStability()
    {
        Stability stability = response.Stability;
        AccuracyChecks.Add(lists, AccuracyChecks.Buckling, stability.Error, name);
        if (stability.Amplification is { } amplification)
        {
            Add(name, "second-order amplification", amplification, Dimension.Number, Towards(stability.Heading));
            if (amplification > 1.1)
                lists.Warnings.Add(Invariant($"{name}: second-order effects add {100 * (amplification - 1):0} % to the sway; results without them, which this sheet lists, are too small."));
        }
        else
        {
            lists.Warnings.Add($"{name}: the statue does not stand: {stability.Instability}");
        }
        if (response.Situation.LimitState == LimitState.Strength)
            lists.Checks.AddRange([StabilityChecks.Buckling(stability, name), StabilityChecks.SecondOrder(stability, criteria.LeastBucklingFactor, name)]);
    }

    private static string Towards(LoadCase loadCase) => Towards(loadCase.Heading);

    private static string Towards(UnitsNet.Angle? heading) => Headings.Describe(heading);

    private void Add(string group, string line, double value, Dimension dimension, string note = "") =>
        lists.Results.Add(new ResultLine(group, line, value, dimension, note));
}
