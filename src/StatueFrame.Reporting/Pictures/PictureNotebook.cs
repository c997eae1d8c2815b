using System.Net;

namespace StatueFrame.Reporting;

/// <summary>Shows a <see cref="Picture"/> or a <see cref="Drawing"/> in a notebook, with its description for those who cannot see it.</summary>
internal sealed class PictureNotebook
{
    public IEnumerable<object> CreateTypeFormatters() => [new NotebookFormatter("text/html", instance => instance switch
    {
        Picture picture => Image(picture.ToSvg(), picture.Width, picture.Title, picture.Description),
        Drawing drawing => Image(drawing.ToSvg(), 800, drawing.Title, drawing.Description),
        _ => null,
    })];

    private static string Image(string svg, int width, string title, string description) =>
        $"<img src=\"{PackageStyle.DataUri(svg)}\" width=\"{width}\" alt=\"{WebUtility.HtmlEncode($"{title}. {description}")}\" style=\"max-width:100%\"/>";
}
