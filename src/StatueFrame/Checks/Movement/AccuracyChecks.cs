using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>What arithmetic leaves over, where it is more than rounding that nobody feels.</summary>
/// <remarks>Stateless; safe to use from many threads. The limits are common practice, no source.</remarks>
internal static class AccuracyChecks
{
    public static readonly Entry
        Displacements = new("calculation.accuracy", "displacements lost to rounding", "every situation", "displacement that the residual of the solution causes, over the greatest", 1e-6),
        Modes = new("calculation.modes", "modes of vibration lost to rounding", "the modes of the sheet and of every shock", "greatest relative error of a mode, from its residual", 1e-4),
        Buckling = new("calculation.buckling", "buckling factor lost to rounding", "every situation", "relative error of the factor, from its residual", 1e-4),
        Energy = new("calculation.energy", "energies of a shock that do not balance", "every situation with a shock", "what came in less where it is, over the greatest input", 1e-2);

    /// <summary>The part of its limit from which an error is told.</summary>
    private const double Noticed = 1e-3;

    public static CheckEntry[] All => [Displacements, Modes, Buckling, Energy];

    /// <summary>Adds the check where the error is one to be told.</summary>
    public static void Add(SheetWriter lists, Entry entry, double error, string situation = "")
    {
        if (!(error <= Noticed * entry.Greatest))
            lists.Checks.Add(Check.Of(entry.Subject(situation: situation), Dimension.Number, Source.Assumed("model"),
                w => (w.Given("e", error, Dimension.Number, entry.Demand), w.Given("e_max", entry.Greatest, Dimension.Number))));
    }

    /// <summary>An error with the greatest that is borne.</summary>
    internal sealed class Entry(string id, string title, string parts, string demand, double greatest)
        : CheckEntry(id, title, Nature.Range, parts, demand, Invariant($"{greatest:0e+0}"), "nothing was calculated")
    {
        public double Greatest { get; } = greatest;
    }
}
