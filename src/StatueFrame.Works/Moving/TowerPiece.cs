using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Works;

/// <summary>Segments of a tower or limb that are made, moved and lifted as one.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record TowerPiece
{
    internal TowerPiece()
    {
    }

    /// <summary>Number, from 1, in the order of re-erection: the tower from below, then limbs in the description's order.</summary>
    public required int Number { get; init; }

    /// <summary>Its first and last level, as in "L6 to L12".</summary>
    public required string Name { get; init; }

    /// <summary>The segments, as in "L6–L7".</summary>
    public required ValueList<string> Segments { get; init; }

    /// <summary>Mass with level frames, brackets and flanges that ride on it.</summary>
    public required Mass Mass { get; init; }

    /// <summary>Length along its axis.</summary>
    public required Length Length { get; init; }

    /// <summary>The greatest width of its structure across the axis, brackets included when they travel on it.</summary>
    public required Length Width { get; init; }

    /// <summary>Center of gravity: distance along the axis from its lower end.</summary>
    public required Length Center { get; init; }

    /// <summary>What its lower end is joined by: "base", bolts or rivets of splices, flange, weld, or "not described".</summary>
    public required string LowerJoint { get; init; }

    /// <summary>The model's segments, for the checks of the lift.</summary>
    internal SegmentModel[] Models { get; init; } = [];

    /// <summary>Mass of each segment with what rides on it, kg, and where along the axis it begins and ends, m.</summary>
    internal (double Mass, double From, double To)[] Line { get; init; } = [];

    /// <summary>Of each segment the bending moment over the greatest force that it gives to a leg, whichever side is up, m; zero without legs.</summary>
    internal double[] Arms { get; init; } = [];
}
