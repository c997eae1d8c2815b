using System.Runtime.ExceptionServices;
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
    private readonly Situation[] situations;
    private readonly SheetWriter lists = new();
    private readonly Response[] responses;

    /// <summary>What went wrong by situation, and last what went wrong before them.</summary>
    private readonly Exception?[] broken;

    private ModalResponse? modes;
    private StatueModel[] models = [];
    private FineModel? fine;
    private ShakingWind[][] shaking = [];
    private SheetWriter[] parts = [];

    private StatueSheet(StatueModel model, Criteria criteria, Situation[] situations)
    {
        (this.model, this.criteria, this.situations) = (model, criteria, situations);
        responses = new Response[situations.Length];
        broken = new Exception?[situations.Length + 1];
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
        var now = new StatueSheet(model, criteria, situations.ToArray());
        int count = situations.Length;
        EndOfLife? end = looksAhead ? EndOfLife.Of(model, criteria) : null;
        StatueSheet[] sheets = end?.Model is { } later ? [now, new StatueSheet(later, criteria with { Durability = null }, now.situations)] : [now];
        ParallelWork.ForEach(sheets.Length, i => sheets[i].Try(count, sheets[i].Begin));
        ParallelWork.ForEach(sheets.Length * count, i => sheets[i / count].Try(i % count, () => sheets[i / count].Add(i % count)));
        StatueSheet last = sheets[^1];
        return now.End(looksAhead, end, () => last.End(looksAhead: false));
    }

    private void Begin()
    {
        AddMasses();
        AddBrackets();
        AddRest();
        modes = AddModes();
        models = TiedBands.Of(model);
        fine = criteria.Fine is { } mesh && model.BandCount > 0 ? FineModel.Build(model, mesh) : null;
        lists.Share(situations);
        // What winds shake is found once a wind, before situations go their own ways.
        shaking = Array.ConvertAll(situations, Shaking);
        parts = Array.ConvertAll(situations, _ => lists.Beside());
    }

    private void Add(int number)
    {
        SituationDemands demands = SituationDemands.Of(models, situations[number], ShockSheet.DampingOf(criteria), shaking[number], fine);
        responses[number] = demands.Response;
        new SituationSheet(model, criteria, modes!, demands, parts[number]).Add();
    }

    private CheckSheet End(bool looksAhead, EndOfLife? end = null, Func<CheckSheet>? then = null)
    {
        if (Array.Find(broken, e => e is not null) is { } first)
            ExceptionDispatchInfo.Throw(first);
        foreach (SheetWriter part in parts)
            lists.Append(part);
        lists.Guard("skin", () => SkinSheet.AddAtRest(model, criteria, lists));
        lists.Guard("levels", () => LevelSheet.AddAtRest(model, lists));
        lists.Guard("hubs", () => HubSheet.AddAtRest(model, lists));
        if (model.Statue.Corrosion is { } corrosion)
            lists.Guard("metals", () => new MetalSheet(model.Statue, corrosion, criteria, lists).Add());
        lists.Guard("fatigue", () =>
        {
            FatigueCauses? causes = FatigueCauses.Of(model, criteria, responses, lists, fine);
            FatigueParts.Add(model, causes, criteria, lists);
            SkinFatigue.Add(model, causes, criteria, lists);
        });
        AddModelAssumptions();
        if (looksAhead)
            lists.Guard("situations", () => lists.Warnings.AddRange(SituationWarnings.Of(model, criteria, situations)));
        lists.Guard("geometry", () => lists.Warnings.AddRange(GeometryWarnings.Of(model, criteria.Fine is not null)));
        if (end is not null)
            lists.Guard("end of the design life", () => end.AddTo(lists, then!));
        AddNotChecked();
        return new CheckSheet
        {
            Title = model.Statue.Name,
            Subject = string.Join("; ", situations.Select(situation => situation.Name)),
            Basis = BasisOfDesign.Of(model, criteria, situations).ToValueList(),
            Results = lists.Results.ToValueList(),
            Checks = lists.Checks.ToValueList(),
            Assumptions = lists.Assumptions.ToValueList(),
            Warnings = lists.Warnings.ToValueList(),
            LoadPath = LoadPath.Of(model, criteria, lists.Checks),
        };
    }

    /// <summary>A step whose error waits for <see cref="End"/>: the sheet of a later year must not cost that of today.</summary>
    private void Try(int number, Action step)
    {
        if (broken[^1] is not null)
            return;
        try
        {
            step();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            broken[number] = e;
        }
    }

    /// <summary>What the wind of a situation of strength shakes the statue with.</summary>
    private ShakingWind[] Shaking(Situation situation)
    {
        ShakingWind[] shaking = [];
        if (situation is { LimitState: LimitState.Strength, Wind: { Factor: > 0, Action: WindAction wind } })
        {
            lists.Situation = situation.Name;
            lists.Guard("vortices", () =>
            {
                (ModalResponse many, AcrossWindReport report) = VortexForces.Find(model, criteria, modes!, wind, lists);
                shaking = [.. VortexForces.Of(model, situation, many, report)];
            });
            lists.Situation = "";
        }
        return shaking;
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
        AccuracyChecks.Add(lists, AccuracyChecks.Modes, modes.Set.Error);
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

    /// <summary>Entries that the statue needs and that no line of the sheet is about, each with what it lacks.</summary>
    private void AddNotChecked()
    {
        var ids = lists.Checks.Select(check => check.Id).ToHashSet();
        foreach (CheckEntry entry in Catalogue.Entries.Where(entry => !ids.Contains(entry.Id) && StatueNotChecked.Needs(model, criteria, entry, lists.Checks)))
            lists.Checks.Add(entry.NotChecked(entry.Needs));
        foreach (SwayLimit limit in criteria.Sway.Where(limit => lists.Checks.All(c => c.Id != "sway.limit" || c.Where != limit.Point)))
            lists.Checks.Add(Catalogue.Find("sway.limit")!.NotChecked("no service situation was given", limit.Point));
        foreach (BodyModel body in model.Bodies.Where(body => criteria.Sway.Count > 0 && !criteria.Sway.Any(limit => IsOn(limit, body))))
            lists.Checks.Add(Catalogue.Find("sway.limit")!.NotChecked($"no limit is given for a point on it (Criteria.{nameof(Criteria.Sway)})", body.Name));
        foreach (Platform platform in criteria.Platforms.Where(platform => !GustGuard.CatchesWind(model) || !Array.Exists(situations, situation => situation.Name == platform.Situation && situation.Wind is not null)))
            lists.Checks.Add(Catalogue.Find("comfort.sway")!.NotChecked($"there is no situation \"{platform.Situation}\" with wind", platform.Point));
    }

    private bool IsOn(SwayLimit limit, BodyModel body) =>
        model.Statue.Points.FirstOrDefault(point => point.Name == limit.Point)?.On is { } on && (body.Prefix.Length > 0 ? on.StartsWith(body.Prefix, StringComparison.Ordinal) : !on.Contains('/'));
}
