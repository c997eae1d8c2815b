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
    private readonly SheetLists lists = new();

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
        var responses = new List<Response>(situations.Length);
        foreach (Situation situation in situations)
        {
            responses.Add(model.Respond(situation));
            new SituationSheet(model, criteria, modes, responses[^1], sheet.lists).Add();
        }
        SkinSheet.AddAtRest(model, criteria, sheet.lists);
        if (model.Statue.Corrosion is { } corrosion)
            new MetalSheet(model.Statue, corrosion, criteria, sheet.lists).Add();
        FatigueSheet.Add(model, criteria, responses, sheet.lists);
        sheet.AddModelAssumptions();
        sheet.AddNotChecked();
        return new CheckSheet
        {
            Title = model.Statue.Name,
            Subject = string.Join("; ", Names(situations)),
            Results = sheet.lists.Results.ToValueList(),
            Checks = sheet.lists.Checks.ToValueList(),
            Assumptions = sheet.lists.Assumptions.ToValueList(),
            Warnings = sheet.lists.Warnings.ToValueList(),
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
        lists.Results.Add(new ResultLine(group, name, value, dimension, note));

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
            lists.Warnings.Add("The count of modes could not be proved complete: a mode among the lowest may be missing.");
        return modes;
    }

    private void AddModelAssumptions()
    {
        Statue statue = model.Statue;
        lists.Assumptions.Add(new Assumption("levels", "rigid in plan", Source.Assumed("model")));
        if (model.LatticeSegments.Any())
            lists.Assumptions.Add(new Assumption("horizontals of a lattice at its levels", "part of the rigid plans, without a mass of their own", Source.Assumed("tower")));
        foreach (BodyModel body in model.Bodies)
        {
            if (body.Tower.Base.IsFixed)
                lists.Assumptions.Add(new Assumption($"base of {body.Name}", "held rigidly", Source.Assumed("tower")));
            if (body.Bands.Length > 1 && !body.HasSeams)
                lists.Assumptions.Add(new Assumption($"bands of {body.Name}", "not tied to each other", Source.Assumed("skin")));
            foreach (SegmentModel segment in body.Segments.Where(s => s.IsTensionOnly))
                lists.Assumptions.Add(new Assumption($"tension-only braces of {segment.Name} in modes and buckling", "one diagonal of each pair acts, half from each", Source.Assumed("tower")));
        }
        foreach (StandoffRing ring in statue.Standoffs.Concat(statue.Limbs.SelectMany(l => l.Standoffs)))
            lists.Assumptions.AddRange(ring.Assumptions());
        if (model.BarCount > 0)
            lists.Assumptions.Add(new Assumption("skin between bars", "each bar is looked at both as part of a rigid ring and alone under its own strip of limp skin; the worse counts", Source.Assumed("standoffs")));
    }

    private void AddNotChecked()
    {
        foreach ((string id, string title, string reason) in StatueNotChecked.Items(model, lists.Checks))
            lists.Checks.Add(Check.NotChecked(new CheckSubject(id, title), reason, Source.Assumed("checks")));
        foreach (SwayLimit limit in criteria.Sway.Where(limit => lists.Checks.All(c => c.Id != "sway.limit" || c.Where != limit.Point)))
            lists.Checks.Add(Check.NotChecked(new CheckSubject("sway.limit", "sway at a named point", limit.Point), "no service situation was given", limit.Source));
        foreach (Platform platform in criteria.Platforms.Where(platform => lists.Checks.All(c => c.Id != "comfort.sway" || c.Where != platform.Point)))
            lists.Checks.Add(Check.NotChecked(new CheckSubject("comfort.sway", "comfort of people on a platform", platform.Point), $"there is no situation \"{platform.Situation}\" with wind", Source.User));
        if (criteria.Sway.Count == 0)
            lists.Checks.Add(Check.NotChecked(new CheckSubject("sway.limit", "sway at a named point"), "no sway limit was given", Source.User));
    }
}
