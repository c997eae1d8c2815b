using System.Collections.Concurrent;
using StatueFrame.Analysis;

namespace StatueFrame.Studies;

/// <summary>The lightest statue of stock sizes that is good enough, with a certificate.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. Choices are checked from cheap to dear, so that the first good one is the best;
/// the objective is far cheaper to know than the sheet. That is exact, where genetic or annealing searches only guess.
/// </remarks>
public static class StockSearch
{
    /// <summary>Searches.</summary>
    /// <param name="statue">The statue that is varied.</param>
    /// <param name="inputs">What is chosen, 1 to 12 parts.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations to check; at least one.</param>
    /// <param name="accept">Whether a sheet is good enough; null when nothing on it may fail.</param>
    /// <param name="objective">What is to be least, and does not fall from a size to the next; null for the total mass.</param>
    /// <param name="most">The most sheets to make, from 1.</param>
    /// <param name="audits">How many of the choices that were ruled out unseen are checked after all.</param>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="InvalidStatueException">The statue of the smallest sizes has problems, and no objective was given that could do without its mass.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static StockResult Of(
        Statue statue, IReadOnlyList<StockInput> inputs, Criteria criteria, IReadOnlyList<Situation> situations,
        Func<CheckSheet, bool>? accept = null, Func<Statue, double>? objective = null, int most = 5000, int audits = 10, StudyOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(criteria);
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.Count, 1, nameof(inputs));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(inputs.Count, 12, nameof(inputs));
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(audits);
        Situation[] all = [.. situations];
        accept ??= sheet => sheet.Holds;
        objective ??= s => StatueModel.Build(s).Masses.Total.Kilograms;
        var looked = new ConcurrentDictionary<string, bool>();
        LatticeSearch.Found found = LatticeSearch.Run(
            [.. inputs.Select(i => i.Sizes.Count)], [.. inputs.Select(i => i.Strengthens)], point => objective(Make(point)),
            point => looked.GetOrAdd(string.Join(',', point), _ => IsGood(point)), most, audits, options ?? new StudyOptions());
        Statue? best = found.Best is { } b ? Make(b) : null;
        return new StockResult
        {
            Choice = found.Best is { } at ? inputs.Select((input, i) => (input.Name, input.Sizes[at[i]])).ToValueList() : [],
            Statue = best,
            Sheet = best?.Check(criteria, all),
            Objective = found.Best is null ? null : found.Cost,
            Combinations = inputs.Aggregate(1.0, (product, input) => product * input.Sizes.Count),
            Checked = looked.Count,
            RuledOut = found.RuledOut,
            IsProven = found.IsProven,
            Contradiction = found.Contradiction,
        };

        Statue Make(int[] point)
        {
            Statue made = statue;
            for (int i = 0; i < point.Length; i++)
                made = inputs[i].With(made, point[i]);
            return made;
        }

        bool IsGood(int[] point)
        {
            try
            {
                return accept(Make(point).Check(criteria, all));
            }
            // A choice that cannot be built is no choice.
            catch (InvalidStatueException)
            {
                return false;
            }
        }
    }
}
