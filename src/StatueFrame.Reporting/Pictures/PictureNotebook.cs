using System.Net;

namespace StatueFrame.Reporting;

/// <summary>Shows a <see cref="Picture"/> in a notebook as a drawing, with its description for those who cannot see it.</summary>
internal sealed class PictureNotebook
{
    public IEnumerable<object> CreateTypeFormatters() => [new PictureFormatter()];

    /// <summary>Called by the names of its members.</summary>
    private sealed class PictureFormatter
    {
        public string MimeType => "text/html";

        public bool Format(object instance, TextWriter writer)
        {
            if (instance is not Picture picture)
                return false;
            string svg = Convert.ToBase64String(System.Text.Encoding.UTF8.GetBytes(picture.ToSvg()));
            writer.Write($"<img src=\"data:image/svg+xml;base64,{svg}\" width=\"{picture.Width}\" alt=\"{WebUtility.HtmlEncode($"{picture.Title}. {picture.Description}")}\" style=\"max-width:100%\"/>");
            return true;
        }
    }
}
