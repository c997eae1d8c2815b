using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// The gusts of fifty years by EN 1991-1-4, B.3: an effect of the wind reaches the share ΔS/S_k of its fifty-year value
/// N_g times, ΔS/S_k = 0.7 (log N_g)² − 17.4 log N_g + 100 in percent.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class GustStressSpectrum
{
    /// <summary>The years that the formula is for.</summary>
    public const double Years = 50;

    private const int StepsPerDecade = 100, Decades = 9;

    /// <summary>Of every block the share of the fifty-year effect and the cycles in fifty years.</summary>
    private static readonly (double Share, double Cycles)[] steps =
        [(1, 1), .. Enumerable.Range(1, Decades * StepsPerDecade).Select(i => (ShareAt(LogAt(i - 1)), Math.Pow(10, LogAt(i)) - Math.Pow(10, LogAt(i - 1))))];

    /// <summary>The share of the fifty-year effect that is reached so many times in fifty years, 1 down to 0.</summary>
    /// <param name="times">N_g, from 1 to 10⁹.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public static double Share(double times) => ShareAt(Math.Log10(CheckInput.Within(times, 1, 1e9, nameof(times))));

    /// <summary>How many times in fifty years a share of the fifty-year effect is reached: the formula read the other way.</summary>
    /// <param name="share">From 0.001 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is out of range.</exception>
    public static double Times(double share)
    {
        double s = 100 * CheckInput.Within(share, 0.001, 1, nameof(share));
        return Math.Pow(10, (17.4 - Math.Sqrt(17.4 * 17.4 - 2.8 * (100 - s))) / 1.4);
    }

    /// <summary>
    /// The cycles of gusts in a number of years as blocks, a hundredth of a decade each, with the greatest gust of the block:
    /// the damage comes out up to 3 % high. The value that a gust reaches is taken as the range of its cycle.
    /// </summary>
    /// <param name="characteristicRange">Stress range of the fifty-year wind with its dynamic effects.</param>
    /// <param name="years">Years, positive; the count is in proportion.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static ValueList<StressBlock> Blocks(Pressure characteristicRange, double years)
    {
        double S = CheckInput.NotNegative(characteristicRange.Pascals, nameof(characteristicRange)), share = CheckInput.Positive(years, nameof(years)) / Years;
        return ValueList.Create<StressBlock>(Array.ConvertAll(steps, step => new StressBlock(Pressure.FromPascals(S * step.Share), share * step.Cycles, "gusts")));
    }

    /// <summary>The damage of these blocks.</summary>
    internal static double Damage(double characteristicRange, double years, DetailCategory detail, double gammaMf)
    {
        double D = 0, share = years / Years;
        foreach ((double of, double cycles) in steps)
        {
            double last = share * cycles / detail.Cycles(characteristicRange * of, gammaMf);
            // Smaller ranges than one that does no harm do none either.
            if (last == 0)
                break;
            D += last;
        }
        return D;
    }

    private static double LogAt(int step) => (double)step / StepsPerDecade;

    private static double ShareAt(double log) => Math.Max(0, (0.7 * log * log - 17.4 * log + 100) / 100);
}
