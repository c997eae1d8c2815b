using StatueFrame.Reporting;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>Writes a part list as a page.</summary>
internal static class PartListPage
{
    public static string Of(PartList list)
    {
        var html = new HtmlText();
        WorksPage.Begin(html, $"Part list: {list.Statue}");
        html.Element("p", Invariant($"{list.Mass.Kilograms:0} kg listed. The model that was checked weighs {list.ModelMass.Kilograms:0} kg; the lines marked as in the model, allowances with them, weigh {list.MassInModel.Kilograms:0} kg."));
        html.Element("h2", "Totals by material");
        WorksPage.Table(html, ["material", "pieces", "mass, kg", "embodied carbon, t CO₂e"], [false, true, true, true],
            list.Totals.Select(t => new[] { t.Material, Invariant($"{t.Pieces}"), Invariant($"{t.Mass.Kilograms:0.0}"), t.Carbon is { } c ? Invariant($"{c.Tonnes:0.00}") : "not in the table" }));
        html.Element("p", $"Carbon from cradle to gate: {list.Carbon.Source}.", ("class", "source"));
        html.Element("h2", "What the reader should know");
        using (html.Element("ul"))
        {
            foreach (string note in list.Notes)
                html.Element("li", note);
        }
        html.Element("h2", "Like pieces");
        WorksPage.Table(html, ["mark", "kind", "size", "material", "length, mm", "pieces", "mass, kg"], [false, false, false, false, true, true, true],
            list.LikePieces());
        html.Element("h2", "All parts");
        WorksPage.Table(html, ["mark", "where", "length, mm", "count", "mass, kg", "x, m", "y, m", "z, m", "drawing", "in the model"], [false, false, true, true, true, true, true, true, false, false],
            list.Parts.Select(p => new[]
            {
                p.Mark, p.Where, p.Length is { } l ? Invariant($"{l.Millimeters:0}") : "", Invariant($"{p.Count}"), p.Mass is { } m ? Invariant($"{m.Kilograms:0.00}") : "",
                Invariant($"{p.Center.X.Meters:0.00}"), Invariant($"{p.Center.Y.Meters:0.00}"), Invariant($"{p.Center.Z.Meters:0.00}"), p.Drawing, p.InModel ? "yes" : "no",
            }));
        return WorksPage.End(html);
    }
}
