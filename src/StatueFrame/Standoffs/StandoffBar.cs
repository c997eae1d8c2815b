namespace StatueFrame;

/// <summary>One standoff of an <see cref="ExplicitRing"/>, placed by its two ends in the body's axes.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record StandoffBar
{
    /// <summary>The end on the tower; a rigid bracket joins it to the level when it is off the tower.</summary>
    public required Point3 TowerEnd { get; init; }

    /// <summary>The end on the skin, 0.02 m to 20 m from the tower end.</summary>
    public required Point3 SkinEnd { get; init; }

    /// <summary>What the bar is made of and how it is fastened.</summary>
    public required Standoff Standoff { get; init; }

    internal void Validate(Validator v)
    {
        v.Required(Standoff)?.Validate(v.At(nameof(Standoff)));
        Standoff?.ValidateLength(v, nameof(SkinEnd), "the bar", (SkinEnd.Meters - TowerEnd.Meters).Length);
    }
}
