using UnitsNet;

namespace StatueFrame;

/// <summary>
/// What the statue is: a tower, the skin around it, the standoffs between the two, the limbs that branch off, what rides
/// on them, and the points whose movement is asked for. Axes: x, y horizontal, z up, origin at the tower's base center.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Make variants with <c>with</c>.</remarks>
public sealed record Statue
{
    /// <summary>The name that sheets and reports carry.</summary>
    public required string Name { get; init; }

    /// <summary>The stiff inner structure of the trunk.</summary>
    public required Tower Tower { get; init; }

    /// <summary>The skin of the trunk, described at stations; null for a bare tower.</summary>
    public Skin? Skin { get; init; }

    /// <summary>The standoffs between the trunk's levels and its bands.</summary>
    public ValueList<StandoffRing> Standoffs { get; init; } = [];

    /// <summary>Stiffness of the seams between neighboring bands; null when bands are not tied, which the sheet says.</summary>
    public SeamStiffness? Seams { get; init; }

    /// <summary>The limbs that branch off the trunk, or off limbs listed before them.</summary>
    public ValueList<Limb> Limbs { get; init; } = [];

    /// <summary>Stairs, platforms, lamps and whatever else rides on the statue for good.</summary>
    public ValueList<Fitting> Fittings { get; init; } = [];

    /// <summary>The points whose movement is asked for.</summary>
    public ValueList<NamedPoint> Points { get; init; } = [];

    /// <summary>
    /// Height of the tower's base above the ground that the wind profile is given for, as on a pedestal or a plinth; zero
    /// by default, at most 2000 m. The speed-up over a hill belongs to the wind profile.
    /// </summary>
    public Length BaseAboveGround { get; init; }

    /// <summary>How the tower is tied to what it stands on; null when not described, and then not checked.</summary>
    public HoldDown? HoldDown { get; init; }

    /// <summary>What the statue stands on; null when not described, and then not checked.</summary>
    public Pedestal? Pedestal { get; init; }

    /// <summary>What carries it in the ground; null when not described, and then not checked.</summary>
    public Foundation? Foundation { get; init; }

    /// <summary>How it weathers, and what is between unlike metals; null when not described, and then not checked.</summary>
    public Corrosion? Corrosion { get; init; }

    /// <summary>
    /// All problems of the description that can be told without analyzing it, each with its path and a hint. Whether rings
    /// meet the skin, every band is held, and nothing is loose is found when the model is built.
    /// </summary>
    public IReadOnlyList<Problem> FindProblems()
    {
        var v = new Validator();
        Validate(v);
        return v.Problems;
    }

    internal void Validate(Validator v)
    {
        v.Named(Name);
        v.NotNegative(BaseAboveGround, BaseAboveGround.Meters, 2000);
        var names = new StatueNames(this);
        ValidateBody(v, Tower, Skin, Standoffs, Seams);
        var limbs = new HashSet<string>();
        foreach ((int i, Limb limb, Validator at) in v.Items(Limbs, StatueSize.Limbs))
        {
            limb.Validate(at);
            if (limb.Name is { } name && !limbs.Add(name))
                at.Add(nameof(Limb.Name), $"\"{name}\" is the name of an earlier limb", "Limb names must be unique.");
            names.RequireLevelBefore(at, nameof(Limb.From), limb.From, i);
            ValidateBody(at, limb.Tower, limb.Skin, limb.Standoffs, limb.Seams);
        }
        foreach ((_, Fitting fitting, Validator at) in v.Items(Fittings, StatueSize.Fittings))
        {
            fitting.Validate(at);
            names.Require(at, nameof(Fitting.On), fitting.On);
        }
        var points = new HashSet<string>();
        foreach ((_, NamedPoint point, Validator at) in v.Items(Points, StatueSize.Points))
        {
            point.Validate(at);
            names.Require(at, nameof(NamedPoint.On), point.On);
            if (point.Name is { } name && !points.Add(name))
                at.Add(nameof(NamedPoint.Name), $"\"{name}\" is the name of an earlier point", "Results are listed by name; make it unique.");
        }
        HoldDown?.Validate(v.At(nameof(HoldDown)));
        Pedestal?.Validate(v.At(nameof(Pedestal)));
        Foundation?.Validate(v.At(nameof(Foundation)));
        ValidateBase(v);
        Corrosion?.Validate(v.At(nameof(Corrosion)), this);
        StatueSize.Validate(v, this);
    }

    /// <summary>Asks that each part of the base stands on the one below.</summary>
    private void ValidateBase(Validator v)
    {
        const double Slack = 1e-3;
        if (Pedestal?.Courses is not { Count: > 0 } courses || courses.Any(course => course?.Section is null))
            return;
        (double x, double y) = courses[0].Section.Widths;
        for (int i = 0; i < (HoldDown?.Plates?.Count ?? 0); i++)
        {
            if (HoldDown!.Plates[i] is { } plate && (2 * Math.Abs(plate.X.Meters) + plate.WidthX.Meters > x + Slack || 2 * Math.Abs(plate.Y.Meters) + plate.WidthY.Meters > y + Slack))
                v.At(nameof(HoldDown)).At(nameof(HoldDown.Plates), i).Add("", "reaches over the edge of the pedestal's top course", "Move the plate, or make the course wider.");
        }
        (x, y) = courses[^1].Section.Widths;
        if (Foundation is { } ground && (x > ground.WidthX.Meters + Slack || y > ground.WidthY.Meters + Slack))
            v.At(nameof(Foundation)).Add("", "is narrower than the lowest course of the pedestal", "Make the foundation at least as wide as what stands on it.");
    }

    private static void ValidateBody(Validator v, Tower tower, Skin? skin, ValueList<StandoffRing> standoffs, SeamStiffness? seams)
    {
        v.Required(tower, nameof(Tower))?.Validate(v.At(nameof(Tower)));
        skin?.Validate(v.At(nameof(Skin)));
        seams?.Validate(v.At(nameof(Seams)));
        var levels = new Dictionary<string, TowerLevel>();
        for (int i = 0; i < (tower?.Levels?.Count ?? 0); i++)
        {
            if (tower!.Levels[i] is not { Name: { } name } level)
                continue;
            levels.TryAdd(name, level);
            if (StatueNames.BandOf(name) <= skin?.BandCount)
                v.At(nameof(Tower)).At(nameof(Tower.Levels), i).Add(nameof(TowerLevel.Name), $"\"{name}\" is the name of a band of the skin", "Call the level something else.");
        }
        foreach ((_, StandoffRing ring, Validator at) in v.Items(standoffs, StatueSize.Rings, nameof(Standoffs)))
        {
            ring.Validate(at);
            if (skin is null)
                at.Add("", "a ring of standoffs needs a skin to carry", "Set Skin, or leave Standoffs empty.");
            if (string.IsNullOrWhiteSpace(ring.Level))
                continue;
            if (levels.TryGetValue(ring.Level, out TowerLevel? level))
                ring.ValidateAt(level, at);
            else
                at.Add(nameof(StandoffRing.Level), $"there is no level \"{ring.Level}\" in this tower", NearNames.Closest(ring.Level, levels.Keys));
        }
        if (skin is not null && standoffs?.Count == 0)
            v.Add(nameof(Standoffs), "are missing: nothing holds the skin to the tower", "Add a ring of standoffs for every band.");
    }
}
