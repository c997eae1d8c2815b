using System.Text;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Reporting;
using StatueFrame.Shape;
using UnitsNet;
using static System.FormattableString;
using Verdict = StatueFrame.Checks.Verdict;

namespace StatueFrame.Works;

/// <summary>
/// What the workshop needs to make the sheets of a plan: blanks with their seams and rivet holes as templates, sections for the
/// forms that they are hammered over, what hammering asks of the metal, and which sheet is riveted to which.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class SheetWorkshop
{
    private readonly SeamSide[] sides;
    private readonly Lazy<SheetBlank[]> blanks;

    private SheetWorkshop(SheetPlan plan, SheetCutting cutting, RivetedSeam seam)
    {
        (Plan, Cutting, Seam) = (plan, cutting, seam);
        sides = SeamFinder.Of(plan);
        blanks = new Lazy<SheetBlank[]>(() =>
        {
            var made = new SheetBlank[plan.Sheets.Count];
            ParallelWork.ForEach(made.Length, i => made[i] = SheetBlank.Of(plan.Sheets[i]));
            return made;
        });
        Seams =
        [
            .. sides.Where(s => s.Other > s.Sheet).GroupBy(s => (s.Sheet, s.Other, Flush: IsFlush(s.Middle))).OrderBy(g => g.Key.Sheet).ThenBy(g => g.Key.Other).ThenBy(g => g.Key.Flush)
                .Select(g => new SheetSeam(plan.Sheets[g.Key.Sheet].Number, plan.Sheets[g.Key.Other].Number, g.Key.Flush, Length.FromMeters(g.Sum(s => s.Length)),
                    (g.Key.Flush ? 2 : 1) * seam.Rows * Math.Max(1, (int)Math.Ceiling(g.Sum(s => s.Length) / seam.Pitch.Meters - 1e-9)))),
        ];
    }

    /// <summary>Sets up the work on a plan.</summary>
    /// <param name="plan">The sheets.</param>
    /// <param name="cutting">How the plan was cut: thickness, metal and flush regions.</param>
    /// <param name="seam">Pitch, rows and edge distance of the rivets.</param>
    /// <exception cref="InvalidStatueException">The seam has problems.</exception>
    public static SheetWorkshop Of(SheetPlan plan, SheetCutting cutting, RivetedSeam seam)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(cutting);
        ArgumentNullException.ThrowIfNull(seam);
        var v = new Validator();
        seam.Validate(v.At(nameof(Seam)));
        v.ThrowIfAny();
        return new SheetWorkshop(plan, cutting, seam);
    }

    /// <summary>The sheets.</summary>
    public SheetPlan Plan { get; }

    /// <summary>How they were cut.</summary>
    public SheetCutting Cutting { get; }

    /// <summary>How they are riveted.</summary>
    public RivetedSeam Seam { get; }

    /// <summary>Every seam between two sheets.</summary>
    public ValueList<SheetSeam> Seams { get; }

    /// <summary>Edge that meets no other sheet.</summary>
    public Length FreeEdge => Length.FromMeters(sides.Where(s => s.Other < 0).Sum(s => s.Length));

    /// <summary>The blank of every sheet, in the plan's order; made on first asking, on all threads.</summary>
    public IReadOnlyList<SheetBlank> Blanks => blanks.Value;

    /// <summary>What hammering asks of every sheet, the worst first.</summary>
    /// <param name="limits">The metal's and the shop's limits.</param>
    /// <exception cref="InvalidStatueException">A limit is out of range.</exception>
    public ValueList<Hammering> Hammered(HammeringLimits limits) =>
        [.. Blanks.Select(b => b.Hammered(limits)).OrderBy(h => h.Verdict == Verdict.Fail ? 0 : 1).ThenByDescending(h => h.Anneals).ThenBy(h => h.ThicknessLeft)];

    /// <summary>
    /// The template of a blank in true size: the seam line on which the rivets sit, their holes, the edge to cut with the lap
    /// beyond the seam, and the number of the sheet across each seam.
    /// </summary>
    /// <param name="number">The sheet's number.</param>
    /// <exception cref="ArgumentException">There is no such sheet.</exception>
    public Drawing Template(int number)
    {
        int index = IndexOf(number);
        return SheetTemplate.Of(this, index, Blanks[index], [.. sides.Where(s => s.Sheet == index)]);
    }

    /// <summary>
    /// Sections through the shaped sheet for the ribs of a wooden or plaster form, side by side: each the inner face of the sheet
    /// over a level base line.
    /// </summary>
    /// <param name="number">The sheet's number.</param>
    /// <param name="spacing">Distance of the ribs, 20 mm to 2 m.</param>
    /// <exception cref="ArgumentException">There is no such sheet.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The spacing is out of range.</exception>
    public Drawing Form(int number, Length spacing)
    {
        if (!(spacing.Meters is >= 0.02 and <= 2))
            throw new ArgumentOutOfRangeException(nameof(spacing), spacing, "must be 20 mm to 2 m");
        int index = IndexOf(number);
        return SheetTemplate.Form(Plan.Sheets[index], Blanks[index].Frame, Cutting.Thickness.Meters, spacing.Meters);
    }

    /// <summary>The schedule of blanks as comma-separated values (RFC 4180), with a heading.</summary>
    /// <param name="limits">The metal's and the shop's limits.</param>
    public string ToCsv(HammeringLimits limits)
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["sheet", "blank length [m]", "blank width [m]", "area [m²]", "mass [kg]", "greatest strain", "mean strain", "least thickness [%]", "greatest thickness [%]", "annealings", "verdict", "neighbors"]);
        foreach (SheetBlank b in Blanks)
        {
            Hammering h = b.Hammered(limits);
            CsvText.AppendLine(text,
            [
                Invariant($"{b.Sheet.Number}"), Invariant($"{b.Length.Meters:0.000}"), Invariant($"{b.Width.Meters:0.000}"), Invariant($"{b.Sheet.Area.SquareMeters:0.000}"), Invariant($"{b.Sheet.Mass.Kilograms:0.00}"),
                Invariant($"{b.GreatestStrain:0.000}"), Invariant($"{b.MeanStrain:0.000}"), Invariant($"{100 * b.LeastThickness:0.0}"), Invariant($"{100 * b.GreatestThickness:0.0}"), Invariant($"{h.Anneals}"), h.Verdict.ToString(),
                string.Join(' ', Seams.Where(s => s.First == b.Sheet.Number || s.Second == b.Sheet.Number).Select(s => s.First == b.Sheet.Number ? s.Second : s.First).Distinct().Order()),
            ]);
        }
        return text.ToString();
    }

    internal bool IsFlush(Vector3D at) => Cutting.Flush.Any(r => (r.Center.Meters - at).Length <= r.Radius.Meters);

    private int IndexOf(int number)
    {
        for (int i = 0; i < Plan.Sheets.Count; i++)
        {
            if (Plan.Sheets[i].Number == number)
                return i;
        }
        throw new ArgumentException($"The plan has no sheet {number}; it has {Plan.Sheets.Count}.", nameof(number));
    }
}
