using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Writes what one situation does, and whether it is enough, into a sheet.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class SituationSheet(StatueModel model, Criteria criteria, ModalResponse modes, Response response, SheetLists lists)
{
    internal const double DefaultBarStressFraction = 1 / 1.5;

    /// <summary>Deflection over length of a cantilever above which the linear result is more than 5 % off.</summary>
    private const double SmallDeflectionLimit = 0.24;

    internal static readonly Assumption AllowableStress = new("allowable stress of standoffs", "yield or proof strength / 1.5", Source.CommonPractice);

    private readonly string name = response.Situation.Name;
    private readonly WindAction? wind = response.Situation.Wind?.Action as WindAction;

    /// <summary>What was assumed of the inputs of the situation.</summary>
    private readonly List<Assumption> assumedInputs = [];

    /// <summary>Adds the lines; every check says which assumed inputs of the situation it rests on.</summary>
    public void Add()
    {
        int firstCheck = lists.Checks.Count;
        lists.Heat = response.Heat;
        lists.Assumptions.AddRange(response.Situation.Factors);
        if (response.Situation.Ice is { } ice)
            assumedInputs.AddRange(ice.Assumptions());
        AddReactions();
        AddMovements();
        if (wind is not null)
            AddWindInputs(wind);
        if (model.BarCount > 0)
        {
            AddBars();
            new FixingSheet(model, criteria, response, lists).Add();
            HeatSheet.Add(model, criteria, response.Situation, lists);
        }
        AddLattice();
        DampingModel damping = ShockSheet.DampingOf(criteria);
        ShockResponse? shock = response.Situation.HasShock ? ShockResponse.Of(model, response.Situation, damping) : null;
        EarthquakeResponse? earthquake = response.Situation.Earthquake?.Action is EarthquakeAction action ? EarthquakeResponse.Of(model, action) : null;
        double factor = Math.Abs(response.Situation.Earthquake?.Factor ?? 0);
        AddTowerAndBase(shock is not null ? new ShockDemands(response, shock, damping) : earthquake is not null ? new EarthquakeDemands(response, earthquake, factor) : new SteadyDemands(response));
        lists.Assume(assumedInputs, firstCheck);
        if (shock is not null)
            new ShockSheet(criteria, shock, lists).Add();
        if (wind is not null)
            new WindSheet(model, criteria, modes, response, wind, lists).Add();
        if (earthquake is not null)
            new EarthquakeSheet(model, criteria, response, earthquake, factor, lists).Add();
    }

    /// <summary>Members of tower and limbs, cores and base: with the forces of a shock or an earthquake, if there is one.</summary>
    private void AddTowerAndBase(PartDemands demands)
    {
        int firstCheck = lists.Checks.Count;
        if (response.Situation.LimitState == LimitState.Strength)
            new MemberSheet(model, criteria, response, demands, lists).Add();
        lists.Assume(demands.Assumptions, firstCheck);
        AddStability();
        firstCheck = lists.Checks.Count;
        new BaseSheet(model, criteria, response, demands, lists).Add();
        lists.Assume(demands.Assumptions, firstCheck);
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
        foreach (SwayLimit limit in criteria.Sway)
        {
            if (response.Situation.LimitState == LimitState.Service)
                lists.Checks.Add(SwayChecks.Limit(response.GreatestSway(limit.Point), limit, name));
        }
    }

    private void AddWindInputs(WindAction wind)
    {
        double top = model.GreatestHeightAboveGround;
        assumedInputs.AddRange(wind.Assumptions(model.AllBandsHaveCoefficient));
        lists.Warnings.AddRange(wind.Profile.RangeWarnings(top));
        assumedInputs.AddRange(BareTowerNotes.Assumptions(model, wind));
        lists.Warnings.AddRange(BareTowerNotes.Warnings(model));
    }

    private void AddBars()
    {
        if (response.MostDeflectedBar is { } most)
        {
            Add(name, "greatest bar deflection", most.Deflection.Meters, Dimension.SmallLength, $"{most.Where}, {Assumed(most.DeflectionAssumption)}, {Towards(most.DeflectionHeading)}");
            double relative = most.Deflection.Meters / most.Length.Meters;
            if (relative > SmallDeflectionLimit)
                lists.Warnings.Add(Invariant($"{name}: {most.Where} deflects by {100 * relative:0} % of its length; above {100 * SmallDeflectionLimit:0} % small-deflection results are more than 5 % off (Mattiasson 1981, Int. J. Num. Meth. Eng. 17)."));
        }
        if (response.WorstBar is { } worst)
            Add(name, "greatest bar stress", worst.Stress.Pascals, Dimension.Stress, $"{worst.Where}, {Assumed(worst.StressAssumption)}, {Towards(worst.StressHeading)}");
        if (response.Situation.LimitState != LimitState.Strength)
            return;
        double fraction = criteria.BarStressFraction ?? DefaultBarStressFraction;
        if (criteria.BarStressFraction is null)
            lists.Assumptions.Add(AllowableStress);
        int firstBar = 0;
        foreach ((RingElement ring, _) in model.Rings)
        {
            BarResult bar = response.BarEnvelope.ResultOf(response.BarEnvelope.WorstOfRing(firstBar, ring.Bars.Length));
            Check check = BarChecks.Bending(bar, name, fraction);
            lists.Checks.Add(criteria.BarStressFraction is null ? check.Assuming(AllowableStress.Short) : check);
            AddBarByCode(bar);
            if (response.BarEnvelope.FirstThatCannotStand(firstBar, ring.Bars.Length) is { } pinned)
                lists.Checks.Add(Check.NotChecked(new CheckSubject("bars.limp", "standoff under limp skin", pinned.Where, name), "a pin at the tower end leaves the bar unable to stand alone; only the rigid ring was looked at", Source.Assumed("standoffs")));
            firstBar += ring.Bars.Length;
        }
    }

    /// <summary>First yield with torsion and shear, buckling as a strut, and the stress of the bent bar, by the code of the criteria.</summary>
    private void AddBarByCode(BarResult bar)
    {
        int firstCheck = lists.Checks.Count;
        LoadedBar loaded = LoadedBar.Of(bar, name);
        BarDesign design = BarDesign.For(loaded.Material, criteria.BarCode) with { AllowableFraction = criteria.BarStressFraction ?? DefaultBarStressFraction };
        lists.Checks.Add(BarSectionChecks.FirstYield(loaded, design));
        lists.Checks.Add(BarBucklingChecks.Strut(loaded, design));
        lists.Checks.Add(BarBucklingChecks.SecondOrder(loaded, design));
        lists.Assume(AssumptionsOf(design, loaded.Material), firstCheck);
    }

    /// <summary>What the rules for standoffs take that nobody gave.</summary>
    private IEnumerable<Assumption> AssumptionsOf(BarDesign design, Material material)
    {
        yield return new Assumption("standoffs before loading", "straight, but for the imperfection of their buckling curve", Source.Assumed("bars"));
        if (design.Code == DesignCode.En1993)
        {
            Source source = design.Metal == MetalKind.StainlessSteel ? new Source("EN 1993-1-4:2006", "5.1 (2), from memory") : Source.En1993_1_1("6.1 (1), recommended values");
            yield return new Assumption($"partial factors of standoffs of {material.Name}", Invariant($"γ_M0 {design.GammaM0}, γ_M1 {design.GammaM1}"), source);
            yield break;
        }
        if (design.Code != DesignCode.AllowableStress)
            yield break;
        if (criteria.BarCode != DesignCode.AllowableStress)
            yield return new Assumption($"rules for standoffs of {material.Name}", "allowable stress, as the code of the criteria does not cover the metal", Source.Assumed("bars"));
        if (criteria.BarStressFraction is null)
            yield return AllowableStress;
        yield return new Assumption($"safety of standoffs of {material.Name} against elastic buckling", Invariant($"{design.BucklingSafety:0.###}"), Source.CommonPractice);
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
            lists.Checks.Add(StabilityChecks.SecondOrder(stability, criteria.LeastBucklingFactor, name));
    }

    private static string Assumed(SkinAssumption assumption) =>
        assumption == SkinAssumption.RigidRing ? "band as a rigid ring" : "limp skin";

    private static string Towards(LoadCase loadCase) => Towards(loadCase.Heading);

    private static string Towards(UnitsNet.Angle? heading) => Headings.Describe(heading);

    private void Add(string group, string line, double value, Dimension dimension, string note = "") =>
        lists.Results.Add(new ResultLine(group, line, value, dimension, note));
}
