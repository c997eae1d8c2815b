using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using CsCheck;
using StatueFrame.Checks;

namespace StatueFrame.Reporting.Tests;

public class CalculationPackageTests
{
    private static readonly CalculationPackage package = Study.Package() with { Revision = "B", Date = "2026-03-01", Basis = ["Survey of the mole"] };

    [Fact]
    public void Every_check_that_was_done_shows_its_working()
    {
        XElement[] workings = [.. Body(package with { Workings = WorkingExtent.EveryCheck }).Descendants("article")];
        Assert.Equal(package.Sheet.Checks.Count(c => c.Verdict != Verdict.NotChecked), workings.Length);
        Assert.All(workings, w => Assert.NotEmpty(w.Descendants("math")));
    }

    [Fact]
    public void Checks_of_the_same_steps_stand_in_a_table_below_the_worst_of_them()
    {
        XElement body = Body(package with { Workings = WorkingExtent.WorstAndTables });
        XElement[] rows = [.. body.Descendants("table").Where(t => (string?)t.Attribute("class") == "others").Descendants("tr").Where(r => r.Attribute("id") is not null)];
        StatueFrame.Checks.Check[] done = [.. package.Sheet.Checks.Where(c => c.Verdict != Verdict.NotChecked)];
        Assert.Equal(done.Length, rows.Length + body.Descendants("article").Count());
        Assert.All(done, check => Assert.Contains(body.Descendants("article").Concat(rows), e => e.Value.Contains(PackageChecks.Place(check)) && (e.Name.LocalName == "article" || e.Value.Contains(check.UtilizationText))));
        // A bar's force differs from ring to ring, its breadth does not.
        string title = done.First(c => c.Id == "bars.shear").Title;
        XElement shear = body.Descendants("table").First(t => (string?)t.Attribute("class") == "others" && t.Element("caption")!.Value.StartsWith(title, StringComparison.Ordinal));
        Assert.Equal(4 - 1, shear.Element("tbody")!.Elements().Count());
        Assert.InRange(shear.Element("thead")!.Element("tr")!.Elements().Count(), 4, 11);
    }

    [Fact]
    public void The_worst_of_each_kind_can_stand_for_all()
    {
        CalculationPackage brief = package;
        StatueFrame.Checks.Check[] done = [.. package.Sheet.Checks.Where(c => c.Verdict != Verdict.NotChecked).OrderByDescending(c => c.Utilization)];
        bool IsFirst(int i, Func<StatueFrame.Checks.Check, string> kind) => Array.FindIndex(done, other => kind(other) == kind(done[i])) == i;
        int shown = done.Where((c, i) => c.Verdict == Verdict.Fail || (IsFirst(i, check => check.Id) && c.Utilization >= 0.25) || IsFirst(i, check => check.Family)).Count();
        Assert.Equal(shown, Body(brief).Descendants("article").Count());
    }

    [Fact]
    public void Every_link_leads_somewhere()
    {
        foreach (WorkingExtent extent in Enum.GetValues<WorkingExtent>())
        {
            XElement body = Body(package with { Workings = extent });
            HashSet<string> ids = [.. body.Descendants().Attributes("id").Select(a => a.Value)];
            string[] targets = [.. body.Descendants("a").Attributes("href").Select(a => a.Value[1..])];
            Assert.True(targets.Length > 20);
            Assert.All(targets, target => Assert.Contains(target, ids));
        }
    }

