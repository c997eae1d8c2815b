using UnitsNet;

namespace StatueFrame.Works;

/// <summary>What was found of one part on one day.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Finding
{
    /// <summary>The part by its name on the check sheet and the part list, as in "band 3", "band 3, bar 7", "L3–L4, brace a, face 2, bay 1"; a hyphen stands for the dash between levels.</summary>
    public required string Part { get; init; }

    /// <summary>When.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>How it is.</summary>
    public required PartCondition Condition { get; init; }

    /// <summary>Measured thickness; of several points the least. Null when it was not measured.</summary>
    public Length? Thickness { get; init; }

    /// <summary>Reference of a photograph; empty when there is none.</summary>
    public string Photo { get; init; } = "";

    /// <summary>What else was seen.</summary>
    public string Note { get; init; } = "";
}
