using UnitsNet;

namespace StatueFrame;

/// <summary>People at one point who move in a rhythm.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record RhythmicCrowd
{
    /// <summary>What they do.</summary>
    public required RhythmicLoad Load { get; init; }

    /// <summary>The named point they stand on.</summary>
    public required string Point { get; init; }

    /// <summary>How many they are, 1 to 10 000.</summary>
    public int People { get; init; } = 1;

    /// <summary>Weight of one; 700 N unless it is given, 100 to 2000 N.</summary>
    public Force Weight { get; init; } = Force.FromNewtons(700);

    /// <summary>
    /// Whether all move together, as to music; else each starts when he likes, and the force grows with the square root of
    /// their number.
    /// </summary>
    public bool InStep { get; init; }

    /// <summary>The number of people in step that shake as much.</summary>
    public double EquivalentPeople => InStep ? People : Math.Sqrt(People);

    internal void Validate(Validator v, StatueNames names)
    {
        v.Required(Load)?.Validate(v.At(nameof(Load)));
        names.RequirePoint(v, nameof(Point), Point);
        v.InRange(People, 1, 10_000, "It is a number of people.");
        v.Positive(Weight, Weight.Newtons, 100, 2000);
    }
}
