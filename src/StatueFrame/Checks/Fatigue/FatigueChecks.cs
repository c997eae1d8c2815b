using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Fatigue by the damage sum of Palmgren and Miner with the curves of EN 1993-1-9.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class FatigueChecks
{
    private static readonly Source miner = new("EN 1993-1-9:2005", "Annex A, (A.1), (A.2)");
    private static readonly Source limit = new("EN 1993-1-9:2005", "8 (1), (8.1)");

    /// <summary>The damage of all blocks, 1 at failure.</summary>
    /// <param name="blocks">Cycles of all kinds.</param>
    /// <param name="detail">The detail.</param>
    /// <param name="gammaMf">γ_Mf: 1.0 to 1.35 (EN 1993-1-9, Table 3.1: 1.15 or 1.35 for safe life).</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static double Damage(IEnumerable<StressBlock> blocks, DetailCategory detail, double gammaMf)
    {
        CheckInput.Within(gammaMf, 1, 3, nameof(gammaMf));
        CheckInput.Positive(detail.Strength.Pascals, nameof(detail));
        double D = 0;
        foreach (StressBlock block in blocks)
        {
            (double range, double cycles) = block.Si();
            D += cycles / detail.Cycles(range, gammaMf);
        }
        return D;
    }

    /// <summary>The years until the damage is 1 when the blocks happen again and again; +∞ when they do no harm.</summary>
    /// <param name="blocks">The cycles of <paramref name="years"/> years.</param>
    /// <param name="years">Years, positive.</param>
    /// <param name="detail">The detail.</param>
    /// <param name="gammaMf">γ_Mf.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static double LifeInYears(IEnumerable<StressBlock> blocks, double years, DetailCategory detail, double gammaMf) =>
        CheckInput.Positive(years, nameof(years)) / Damage(blocks, detail, gammaMf);

    /// <summary>
    /// The years until the damage is 1 for a flat that loses thickness on both faces, its stress growing as the square of
    /// the thickness that is left; it ends at the latest when half the thickness is gone.
    /// </summary>
    /// <param name="yearly">The cycles of one year at full thickness.</param>
    /// <param name="thickness">Thickness when new.</param>
    /// <param name="lossPerYear">Loss on each face a year; zero or more.</param>
    /// <param name="detail">The detail.</param>
    /// <param name="gammaMf">γ_Mf.</param>
    /// <returns>Whole years, at most 10 000.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static int LifeWithLoss(IEnumerable<StressBlock> yearly, Length thickness, Length lossPerYear, DetailCategory detail, double gammaMf)
    {
        double t = CheckInput.Positive(thickness.Meters, nameof(thickness)), loss = CheckInput.NotNegative(lossPerYear.Meters, nameof(lossPerYear));
        CheckInput.Within(gammaMf, 1, 3, nameof(gammaMf));
        CheckInput.Positive(detail.Strength.Pascals, nameof(detail));
        (double Range, double Cycles)[] year = [.. yearly.Select(block => block.Si())];
        double D = 0;
        for (int y = 0; y < 10_000; y++)
        {
            // The thickness at the end of the year counts, on the safe side.
            double left = t - 2 * loss * (y + 1);
            if (left < 0.5 * t)
                return y;
            double growth = t / left * (t / left);
            foreach ((double range, double cycles) in year)
                D += cycles / detail.Cycles(growth * range, gammaMf);
            if (D > 1)
                return y;
        }
        return 10_000;
    }

    /// <summary>The damage sum of the design life against 1.</summary>
    /// <param name="blocks">Cycles of all kinds in the design life, with their load factor γ_Ff in them.</param>
    /// <param name="years">Design life in years, positive.</param>
    /// <param name="detail">The detail.</param>
    /// <param name="gammaMf">γ_Mf.</param>
    /// <param name="subject">What it is about.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Check Miner(ValueList<StressBlock> blocks, double years, DetailCategory detail, double gammaMf, CheckSubject subject)
    {
        CheckInput.Positive(years, nameof(years));
        _ = Damage(blocks, detail, gammaMf);
        Check check = Check.Of(subject, Dimension.Number, miner, w => (Miner(w, blocks, years, detail, gammaMf), 1));
        return detail.IsAssumed ? check.Assuming($"fatigue strength: {detail.Name}") : check;
    }

    /// <summary>The greatest range against 1.5 f_y, or 1.5 f_y/√3 in shear: above it the curves do not hold.</summary>
    /// <param name="blocks">Cycles.</param>
    /// <param name="material">The metal.</param>
    /// <param name="detail">The detail.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation; empty for all.</param>
    /// <exception cref="ArgumentOutOfRangeException">A range is negative or not finite.</exception>
    public static Check RangeLimit(ValueList<StressBlock> blocks, Material material, DetailCategory detail, string where = "", string situation = "")
    {
        double range = blocks.Select(block => block.Si().Range).DefaultIfEmpty(0).Max();
        double f_y = CheckInput.Positive(material.YieldStrength.Pascals, nameof(material));
        return Check.Of(new CheckSubject("bars.fatigue-range", "greatest stress range of a standoff", where, situation), Dimension.Stress, limit, w =>
        {
            w.Given(range, Dimension.Stress, "greatest range");
            w.Given(f_y, Dimension.Stress, "yield or proof strength");
            return (range, detail.IsShear
                ? w.Let("allowed", 1.5 * f_y / Math.Sqrt(3), Dimension.Stress, limit)
                : w.Let("allowed", 1.5 * f_y, Dimension.Stress, limit));
        });
    }

    private static double Miner(Working? w, ValueList<StressBlock> blocks, double years, DetailCategory detail, double gammaMf)
    {
        w.Given("Delta_C", detail.Strength.Pascals, Dimension.Stress, detail.Name, detail.Source);
        w.Given(gammaMf, Dimension.Number);
        w.Given("Delta_L", detail.CutOff.Pascals / gammaMf, Dimension.Stress, "cut-off with γ_Mf", DetailCategory.Curve);
        double D = 0;
        int harmless = 0;
        foreach (IGrouping<string, StressBlock> group in blocks.GroupBy(block => block.Name))
        {
            double part = Damage(group, detail, gammaMf);
            D += part;
            if (part == 0)
            {
                harmless++;
                continue;
            }
            w.Given("D_part", part, Dimension.Number, Invariant($"damage of {(group.Key.Length > 0 ? group.Key : "other cycles")}: {group.Sum(b => b.Cycles):0} cycles, ranges up to {group.Max(b => b.Range.Megapascals):0.#} MPa"), miner);
        }
        if (w is not null && harmless > 0)
            w.Note(Invariant($"{harmless} more kinds of cycles stay below the cut-off and do no damage."));
        w.Given("D", D, Dimension.Number, "sum of n/N", miner);
        if (w is not null && D > 0)
            w.Note(Invariant($"At this rate the damage is 1 after {years / D:0.#} years."));
        return D;
    }
}
