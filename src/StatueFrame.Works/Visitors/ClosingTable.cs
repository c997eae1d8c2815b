using System.Text;
using StatueFrame.Studies;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>The guard's table: at which wind, or at which sway, each place for visitors is closed.</summary>
/// <remarks>Immutable and safe to share between threads. Speeds are those that the anemometer shows, at its height.</remarks>
public sealed record ClosingTable
{
    private ClosingTable()
    {
    }

    /// <summary>The places.</summary>
    public required ValueList<ClosingLine> Lines { get; init; }

    /// <summary>The curve that it was read from.</summary>
    public required SwayCurve Curve { get; init; }

    /// <summary>Makes the table.</summary>
    /// <param name="curve">The sway curve for the anemometer, best with dynamics.</param>
    /// <param name="rules">The rules.</param>
    /// <exception cref="InvalidStatueException">A rule has problems, or its sway is exceeded in calm; all are listed.</exception>
    public static ClosingTable Of(SwayCurve curve, params ReadOnlySpan<ClosingRule> rules)
    {
        ArgumentNullException.ThrowIfNull(curve);
        var v = new Validator();
        for (int i = 0; i < rules.Length; i++)
            rules[i].Validate(v.At(nameof(rules), i), curve.Model.Statue);
        v.ThrowIfAny();
        SwayCurve limited = SwayCurve.Of(curve.Model, curve.Wind, curve.Options with { Limits = curve.Options.Limits with { Sway = [.. rules.ToArray().Select(r => new SwayLimit(r.Point, r.Sway))] }, AccelerationLimits = [] });
        double toGust = limited.DesignGustSpeed / limited.DesignMeanSpeed;
        var lines = new ClosingLine[rules.Length];
        for (int i = 0; i < rules.Length; i++)
        {
            ClosingRule rule = rules[i];
            SpeedAtLimit limit = limited.Limits[i];
            if (limit.Reach is LimitReach.ExceededInCalm or LimitReach.NotKnown)
            {
                v.At(nameof(rules), i).Add(nameof(ClosingRule.Sway), limit.Reach == LimitReach.NotKnown ? "is not known" : "is exceeded without any wind", "The place cannot be opened by this rule.");
                continue;
            }
            // Nothing was verified above the design speed: a limit that is not met there closes at the design speed at the latest.
            double gust = rule.Margin * (limit.GustSpeed ?? limited.DesignGustSpeed).MetersPerSecond;
            string because = limit.Reach == LimitReach.Reached ? $"sway at {rule.Point}" : "design speed";
            if (rule.GreatestGust is { } most && most.MetersPerSecond < gust)
                (gust, because) = (most.MetersPerSecond, "people in the wind");
            Speed mean = Speed.FromMetersPerSecond(gust / toGust);
            lines[i] = new ClosingLine(rule, Speed.FromMetersPerSecond(gust), mean, limited.At(mean).At(rule.Point).Gust, because);
        }
        v.ThrowIfAny();
        return new ClosingTable { Lines = [.. lines], Curve = limited };
    }

    /// <summary>The table as plain text, to hang beside the anemometer.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        TextLayout.AppendLine(text, $"CLOSE WHEN THE WIND OR THE SWAY REACHES: {Curve.Model.Statue.Name}");
        TextLayout.AppendTable(text, 2, [new(34), new(12, true), new(16, true), new(14, true), new(30)],
        [
            ["place", "gust", "mean of 10 min", "or sway", "decided by"],
            .. Lines.Select(l => new[] { l.Rule.Place, Invariant($"{l.Gust.MetersPerSecond:0.0} m/s"), Invariant($"{l.Mean.MetersPerSecond:0.0} m/s"), Invariant($"{l.SwayThen.Millimeters:0} mm"), l.Because }),
        ]);
        TextLayout.AppendWrapped(text, "  ", Invariant($"Anemometer {Curve.Options.AnemometerHeight.Meters:0.#} m above ground. Whichever comes first closes the place; it opens again after half an hour below nine tenths of it, and after a look at it. A storm above {Curve.DesignGustSpeed.MetersPerSecond:0} m/s is above the design: nobody goes up before an inspection."));
        TextLayout.AppendWrapped(text, "  ", Invariant($"Closed at {string.Join(", ", Lines.Select(l => Invariant($"{l.Rule.Margin:0.00}")).Distinct())} of the speed that brings the sway to its limit, or at a gust of {string.Join(", ", Lines.Select(l => l.Rule.GreatestGust is { } g ? Invariant($"{g.MetersPerSecond:0.#} m/s") : "any strength").Distinct())}, which are common practice without a source unless the site sets its own."));
        foreach (string warning in Curve.Warnings)
            TextLayout.AppendWrapped(text, "  ", warning);
        TextLayout.AppendWrapped(text, "  ", "For review by a licensed engineer; whoever runs the site decides on opening.");
        return text.ToString();
    }
}
