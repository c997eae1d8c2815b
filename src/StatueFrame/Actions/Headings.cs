using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>Sets of wind headings. A heading is the plan angle, anticlockwise from +x, that the wind blows towards.</summary>
public static class Headings
{
    /// <summary>Sixteen headings, every 22.5° from +x.</summary>
    public static ValueList<Angle> AllRound { get; } = Evenly(16);

    /// <summary>A heading in words, as in "wind towards 90°"; "no wind" when there is none.</summary>
    public static string Describe(Angle? heading) => heading is { } h ? Invariant($"wind towards {h.Degrees:0.#}°") : "no wind";

    /// <summary>A number of headings, evenly spaced from +x.</summary>
    /// <param name="count">From 1 to 360.</param>
    /// <exception cref="ArgumentOutOfRangeException">The count is out of range.</exception>
    public static ValueList<Angle> Evenly(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, 360);
        return Enumerable.Range(0, count).Select(i => Angle.FromDegrees(360.0 * i / count)).ToValueList();
    }
}
