using MathNet.Numerics.RootFinding;
using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// Sway, bar stress and overturning against the wind speed that an anemometer shows, from calm to the design speed, and
/// the speeds at which limits are met: the table that hangs beside the anemometer.
/// </summary>
/// <remarks>
/// <para>
/// Quasi-static: wind forces grow with the square of the speed, at the profile of the design wind, and add as vectors to
/// the weight. Mean values are those of ½ρv_m² without a gust factor; gust values those of the peak pressure and the wind
/// action's gust factor, or the one that <see cref="SwayCurveOptions.Dynamics"/> gives. Load factors play no part. The
/// worst heading is that of the wind action's headings; see <see cref="HeadingStudy"/> for those between.
/// </para>
/// <para>Immutable and safe to share between threads, if the dynamics are.</para>
/// </remarks>
[TypeFormatterSource(typeof(NotebookText))]
public sealed class SwayCurve
{
    /// <summary>What every print says at its end.</summary>
    public const string Caution =
        "Worked out from a model, not measured. For review and sign-off by a licensed engineer; local rules and the site's own limits "
        + "govern. Nothing here allows work at a speed. Above the design speed nothing was verified.";

    /// <summary>The part of its yield strength that a bar may reach without load factors, when nothing is said.</summary>
    internal const double DefaultBarStressFraction = 1 / 1.5;

    private readonly SwayCurveCases cases;
    private readonly double designMean, designGust;

    private SwayCurve(StatueModel model, WindAction design, SwayCurveOptions options)
    {
        (Model, Wind, Options) = (model, design, options);
        cases = new SwayCurveCases(model, design, options);
        double z = options.AnemometerHeight.Meters;
        (designMean, designGust) = (design.Profile.MeanSpeedSi(z), design.Profile.GustSpeedSi(z));
        double[] speeds = options.MeanSpeeds is { } given ? [.. given.Select(v => v.MetersPerSecond)] : [.. RoundSpeeds(designMean)];
        double[] ratios = [.. speeds.Select(v => Math.Min(v / designMean, 1))];
        Rows = ratios.Select(RowAt).ToValueList();
        Limits = FindLimits([0, .. ratios.Where(r => r is > 0 and < 1), 1]).ToValueList();
        (Assumptions, Warnings) = (SwayCurveNotes.Assumptions(this, cases.Dynamics(0, 1)), SwayCurveNotes.Warnings(this));
    }

