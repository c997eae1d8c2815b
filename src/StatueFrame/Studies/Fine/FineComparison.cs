using System.Globalization;
using System.Text;
using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>The reduced model of a statue against its fine one in a situation: sway, reactions, frequencies, and of every ring the greatest stress and force.</summary>
/// <remarks>
/// Standoffs of the reduced model are under the worst of its bounds on the skin, with bands apart and, where the description
/// leaves it open, tied. Immutable and safe to share between threads.
/// </remarks>
public sealed class FineComparison
{
    private const double Coarser = 1.4142135623730951, NoticedError = 1e-6;

    private FineComparison(FineModel model, Situation situation, ValueList<FineComparisonRow> rows, ValueList<string> remarks) =>
        (Model, Situation, Rows, Remarks) = (model, situation, rows, remarks);

    /// <summary>The fine model.</summary>
    public FineModel Model { get; }

    /// <summary>What acts.</summary>
    public Situation Situation { get; }

    /// <summary>The quantities, one a row.</summary>
    public ValueList<FineComparisonRow> Rows { get; }

    /// <summary>What the numbers rest on, and where the fine model itself may be off.</summary>
    public ValueList<string> Remarks { get; }

    /// <summary>The rows in which the fine model finds more than 1.05 times what should be a bound.</summary>
    public IEnumerable<FineComparisonRow> Unsafe => Rows.Where(row => row.IsUnsafe);

    /// <summary>Compares the two models of a statue.</summary>
    /// <param name="statue">The description.</param>
    /// <param name="situation">What acts; without shock and earthquake.</param>
    /// <param name="mesh">How finely; defaults when null.</param>
    /// <param name="withError">Whether a coarser mesh tells what the finer one may still lack.</param>
    /// <exception cref="InvalidStatueException">The description, the situation or the mesh has problems.</exception>
    public static FineComparison Of(Statue statue, Situation situation, FineMesh? mesh = null, bool withError = true)
    {
        FineModel fine = FineModel.Build(statue, mesh);
        FineModel? coarse = withError ? FineModel.Build(fine.Reduced, (mesh ?? new FineMesh()) with { Size = Coarser * fine.Size }) : null;
        return Of(fine, coarse, situation);
    }

    /// <summary>Compares from models that are there.</summary>
    /// <param name="fine">The fine model.</param>
    /// <param name="coarse">One 1.4 times as coarse; null leaves the error open.</param>
    /// <param name="situation">What acts.</param>
    internal static FineComparison Of(FineModel fine, FineModel? coarse, Situation situation)
    {
        FineResponse response = fine.Respond(situation);
        FineResponse? rough = coarse?.Respond(situation);
        Response[] reduced = [.. TiedBands.Of(fine.Reduced).Select(model => model.Respond(situation))];
        var rows = new List<FineComparisonRow>();
        foreach (NamedPoint point in fine.Reduced.Statue.Points)
            Add("sway", point.Name, Dimension.SmallLength, reduced[0].GreatestSway(point.Name).Sway.Meters, r => r.GreatestSway(point.Name).Sway.Meters);
        Add("base shear", "", Dimension.Force, reduced[0].Cases.Max(c => c.Base.Shear.Newtons), r => r.Cases.Max(c => c.Base.Shear.Newtons));
        Add("base overturning moment", "", Dimension.Moment, reduced[0].Cases.Max(c => c.Base.Overturning.NewtonMeters), r => r.Cases.Max(c => c.Base.Overturning.NewtonMeters));
        AddFrequencies(fine, coarse, rows);
        foreach (string ring in response.Bars.Select(bar => BandOf(bar.Where)).Distinct())
        {
            Add("greatest stress of a standoff", ring, Dimension.Stress, reduced.Max(r => r.Bars.Where(bar => bar.Band == ring).Max(bar => bar.Stress.Pascals)),
                r => r.Bars.Where(bar => BandOf(bar.Where) == ring).Max(bar => bar.Stress.Pascals), isBound: true);
        }
        SkinStressResult skin = response.GreatestSkinStress();
        return new FineComparison(fine, situation, rows.ToValueList(),
        [
            Invariant($"{fine.TriangleCount} triangles of at most {fine.Size.Millimeters:0} mm, {fine.EquationCount} equations{(response.SolutionError > NoticedError ? Invariant($"; displacements off by rounding {response.SolutionError:0.0e+0}") : "")}"),
            Invariant($"skin away from standoffs: at most {skin.VonMises.Megapascals:0.0} MPa (von Mises; {skin.Membrane.Megapascals:0.0} MPa without bending) in {skin.Band}, {skin.At.Z:0.0} m above the base, {Headings.Describe(skin.Heading)}"),
            "levels are rigid in plan in both models; saddles hold one point of the sheet and slide without friction; folds add no stiffness",
        ]);

        void Add(string quantity, string part, Dimension dimension, double ours, Func<FineResponse, double> theirs, bool isBound = false)
        {
            double found = theirs(response);
            rows.Add(new FineComparisonRow(quantity, part, dimension, ours, found, rough is null ? null : ErrorOf(found, theirs(rough)), isBound));
        }
    }

