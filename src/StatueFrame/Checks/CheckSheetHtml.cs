using System.Net;
using System.Text;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Shows a <see cref="CheckSheet"/> in a notebook: its verdict, what governs and what fails, with the whole print folded below.</summary>
internal sealed class CheckSheetHtml
{
    private const int MostFailures = 10;

    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new NotebookFormatter("text/html", result => result is CheckSheet sheet ? Html(sheet) : null),
        new NotebookFormatter("text/plain", result => (result as CheckSheet)?.Print()),
    ];

    private static string Html(CheckSheet sheet)
    {
        Check[] governing = [.. sheet.GoverningByFamily];
        Check[] others = [.. sheet.Failed.Where(check => !governing.Contains(check))];
        var html = new StringBuilder("<div style=\"font-family:sans-serif;font-size:13px;text-align:left\">");
        html.Append($"<h3 style=\"margin:0\">{Text(sheet.Title)}</h3>");
        html.Append($"<div>{Text(sheet.Subject)}</div><p><b>{Text(sheet.VerdictText)}</b></p>");
        AppendTable(html, "Governing check of each family", governing);
        AppendTable(html, "Other checks that fail", others[..Math.Min(others.Length, MostFailures)]);
        if (others.Length > MostFailures)
            html.Append($"<p>and {others.Length - MostFailures} more that fail, on the whole sheet below</p>");
        if (sheet.OpenLinks.Any())
            html.Append("<p><b>Links that carry load unchecked</b></p><ul>").AppendJoin("", sheet.OpenLinks.Select(link => $"<li>{Text(link.ToString())}</li>")).Append("</ul>");
        foreach (string warning in sheet.Warnings)
            html.Append($"<p>Warning: {Text(warning)}</p>");
        html.Append($"<details><summary>the whole sheet: results, {sheet.Assumptions.Count} assumptions, {sheet.NotChecked.Count()} not checked</summary>");
        html.Append(NotebookText.Html(sheet.Print(SheetForm.Full))).Append("</details>");
        return html.Append($"<p><i>{Text(CheckSheet.Caution)}</i></p></div>").ToString();
    }

    private static void AppendTable(StringBuilder html, string title, Check[] checks)
    {
        if (checks.Length == 0)
            return;
        html.Append($"<table><caption style=\"text-align:left\"><b>{title}</b></caption>");
        html.Append("<tr><th>check</th><th>where</th><th>situation</th><th>demand</th><th>capacity</th><th>utilization</th><th>verdict</th></tr>");
        foreach (Check check in checks)
        {
            html.Append("<tr>");
            foreach (string cell in (string[])[check.Title, check.Where, check.Situation, Number(check.Demand, check), Number(check.Capacity, check)])
                html.Append($"<td>{Text(cell)}</td>");
            html.Append($"<td>{Bar(check.Utilization ?? 0)} {CheckNumber.Utilization(check.Utilization ?? 0)}</td><td>{Text(Verdict(check))}</td></tr>");
        }
        html.Append("</table>");
    }

    /// <summary>A bar as long as the utilization, up to twice the capacity; what is beyond the capacity is dark.</summary>
    private static string Bar(double utilization)
    {
        double within = 40 * Math.Min(utilization, 1), beyond = 40 * Math.Clamp(utilization - 1, 0, 1);
        return Invariant($"<svg width=\"82\" height=\"10\" role=\"img\"><rect width=\"{within:0.#}\" height=\"10\" fill=\"#9aa0a6\"/>")
            + Invariant($"<rect x=\"40\" width=\"{beyond:0.#}\" height=\"10\" fill=\"#a6501e\"/><path d=\"M40 0V10\" stroke=\"#26292c\"/></svg>");
    }

    private static string Verdict(Check check) => (check.Verdict == Checks.Verdict.Pass ? "pass" : "FAIL")
        + (check.AssumedInputs.Count > 0 ? $", with {check.AssumedInputs.Count} assumed" : "");

    private static string Number(double? value, Check check) => value is { } si ? TextLayout.Format(si, check.Dimension, DisplayUnits.Metric) : "";

    private static string Text(string text) => WebUtility.HtmlEncode(TextLayout.Visible(text));
}