    /// <summary>Draws the curve of a statue.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="design">The design wind, without load factor: its profile is the top of the curve.</param>
    /// <param name="options">The anemometer, the limits, and what else the curve is drawn for.</param>
    /// <exception cref="InvalidStatueException">The wind or the options have problems; all of them are listed.</exception>
    /// <exception cref="InvalidOperationException">The dynamics gave a value that cannot be.</exception>
    public static SwayCurve Of(StatueModel model, WindAction design, SwayCurveOptions options)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(options);
        var v = new Validator();
        design.Validate(v.At(nameof(Wind)));
        double z = options.AnemometerHeight.Meters;
        double greatest = v.Problems.Count == 0 && z is >= 0 and <= 2000 ? design.Profile.MeanSpeedSi(z) : double.PositiveInfinity;
        options.Validate(v.At(nameof(Options)), model.Statue, greatest);
        v.ThrowIfAny();
        return new SwayCurve(model, design, options);
    }

    /// <summary>The model.</summary>
    public StatueModel Model { get; }

    /// <summary>The design wind.</summary>
    public WindAction Wind { get; }

    /// <summary>What the curve was drawn for.</summary>
    public SwayCurveOptions Options { get; }

    /// <summary>Mean speed of the design wind at the anemometer.</summary>
    public Speed DesignMeanSpeed => Speed.FromMetersPerSecond(designMean);

    /// <summary>Gust speed of the design wind at the anemometer.</summary>
    public Speed DesignGustSpeed => Speed.FromMetersPerSecond(designGust);

    /// <summary>The lines of the table, speeds ascending.</summary>
    public ValueList<SwayCurveRow> Rows { get; }

    /// <summary>Every limit given, with the speed that meets it.</summary>
    public ValueList<SpeedAtLimit> Limits { get; }

    /// <summary>What the library took for the user.</summary>
    public ValueList<Assumption> Assumptions { get; }

    /// <summary>What the reader should know before trusting the numbers.</summary>
    public ValueList<string> Warnings { get; }

    /// <summary>The line for any speed up to the design speed.</summary>
    /// <param name="meanSpeed">Mean speed at the anemometer.</param>
    /// <exception cref="ArgumentOutOfRangeException">The speed is negative, not finite, or above the design speed.</exception>
    public SwayCurveRow At(Speed meanSpeed)
    {
        double ratio = meanSpeed.MetersPerSecond / designMean;
        if (!(ratio >= 0 && ratio <= 1 + 1e-9))
            throw new ArgumentOutOfRangeException(nameof(meanSpeed), FormattableString.Invariant($"Must be from 0 to the design speed of {designMean:0.00} m/s, is {meanSpeed.MetersPerSecond:0.00} m/s."));
        return RowAt(Math.Min(ratio, 1));
    }

    /// <summary>The table as plain text, at most 110 columns wide.</summary>
    /// <param name="units">The units to print in.</param>
    public string Print(DisplayUnits units = DisplayUnits.Metric) => SwayCurveText.Of(this, units);

    /// <summary>The lines as comma-separated values (RFC 4180).</summary>
    /// <param name="units">The units to write in; they stand in the heads of the columns.</param>
    public string ToCsv(DisplayUnits units = DisplayUnits.Metric) => SwayCurveText.Csv(this, units);

    /// <summary>The table as plain text in metric units.</summary>
    public override string ToString() => Print();

    internal int HeadingCount => cases.HeadingCount;

    internal double BarStressFraction => Options.Limits.BarStressFraction ?? DefaultBarStressFraction;

    private Speed MeanAt(double ratio) => Speed.FromMetersPerSecond(ratio * designMean);

    private Speed GustAt(double ratio) => Speed.FromMetersPerSecond(ratio * designGust);

    /// <summary>Zero, round numbers, and the design speed; about a dozen.</summary>
    private static IEnumerable<double> RoundSpeeds(double design)
    {
        double step = new[] { 1, 2, 2.5, 5 }.FirstOrDefault(s => design / s <= 14, 10);
        for (int i = 0; i * step < design - 0.2 * step; i++)
            yield return i * step;
        yield return design;
    }

    private SwayCurveRow RowAt(double ratio)
    {
        SwayDynamics?[] dynamics = [.. Headings.Select(h => cases.Dynamics(h, ratio))];
        CombinedCase[] gusts = [.. Headings.Select(h => cases.Gust(h, ratio, dynamics[h]))];
        CombinedCase[] means = [.. Headings.Select(h => cases.Mean(h, ratio))];
        CombinedCase overturns = gusts.MaxBy(c => c.Overturning)!;
        return new SwayCurveRow
        {
            MeanSpeed = MeanAt(ratio),
            GustSpeed = GustAt(ratio),
            Points = Model.Statue.Points.Select(p => PointAt(p.Name)).ToValueList(),
            Overturning = Torque.FromNewtonMeters(overturns.Overturning),
            OverturningHeading = ratio > 0 ? overturns.Heading : null,
            WorstBar = gusts.Select(c => c.WorstBar()).MaxBy(b => b?.YieldFraction) is { } bar ? bar with { Heading = ratio > 0 ? bar.Heading : null } : null,
        };

        PointSway PointAt(string point)
        {
            CombinedCase worst = gusts.MaxBy(c => c.Sway(point))!;
            return new PointSway
            {
                Point = point,
                Mean = Length.FromMeters(means.Max(c => c.Sway(point))),
                Gust = Length.FromMeters(worst.Sway(point)),
                Heading = ratio > 0 ? worst.Heading : null,
                Acceleration = dynamics.Select(d => Of(d, point)).MaxBy(a => a?.Peak.MetersPerSecondSquared),
            };
        }
    }

    private IEnumerable<int> Headings => Enumerable.Range(0, cases.HeadingCount);

    private static PointAcceleration? Of(SwayDynamics? dynamics, string point) => dynamics?.Points.FirstOrDefault(p => p.Point == point);

    private IEnumerable<SpeedAtLimit> FindLimits(double[] ratios)
    {
        foreach (SwayLimit limit in Options.Limits.Sway)
        {
            yield return Find($"sway at {limit.Point}", limit.Limit.Meters, Dimension.SmallLength, limit.Source, ratios,
                (h, ratio) => cases.Gust(h, ratio, cases.Dynamics(h, ratio)).Sway(limit.Point));
        }
        if (Model.BarCount > 0)
        {
            Source source = Options.Limits.BarStressFraction is null ? SwayCurveNotes.AllowableStress.Source : Source.User;
            yield return Find("bar stress over yield strength", BarStressFraction, Dimension.Percent, source, ratios,
                (h, ratio) => cases.Gust(h, ratio, cases.Dynamics(h, ratio)).WorstBar()!.YieldFraction);
        }
        foreach (AccelerationLimit limit in Options.AccelerationLimits)
        {
            yield return Find($"peak acceleration at {limit.Point}", limit.Limit.MetersPerSecondSquared, Dimension.Acceleration, limit.Source, ratios,
                (h, ratio) => Of(cases.Dynamics(h, ratio), limit.Point)?.Peak.MetersPerSecondSquared);
        }
    }

    /// <summary>
    /// The lowest speed that brings a quantity to its limit. Without dynamics a quantity of a linear model is a convex
    /// function of the square of the speed, so that there is one such speed and no other.
    /// </summary>
    private SpeedAtLimit Find(
        string name, double limit, Dimension dimension, Source source, double[] ratios, Func<int, double, double?> value)
    {
        var found = new SpeedAtLimit { Name = name, Limit = limit, Dimension = dimension, Source = source, Reach = LimitReach.NotKnown };
        if (Headings.Any(h => value(h, 1) is null))
            return found;
        int at = Array.FindIndex(ratios, r => Excess(r) >= 0);
        if (at < 0)
            return found with { Reach = LimitReach.NotReached };
        if (at == 0)
            return found with { Reach = LimitReach.ExceededInCalm };
        double ratio = Brent.FindRoot(Excess, ratios[at - 1], ratios[at], 1e-14, 200);
        return found with
        {
            Reach = LimitReach.Reached,
            MeanSpeed = MeanAt(ratio),
            GustSpeed = GustAt(ratio),
            Heading = cases.Heading(Headings.MaxBy(h => value(h, ratio))),
        };

        double Excess(double ratio) => Headings.Max(h => value(h, ratio))!.Value / limit - 1;
    }
}
