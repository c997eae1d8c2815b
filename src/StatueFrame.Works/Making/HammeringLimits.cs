namespace StatueFrame.Works;

/// <summary>How far the sheet's metal may be worked before it is annealed, and how thin it may become.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record HammeringLimits
{
    /// <summary>
    /// Elongation after fracture of the annealed metal, 0.02 to 1: 0.33 and more for copper R220 (EN 1172, from memory), by the
    /// mill's certificate.
    /// </summary>
    public required double Elongation { get; init; }

    /// <summary>The part of the strain at fracture that is used between two annealings, 0.1 to 1; half by default (common practice, no source).</summary>
    public double UsedPart { get; init; } = 0.5;

    /// <summary>Most annealings that the work may ask for, 0 to 20; 4 by default (common practice, no source).</summary>
    public int MostAnneals { get; init; } = 4;

    /// <summary>The least thickness that may be left, over that of the blank, 0.3 to 1; 0.8 by default: what the strength checks assume must be given.</summary>
    public double LeastThickness { get; init; } = 0.8;

    /// <summary>Equivalent true strain that is used before the metal is annealed: UsedPart · ln(1 + Elongation).</summary>
    public double StrainBetweenAnneals => UsedPart * Math.Log(1 + Elongation);

    internal void Validate(Validator v)
    {
        v.InRange(Elongation, 0.02, 1, "It is elongation over length, near 0.35 of annealed copper.");
        v.InRange(UsedPart, 0.1, 1, "Half of the strain at fracture is usual.");
        v.InRange(MostAnneals, 0, 20, "Few sheets are annealed more than four times.");
        v.InRange(LeastThickness, 0.3, 1, "It is thickness left over thickness of the blank.");
    }
}
