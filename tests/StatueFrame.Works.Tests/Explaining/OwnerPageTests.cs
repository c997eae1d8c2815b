using System.Globalization;
using UnitsNet;

namespace StatueFrame.Works.Tests.Explaining;

public class OwnerPageTests
{
    private static readonly OwnerPage Page = new() { Sheet = Heron.Sheet, Curve = Heron.Curve, NextInspection = new DateOnly(2031, 4, 30) };

    [Fact]
    public void The_page_tells_the_numbers_of_sheet_and_curve()
    {
        double sway = Heron.Curve.At(Heron.Curve.DesignMeanSpeed).At("tip").Gust.Millimeters - Heron.Curve.At(Speed.Zero).At("tip").Gust.Millimeters;
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"tip moves {sway:0} mm"), Page.ToString());
        Assert.Contains("30 April 2031", Page.ToString());
        Assert.Contains("data:image/svg+xml", Page.ToHtml());
        Assert.Contains("no permission", Page.ToString());
    }

    [Fact]
    public void It_speaks_of_parts_and_not_of_identifiers_or_load_cases()
    {
        string words = Page.ToString();
        Assert.DoesNotContain("wind towards", words);
        Assert.All(Heron.Sheet.Checks.Select(check => check.Id).Distinct(), id => Assert.DoesNotContain(id, words));
    }

    [Fact]
    public void A_sheet_that_fails_or_is_open_never_reads_as_safe()
    {
        CheckSheet open = (Heron.Document with { Statue = Heron.Statue with { Fittings = [.. Heron.Statue.Fittings.Select(fitting => fitting with { Fixing = null })] } }).Check();
        Assert.Contains("not complete", (Page with { Sheet = open }).ToString());
        CheckSheet weak = (Heron.Document with { Statue = Heron.Statue with { Skin = Heron.Statue.Skin! with { Thickness = 0.4.Millimeters } } }).Check();
        Assert.StartsWith("The calculation does NOT show", (Page with { Sheet = weak }).ToString());
    }
}
