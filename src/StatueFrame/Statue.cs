using StatueFrame.Analysis;
using StatueFrame.Checks;
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

    /// <summary>Height of the tower's base above the ground that the wind profile is given for: pedestal, plinth, hill.</summary>
    public Length BaseAboveGround { get; init; }

    /// <summary>All problems of the description, each with its path and a hint; empty when it can be analyzed.</summary>
    public IReadOnlyList<Problem> FindProblems()
    {
        var v = new Validator();
        Validate(v);
        return v.Problems;
    }

    /// <summary>
    /// The main job: builds the model, finds masses, modes and the response to each situation, and checks them. To work
    /// on with the same numbers, build a <see cref="StatueModel"/> instead.
    /// </summary>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations to check; at least one.</param>
    /// <exception cref="InvalidStatueException">The description has problems; all of them are listed.</exception>
    /// <exception cref="Mechanics.FrameException">Something is loose; the message names the level or band and the direction.</exception>
    public CheckSheet Check(Criteria criteria, params ReadOnlySpan<Situation> situations) =>
        StatueSheet.Of(StatueModel.Build(this), criteria, situations);

    internal void Validate(Validator v)
    {
        v.Named(Name);
        v.NotNegative(BaseAboveGround, BaseAboveGround.Meters, 2000);
        var names = new StatueNames(this);
        ValidateBody(v, Tower, Skin, Standoffs, Seams);
        for (int i = 0; i < Limbs.Count; i++)
            ValidateLimb(v.At(nameof(Limbs), i), i, names);
        for (int i = 0; i < Fittings.Count; i++)
        {
            Validator at = v.At(nameof(Fittings), i);
            Fittings[i].Validate(at);
            names.Require(at, nameof(Fitting.On), Fittings[i].On);
        }
        for (int i = 0; i < Points.Count; i++)
        {
            Validator at = v.At(nameof(Points), i);
            Points[i].Validate(at);
            names.Require(at, nameof(NamedPoint.On), Points[i].On);
            if (Points.Take(i).Any(p => p.Name == Points[i].Name))
                at.Add(nameof(NamedPoint.Name), $"\"{Points[i].Name}\" is the name of an earlier point", "Results are listed by name; make it unique.");
        }
    }

    private void ValidateLimb(Validator v, int index, StatueNames names)
    {
        Limb limb = Limbs[index];
        v.Named(limb.Name);
        if (limb.Name?.Contains('/') == true)
            v.Add(nameof(Limb.Name), $"must not contain '/', is \"{limb.Name}\"", "The slash separates a limb's name from its parts.");
        if (Limbs.Take(index).Any(other => other.Name == limb.Name))
            v.Add(nameof(Limb.Name), $"\"{limb.Name}\" is the name of an earlier limb", "Limb names must be unique.");
        if (!names.IsLevelBefore(limb.From, index))
            v.Add(nameof(Limb.From), $"there is no level \"{limb.From}\" that the limb could start from", names.Suggest(limb.From));
        v.Within(limb.Inclination, limb.Inclination.Degrees, -90, 90);
        v.Within(limb.Heading, limb.Heading.Degrees, -360, 360);
        limb.Root.Validate(v.At(nameof(Limb.Root)));
        ValidateBody(v, limb.Tower, limb.Skin, limb.Standoffs, limb.Seams);
    }

    private static void ValidateBody(Validator v, Tower tower, Skin? skin, ValueList<StandoffRing> standoffs, SeamStiffness? seams)
    {
        tower.Validate(v.At(nameof(Tower)));
        skin?.Validate(v.At(nameof(Skin)));
        seams?.Validate(v.At(nameof(Seams)));
        for (int i = 0; i < standoffs.Count; i++)
        {
            Validator at = v.At(nameof(Standoffs), i);
            standoffs[i].Validate(at);
            if (tower.IndexOfLevel(standoffs[i].Level) < 0)
                at.Add(nameof(StandoffRing.Level), $"there is no level \"{standoffs[i].Level}\" in this tower", StatueNames.Closest(standoffs[i].Level, tower.Levels.Select(l => l.Name)));
            if (skin is null)
                at.Add("", "a ring of standoffs needs a skin to carry", "Set Skin, or leave Standoffs empty.");
        }
        if (skin is not null && standoffs.Count == 0)
            v.Add(nameof(Standoffs), "are missing: nothing holds the skin to the tower", "Add a ring of standoffs for every band.");
    }
}
