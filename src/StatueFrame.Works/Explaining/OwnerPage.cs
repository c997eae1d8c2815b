using System.Globalization;
using StatueFrame.Checks;
using StatueFrame.Reporting;
using StatueFrame.Studies;
using UnitsNet;
using static System.FormattableString;
using Verdict = StatueFrame.Checks.Verdict;

namespace StatueFrame.Works;

/// <summary>
/// One page for owner and public, in plain words and with the numbers of the check sheet: how far the figure moves in a storm, how much
/// of its strength is used, what was not shown, what is to be watched and until when, with one picture.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record OwnerPage
{
    /// <summary>The sheet.</summary>
    public required CheckSheet Sheet { get; init; }

    /// <summary>The sway curve of the same statue.</summary>
    public required SwayCurve Curve { get; init; }

    /// <summary>When the figure is looked at again.</summary>
    public required DateOnly NextInspection { get; init; }

    /// <summary>Who answers for the calculation; printed as given. Empty leaves a line to fill in.</summary>
    public string Engineer { get; init; } = "";

    /// <summary>The page as HTML without scripts, for one sheet of A4.</summary>
    public string ToHtml()
    {
        var html = new HtmlText();
        WorksPage.Begin(html, $"{Curve.Model.Statue.Name}: how it stands");
        html.Element("p", Finding(), ("class", "verdict"));
        html.Element("h2", "How far it moves");
        html.Element("p", Moves());
        using (html.Element("figure"))
        {
            Picture picture = ResultPictures.Sway(Curve);
            html.Void("img", ("src", PackageStyle.DataUri(picture.ToSvg(720, 300))), ("alt", picture.Description)).Line();
            html.Element("figcaption", "Sway against the wind that the anemometer shows.");
        }
        html.Element("h2", "How much strength is used");
        html.Element("p", Strength());
        html.Element("h2", "What is watched, and until when");
        using (html.Element("ul"))
        {
            foreach (string line in Watched())
                html.Element("li", line);
        }
        html.Element("p", Engineer.Length > 0 ? $"Answers for the calculation: {Engineer}" : "Answers for the calculation: ______________________");
        return WorksPage.End(html);
    }

    /// <summary>The same sentences as plain text.</summary>
    public override string ToString() => string.Join("\n", [Finding(), Moves(), Strength(), .. Watched()]);

    private string Finding()
    {
        int fail = Sheet.Failed.Count(), open = Sheet.OpenLinks.Count(), missing = Sheet.NotChecked.Count();
        return fail > 0 ? Invariant($"The calculation does NOT show that the figure is safe: {fail} checks fail.")
            : open > 0 ? Invariant($"What was checked holds, but the calculation is not complete: {open} parts of the way from skin to ground are still open.")
            : missing > 0 ? Invariant($"What was checked holds; {missing} checks could not be made.")
            : "All that was checked holds.";
    }

    private string Moves()
    {
        SwayCurveRow calm = Curve.At(Speed.Zero), design = Curve.At(Curve.DesignMeanSpeed), half = Curve.At(0.5 * Curve.DesignMeanSpeed);
        if (design.Points.Count == 0)
            return "No point was named whose movement could be told.";
        IEnumerable<string> points = design.Points.Select(p => Invariant($"{p.Point} moves {p.Gust.Millimeters - calm.At(p.Point).Gust.Millimeters:0} mm to a side, against {half.At(p.Point).Gust.Millimeters - calm.At(p.Point).Gust.Millimeters:0} mm in a wind of half the speed"));
        return Invariant($"In the strongest storm it is made for, with gusts of {3.6 * Curve.DesignGustSpeed.MetersPerSecond:0} km/h at the anemometer, {string.Join("; ", points)}. The movement grows with the square of the wind: twice the speed, four times the movement. That it moves is meant: bars that give way do not break.");
    }

    private string Strength()
    {
        Check? worst = Now.Where(c => c.Nature == Nature.Strength && c.Verdict != Verdict.NotChecked).MaxBy(c => c.Utilization);
        if (worst is null)
            return "Nothing was checked that tells strength.";
        string used = Invariant($"{100 * worst.Utilization!.Value:0} %");
        return worst.Verdict == Verdict.Fail
            ? $"One part is loaded with {used} of what the rules allow: {worst.Title}{Place(worst)}. It must be mended before anybody relies on the figure."
            : Invariant($"Of what the rules allow, which is already well below what breaks it, the most loaded part uses {used}: {worst.Title}{Place(worst)}. {Sheet.Checks.Count(c => c.Verdict == Verdict.Pass)} checks were made{(Sheet.RestsOnAssumedInputs ? "; some of them rest on inputs that nobody has measured yet" : "")}.");
    }

    private const string Life = "life";

    /// <summary>The checks of the figure as it is now.</summary>
    private IEnumerable<Check> Now => Sheet.Checks.Where(c => c.Family != Life && c.Utilization is not null);

    /// <summary>The part alone: for this page it does not matter in which wind it is used most.</summary>
    private static string Place(Check check) => check.Subject.Part is { Length: > 0 } part ? $" ({part})" : "";

    private IEnumerable<string> Watched()
    {
        foreach (Check check in Now.Where(c => c.Nature != Nature.Range && c.Utilization is > 0.8).GroupBy(c => c.Family).Select(g => g.MaxBy(c => c.Utilization)!).OrderByDescending(c => c.Utilization).Take(3))
            yield return Invariant($"{check.Title}{Place(check)}: {100 * check.Utilization!.Value:0} % used.");
        if (Sheet.Checks.Where(c => c.Family == Life && c.Utilization is not null).MaxBy(c => c.Utilization) is { } end)
            yield return Invariant($"At the end of its design life, after the weather of those years: {100 * end.Utilization!.Value:0} % used.");
        if (Sheet.OpenLinks.Any())
            yield return $"Not yet shown to hold: {string.Join(", ", Sheet.OpenLinks.Select(l => l.Link).Distinct())}.";
        yield return $"Next inspection: {NextInspection.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}, and after every storm with gusts above {Invariant($"{3.6 * 0.8 * Curve.DesignGustSpeed.MetersPerSecond:0}")} km/h at the anemometer.";
        yield return "This page holds until the next inspection; it is no permission to build, to erect or to let people in.";
    }
}
