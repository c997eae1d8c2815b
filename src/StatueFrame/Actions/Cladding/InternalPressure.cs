using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// The pressure inside the skin, as coefficients on the same velocity pressure: the greatest and the least, of which the
/// worse acts with each external pressure. Positive presses outward.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Greatest">The greatest c_pi, −2.7 to 1.5.</param>
/// <param name="Least">The least c_pi, −2.7 to the greatest.</param>
/// <param name="Source">Where the coefficients come from.</param>
public sealed record InternalPressure(double Greatest, double Least, Source Source)
{
    /// <summary>Leaks all round and their share unknown: the worse of +0.2 and −0.3.</summary>
    public static InternalPressure UnknownOpenings { get; } = new(0.2, -0.3, Source.En1991_1_4("7.2.9 (6) note 2"));

    /// <summary>Enclosed: ±0.18.</summary>
    public static InternalPressure AsceEnclosed { get; } = new(0.18, -0.18, Source.Asce7_22("Table 26.13-1, enclosed"));

    /// <summary>Partially enclosed: ±0.55.</summary>
    public static InternalPressure AscePartiallyEnclosed { get; } = new(0.55, -0.55, Source.Asce7_22("Table 26.13-1, partially enclosed"));

    /// <summary>
    /// One face with at least twice the openings of all others (a broken window, a viewing gallery, the open foot of the
    /// skin): c_pi = 0.75 c_pe at twice, 0.90 c_pe from three times on, linear between.
    /// </summary>
    /// <param name="openingRatio">Openings of that face over those of all others, at least 2; infinity for no others.</param>
    /// <param name="greatestOutside">The greatest c_pe at those openings over all headings, −3 to 1.5.</param>
    /// <param name="leastOutside">The least c_pe at those openings, at most the greatest.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static InternalPressure DominantOpening(double openingRatio, double greatestOutside, double leastOutside)
    {
        if (!(openingRatio >= 2))
            throw new ArgumentOutOfRangeException(nameof(openingRatio), Invariant($"A face is dominant with at least 2 times the openings of the others, not {openingRatio}."));
        if (!(greatestOutside is >= -3 and <= 1.5))
            throw new ArgumentOutOfRangeException(nameof(greatestOutside));
        if (!(leastOutside >= -3 && leastOutside <= greatestOutside))
            throw new ArgumentOutOfRangeException(nameof(leastOutside));
        double share = 0.75 + 0.15 * Math.Min(openingRatio - 2, 1);
        return new InternalPressure(share * greatestOutside, share * leastOutside, Source.En1991_1_4("7.2.9 (5) (7.1) and (7.2)"));
    }

    internal void Validate(Validator v)
    {
        v.InRange(Greatest, -2.7, 1.5, "It is a multiple of the peak velocity pressure.");
        v.InRange(Least, -2.7, 1.5, "It is a multiple of the peak velocity pressure.");
        if (Least > Greatest)
            v.Add(nameof(Least), "must not exceed Greatest", "Were the two swapped?");
    }
}
