using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>New bars in the place of the old ones at a given year: their loss starts anew, with a new coating where one is described.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BarRenewal
{
    /// <summary>When, from the age described; above zero, at most 1000 years.</summary>
    public required Duration After { get; init; }

    /// <summary>The levels whose rings are renewed, as "L7" or "wing/W1"; empty, the default, renews all.</summary>
    public ValueList<string> Levels { get; init; } = [];

    /// <summary>Their metal; null takes the metal described.</summary>
    public Material? Material { get; init; }

    /// <summary>Their section when new; null takes the section described.</summary>
    public FlatBar? Section { get; init; }

    /// <summary>The renewal in words, as in "all bars after 40 years, in duplex".</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{(Levels.Count == 0 ? "all bars" : $"the bars of {string.Join(", ", Levels)}")} after {After.Years365:0.##} years{(Material is { } metal ? $", of {metal.Name}" : "")}{(Section is { } flat ? $", {flat.Designation}" : "")}");

    internal void Validate(Validator v, Statue statue)
    {
        v.Positive(After, After.Seconds, 86_400, Atmosphere.LongestExposure);
        Material?.Validate(v.At(nameof(Material)));
        string[] known = [.. Bodies(statue).SelectMany(b => b.Rings.Select(ring => b.Prefix + ring.Level)).Distinct()];
        foreach (string level in Levels.Where(level => !known.Contains(level)))
            v.Add(nameof(Levels), $"holds \"{level}\", where no ring of bars stands", NearNames.Closest(level, known));
    }

    /// <summary>The statue with the new bars, which wait as they are for the age at which they are put in.</summary>
    internal Statue Of(Statue statue)
    {
        Duration putIn = statue.Corrosion!.Age + After;
        return statue with
        {
            Standoffs = Renewed(statue.Standoffs, ""),
            Limbs = statue.Limbs.Select(limb => limb with { Standoffs = Renewed(limb.Standoffs, $"{limb.Name}/") }).ToValueList(),
        };

        ValueList<StandoffRing> Renewed(ValueList<StandoffRing> rings, string prefix) =>
            rings.Select(ring => Levels.Count == 0 || Levels.Contains(prefix + ring.Level) ? New(ring) : ring).ToValueList();

        StandoffRing New(StandoffRing ring) => ring switch
        {
            EvenRing even => even with { Standoff = Bar(even.Standoff) },
            ExplicitRing by => by with { Bars = by.Bars.Select(bar => bar with { Standoff = Bar(bar.Standoff) }).ToValueList() },
            _ => ring,
        };

        Standoff Bar(Standoff bar) => bar with { Section = Section ?? bar.Section, Material = Material ?? bar.Material, PutIn = putIn };
    }

    private static IEnumerable<(string Prefix, ValueList<StandoffRing> Rings)> Bodies(Statue statue) =>
        statue.Limbs.Select(limb => ($"{limb.Name}/", limb.Standoffs)).Prepend(("", statue.Standoffs));
}
