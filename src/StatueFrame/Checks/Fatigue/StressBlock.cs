using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>So many cycles of one stress range.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Range">Greatest less least stress of the cycle; zero or more.</param>
/// <param name="Cycles">How many; zero or more, halves allowed.</param>
/// <param name="Name">What makes them, as in "gusts".</param>
public readonly record struct StressBlock(Pressure Range, double Cycles, string Name = "")
{
    /// <summary>Cycles of heat: one a day over so many years of 365.25 days.</summary>
    /// <param name="dailyRange">Stress range of a day.</param>
    /// <param name="years">Years, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static StressBlock DailyHeat(Pressure dailyRange, double years) =>
        new(Pressure.FromPascals(CheckInput.NotNegative(dailyRange.Pascals, nameof(dailyRange))), 365.25 * CheckInput.Positive(years, nameof(years)), "daily heat");

    /// <summary>The same block with its range times a factor, as γ_Ff or a stress concentration.</summary>
    /// <param name="factor">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is negative or not finite.</exception>
    public StressBlock Times(double factor) => this with { Range = Range * CheckInput.NotNegative(factor, nameof(factor)) };

    internal (double Range, double Cycles) Si() =>
        (CheckInput.NotNegative(Range.Pascals, nameof(Range)), CheckInput.NotNegative(Cycles, nameof(Cycles)));
}
