using UnitsNet;

namespace StatueFrame.Works;

/// <summary>One line of a <see cref="PartList"/>: a piece, or like fasteners of one place.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Part
{
    /// <summary>Piece mark, as in "K12": pieces of one kind, section, metal and length (to 1 mm) carry the same.</summary>
    public required string Mark { get; init; }

    /// <summary>What it is.</summary>
    public required PartKind Kind { get; init; }

    /// <summary>Where it is, by the names of the check sheet, as in "band 3, bar 7".</summary>
    public required string Where { get; init; }

    /// <summary>Section and what else tells its size, as in "flat 90×22 mm".</summary>
    public required string Size { get; init; }

    /// <summary>Name of the metal or block; empty when it is not described.</summary>
    public required string Material { get; init; }

    /// <summary>Family of the metal; null for blocks and what is not described.</summary>
    public MetalFamily? Family { get; init; }

    /// <summary>Length between its ends in the model; null for what has none. Cuts and laps are not taken off or added.</summary>
    public Length? Length { get; init; }

    /// <summary>How many; 1 but for fasteners and inserts.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Mass of all of <see cref="Count"/>; null when what is described does not tell it.</summary>
    public Mass? Mass { get; init; }

    /// <summary>Middle, in the statue's axes.</summary>
    public required Point3 Center { get; init; }

    /// <summary>The drawing that shows it, as in "ring of band 3".</summary>
    public required string Drawing { get; init; }

    /// <summary>Whether the mass is in the model; bolts of members and armature bars are there as allowances, the base stands outside.</summary>
    public bool InModel { get; init; } = true;
}