    [Fact]
    public void Ids_are_unique_and_headings_never_skip_below_the_third_rank_without_a_second()
    {
        XElement body = Body(package);
        string[] ids = [.. body.Descendants().Attributes("id").Select(a => a.Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.Single(body.Descendants("h1"));
        int last = 1;
        foreach (int rank in body.Descendants().Select(e => e.Name.LocalName).Where(n => n.Length == 2 && n[0] == 'h' && char.IsDigit(n[1])).Select(n => n[1] - '0'))
        {
            Assert.True(rank <= last + 1, $"h{rank} follows h{last}");
            last = rank;
        }
    }

    [Fact]
    public void All_that_the_sheet_says_is_in_it()
    {
        string text = Body(package).Value;
        Assert.Contains(CheckSheet.Caution, text);
        Assert.Contains(package.Sheet.VerdictText, text);
        Assert.All(package.Sheet.Assumptions, a => Assert.Contains(a.Value, text));
        Assert.All(package.Sheet.NotChecked, c => Assert.Contains(c.Reason, text));
        Assert.All(package.Sheet.Warnings, w => Assert.Contains(w, text));
        Assert.All(package.Sheet.Results, r => Assert.Contains(r.Name, text));
        Assert.All(package.Sheet.Checks, c => Assert.Contains(c.Source.Document, text));
        Assert.Contains("Survey of the mole", text);
    }

    [Fact]
    public void Values_are_printed_in_the_units_asked_for()
    {
        string customary = Body(package with { Units = DisplayUnits.UsCustomary, Paper = PaperSize.Letter }).Value;
        Assert.Contains("kip", customary);
        Assert.DoesNotContain("MPa", customary);
        Assert.Contains("size: letter", (package with { Paper = PaperSize.Letter }).ToHtml());
        Assert.Contains("MPa", Body(package).Value);
    }

    [Fact]
    public void No_name_becomes_markup()
    {
        const string Hostile = "</title><script>alert('x')</script><img src=x onerror=\"alert(1)\"> & ]]> \" */ } body{display:none} \\";
        CalculationPackage hostile = Study.Package(Hostile) with { Revision = Hostile, Date = Hostile, Reference = Hostile, PreparedBy = Hostile, Basis = [Hostile] };
        XElement html = Html(hostile);
        Assert.Empty(html.Descendants("script"));
        Assert.DoesNotContain(html.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase));
        Assert.Single(html.Descendants("style"));
        Assert.DoesNotContain("body{display:none}", html.Descendants("style").Single().Value);
        Assert.Equal(Hostile, html.Descendants("h1").Single().Value);
    }

    [Fact]
    public void Any_name_gives_a_well_formed_page() =>
        Gen.String.Where(s => !string.IsNullOrWhiteSpace(s)).Sample(
            name => { Html(package with { Revision = name, Reference = name, Basis = [name] }); }, iter: 30);

    [Fact]
    public void The_same_package_is_the_same_text() =>
        Assert.Equal(Study.Package().ToHtml(), Study.Package().ToHtml());

    [Fact]
    public void Writing_tells_how_far_it_is_and_stops_when_asked_to()
    {
        foreach (WorkingExtent extent in Enum.GetValues<WorkingExtent>())
        {
            var parts = new Parts();
            CalculationPackage written = package with { Workings = extent };
            written.ToHtml(parts, TestContext.Current.CancellationToken);
            Assert.Equal(parts.Told.Order(), parts.Told);
            Assert.Equal(1, parts.Told[^1], 1e-12);
            using var stop = new CancellationTokenSource();
            parts.OnReport = stop.Cancel;
            int before = parts.Told.Count;
            Assert.Throws<OperationCanceledException>(() => written.ToHtml(parts, stop.Token));
            Assert.Equal(before + 1, parts.Told.Count);
        }
    }

    private sealed class Parts : IProgress<double>
    {
        public List<double> Told { get; } = [];

        public Action OnReport { get; set; } = () => { };

        public void Report(double value)
        {
            Told.Add(value);
            OnReport();
        }
    }

    [Fact]
    public void A_figure_is_embedded_as_a_picture_with_words_beside_it()
    {
        const string Svg = "<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>";
        XElement html = Html(package with { Figures = [new Figure { Title = "Elevation", Description = "The heron from the south.", Svg = Svg }] });
        XElement image = Assert.Single(html.Descendants("img"));
        Assert.StartsWith("data:image/svg+xml;base64,", image.Attribute("src")!.Value);
        Assert.Equal("The heron from the south.", image.Attribute("alt")!.Value);
        Assert.Empty(html.Descendants("script"));
    }

    /// <summary>A reader with the page alone finds for every demand on bars, tower and base the actions that it is the sum of, and adds them up.</summary>
    [Fact]
    public void The_page_tells_of_every_demand_on_a_part_what_acts()
    {
        XElement[] workings = [.. Body(package with { Workings = WorkingExtent.EveryCheck }).Descendants("article")];
        string[] kinds = ["bars.bending", "bars.shear", "bars.strut", "tower.bending", "tower.compression", "tower.tension", "base.overturning", "foundation.bearing"];
        XElement[] traced = [.. workings.Where(w => kinds.Contains(w.Descendants("code").First().Value))];
        Assert.NotEmpty(traced);
        foreach (XElement working in traced)
        {
            XElement table = working.Descendants("table").First(t => (string?)t.Attribute("class") == "sums");
            string[][] rows = [.. table.Element("tbody")!.Elements("tr").Select(row => row.Elements().Select(cell => cell.Value).ToArray())];
            Assert.Contains(rows, row => row[0] == "self-weight" || row[0].StartsWith("wind towards", StringComparison.Ordinal));
            for (int column = 2; column < rows[0].Length; column++)
            {
                double[] terms = [.. rows[..^1].Select(row => Number(row[1]) * Number(row[column]))];
                Assert.Equal(Number(rows[^1][column]), terms.Sum(), 0.01 * terms.Sum(Math.Abs) + 1e-6);
            }
        }

        static double Number(string printed) => double.Parse(printed.Replace('−', '-').Replace(",", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Figures_are_numbered_through_the_package_where_they_stand()
    {
        var figure = new Figure { Title = "Elevation", Description = "The heron from the south.", Svg = "<svg xmlns='http://www.w3.org/2000/svg'/>" };
        XElement body = Body(package with { Figures = [figure with { Title = "Rose", Section = PackageSection.Results }, figure, figure with { Title = "Sums", Section = PackageSection.Equilibrium }] });
        Assert.Equal(["Figure 1  Elevation", "Figure 2  Rose", "Figure 3  Sums"], body.Descendants("figcaption").Select(caption => caption.Value));
        Assert.Equal(["statue", "results", "equilibrium"], body.Descendants("figure").Select(f => (string?)f.Ancestors("section").First().Attribute("id")));
        Assert.All(body.Descendants("figure"), f => Assert.Contains(body.Descendants("nav").Single().Descendants("a"), a => (string?)a.Attribute("href") == $"#{f.Attribute("id")!.Value}"));
        foreach (PackageSection section in Enum.GetValues<PackageSection>())
            Assert.Single(Body(package with { Figures = [figure with { Section = section }] }).Descendants("figure"));
    }

    [Fact]
    public void Each_part_of_the_statue_is_described()
    {
        string text = Body(package).Value;
        Assert.All(new[] { "tube 320×10", "flat 40×12", "rigid", "pinned", "1.35", "25\u00A0m/s", "ellipse outline" }, part => Assert.Contains(part, text));
    }

    private static XElement Body(CalculationPackage of) => Html(of).Element("body")!;

    /// <summary>The page as a tree: elements without an end are closed first, and what is left must be well-formed.</summary>
    private static XElement Html(CalculationPackage of)
    {
        string html = System.Text.RegularExpressions.Regex.Replace(of.ToHtml().Replace("<!DOCTYPE html>", ""), "<(meta|img|br)([^>]*)>", "<$1$2/>");
        using var reader = XmlReader.Create(new StringReader(html), new XmlReaderSettings { CheckCharacters = true });
        return XElement.Load(reader);
    }
}
