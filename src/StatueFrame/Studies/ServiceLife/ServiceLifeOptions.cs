using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>How far and how finely a <see cref="ServiceLife"/> looks.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ServiceLifeOptions
{
    /// <summary>How far to look from the age described, in years of 365 days; 100 by default, at most 1000.</summary>
    public Duration Span { get; init; } = Duration.FromYears365(100);

    /// <summary>
    /// In how many equal steps to look at the whole sheet, 1 to 200; 10 by default. A check that fails and passes again
    /// within a step could be missed.
    /// </summary>
    public int Steps { get; init; } = 10;

    /// <summary>How often the step in which a check fails is halved, 0 to 12; 4 by default: a sixteenth of a step.</summary>
    public int Halvings { get; init; } = 4;

    /// <summary>New bars at given years; none by default, at most 50. Of two at the same place the later one holds.</summary>
    public ValueList<BarRenewal> Renewals { get; init; } = [];

    internal void Validate(Validator v, Statue statue)
    {
        v.Positive(Span, Span.Seconds, 86_400, Atmosphere.LongestExposure);
        v.InRange(Steps, 1, 200, "It is how many times the sheet is looked at along the way.");
        v.InRange(Halvings, 0, 12, "Each halves the uncertainty of the year.");
        foreach ((_, BarRenewal renewal, Validator at) in v.Items(Renewals, 50))
            renewal.Validate(at, statue);
        if (statue.Corrosion is null)
            v.Add(nameof(Statue.Corrosion), "is not described", "Say what air the statue stands in, as in new Corrosion { Air = Atmosphere.Of(Corrosivity.C5) }.");
    }
}
