using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace StatueFrame.Reporting.Tests;

/// <summary>
/// Prints a page in headless Chromium and reads the PDF by Poppler's tools. Tests that need them are skipped where they are
/// not installed; the gate installs them.
/// </summary>
internal static partial class Browser
{
    private static readonly string? chromium = Find("chromium") ?? Find("chromium-browser");

    /// <summary>Why nothing can be printed here; null when it can.</summary>
    public static string? Missing =>
        chromium is null ? "Chromium is not installed (Debian: apt-get install chromium poppler-utils)."
        : Find("pdftotext") is null || Find("pdfinfo") is null ? "Poppler's pdftotext and pdfinfo are not installed (Debian: apt-get install poppler-utils)."
        : null;

    /// <summary>The text of each page and the size of the first, in points of 1/72 inch.</summary>
    public static (string[] Pages, double Width, double Height) Print(CalculationPackage package)
    {
        Assert.SkipWhen(Missing is not null, Missing ?? "");
        DirectoryInfo folder = Directory.CreateTempSubdirectory();
        try
        {
            string html = Path.Combine(folder.FullName, "package.html"), pdf = Path.Combine(folder.FullName, "package.pdf");
            package.Save(html);
            Run(chromium!, "--headless", "--no-sandbox", "--disable-gpu", $"--user-data-dir={folder.FullName}/profile", "--no-pdf-header-footer", $"--print-to-pdf={pdf}", $"file://{html}");
            Match size = PageSize().Match(Run(Find("pdfinfo")!, pdf));
            string[] pages = Run(Find("pdftotext")!, "-layout", pdf, "-").TrimEnd('\f').Split('\f');
            return (pages, double.Parse(size.Groups[1].Value, CultureInfo.InvariantCulture), double.Parse(size.Groups[2].Value, CultureInfo.InvariantCulture));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {errors.Result}");
        return output;
    }

    private static string? Find(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);

    [GeneratedRegex(@"Page size:\s+([\d.]+) x ([\d.]+)")]
    private static partial Regex PageSize();
}
