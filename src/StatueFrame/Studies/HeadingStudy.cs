using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// Which wind heading is worst for what: sway and twist of every named point, what the base feels, the bars of every
/// ring under both assumptions on the skin, and the lattice's members. The headings between those of the situation are
/// looked at too, so that the worst between two of them is not missed.
/// </summary>
/// <remarks>
/// <para>
/// Headings of the situation that are more than 90° apart leave a sector out, in which nothing is looked at. Within the
/// others a grid is laid, and the worst of each quantity is refined to 0.1°. A peak narrower than the grid could be missed.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
[TypeFormatterSource(typeof(NotebookText))]
public sealed class HeadingStudy
{
    /// <summary>Values that differ by less are the same but for rounding: the lower heading is named.</summary>
    private const double Noise = 1e-9;

    /// <summary>Less than this part of the greatest value of its dimension, or this in SI units, is what rounding leaves of zero.</summary>
    private const double Zero = 1e-11, SmallestZero = 1e-12;

    private HeadingStudy(StatueModel model, Situation situation, HeadingProbe probe, IReadOnlyList<HeadingSample> samples)
    {
        (Model, Situation) = (model, situation);
        GivenHeadings = Headings(samples, HeadingSampleKind.Given);
        GridHeadings = Headings(samples, HeadingSampleKind.Given, HeadingSampleKind.Grid);
        Series = Enumerable.Range(0, probe.Quantities.Count)
            .Select(q => SeriesOf(probe.Quantities[q], q, samples, ZeroOf(probe, probe.Quantities[q].Dimension, samples)))
            .OfType<HeadingSeries>().ToValueList();
    }

    /// <summary>Studies a situation.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="situation">The situation, with its wind in the headings to compare.</param>
    /// <param name="grid">
    /// Headings looked at in a full turn, 16 to 720; or 0 for none but the situation's own. A linear response is cheap,
    /// one with tension-only bracing is not.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">The grid is out of range.</exception>
    /// <exception cref="InvalidStatueException">The situation has problems, or no wind.</exception>
    public static HeadingStudy Of(StatueModel model, Situation situation, int grid = 72)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(situation);
        if (grid != 0 && grid is < 16 or > 720)
            throw new ArgumentOutOfRangeException(nameof(grid), $"Must be 0, or from 16 to 720, is {grid}.");
        if (situation.Wind is null)
            throw new InvalidStatueException([new Problem("Situation.Actions", "has no wind", "A study of headings compares those of a WindAction.")]);
        var probe = new HeadingProbe(model);
        var sampler = new HeadingSampler(probe, model, situation);
        if (grid > 0)
        {
            sampler.LayGrid(360.0 / grid);
            sampler.Refine();
        }
        return new HeadingStudy(model, situation, probe, sampler.Samples);
    }

    /// <summary>The model studied.</summary>
    public StatueModel Model { get; }

    /// <summary>What acts.</summary>
    public Situation Situation { get; }

    /// <summary>The situation's own headings, each once, ascending from 0 up to 360°.</summary>
    public ValueList<Angle> GivenHeadings { get; }

    /// <summary>The headings of the roses: the given ones and the grid between them, ascending.</summary>
    public ValueList<Angle> GridHeadings { get; }

    /// <summary>Every quantity.</summary>
    public ValueList<HeadingSeries> Series { get; }

    /// <summary>The quantity with a name, as in "sway at tip" or "base overturning moment".</summary>
    /// <param name="name">The name.</param>
    /// <exception cref="ArgumentException">There is no such quantity.</exception>
    public HeadingSeries this[string name] => Series.FirstOrDefault(s => s.Name == name)
        ?? throw new ArgumentException($"There is no quantity \"{name}\". {NearNames.Closest(name, Series.Select(s => s.Name))}", nameof(name));

    /// <summary>The sway of a named point.</summary>
    /// <param name="point">The point's name.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public HeadingSeries SwayAt(string point) => this[HeadingProbe.SwayOf(point)];

    /// <summary>The twist of a named point about z, without sign.</summary>
    /// <param name="point">The point's name.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public HeadingSeries TwistAt(string point) => this[HeadingProbe.TwistOf(point)];

    /// <summary>The study as plain text, at most 110 columns wide.</summary>
    /// <param name="units">The units to print in.</param>
    /// <param name="allRings">True to list every ring's bars, not only the worst of all.</param>
    public string Print(DisplayUnits units = DisplayUnits.Metric, bool allRings = false) => HeadingStudyText.Of(this, units, allRings);

    /// <summary>The roses as comma-separated values (RFC 4180): a line for each heading of the grid, a column for each quantity.</summary>
    /// <param name="units">The units to write in; they stand in the heads of the columns.</param>
    public string ToCsv(DisplayUnits units = DisplayUnits.Metric) => HeadingStudyText.Csv(this, units);

    /// <summary>The study as plain text in metric units.</summary>
    public override string ToString() => Print();

    private static ValueList<Angle> Headings(IReadOnlyList<HeadingSample> samples, params ReadOnlySpan<HeadingSampleKind> kinds)
    {
        var headings = new List<Angle>();
        foreach (HeadingSample sample in samples)
        {
            if (kinds.Contains(sample.Kind))
                headings.Add(Angle.FromDegrees(sample.Degrees));
        }
        return headings.ToValueList();
    }

    /// <summary>The series of a quantity; null when nothing on this statue has it.</summary>
    private static HeadingSeries? SeriesOf(
        (string Name, Dimension Dimension) what, int quantity, IReadOnlyList<HeadingSample> samples, double zero)
    {
        HeadingSample[] known = [.. samples.Where(s => !double.IsNaN(s.Values[quantity]))];
        if (!known.Any(s => s.Kind == HeadingSampleKind.Given))
            return null;
        RosePoint given = Worst(known.Where(s => s.Kind == HeadingSampleKind.Given)), any = Worst(known);
        return new HeadingSeries
        {
            Name = what.Name,
            Dimension = what.Dimension,
            Rose = known.Where(s => s.Kind != HeadingSampleKind.Refined).Select(Point).ToValueList(),
            WorstGiven = given,
            Worst = any.Value > given.Value * (1 + Noise) ? any : given,
        };

        RosePoint Point(HeadingSample s) => new(Angle.FromDegrees(s.Degrees), Value(s));

        double Value(HeadingSample s) => s.Values[quantity] <= zero ? 0 : s.Values[quantity];

        RosePoint Worst(IEnumerable<HeadingSample> of)
        {
            double most = of.Max(Value);
            return Point(of.First(s => Value(s) >= most * (1 - 0.5 * Noise)));
        }
    }

    private static double ZeroOf(HeadingProbe probe, Dimension dimension, IReadOnlyList<HeadingSample> samples)
    {
        double greatest = 0;
        for (int q = 0; q < probe.Quantities.Count; q++)
        {
            if (probe.Quantities[q].Dimension != dimension)
                continue;
            foreach (HeadingSample sample in samples)
            {
                if (sample.Values[q] > greatest)
                    greatest = sample.Values[q];
            }
        }
        return Math.Max(Zero * greatest, SmallestZero);
    }
}
