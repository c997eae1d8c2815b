using System.Net;

namespace StatueFrame;

/// <summary>Shows a result in a notebook as the text that it prints.</summary>
internal sealed class NotebookText
{
    private const string Style = "font-family:monospace;font-size:12px;line-height:1.35;text-align:left;white-space:pre;overflow-x:auto";

    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new NotebookFormatter("text/html", result => Html($"{result}")),
        new NotebookFormatter("text/plain", result => $"{result}"),
    ];

    /// <summary>A printed text as HTML, its columns kept.</summary>
    public static string Html(string text) => $"<pre style=\"{Style}\">{WebUtility.HtmlEncode(text)}</pre>";
}
