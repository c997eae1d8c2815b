using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>A limit of a design window on a statue: the worst of some checks of its sheet.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">Its name, as in "strength".</param>
/// <param name="Checks">The ids of the checks, as "bars.bending", or whole families, as "heat".</param>
public sealed record StatueLimit(string Name, ValueList<string> Checks)
{
    /// <summary>Strength of the bars and their fixings, bending, shear, buckling and second order.</summary>
    public static StatueLimit Strength { get; } = new("strength", [
        "bars.bending", "bars.plastic", "bars.shear", "bars.strut", "bars.beam-column", "bars.second-order", "bars.local", "bars.net-section", "bars.welds", "bars.bolts", "bars.bearing",
    ]);

    /// <summary>Fatigue of the bars.</summary>
    public static StatueLimit Fatigue { get; } = new("fatigue", ["bars.fatigue", "bars.fatigue-range", "fatigue"]);

    /// <summary>What the skin's growth with heat does to bars, joints and saddles.</summary>
    public static StatueLimit Heat { get; } = new("heat", ["heat"]);

    /// <summary>Sway of the named points.</summary>
    public static StatueLimit Sway { get; } = new("sway", ["sway"]);

    /// <summary>What a shock does to bars, base and clearance.</summary>
    public static StatueLimit Shock { get; } = new("shock", ["shock"]);

    /// <summary>Free distance of the saddles from the tower, and their slip.</summary>
    public static StatueLimit Clearance { get; } = new("saddle clearance", ["bars.clearance", "bars.saddle-slip", "heat.saddle-travel", "shock.clearance"]);

    /// <summary>The six limits of a standoff; leave out those that the statue's criteria and situations do not ask for.</summary>
    public static ValueList<StatueLimit> Standoff { get; } = [Strength, Fatigue, Heat, Sway, Shock, Clearance];

    /// <summary>The greatest utilization of the limit's checks; null when none of them was done.</summary>
    internal double? Of(CheckSheet sheet)
    {
        double? greatest = null;
        foreach (Check check in sheet.Checks)
        {
            if (check.Utilization is { } u && (Checks.Contains(check.Id) || Checks.Contains(check.Family)))
                greatest = Math.Max(greatest ?? 0, u);
        }
        return greatest;
    }
}
