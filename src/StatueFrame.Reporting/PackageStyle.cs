using System.Text;

namespace StatueFrame.Reporting;

/// <summary>The style sheet of a package, with the paper size and the running header put in.</summary>
internal static class PackageStyle
{
    private static readonly string style = Read();

    public static string Of(CalculationPackage package) =>
        Of(package.Paper, package.Statue.Name + (package.Revision.Length > 0 ? $", revision {package.Revision}" : ""));

    /// <summary>The style sheet of any page that is printed with a running header.</summary>
    public static string Of(PaperSize size, string running)
    {
        (string paper, string header) = (size == PaperSize.A4 ? "A4" : "letter", CssString(running));
        return style.Replace("/*paper*/A4", paper, StringComparison.Ordinal).Replace("\"running header\"", header, StringComparison.Ordinal);
    }

    /// <summary>A drawing as the address of a picture.</summary>
    public static string DataUri(string svg) => "data:image/svg+xml;base64," + Convert.ToBase64String(Encoding.UTF8.GetBytes(svg));

    /// <summary>Text as a CSS string in which nothing can end the string or the style sheet.</summary>
    internal static string CssString(string text)
    {
        var css = new StringBuilder("\"");
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (Rune.IsLetterOrDigit(rune) || rune.Value is ' ' or ',' or '.' or ':')
                css.Append(rune);
            else
                css.Append('\\').Append(rune.Value.ToString("x6", System.Globalization.CultureInfo.InvariantCulture));
        }
        return css.Append('"').ToString();
    }

    private static string Read()
    {
        using Stream stream = typeof(PackageStyle).Assembly.GetManifestResourceStream("package.css")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
