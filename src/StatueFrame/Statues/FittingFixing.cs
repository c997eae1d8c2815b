using UnitsNet;

namespace StatueFrame;

/// <summary>The bolts that hold a fitting to what carries it, in one plane, as on a bracket's foot or a clamp.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record FittingFixing
{
    /// <summary>The bolts.</summary>
    public required Bolt Bolt { get; init; }

    /// <summary>How many, 2 to 200.</summary>
    public required int Count { get; init; }

    /// <summary>Least distance between the outermost bolts, upright or across, 20 mm to 20 m.</summary>
    public required Length Lever { get; init; }

    /// <summary>From the plane of the bolts to the fitting's center of mass, 0 to 10 m.</summary>
    public required Length Reach { get; init; }

    internal void Validate(Validator v)
    {
        v.Required(Bolt)?.Validate(v.At(nameof(Bolt)));
        v.InRange(Count, 2, 200, "One bolt does not hold against tilting.");
        v.Positive(Lever, Lever.Meters, 0.02, 20);
        v.Within(Reach, Reach.Meters, 0, 10);
    }
}
