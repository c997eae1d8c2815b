using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using StatueFrame.Analysis;
using StatueFrame.Checks;

namespace StatueFrame.Reporting.Tests;

/// <summary>The package as it leaves the printer.</summary>
public class PrintedPackageTests
{
    private static readonly CalculationPackage study = Study.Package() with
    {
        Revision = "B",
        Figures = [StatueDrawings.Elevation(StatueModel.Build(Study.Heron())).ToFigure()],
    };

    [Theory, InlineData(PaperSize.A4, 595, 842), InlineData(PaperSize.Letter, 612, 792)]
    public void A_small_statue_is_printed_on_the_paper_asked_for(PaperSize paper, double width, double height)
    {
        CalculationPackage package = study with { Paper = paper, Units = paper == PaperSize.A4 ? DisplayUnits.Metric : DisplayUnits.UsCustomary };
        (string[] pages, double w, double h) = Browser.Print(package);
        Assert.Equal(width, w, 1.0);
        Assert.Equal(height, h, 1.0);
        Assert.InRange(pages.Length, 12, 40);
        Holds(package, pages);
    }

    [Fact]
    public void The_heron_is_printed_with_the_numbers_of_every_check()
    {
        Assert.SkipWhen(Browser.Missing is not null, Browser.Missing ?? "");
        StatueDocument heron = StatueFile.Load(Path.Combine(Here(), "../../docs/examples/saltmere-heron.json"));
        var package = new CalculationPackage { Statue = heron.Statue, Situations = heron.AllSituations(), Criteria = heron.Criteria, Sheet = heron.Check(), Revision = "B" };
        (string[] pages, _, _) = Browser.Print(package);
        Assert.InRange(pages.Length, 40, 60);
        Holds(package, pages);
    }

    /// <summary>Page numbers and header on every page, every governing check, the caution and the sign-off.</summary>
    private static void Holds(CalculationPackage package, string[] pages)
    {
        foreach ((int i, string page) in pages.Index())
        {
            Assert.Contains($"page {i + 1} of {pages.Length}", page);
            Assert.Contains("For review and sign-off by a licensed engineer", page);
            if (i > 0)
                Assert.Contains($"{package.Statue.Name}, revision B", page);
        }
        string text = Plain(string.Join(' ', pages));
        foreach (Check check in package.Sheet.GoverningByFamily)
        {
            Assert.Contains(Plain(check.Title), text);
            Assert.Contains(check.Id, text);
            Assert.Contains(check.UtilizationText, text);
        }
        Assert.Contains(Plain(CheckSheet.Caution), text);
        Assert.Contains("approvedbyalicensedengineer", text);
        Assert.All(pages, page => Assert.True(page.Count(char.IsLetterOrDigit) > 60, "A page is all but empty."));
    }

    /// <summary>Without what depends on where lines break.</summary>
    private static string Plain(string text) => Regex.Replace(text, @"[\s\u00AD]+", "");

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
