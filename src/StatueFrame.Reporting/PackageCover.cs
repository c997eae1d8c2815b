namespace StatueFrame.Reporting;

/// <summary>The first page: what was checked, what came out, who answers for it; and the contents.</summary>
internal sealed class PackageCover(CalculationPackage package, HtmlText html, IReadOnlyList<(string Id, string Title)> sections, IReadOnlyList<(string Id, string Title)> figures)
{
    private const string Blank = "\u00A0";

    public void Write()
    {
        using (html.Element("header", ("class", "cover")))
        {
            html.Element("p", "Calculation package", ("class", "kind"));
            html.Element("h1", package.Statue.Name);
            if (package.Reference.Length > 0)
                html.Element("p", package.Reference);
            WriteFacts();
            WriteVerdict();
            WriteBasis();
            using (html.Element("section", ("class", "caution"), ("aria-label", "Caution")))
            {
                html.Element("h2", "Caution");
                html.Element("p", CheckSheet.Caution);
                if (package.Sheet.RestsOnAssumedInputs)
                    html.Element("p", "Some checks pass only with inputs that nobody gave. They are marked, and the inputs are listed under Assumptions.");
            }
            WriteSignOff();
        }
        html.Line();
        WriteContents();
    }

    private void WriteFacts()
    {
        using var table = html.Element("table", ("class", "description"));
        using var body = html.Element("tbody");
        Fact("revision", package.Revision);
        Fact("date", package.Date);
        Fact("prepared by", package.PreparedBy);
        Fact("situations", FormattableString.Invariant($"{package.Situations.Count}, listed under Basis of design and combinations"));
        Fact("units", package.Units == DisplayUnits.Metric ? "metric" : "US customary");
        Fact("computed with", $"StatueFrame {typeof(CheckSheet).Assembly.GetName().Version?.ToString(3)}");
    }

    private void Fact(string name, string value)
    {
        using var row = html.Element("tr");
        html.Element("th", name, ("scope", "row")).Element("td", value.Length > 0 ? value : Blank);
    }

    private void WriteVerdict()
    {
        CheckSheet sheet = package.Sheet;
        html.Element("p", sheet.VerdictText, ("class", "verdict"));
        if (sheet.Governing is { } governing)
            html.Element("p", $"Governs: {governing.Title}, {PackageChecks.Place(governing)}: utilization {governing.UtilizationText}.");
    }

    private void WriteBasis()
    {
        using var section = html.Element("section", ("aria-label", "Basis"));
        html.Element("h2", "Basis");
        if (package.Basis.Count > 0)
        {
            using var list = html.Element("ul");
            foreach (string item in package.Basis)
                html.Element("li", item);
        }
        string[] documents = [.. PackageSources.Documents(package)];
        html.Element("p", $"Documents that numbers and rules are taken from: {string.Join("; ", documents)}.");
    }

    private void WriteSignOff()
    {
        using var section = html.Element("section", ("aria-label", "Sign-off"), ("class", "sign-off"));
        html.Element("h2", "Sign-off");
        using var table = html.Element("table");
        PackageChecks.Heads(html, ["", "name", "license no.", "signature", "date"]);
        using var body = html.Element("tbody");
        foreach (string role in (ReadOnlySpan<string>)["prepared", "checked", "approved by a licensed engineer"])
        {
            using var row = html.Element("tr");
            html.Element("th", role, ("scope", "row")).Element("td", role == "prepared" && package.PreparedBy.Length > 0 ? package.PreparedBy : Blank);
            html.Element("td", Blank).Element("td", Blank).Element("td", Blank);
        }
    }

    private void WriteContents()
    {
        using var nav = html.Element("nav", ("aria-label", "Contents"));
        html.Element("h2", "Contents");
        WriteList(sections);
        if (figures.Count > 0)
        {
            html.Element("h3", "Figures");
            WriteList(figures);
        }
        html.Line();
    }

    private void WriteList(IReadOnlyList<(string Id, string Title)> entries)
    {
        using var list = html.Element("ol");
        foreach ((string id, string title) in entries)
        {
            using var item = html.Element("li");
            html.Element("a", title, ("href", $"#{id}"));
        }
    }
}
