using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Builds the check sheet of a statue: results, checks, assumptions, warnings and what was not checked.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class StatueSheet
{
    private readonly StatueModel model;
    private readonly Criteria criteria;
    private readonly SheetWriter lists = new();

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
    /// <param name="model">The statue.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">What acts.</param>
    /// <param name="looksAhead">Whether it looks at the end of the design life too.</param>
    public static CheckSheet Of(StatueModel model, Criteria criteria, ReadOnlySpan<Situation> situations, bool looksAhead = true)
    {
        var sheet = new StatueSheet(model, criteria);
        sheet.AddMasses();
        sheet.AddBrackets();
        sheet.AddRest();
        ModalResponse modes = sheet.AddModes();
        StatueModel[] models = TiedBands.Of(model);
        FineModel? fine = criteria.Fine is { } mesh && model.BandCount > 0 ? FineModel.Build(model, mesh) : null;
        sheet.lists.Share(situations);
        Situation[] all = situations.ToArray();
        // What winds shake is found once a wind, before situations go their own ways.
        ShakingWind[][] shaking = Array.ConvertAll(all, situation => sheet.Shaking(situation, modes));
        SheetWriter[] parts = Array.ConvertAll(all, _ => sheet.lists.Beside());
        var responses = new Response[all.Length];
        ParallelWork.ForEach(parts.Length, i =>
        {
            SituationDemands demands = SituationDemands.Of(models, all[i], ShockSheet.DampingOf(criteria), shaking[i], fine);
            responses[i] = demands.Response;
            new SituationSheet(model, criteria, modes, demands, parts[i]).Add();
        });
        foreach (SheetWriter part in parts)
            sheet.lists.Append(part);
        SheetWriter lists = sheet.lists;
        lists.Guard("skin", () => SkinSheet.AddAtRest(model, criteria, lists));
        lists.Guard("levels", () => LevelSheet.AddAtRest(model, lists));
        if (model.Statue.Corrosion is { } corrosion)
            lists.Guard("metals", () => new MetalSheet(model.Statue, corrosion, criteria, lists).Add());
        lists.Guard("fatigue", () => FatigueSheet.Add(model, criteria, responses, lists));
        sheet.AddModelAssumptions();
        if (looksAhead)
            lists.Guard("situations", () => lists.Warnings.AddRange(SituationWarnings.Of(model, criteria, all)));
        lists.Guard("geometry", () => lists.Warnings.AddRange(GeometryWarnings.Of(model, criteria.Fine is not null)));
        if (looksAhead)
            lists.Guard("end of the design life", () => sheet.AddEndOfLife(all));
        sheet.AddNotChecked();
        return new CheckSheet
        {
            Title = model.Statue.Name,
            Subject = string.Join("; ", Names(situations)),
            Basis = BasisOfDesign.Of(model, criteria, all).ToValueList(),
            Results = sheet.lists.Results.ToValueList(),
            Checks = sheet.lists.Checks.ToValueList(),
            Assumptions = sheet.lists.Assumptions.ToValueList(),
            Warnings = sheet.lists.Warnings.ToValueList(),
            LoadPath = LoadPath.Of(model, criteria, sheet.lists.Checks),
        };
    }

    /// <summary>What the wind of a situation of strength shakes the statue with.</summary>
    private ShakingWind[] Shaking(Situation situation, ModalResponse modes)
    {
        ShakingWind[] shaking = [];
        if (situation is { LimitState: LimitState.Strength, Wind: { Factor: > 0, Action: WindAction wind } })
        {
            lists.Situation = situation.Name;
            lists.Guard("vortices", () =>
            {
                (ModalResponse many, AcrossWindReport report) = VortexForces.Find(model, criteria, modes, wind, lists);
                shaking = [.. VortexForces.Of(model, situation, many, report)];
            });
            lists.Situation = "";
        }
        return shaking;
    }

    private static string[] Names(ReadOnlySpan<Situation> situations)
    {
        var names = new string[situations.Length];
        for (int i = 0; i < names.Length; i++)
            names[i] = situations[i].Name;
        return names;
    }

    private void Add(string group, string name, double value, Dimension dimension, string note = "") =>
        lists.Results.Add(new ResultLine(group, name, value, dimension, note));

    private void AddMasses()
    {
        foreach (MassGroup group in Enum.GetValues<MassGroup>())
        {
            if (model.Masses.Of(group).Kilograms > 0)
                Add("masses", group == MassGroup.LevelFrames ? "level frames" : group.ToString().ToLowerInvariant(), model.Masses.Of(group).Kilograms, Dimension.Mass);
        }
        Add("masses", "total", model.Masses.TotalKilograms, Dimension.Mass);
        Vector3D center = model.Masses.CenterMeters;
        Add("center of mass", "x", center.X, Dimension.Length);
        Add("center of mass", "y", center.Y, Dimension.Length);
        Add("center of mass", "z", center.Z, Dimension.Length);
    }

    /// <summary>The brackets of every ring.</summary>
    private void AddBrackets()
    {
        foreach ((Analysis.RingElement ring, _) in model.Rings)
        {
            PlacedBracket[] brackets = [.. ring.Brackets];
            if (brackets.Length > 0)
                Add("brackets", $"longest under {ring.BandName}", brackets.Max(b => b.Length), Dimension.Length, Invariant($"{brackets.Length} from {ring.Level}, {brackets[0].Bracket.Section}, mean {brackets.Average(b => b.Length):0.00} m, {brackets.Sum(b => b.Mass):0} kg"));
        }
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
            lists.Warnings.Add("The count of modes could not be proved complete: a mode among the lowest may be missing.");
        return modes;
    }

    private void AddModelAssumptions()
    {
        Statue statue = model.Statue;
        lists.Assumptions.Add(new Assumption("levels", "rigid in plan", Source.Assumed("model")));
        if (model.Bodies.Any(body => body.Segments.Where((segment, i) => segment.Segment is LatticeSegment && body.Tower.Levels[i + 1].Frame is null).Any()))
            lists.Assumptions.Add(new Assumption("horizontals of a lattice at levels without a frame", "part of the rigid plans, without a mass of their own", Source.Assumed("tower")));
        if (criteria.Annex is { } annex)
            lists.Assumptions.Add(annex.AsAssumption());
        lists.Assumptions.AddRange(criteria.Basis.Assumptions());
        DescriptionDefaults.AddTo(lists, model, criteria);
        foreach (BodyModel body in model.Bodies.Where(b => b.Skin is { FoldFactor: 1 } && b.Skin.Stations.All(s => s.FoldFactor is null)))
            lists.Assumptions.Add(new Assumption($"folds of the skin of {body.Name}", "none: fold factor 1", Source.Assumed("skin")));
        foreach (BodyModel body in model.Bodies)
        {
            if (body.Tower.Base.IsFixed)
                lists.Assumptions.Add(new Assumption($"base of {body.Name}", "held rigidly", Source.Assumed("tower")));
            if (TiedBands.IsOpen(body))
                lists.Assumptions.Add(new Assumption($"bands of {body.Name}", "joints of the skin are not described: both apart and tied by the sheet, and the worse counts; modes and sway are of bands apart", Source.Assumed("skin")));
            else if (body.Bands.Length > 1 && !body.HasSeams)
                lists.Assumptions.Add(new Assumption($"bands of {body.Name}", "not tied to each other at their joints", Source.Assumed("skin")));
            foreach (SegmentModel segment in body.Segments.Where(s => s.IsTensionOnly))
                lists.Assumptions.Add(new Assumption($"tension-only braces of {segment.Name} in modes and buckling", "one diagonal of each pair acts, half from each", Source.Assumed("tower")));
        }
        foreach (StandoffRing ring in statue.Standoffs.Concat(statue.Limbs.SelectMany(l => l.Standoffs)))
            lists.Assumptions.AddRange(ring.Assumptions());
        if (model.BarCount > 0)
            lists.Assumptions.Add(new Assumption("skin between bars", "each bar is looked at as part of a rigid ring, alone under its own strip of limp skin, and, where its saddle slides, under 5/3 of that strip; the worst counts", Source.Assumed("standoffs")));
        if (criteria.Fine is not null)
            lists.Assumptions.AddRange(FineSheet.Assumptions);
    }

    /// <summary>The statue as it is when its design life ends: its worst check of strength.</summary>
    private void AddEndOfLife(ReadOnlySpan<Situation> situations)
    {
        if (model.Statue.Corrosion is not { } corrosion || (criteria.DesignLife ?? criteria.Durability?.DesignLife.Years365) is not { } life)
            return;
        double years = Math.Max(0, life - corrosion.Age.Years365);
        CheckEntry entry = Catalogue.Find("life.end")!;
        try
        {
            Statue corroded = model.Statue.Corroded(UnitsNet.Duration.FromYears365(years)) with { Corrosion = null };
            CheckSheet then = Of(ModelBuilder.BuildValid(corroded), criteria with { Durability = null }, situations, looksAhead: false);
            Check[] strength = [.. then.Checks.Where(check => check.Family is not ("metals" or "life") && Catalogue.NatureOf(check.Id) == Nature.Strength)];
            if (strength.Where(check => check.Utilization is not null).MinBy(check => check, CheckOrder.WorstFirst) is { } worst)
            {
                CheckSubject subject = entry.Subject(At(worst), worst.Situation);
                lists.Checks.Add(Check.Of(subject, Dimension.Number, worst.Source, w => (w.Given("u", worst.Utilization!.Value, Dimension.Number, "utilization of the corroded statue's worst check"), 1))
                    .Assuming([.. worst.AssumedInputs, MetalSheet.EvenLoss.Short]));
                lists.Assumptions.AddRange([.. then.Assumptions.Where(assumption => worst.AssumedInputs.Contains(assumption.Short)), MetalSheet.EvenLoss]);
            }
            // What can be looked at now and not then, as a section that has grown too thin for its rules, must not go without a word.
            HashSet<(string, string, string)> open = [.. lists.Checks.Where(check => check.Verdict == Verdict.NotChecked).Select(Key)];
            if (Array.Find(strength, check => check.Verdict == Verdict.NotChecked && !open.Contains(Key(check))) is { } notDone)
                lists.Checks.Add(entry.NotChecked(notDone.Reason, At(notDone), notDone.Situation));

            string At(Check check) => Invariant($"after {years:0.#} years: {check.Id}, {check.Where}").TrimEnd(',', ' ');

            static (string, string, string) Key(Check check) => (check.Id, check.Situation, check.Reason);
        }
        catch (InvalidStatueException e)
        {
            lists.Checks.Add(Check.Of(entry.Subject(Invariant($"after {years:0.#} years: {e.Problems[0]}")), Dimension.Number, Source.Assumed("checks"), _ => (1, 0)));
        }
    }

    /// <summary>Entries that the statue needs and that no line of the sheet is about, each with what it lacks.</summary>
    private void AddNotChecked()
    {
        var ids = lists.Checks.Select(check => check.Id).ToHashSet();
        foreach (CheckEntry entry in Catalogue.Entries.Where(entry => !ids.Contains(entry.Id) && StatueNotChecked.Needs(model, criteria, entry, lists.Checks)))
            lists.Checks.Add(entry.NotChecked(entry.Needs));
        foreach (SwayLimit limit in criteria.Sway.Where(limit => lists.Checks.All(c => c.Id != "sway.limit" || c.Where != limit.Point)))
            lists.Checks.Add(Catalogue.Find("sway.limit")!.NotChecked("no service situation was given", limit.Point));
        foreach (Platform platform in criteria.Platforms.Where(platform => lists.Checks.All(c => c.Id != "comfort.sway" || c.Where != platform.Point)))
            lists.Checks.Add(Catalogue.Find("comfort.sway")!.NotChecked($"there is no situation \"{platform.Situation}\" with wind", platform.Point));
    }
}
