using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Writes what a fine model finds in a situation: the stress of the sheet, and the rings whose bounds on the skin it exceeds.</summary>
internal static class FineSheet
{
    /// <summary>The sheet of one body where it is stressed most.</summary>
    /// <param name="Body">The body.</param>
    /// <param name="Found">Where and how much.</param>
    /// <param name="Metal">The metal of the sheet.</param>
    /// <param name="Fraction">Allowable stress over proof strength.</param>
    internal readonly record struct SheetStress(string Body, SkinStressResult Found, Material Metal, double Fraction);

    private static readonly Source vonMises = new("Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.", "Art. 10, 104: N/t ± 6 M/t² of a thin shell; yield after von Mises");

    internal static readonly FormulaEntry<SheetStress> ShellStress = new(
        "sheet.shell-stress", "stress of the sheet as a shell", Nature.Strength, "every triangle of the fine model that touches no standoff", "equivalent stress of membrane and bending",
        "fraction of proof strength", "the fine model was not run (Criteria.Fine)")
    {
        Dimension = Dimension.Stress,
        Rule = (in SheetStress _) => vonMises,
        Where = (in SheetStress s) => s.Body,
        Run = (Working? w, in SheetStress s) =>
        {
            if (w is not null)
                w.Note(Invariant($"Greatest in {s.Found.Band}, {s.Found.At.Z:0.00} m above the base, {Headings.Describe(s.Found.Heading)}; {s.Found.Membrane.Megapascals:0.0} MPa of it without bending."));
            double sigma = w.Given("sigma", s.Found.VonMises.Pascals, Dimension.Stress, "greatest equivalent stress of the fine model");
            double f_y = w.Given("f_y", s.Metal.YieldStrength.Pascals, Dimension.Stress, "proof strength"), fraction = w.Given("fraction", s.Fraction, Dimension.Number);
            return (sigma, w.Let("allowed", fraction * f_y, Dimension.Stress));
        },
    };

    /// <summary>What the fine model takes that nobody gave.</summary>
    internal static readonly Assumption[] Assumptions =
    [
        new("fine model of the skin", "smooth sheet between the stations, folds without stiffness; armature along the outline; saddles hold one point and slide without friction; wind on the side it comes from", Source.Assumed("skin")),
    ];

    public static void Add(FineResponse fine, SituationDemands demands, Criteria criteria, SheetWriter lists)
    {
        string name = demands.Situation.Name;
        SkinStressResult skin = fine.GreatestSkinStress(), atSaddles = fine.GreatestSkinStress(awayFromBars: false);
        lists.Results.Add(new ResultLine(name, "greatest stress of the sheet as a shell", skin.VonMises.Pascals, Dimension.Stress, Invariant($"{skin.Band}, away from standoffs; {atSaddles.VonMises.Megapascals:0} MPa at one")));
        foreach (NamedPoint point in fine.Model.Reduced.Statue.Points)
            lists.Results.Add(new ResultLine(name, $"sway at {point.Name} by the fine model", fine.GreatestSway(point.Name).Sway.Meters, Dimension.SmallLength));
        if (demands.Situation.LimitState == LimitState.Strength)
        {
            foreach (BodyModel body in fine.Model.Reduced.Bodies.Where(body => body.Bands.Length > 0))
            {
                SkinStressResult worst = fine.Cases.Select(c => c.GreatestSkinStress(true, body)).ToArray().FirstGreatest(s => s.VonMises.Pascals);
                lists.Run(ShellStress, [new SheetStress(body.Name, worst, body.Skin!.Material, SkinSheet.FractionOf(criteria.Skin))], [.. SkinSheet.AssumedBy(criteria.Skin), .. Assumptions]);
            }
        }
        WarnOfBounds(fine, demands, lists);
    }

    /// <summary>Says where the fine model finds more than the bounds on the skin; the checks of standoffs have its forces.</summary>
    private static void WarnOfBounds(FineResponse fine, SituationDemands demands, SheetWriter lists)
    {
        var above = new List<(string Ring, double Ratio)>();
        for (int ring = 0; ring < fine.Model.Reduced.Rings.Count; ring++)
        {
            double bound = 0, shell = 0;
            demands.Bars(ring, (BarModel bar, SkinAssumption skin, in BarEnds ends, DemandState _) =>
            {
                double stress = ends.NormalStress(bar.Standoff.Section.Width.Meters, bar.Standoff.Section.Thickness.Meters);
                if (skin == SkinAssumption.Shell)
                    shell = Math.Max(shell, stress);
                else
                    bound = Math.Max(bound, stress);
            });
            if (shell > FineModel.Tolerated * bound)
                above.Add((fine.Model.Reduced.Rings[ring].Ring.BandName, shell / bound));
        }
        if (above.Count == 0)
            return;
        (string worst, double ratio) = above.ToArray().FirstGreatest(a => a.Ratio);
        lists.Warnings.Add(Invariant($"{demands.Situation.Name}: the fine model stresses standoffs of {above.Count} {(above.Count == 1 ? "ring" : "rings")} more than the bounds on the skin do, most in {worst}: {ratio:0.00} times. Its forces are checked too."));
    }
}
