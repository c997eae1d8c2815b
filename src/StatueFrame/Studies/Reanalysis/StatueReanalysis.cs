using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// Analyzes variants of a statue again and again, at the cost of their numbers alone: the sparsity pattern, the order of
/// elimination, all that the geometry says of loads and bars, and the room to work in are made once. What a variant changes
/// is found by comparing the two descriptions.
/// </summary>
/// <remarks>
/// <para>
/// Fast are changes that leave the geometry alone: standoffs' flats, metals and fixities; sections, metals and connections
/// of lattice segments; sheet metal, thickness and mass of armature of a skin of one thickness; springs under the trunk;
/// masses of fittings. Any other statue is analyzed as well, but costs as much as building a model.
/// </para>
/// <para>
/// Masses, frequencies, base reactions, sways, second-order effects and buckling come at that cost. Utilizations, and stress and
/// deflection of bars, are those of the catalogue: the first that is asked for runs every entry on the variant, as
/// <see cref="StatueChecks.Check(Statue, Criteria, ReadOnlySpan{Situation})"/> does, and all are kept.
/// </para>
/// <para>For one thread at a time: give each its own, by <see cref="Copy"/>. The numbers of a variant do not depend on what was analyzed before.</para>
/// </remarks>
public sealed class StatueReanalysis
{
    private readonly ReanalysisBasis basis;
    private readonly VariantParts parts;
    private readonly VariantFrame frame;
    private readonly SituationSolver[] solvers;

    private StatueReanalysis(ReanalysisBasis basis)
    {
        this.basis = basis;
        parts = new VariantParts(basis);
        frame = new VariantFrame(basis, parts);
        solvers = new SituationSolver[basis.Loads.Length];
        for (int i = 0; i < solvers.Length; i++)
            solvers[i] = new SituationSolver(basis, frame, i);
    }

    /// <summary>Prepares for variants of a statue.</summary>
    /// <param name="statue">The base: variants with its geometry are fast.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations; at least one, of self-weight, wind, ice and imposed loads.</param>
    /// <param name="frequencies">How many of the lowest frequencies are wanted, 1 to 20.</param>
    /// <exception cref="InvalidStatueException">The statue, the criteria or the situations have problems, or a part is loose.</exception>
    /// <exception cref="ArgumentException">A situation has other actions, or braces act in tension only.</exception>
    public static StatueReanalysis Of(Statue statue, Criteria criteria, IReadOnlyList<Situation> situations, int frequencies = 3)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(criteria);
        ArgumentOutOfRangeException.ThrowIfLessThan(frequencies, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(frequencies, 20);
        return new StatueReanalysis(new ReanalysisBasis(statue, criteria, [.. situations], frequencies));
    }

    /// <summary>Another one for another thread; what does not change is shared.</summary>
    public StatueReanalysis Copy() => new(basis);

    /// <summary>The numbers of a variant.</summary>
    /// <param name="variant">The statue: the base with changes.</param>
    /// <exception cref="InvalidStatueException">The variant has problems, all of which are listed, or a part is loose.</exception>
    /// <exception cref="ArgumentException">Its braces act in tension only.</exception>
    public ReanalysisNumbers Analyze(Statue variant)
    {
        ArgumentNullException.ThrowIfNull(variant);
        return TryAnalyze(variant) ?? OfItsOwn(variant);
    }

    /// <summary>True when a variant has the geometry of the base, so that its analysis is fast.</summary>
    /// <param name="variant">The statue.</param>
    public bool IsFast(Statue variant) => parts.Take(variant);

    private ReanalysisNumbers OfItsOwn(Statue variant)
    {
        var own = new StatueReanalysis(new ReanalysisBasis(variant, basis.Criteria, Array.ConvertAll(basis.Loads, l => l.Situation), basis.Frequencies));
        return own.TryAnalyze(variant) ?? throw new InvalidStatueException([new Problem(nameof(Statue.Tower), "does not stand", "Something holds it too little for its own stiffness to be worked out.")]);
    }

    private ReanalysisNumbers? TryAnalyze(Statue variant)
    {
        if (!parts.Take(variant) || !frame.Assemble(variant))
            return null;
        ReadOnlySpan<double> omega = frame.Frequencies();
        if (omega.Length == 0)
            return null;
        var frequencies = new Frequency[omega.Length];
        for (int i = 0; i < frequencies.Length; i++)
            frequencies[i] = Frequency.FromHertz(omega[i] / (2 * Math.PI));
        var sheet = new SheetOnDemand(variant, basis.Criteria, Array.ConvertAll(basis.Loads, l => l.Situation));
        var situations = new SituationNumbers[solvers.Length];
        for (int i = 0; i < situations.Length; i++)
            situations[i] = solvers[i].Solve(i, sheet);
        return new ReanalysisNumbers
        {
            Mass = Mass.FromKilograms(frame.Kilograms),
            Center = Point3.FromMeters(frame.Center),
            Frequencies = ValueList.Create<Frequency>(frequencies),
            Situations = ValueList.Create<SituationNumbers>(situations),
            Sheet = sheet,
        };
    }
}
