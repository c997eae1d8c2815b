using System.Reflection;
using System.Xml.Linq;
using StatueFrame.Checks;
using StatueFrame.Studies;
using StatueFrame.Tests.Validation;

namespace StatueFrame.Tests.Notebooks;

/// <summary>Results show themselves in notebooks, which find out how by names alone.</summary>
public class NotebookTests
{
    private static readonly Lazy<CheckSheet> sheet = new(SmallStatue.Good.Check);

    [Fact]
    public void A_sheet_shows_its_verdict_its_checks_and_the_caution()
    {
        string html = Shown(sheet.Value, "text/html");
        XElement.Parse(html);
        Assert.Contains(sheet.Value.VerdictText, html);
        Assert.Contains(sheet.Value.Governing!.Title, html);
        Assert.Contains(CheckSheet.Caution, html);
        Assert.Equal(sheet.Value.Print(), Shown(sheet.Value, "text/plain"));
    }

    [Fact]
    public void Text_of_the_user_stays_text()
    {
        string html = Shown(sheet.Value with { Title = "<script>alert(1)</script> & \"more\"" }, "text/html");
        XElement.Parse(html);
        Assert.DoesNotContain("<script", html);
    }

    [Fact]
    public void A_failing_sheet_says_so_and_counts_what_it_leaves_out()
    {
        CheckSheet weak = (SmallStatue.Good with { Situations = [SmallStatue.Storm with { Actions = [1.35 * new SelfWeight(), 10 * SmallStatue.Wind] }] }).Check();
        int others = weak.Failed.Except(weak.GoverningByFamily).Count();
        Assert.True(others > 10, $"{others}");
        string html = Shown(weak, "text/html");
        Assert.Contains("FAIL", html);
        Assert.Contains($"and {others - 10} more that fail", html);
    }

    [Fact]
    public void A_comparison_shows_its_lines()
    {
        CheckSheet heavier = SmallStatue.Good.With(s => s with { Skin = s.Skin! with { Thickness = 3.Millimeters } }).Check();
        SheetComparison comparison = heavier.CompareWith(sheet.Value);
        Assert.Equal(comparison.ToString(), XElement.Parse(Shown(comparison, "text/html")).Value, ignoreLineEndingDifferences: true);
    }

    [Theory]
    [InlineData(typeof(HeadingStudy))]
    [InlineData(typeof(SwayCurve))]
    [InlineData(typeof(VariantStudy))]
    [InlineData(typeof(ServiceLife))]
    [InlineData(typeof(RobustnessStudy))]
    [InlineData(typeof(IsolationStudy))]
    public void Studies_show_their_text(Type study) => Assert.Equal(["text/html", "text/plain"], FormattersOf(study).Select(MimeType));

    /// <summary>What a notebook shows, found as a notebook finds it.</summary>
    private static string Shown(object result, string mimeType)
    {
        object formatter = FormattersOf(result.GetType()).Single(f => MimeType(f) == mimeType);
        using var writer = new StringWriter();
        Assert.Equal(true, formatter.GetType().GetMethod("Format")!.Invoke(formatter, [result, writer]));
        return writer.ToString();
    }

    private static string MimeType(object formatter) => (string)formatter.GetType().GetProperty("MimeType")!.GetValue(formatter)!;

    private static IEnumerable<object> FormattersOf(Type type)
    {
        Attribute attribute = type.GetCustomAttributes().Single(a => a.GetType().Name == "TypeFormatterSourceAttribute");
        Assert.Equal(["text/html"], (string[])attribute.GetType().GetProperty("PreferredMimeTypes")!.GetValue(attribute)!);
        object source = Activator.CreateInstance((Type)attribute.GetType().GetProperty("FormatterSourceType")!.GetValue(attribute)!)!;
        return (IEnumerable<object>)source.GetType().GetMethod("CreateTypeFormatters")!.Invoke(source, [])!;
    }
}
