using StatueFrame.Analysis;
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
        Levels = new("calculation.levels", "levels too few for a shock", "every body in a shock", "greatest mass of a segment between two levels, over that of its body", 0.35, 1),
        Energy = new("calculation.energy", "energies of a shock that do not balance", "every situation with a shock", "what came in less where it is, over the greatest input", 1e-2);

    public static CheckEntry[] All => [Displacements, Modes, Buckling, Levels, Energy];

    /// <summary>Adds the check where the error is one to be told.</summary>
    public static void Add(SheetWriter lists, Entry entry, double error, string situation = "")
    {
        if (!(error <= entry.Noticed * entry.Greatest))
            lists.Checks.Add(Check.Of(entry.Subject(situation: situation), Dimension.Number, Source.Assumed("model"),
                w => (w.Given("e", error, Dimension.Number, entry.Demand), w.Given("e_max", entry.Greatest, Dimension.Number))));
    }

    /// <summary>
    /// The greatest part of a body's mass that lies between two of its levels: in time its inertia is followed at the levels alone, and
    /// the modes of a shock are those of a body of as many pieces.
    /// </summary>
    public static double BetweenLevels(StatueModel model)
    {
        double greatest = 0;
        foreach (BodyModel body in model.Bodies)
        {
            double all = body.Segments.Sum(segment => segment.Mass) + body.Bands.Sum(band => band.Mass)
                + model.Statue.Fittings.Where(fitting => (body.Prefix.Length == 0) != fitting.On.Contains('/') && fitting.On.StartsWith(body.Prefix, StringComparison.Ordinal)).Sum(fitting => fitting.Mass.Kilograms);
            greatest = Math.Max(greatest, all > 0 ? body.Segments.Max(segment => segment.Mass) / all : 0);
        }
        return greatest;
    }

    /// <summary>An error with the greatest that is borne, and the part of it from which it is told.</summary>
    internal sealed class Entry(string id, string title, string parts, string demand, double greatest, double noticed = 1e-3)
        : CheckEntry(id, title, Nature.Range, parts, demand, Invariant($"{greatest:0.##e+0}"), "nothing was calculated")
    {
        public double Noticed { get; } = noticed;

        public double Greatest { get; } = greatest;
    }
}
