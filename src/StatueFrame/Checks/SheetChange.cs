using System.Globalization;

namespace StatueFrame.Checks;

/// <summary>One difference between two check sheets.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Kind">What kind of difference.</param>
/// <param name="Subject">The check or the result, as in "bars.bending, band 3, storm".</param>
/// <param name="Before">The utilization, or the result in SI units, on the earlier sheet; null when there was none.</param>
/// <param name="After">The same on the later sheet.</param>
/// <param name="Dimension">What a result measures; null for a utilization.</param>
/// <param name="Remark">What else is to be said, as in "now governs"; may be empty.</param>
public sealed record SheetChange(
    SheetChangeKind Kind, string Subject, double? Before, double? After, Dimension? Dimension, string Remark)
{
    /// <summary>The change without its subject, as in "0.62 → 0.71, now governs".</summary>
    /// <param name="units">The units to print a result in.</param>
    public string ToText(DisplayUnits units = DisplayUnits.Metric)
    {
        string before = Text(Before, units), after = Text(After, units);
        if (Dimension is null && before == after && Before is { } was && After is { } now && CheckNumber.Differ(was, now, 0, 1))
            (before, after) = (CheckNumber.Stable(was, 4), CheckNumber.Stable(now, 4));
        string numbers = Before is null || before == after ? after : After is null ? before : $"{before} → {after}";
        string percent = Dimension is not null && Before is { } b && After is { } a && Math.Abs(a - b) < 10 * Math.Abs(b)
            ? string.Create(CultureInfo.InvariantCulture, $"{100 * (a - b) / Math.Abs(b):+0.0;−0.0} %")
            : "";
        return string.Join(", ", new[] { numbers, percent, Remark }.Where(part => part.Length > 0));
    }

    /// <summary>The change on one line in metric units.</summary>
    public override string ToString() => $"{Subject}  {ToText()}";

    /// <summary>How far a utilization moved, without noise; 0 for what has no utilization.</summary>
    internal double Size => Dimension is null && Before is { } b && After is { } a ? CheckNumber.WithoutNoise(Math.Abs(a - b)) : 0;

    private string Text(double? value, DisplayUnits units) => value is not { } number ? ""
        : Dimension is null ? CheckNumber.Utilization(number)
        : TextLayout.Format(number, Dimension, units);
}
