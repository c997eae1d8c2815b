namespace StatueFrame.Studies;

/// <summary>One quantity over the wind's headings: the rose to plot, and where it is worst.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record HeadingSeries
{
    internal HeadingSeries()
    {
    }

    /// <summary>What it is, as in "sway at tip".</summary>
    public required string Name { get; init; }

    /// <summary>What the values measure.</summary>
    public required Dimension Dimension { get; init; }

    /// <summary>The value at each heading looked at, headings ascending; values without sign, in SI units.</summary>
    public required ValueList<RosePoint> Rose { get; init; }

    /// <summary>The worst of the situation's own headings: what a check sheet of the situation sees.</summary>
    public required RosePoint WorstGiven { get; init; }

    /// <summary>The worst of all headings, those between the situation's own included; never less than <see cref="WorstGiven"/>.</summary>
    public required RosePoint Worst { get; init; }

    /// <summary>By how much the worst between the given headings is above the worst of them, as a part of one.</summary>
    public double Missed => WorstGiven.Value > 0 ? Worst.Value / WorstGiven.Value - 1 : 0;

    /// <summary>The name and the worst on one line.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Name}: {Dimension.Format(Worst.Value, DisplayUnits.Metric)}, wind towards {Worst.Heading.Degrees:0.#}°");
}