    /// <summary>The lowest modes that move much of the mass: along x and along y.</summary>
    private static void AddFrequencies(FineModel fine, FineModel? coarse, List<FineComparisonRow> rows)
    {
        const int Looked = 12;
        ValueList<FineMode> modes = fine.Modes(Looked);
        ValueList<FineMode>? rough = coarse?.Modes(Looked);
        IReadOnlyList<ModeResult> theirs = fine.Reduced.Modes(Looked).Modes;
        foreach (bool alongX in (ReadOnlySpan<bool>)[true, false])
        {
            double ours = Extremes.FirstGreatest([.. theirs], mode => alongX ? mode.MassFractionX : mode.MassFractionY).Frequency.Hertz;
            double found = Main(modes);
            rows.Add(new FineComparisonRow("frequency of the mode that moves most mass", alongX ? "along x" : "along y", Dimension.Frequency, ours, found, rough is null ? null : ErrorOf(found, Main(rough)), false));

            double Main(ValueList<FineMode> all) => Extremes.FirstGreatest([.. all], mode => alongX ? mode.ShareX : mode.ShareY).Frequency.Hertz;
        }
    }

    /// <summary>Of an error with the square of the size, a mesh √2 times as coarse has twice as much.</summary>
    private static double ErrorOf(double fine, double coarse) => fine == 0 ? 0 : Math.Abs((coarse - fine) / fine);

    internal static string BandOf(string bar) => bar[..bar.LastIndexOf(',')];

    /// <summary>The table as plain text, at most 110 columns wide.</summary>
    /// <param name="units">The units to print in.</param>
    public string Print(DisplayUnits units = DisplayUnits.Metric)
    {
        var text = new StringBuilder();
        TextLayout.AppendWrapped(text, "", $"REDUCED AGAINST FINE: {Model.Reduced.Statue.Name}, {Situation.Name}");
        TextLayout.AppendTable(text, 2, [new(42), new(14), new(12, Right: true), new(12, Right: true), new(7, Right: true), new(8, Right: true), new(0)],
            [["", "", "reduced", "fine", "ratio", "mesh ±", ""], .. Rows.Select(row => Row(row, units))]);
        text.Append("\nWHAT IT RESTS ON\n");
        TextLayout.AppendTable(text, 2, [new TextColumn(0)], [.. Remarks.Select(remark => new[] { remark })]);
        text.Append("\nCAUTION\n");
        TextLayout.AppendTable(text, 2, [new TextColumn(0)], [[CheckSheet.Caution]]);
        return text.ToString();
    }

    private static string[] Row(FineComparisonRow row, DisplayUnits units) =>
    [
        row.Quantity, row.Part, row.Dimension.Format(row.Reduced, units), row.Dimension.Format(row.Fine, units), Invariant($"{row.Ratio:0.00}"),
        row.Error is { } error ? string.Create(CultureInfo.InvariantCulture, $"{100 * error:0.0} %") : "", row.IsUnsafe ? "above" : "",
    ];

    /// <summary>The table in metric units.</summary>
    public override string ToString() => Print();
}
