using System.Globalization;

namespace StatueFrame;

/// <summary>Standoffs that are each placed by hand, for the spots where no even ring fits.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ExplicitRing : StandoffRing
{
    /// <summary>The bars, 1 to 400.</summary>
    public required ValueList<StandoffBar> Bars { get; init; }

    /// <summary>How far above or below its level a tower end may be, m: more is a slip, or needs a level of its own.</summary>
    private const double LongestBracket = 5;

    internal override int BarCount => Bars?.Count ?? 0;

    internal override double SkinElevation(double levelElevation)
    {
        double sum = 0;
        foreach (StandoffBar bar in Bars.AsSpan())
            sum += bar.SkinEnd.Z.Meters;
        return sum / Bars.Count;
    }

    internal override BarPlacement[] Place(in RingSite site, Validator v) => RingLayout.Place(this, site, v);

    internal override IEnumerable<Assumption> Assumptions() => Bracket is null ? [RigidBrackets] : [];

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        if (Bars is not null && !v.InRange(Bars.Count, 1, MostBars, "Split a ring with more bars in two."))
            return;
        foreach ((_, StandoffBar bar, Validator at) in v.Items(Bars, MostBars))
            bar.Validate(at);
    }

    internal override void ValidateAt(TowerLevel level, Validator v)
    {
        for (int i = 0; i < Math.Min(BarCount, MostBars); i++)
        {
            double off = Bars[i] is { } bar ? bar.TowerEnd.Z.Meters - level.Elevation.Meters : 0;
            if (Math.Abs(off) > LongestBracket)
                v.At(nameof(Bars), i).Add(nameof(StandoffBar.TowerEnd), string.Create(CultureInfo.InvariantCulture, $"lies {Math.Abs(off):g4} m {(off > 0 ? "above" : "below")} the level \"{level.Name}\" that carries it"), $"A bracket may span {LongestBracket} m; choose a nearer level.");
        }
    }
}
