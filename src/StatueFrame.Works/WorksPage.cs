using StatueFrame.Reporting;

namespace StatueFrame.Works;

/// <summary>A self-contained page without scripts, in the dress of the calculation package.</summary>
internal static class WorksPage
{
    public static void Begin(HtmlText html, string title)
    {
        html.Trusted("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
        html.Element("title", title);
        html.Trusted("<style>").Trusted(PackageStyle.Of(PaperSize.A4, title)).Trusted("</style></head><body dir=\"ltr\"><main>\n");
        html.Element("h1", title);
        using (html.Element("div", ("class", "caution"), ("role", "note")))
            html.Element("p", "These results are for review and sign-off by a licensed engineer. Local codes govern. No permission to build, erect, lift, transport or let people in follows from this page.");
        html.Line();
    }

    public static void Table(HtmlText html, string[] heads, bool[] numbers, IEnumerable<string[]> rows)
    {
        using (html.Element("div", ("class", "wide")))
        using (html.Element("table"))
        {
            using (html.Element("thead"))
            using (html.Element("tr"))
            {
                for (int i = 0; i < heads.Length; i++)
                    html.Element("th", heads[i], ("scope", "col"), ("class", numbers[i] ? "number" : null));
            }
            using (html.Element("tbody"))
            {
                foreach (string[] row in rows)
                {
                    using (html.Element("tr"))
                    {
                        for (int i = 0; i < row.Length; i++)
                            html.Element("td", row[i], ("class", numbers[i] ? "number" : null), ("dir", "auto"));
                    }
                    html.Line();
                }
            }
        }
        html.Line();
    }

    public static string End(HtmlText html) => html.Trusted("</main></body></html>\n").ToString();
}
