using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// Finds the headings at which quantities are worst. Between the given headings a grid is laid; then parabolas through the
/// greatest samples of each quantity and their neighbors tell where to look next. Every value is that of an analysis,
/// none is read off a parabola.
/// </summary>
/// <remarks>For one thread.</remarks>
internal sealed class HeadingSampler
{
    /// <summary>Given headings further apart leave out the sector between them, in degrees.</summary>
    private const double WidestGap = 90;

    /// <summary>Worst headings are found to this, in degrees: at a smooth maximum that is good to 10⁻⁶ of the value.</summary>
    private const double Resolution = 0.1;

    private const double Same = 1e-6;
    private const int Rounds = 4, Batch = 128;

    private readonly HeadingProbe probe;
    private readonly StatueModel model;
    private readonly Situation situation;
    private readonly WindAction wind;
    private readonly List<HeadingSample> samples = [];

    public HeadingSampler(HeadingProbe probe, StatueModel model, Situation situation)
    {
        (this.probe, this.model, this.situation) = (probe, model, situation);
        wind = (WindAction)situation.Wind!.Action;
        Response response = model.Respond(situation);
        for (int i = 0; i < response.Cases.Count; i++)
        {
            double heading = Turned(wind.Headings[i].Degrees);
            if (IsNew(heading))
                samples.Add(new HeadingSample(heading, HeadingSampleKind.Given, probe.Values(response.Cases[i])));
        }
        Sort();
    }

    /// <summary>All samples so far, headings ascending.</summary>
    public IReadOnlyList<HeadingSample> Samples => samples;

    /// <summary>Looks between the given headings, in steps of at most so many degrees and at the rows of tabulated force coefficients.</summary>
    public void LayGrid(double step)
    {
        var between = new List<double>();
        ForceCoefficientTable?[] tables = [wind.HeadingCoefficients, .. model.Bodies.SelectMany(body => body.Bands).Select(band => band.HeadingCoefficients).Distinct()];
        double[] knots = [.. tables.SelectMany(table => table?.Rows ?? []).Select(row => Turned(row.Heading.Degrees)).Distinct()];
        for (int i = 0; i < samples.Count; i++)
        {
            double begin = samples[i].Degrees, gap = GapAfter(i);
            if (gap > WidestGap)
                continue;
            int parts = (int)Math.Ceiling(gap / step - Same);
            between.AddRange(Enumerable.Range(1, Math.Max(0, parts - 1)).Select(k => Turned(begin + k * gap / parts)));
            between.AddRange(knots.Where(knot => Turned(knot - begin) < gap));
        }
        Look(between, HeadingSampleKind.Grid);
    }

    /// <summary>Looks where parabolas have their vertices, until nothing new is found.</summary>
    public void Refine()
    {
        for (int round = 0; round < Rounds; round++)
        {
            var vertices = new List<double>();
            for (int quantity = 0; quantity < probe.Quantities.Count; quantity++)
                vertices.AddRange(Vertices(quantity));
            if (!Look(vertices, HeadingSampleKind.Refined))
                return;
        }
    }

    /// <summary>Analyzes the headings that are new; false when there are none.</summary>
    private bool Look(IEnumerable<double> headings, HeadingSampleKind kind)
    {
        var fresh = new List<double>();
        foreach (double heading in headings.Order())
        {
            if (IsNew(heading) && fresh.All(f => Apart(f, heading) > Same))
                fresh.Add(heading);
        }
        foreach (double[] batch in fresh.Chunk(Batch))
        {
            WindAction part = wind with { Headings = batch.Select(h => Angle.FromDegrees(h)).ToValueList() };
            Response response = model.Respond(situation with
            {
                Actions = situation.Actions.Select(a => ReferenceEquals(a.Action, wind) ? a.Factor * part : a).ToValueList(),
            });
            samples.AddRange(batch.Zip(response.Cases, (h, loadCase) => new HeadingSample(h, kind, probe.Values(loadCase))));
        }
        Sort();
        return fresh.Count > 0;
    }

    private bool IsNew(double heading) => samples.All(s => Apart(s.Degrees, heading) > Same);

    private void Sort() => samples.Sort((a, b) => a.Degrees.CompareTo(b.Degrees));

    /// <summary>
    /// The headings at which a quantity may be worse than anywhere yet. The parabola y₁ + p x + q x² through a sample that
    /// is a local maximum and its neighbors rises to y₁ − p²/(4q) at x = −p/(2q); a peak is looked at when twice that rise
    /// would do, as a parabola may be too flat.
    /// </summary>
    private IEnumerable<double> Vertices(int quantity)
    {
        double worst = samples.Select(s => s.Values[quantity]).Where(value => !double.IsNaN(value)).DefaultIfEmpty(double.PositiveInfinity).Max();
        for (int i = 0; i < samples.Count; i++)
        {
            int before = (i + samples.Count - 1) % samples.Count, after = (i + 1) % samples.Count;
            double left = -GapAfter(before), right = GapAfter(i), top = samples[i].Values[quantity];
            double a = samples[before].Values[quantity] - top, b = samples[after].Values[quantity] - top;
            double q = (b / right - a / left) / (right - left), p = a / left - q * left;
            if (!(a <= 0 && b <= 0 && q < 0) || -left > WidestGap || right > WidestGap || top - p * p / (2 * q) < worst)
                continue;
            double heading = Turned(Math.Round(samples[i].Degrees - p / (2 * q), 1));
            if (Apart(heading, samples[i].Degrees) >= 0.5 * Resolution)
                yield return heading;
        }
    }

    /// <summary>Degrees from a sample to the next one round.</summary>
    private double GapAfter(int i) =>
        i + 1 < samples.Count ? samples[i + 1].Degrees - samples[i].Degrees : samples[0].Degrees + 360 - samples[i].Degrees;

    private static double Apart(double a, double b)
    {
        double d = Math.Abs(a - b);
        return Math.Min(d, 360 - d);
    }

    /// <summary>The same heading from 0 up to 360°.</summary>
    private static double Turned(double degrees)
    {
        double turned = degrees % 360;
        if (turned < 0)
            turned += 360;
        return turned >= 360 ? 0 : turned;
    }
}
