using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Builds the check sheet of a statue: results, checks, assumptions, warnings and what was not checked.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class StatueSheet
{
    private const double DefaultBarStressFraction = 1 / 1.5;

    private static readonly Assumption AllowableStress = new("allowable stress of standoffs", "yield or proof strength / 1.5", Source.CommonPractice);

    private readonly StatueModel model;
    private readonly Criteria criteria;
    private readonly List<ResultLine> results = [];
    private readonly List<Check> checks = [];
    private readonly List<Assumption> assumptions = [];
    private readonly List<string> warnings = [];

    /// <summary>What was assumed of the inputs of the situation in hand; every check of it says so.</summary>
    private readonly List<Assumption> assumedInputs = [];

    private StatueSheet(StatueModel model, Criteria criteria)
    {
        this.model = model;
        this.criteria = criteria;
    }

    /// <summary>Looks at what a sheet is asked for.</summary>
    public static void Validate(Validator v, Statue statue, Criteria criteria, ReadOnlySpan<Situation> situations)
    {
        var names = new StatueNames(statue);
        criteria.Validate(v.At(nameof(Criteria)), names);
        if (situations.Length == 0)
            v.Add("Situations", "must not be empty", "Say what acts, as in new Situation { Name = \"storm\", Actions = [new SelfWeight(), wind] }.");
        var seen = new HashSet<string>();
        foreach ((_, Situation situation, Validator at) in v.Items(ValueList.Create(situations), StatueSize.Situations, "Situations"))
        {
            situation.Validate(at, names);
            if (situation.Name is { } name && !seen.Add(name))
                at.Add(nameof(Situation.Name), $"\"{name}\" is the name of an earlier situation", "Results are listed by name; make it unique.");
        }
    }

    /// <summary>The sheet of a statue in a number of situations; all have been validated.</summary>
    public static CheckSheet Of(StatueModel model, Criteria criteria, ReadOnlySpan<Situation> situations)
    {
        var sheet = new StatueSheet(model, criteria);
        sheet.AddMasses();
        sheet.AddRest();
        ModalResponse modes = sheet.AddModes();
        foreach (Situation situation in situations)
            sheet.AddSituation(model.Respond(situation), modes);
        sheet.AddModelAssumptions();
        sheet.AddNotChecked();
        return new CheckSheet
        {
            Title = model.Statue.Name,
            Subject = string.Join("; ", Names(situations)),
            Results = sheet.results.ToValueList(),
            Checks = sheet.checks.ToValueList(),
            Assumptions = sheet.assumptions.ToValueList(),
            Warnings = sheet.warnings.ToValueList(),
        };
    }

    private static string[] Names(ReadOnlySpan<Situation> situations)
    {
        var names = new string[situations.Length];
        for (int i = 0; i < names.Length; i++)
            names[i] = situations[i].Name;
        return names;
    }

    private void Add(string group, string name, double value, Dimension dimension, string note = "") =>
        results.Add(new ResultLine(group, name, value, dimension, note));

    private void AddMasses()
    {
        foreach (MassGroup group in Enum.GetValues<MassGroup>())
        {
            if (model.Masses.Of(group).Kilograms > 0)
                Add("masses", group.ToString().ToLowerInvariant(), model.Masses.Of(group).Kilograms, Dimension.Mass);
        }
        Add("masses", "total", model.Masses.TotalKilograms, Dimension.Mass);
        Vector3D center = model.Masses.CenterMeters;
        Add("center of mass", "x", center.X, Dimension.Length);
        Add("center of mass", "y", center.Y, Dimension.Length);
        Add("center of mass", "z", center.Z, Dimension.Length);
    }

    /// <summary>The statue under its weight alone: how eccentric mass tilts it.</summary>
    private void AddRest()
    {
        Response rest = model.Respond(new Situation { Name = "at rest", Actions = [new SelfWeight()] });
        foreach (NamedPoint point in model.Statue.Points)
        {
            Movement movement = rest.Cases[0].Of(point.Name);
            Add("at rest, self-weight alone", $"sway at {point.Name}", movement.Sway.Meters, Dimension.SmallLength, Invariant($"tilt {movement.Tilt.Degrees:0.000}°"));
            Add("at rest, self-weight alone", $"sinking of {point.Name}", -movement.Z.Meters, Dimension.SmallLength);
        }
    }

    private ModalResponse AddModes()
    {
        ModalResponse modes = model.Modes(criteria.Modes);
        foreach (ModeResult mode in modes.Modes)
            Add("frequencies", $"mode {mode.Number}", mode.Frequency.Hertz, Dimension.Frequency, mode.Description);
        if (!modes.MissedNone)
            warnings.Add("The count of modes could not be proved complete: a mode among the lowest may be missing.");
        return modes;
    }

    private void AddSituation(Response response, ModalResponse modes)
    {
        string name = response.Situation.Name;
        int firstCheck = checks.Count;
        assumedInputs.Clear();
        assumptions.AddRange(response.Situation.Factors);
        if (response.Situation.Ice is { } ice)
            assumedInputs.AddRange(ice.Assumptions());
        AddReactions(response, name);
        AddMovements(response, name);
        if (response.Situation.Wind?.Action is WindAction wind)
            AddWind(wind);
        if (model.BarCount > 0)
            AddBars(response, name);
        AddLattice(response, name);
        AddStability(response, name);
        assumptions.AddRange(assumedInputs);
        string[] assumed = [.. assumedInputs.Select(a => a.Short)];
        for (int i = firstCheck; i < checks.Count; i++)
            checks[i] = checks[i].Assuming(assumed);
        if (response.Situation.Wind?.Action is WindAction gusts)
            checks.Add(DynamicChecks.RigidForWind(modes.First, gusts, name));
    }

    private void AddReactions(Response response, string name)
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

    private void AddMovements(Response response, string name)
    {
        foreach (NamedPoint point in model.Statue.Points)
        {
            Movement movement = response.GreatestSway(point.Name);
            Add(name, $"sway at {point.Name}", movement.Sway.Meters, Dimension.SmallLength, Invariant($"{Towards(movement.Heading)}, twist {Math.Abs(movement.Twist.Degrees):0.000}°"));
        }
        foreach (SwayLimit limit in criteria.Sway)
        {
            if (response.Situation.LimitState == LimitState.Service)
                checks.Add(SwayChecks.Limit(response.GreatestSway(limit.Point), limit, name));
        }
    }

    private void AddWind(WindAction wind)
    {
        double top = model.GreatestHeightAboveGround;
        assumedInputs.AddRange(wind.Assumptions(model.AllBandsHaveCoefficient));
        warnings.AddRange(wind.Profile.RangeWarnings(top));
        assumedInputs.AddRange(BareTowerNotes.Assumptions(model, wind));
        warnings.AddRange(BareTowerNotes.Warnings(model));
    }

    private void AddBars(Response response, string name)
    {
        if (response.MostDeflectedBar is { } most)
        {
            Add(name, "greatest bar deflection", most.Deflection.Meters, Dimension.SmallLength, $"{most.Where}, {Assumed(most.DeflectionAssumption)}, {Towards(most.DeflectionHeading)}");
            double relative = most.Deflection.Meters / most.Length.Meters;
            if (relative > SmallDeflectionLimit)
                warnings.Add(Invariant($"{name}: {most.Where} deflects by {100 * relative:0} % of its length; above {100 * SmallDeflectionLimit:0} % small-deflection results are more than 5 % off (Mattiasson 1981, Int. J. Num. Meth. Eng. 17)."));
        }
        if (response.WorstBar is { } worst)
            Add(name, "greatest bar stress", worst.Stress.Pascals, Dimension.Stress, $"{worst.Where}, {Assumed(worst.StressAssumption)}, {Towards(worst.StressHeading)}");
        if (response.Situation.LimitState != LimitState.Strength)
            return;
        double fraction = criteria.BarStressFraction ?? DefaultBarStressFraction;
        if (criteria.BarStressFraction is null)
            assumptions.Add(AllowableStress);
        int firstBar = 0;
        foreach ((RingElement ring, _) in model.Rings)
        {
            BarResult bar = response.BarEnvelope.ResultOf(response.BarEnvelope.WorstOfRing(firstBar, ring.Bars.Length));
            Check check = BarChecks.Bending(bar, name, fraction);
            checks.Add(criteria.BarStressFraction is null ? check.Assuming(AllowableStress.Short) : check);
            if (!bar.StandsAlone)
                checks.Add(Check.NotChecked(new CheckSubject("bars.limp", "standoff under limp skin", bar.Where, name), "a pin at the tower end leaves the bar unable to stand alone; only the rigid ring was looked at", Source.Assumed("standoffs")));
            firstBar += ring.Bars.Length;
        }
    }

    private void AddLattice(Response response, string name)
    {
        (MemberForce? tension, MemberForce? compression) = response.LatticeExtremes();
        if (tension?.Axial.Newtons > 0)
            Add(name, "greatest tension in a lattice member", tension.Axial.Newtons, Dimension.Force, $"{tension.Segment}, {tension.Member}, {Towards(tension.Heading)}");
        if (compression?.Axial.Newtons < 0)
            Add(name, "greatest compression in a lattice member", -compression.Axial.Newtons, Dimension.Force, $"{compression.Segment}, {compression.Member}, {Towards(compression.Heading)}");
    }

    private void AddStability(Response response, string name)
    {
        Stability stability = response.Stability;
        if (stability.Amplification is { } amplification)
        {
            Add(name, "second-order amplification", amplification, Dimension.Number, Towards(stability.Heading));
            if (amplification > 1.1)
                warnings.Add(Invariant($"{name}: second-order effects add {100 * (amplification - 1):0} % to the sway; results without them, which this sheet lists, are too small."));
        }
        else
        {
            warnings.Add($"{name}: the statue does not stand: {stability.Instability}");
        }
        if (response.Situation.LimitState == LimitState.Strength)
            checks.Add(StabilityChecks.SecondOrder(stability, criteria.LeastBucklingFactor, name));
    }

    /// <summary>Deflection over length of a cantilever above which the linear result is more than 5 % off.</summary>
    private const double SmallDeflectionLimit = 0.24;

    private static string Assumed(SkinAssumption assumption) =>
        assumption == SkinAssumption.RigidRing ? "band as a rigid ring" : "limp skin";

    private static string Towards(LoadCase loadCase) => Towards(loadCase.Heading);

    private static string Towards(UnitsNet.Angle? heading) => Headings.Describe(heading);

    private void AddModelAssumptions()
    {
        Statue statue = model.Statue;
        assumptions.Add(new Assumption("levels", "rigid in plan", Source.Assumed("model")));
        foreach (BodyModel body in model.Bodies)
        {
            if (body.Bands.Length > 1 && !body.HasSeams)
                assumptions.Add(new Assumption($"bands of {body.Name}", "not tied to each other", Source.Assumed("skin")));
            foreach (SegmentModel segment in body.Segments.Where(s => s.IsTensionOnly))
                assumptions.Add(new Assumption($"tension-only braces of {segment.Name} in modes and buckling", "one diagonal of each pair acts, half from each", Source.Assumed("tower")));
        }
        foreach (StandoffRing ring in statue.Standoffs.Concat(statue.Limbs.SelectMany(l => l.Standoffs)))
            assumptions.AddRange(ring.Assumptions());
        if (model.BarCount > 0)
            assumptions.Add(new Assumption("skin between bars", "each bar is looked at both as part of a rigid ring and alone under its own strip of limp skin; the worse counts", Source.Assumed("standoffs")));
    }

    private void AddNotChecked()
    {
        foreach ((string id, string title, string reason) in StatueNotChecked.Items(model))
            checks.Add(Check.NotChecked(new CheckSubject(id, title), reason, Source.Assumed("checks")));
        foreach (SwayLimit limit in criteria.Sway.Where(limit => checks.All(c => c.Id != "sway.limit" || c.Where != limit.Point)))
            checks.Add(Check.NotChecked(new CheckSubject("sway.limit", "sway at a named point", limit.Point), "no service situation was given", limit.Source));
        if (criteria.Sway.Count == 0)
            checks.Add(Check.NotChecked(new CheckSubject("sway.limit", "sway at a named point"), "no sway limit was given", Source.User));
    }
}
