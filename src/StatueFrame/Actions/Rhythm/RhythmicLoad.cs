using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// The force of one person who moves in a rhythm, F(t) = G·Σ α_n·sin(2πnft + φ_n) besides the weight G: the load
/// coefficients α of its harmonics.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record RhythmicLoad
{
    /// <summary>What people do.</summary>
    public required string Name { get; init; }

    /// <summary>α₁, α₂, …: amplitude of each harmonic over the weight, 0 to 5; one to ten.</summary>
    public required ValueList<double> Coefficients { get; init; }

    /// <summary>The slowest rhythm.</summary>
    public required Frequency Slowest { get; init; }

    /// <summary>The fastest rhythm.</summary>
    public required Frequency Fastest { get; init; }

    /// <summary>The direction of the force; upwards unless it is said.</summary>
    public Direction3 Direction { get; init; } = Direction3.Z;

    /// <summary>Where the coefficients come from.</summary>
    public Source Source { get; init; } = Source.User;

    /// <summary>Walking, upwards: 0.4 at 2 Hz, 0.1, 0.1; 1.6 to 2.4 Hz. Source: Bachmann and Ammann 1987, from memory.</summary>
    public static RhythmicLoad Walking { get; } = new()
    {
        Name = "walking",
        Coefficients = [0.4, 0.1, 0.1],
        Slowest = Hz(1.6),
        Fastest = Hz(2.4),
        Source = Bachmann("walking, vertical"),
    };

    /// <summary>Running: 1.6, 0.7, 0.2; 2 to 3.5 Hz. Source: Bachmann and Ammann 1987, from memory.</summary>
    public static RhythmicLoad Running { get; } = new()
    {
        Name = "running",
        Coefficients = [1.6, 0.7, 0.2],
        Slowest = Hz(2),
        Fastest = Hz(3.5),
        Source = Bachmann("running"),
    };

    /// <summary>Jumping: 1.8, 1.3, 0.7, 0.2; 1.8 to 3.4 Hz. Source: Bachmann and Ammann 1987, from memory.</summary>
    public static RhythmicLoad Jumping { get; } = new()
    {
        Name = "jumping",
        Coefficients = [1.8, 1.3, 0.7, 0.2],
        Slowest = Hz(1.8),
        Fastest = Hz(3.4),
        Source = Bachmann("jumping, normal"),
    };

    /// <summary>Swaying from side to side while standing: 0.5; 0.4 to 0.8 Hz, along x unless it is turned. Source: Bachmann and Ammann 1987, from memory.</summary>
    public static RhythmicLoad BodySway { get; } = new()
    {
        Name = "swaying from side to side",
        Coefficients = [0.5],
        Slowest = Hz(0.4),
        Fastest = Hz(0.8),
        Direction = Direction3.X,
        Source = Bachmann("lateral body swaying, standing"),
    };

    internal void Validate(Validator v)
    {
        v.Named(Name);
        v.Required(Source);
        v.Positive(Slowest, Slowest.Hertz, 0.01, 100);
        v.Positive(Fastest, Fastest.Hertz, 0.01, 100);
        if (Fastest < Slowest)
            v.Add(nameof(Fastest), Invariant($"must not be below Slowest, is {Fastest.Hertz:0.###} Hz"), "Swap the two.");
        if (Coefficients is null)
            v.Required(Coefficients);
        else if (Coefficients.Count is 0 or > 10)
            v.Add(nameof(Coefficients), "must hold one to ten harmonics", "Give α of the first harmonic, then of those above it.");
        else
        {
            for (int i = 0; i < Coefficients.Count; i++)
                v.InRange(Coefficients[i], 0, 5, "It is an amplitude over the weight, near 0.1 to 1.8.", $"{nameof(Coefficients)}[{i}]");
        }
    }

    private static Frequency Hz(double value) => Frequency.FromHertz(value);

    private static Source Bachmann(string place) => new("Bachmann and Ammann 1987, Vibrations in Structures", $"{place}, from memory");
}
