namespace StatueFrame.Studies;

/// <summary>A wind heading with the values of all quantities of a <see cref="HeadingProbe"/>.</summary>
/// <param name="Degrees">The heading, from 0 up to 360.</param>
/// <param name="Kind">Why it was looked at.</param>
/// <param name="Values">The values in SI units; not a number where there is none.</param>
internal sealed record HeadingSample(double Degrees, HeadingSampleKind Kind, double[] Values);

/// <summary>Why a heading was looked at.</summary>
internal enum HeadingSampleKind
{
    /// <summary>The situation names it.</summary>
    Given,

    /// <summary>It is of the grid between the given ones.</summary>
    Grid,

    /// <summary>Something is likely to be worst there.</summary>
    Refined,
}
