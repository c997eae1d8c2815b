using System.Diagnostics;
using System.Globalization;
using System.Text;
using StatueFrame.Studies;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Benchmarks;

/// <summary>Writes what the fine model finds on many random figures and on the Heron.</summary>
internal static class FinePage
{
    private const int Figures = 240;

    private sealed record Found(RandomFigures.Figure Figure, FineComparisonRow Row);

    public static void Write(string page)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        var all = new List<Found>();
        int refused = 0;
        for (int number = 1; number <= Figures; number++)
        {
            RandomFigures.Figure figure = RandomFigures.Of(number);
            try
            {
                all.AddRange(FineComparison.Of(figure.Statue, RandomFigures.Storm, withError: false).Rows.Select(row => new Found(figure, row)));
            }
            catch (InvalidStatueException)
            {
                refused++;
            }
        }
        Found[] rings = [.. all.Where(f => f.Row.IsBound)], sway = [.. all.Where(f => f.Row.Quantity == "sway")], frequencies = [.. all.Where(f => f.Row.Dimension == Dimension.Frequency)];
        var text = new StringBuilder();
        text.AppendLine("# The reduced model against the fine one").AppendLine();
        text.AppendLine("Written by `dotnet run -c Release --project benchmarks/StatueFrame.Benchmarks -- fine docs/theory/reduced-against-fine.md`.").AppendLine();
        text.AppendLine("In the reduced model a band of skin is one rigid body; every standoff is looked at on that rigid ring and alone under its own strip of limp skin, with bands apart and, where joints are not described, tied. In the fine model (`FineModel`) the skin is a shell of flat triangles and every standoff ends at its own place in it. Both come from one description and carry the same loads. A ratio is the fine result over the reduced one; of standoffs over the worst of the bounds, so that more than 1 means that the bounds are none.").AppendLine();
        text.AppendLine(Invariant($"{Figures - refused} random figures (numbers 1 to {Figures}; {refused} were refused as descriptions): 0.8 to 4.5 m wide, 1.5 to 4 times as high, 3 to 7 bands with a ring each of 6 to 40 flats on a tube, copper of 1 to 3 mm, joints described, none or left open, saddles that hold or slide, rings alike or of bars up to 2.5 times as thick as others; weight and wind from eight sides."));
        Table(text, "Greatest stress of a standoff, ring by ring", rings, f => (f.Figure.Armature ? "armature" : "bare sheet") + ", joints " + f.Figure.Joints);
        Table(text, "The same by saddles and rings", rings, f => (f.Figure.Armature ? "armature" : "bare sheet") + ", saddles " + f.Figure.Saddles + (f.Figure.Uneven > 1 ? ", rings uneven" : ", rings alike"));
        Table(text, "Sway of the topmost band", sway, f => (f.Figure.Armature ? "armature" : "bare sheet") + ", joints " + f.Figure.Joints);
        Table(text, "Frequency of the mode that moves most mass", frequencies, f => f.Figure.Armature ? "armature" : "bare sheet");
        AddRules(text, rings, sway);
        AddHeron(text);
        File.WriteAllText(page, text.ToString().ReplaceLineEndings("\n"));
    }

    private static void Table(StringBuilder text, string title, Found[] found, Func<Found, string> group)
    {
        text.AppendLine().AppendLine($"## {title}").AppendLine();
        text.AppendLine("| | number | least | median | 95 % below | greatest | above 1.05 |").AppendLine("|---|---:|---:|---:|---:|---:|---:|");
        foreach (IGrouping<string, Found> g in found.GroupBy(group).OrderBy(g => g.Key, StringComparer.Ordinal).Append(found.GroupBy(_ => "all").Single()))
        {
            double[] v = [.. g.Select(f => f.Row.Ratio).Order()];
            text.AppendLine(Invariant($"| {g.Key} | {v.Length} | {v[0]:0.00} | {v[v.Length / 2]:0.00} | {v[(int)(0.95 * v.Length)]:0.00} | {v[^1]:0.00} | {100.0 * v.Count(r => r > 1.05) / v.Length:0.0} % |"));
        }
    }

    private static void AddRules(StringBuilder text, Found[] rings, Found[] sway)
    {
        text.AppendLine().AppendLine("## What follows").AppendLine();
        text.AppendLine(Invariant($"- With armature bars behind the sheet the bounds on standoffs hold but for {Above(rings, true):0.0} % of rings; of bare sheet they are exceeded in {Above(rings, false):0.0} %, by up to {rings.Max(f => f.Row.Ratio):0.0} times. A sheet warns of every skin without a described armature unless the fine model was run (`Criteria.Fine`)."));
        text.AppendLine(Invariant($"- A point on the skin sways more than the rigid band says in {Above(sway, true):0.0} % of figures with an armature (at most {sway.Where(f => f.Figure.Armature).Max(f => f.Row.Ratio):0.0} times) and in {Above(sway, false):0.0} % of bare ones (at most {sway.Max(f => f.Row.Ratio):0.0} times). Limits of sway should be put on levels of the tower, or checked with the fine model, whose sway a sheet takes where it is the greater."));
        text.AppendLine("- What is exceeded most are rings whose neighbors have much thinner bars: a continuous sheet hands its load to the stiff ring, which neither bound knows.");
        text.AppendLine("- Medians of 0.2 to 0.5 show the price of bounds: on most rings a standoff carries a quarter of what it is checked for. A design that fails by the bounds alone may be run finer before it is made heavier.");

        static double Above(Found[] found, bool armature)
        {
            Found[] some = [.. found.Where(f => f.Figure.Armature == armature)];
            return 100.0 * some.Count(f => f.Row.Ratio > 1.05) / some.Length;
        }
    }

    private static void AddHeron(StringBuilder text)
    {
        StatueDocument heron = StatueFile.Load("docs/examples/saltmere-heron.json");
        Situation windy = heron.AllSituations().First(s => s.Name == "characteristic, wind leading");
        var watch = Stopwatch.StartNew();
        FineComparison comparison = FineComparison.Of(heron.Statue, windy, new FineMesh { Size = Length.FromMeters(0.2) });
        double seconds = watch.Elapsed.TotalSeconds;
        text.AppendLine().AppendLine("## The Saltmere Heron").AppendLine();
        text.AppendLine(Invariant($"Two meshes of both models in all headings of the wind, with 12 modes of each, took {seconds:0} s on this machine; the process used {Process.GetCurrentProcess().PeakWorkingSet64 / 1e9:0.0} GB at most.")).AppendLine();
        text.AppendLine("```").AppendLine(comparison.Print().TrimEnd()).AppendLine("```");
    }
}
