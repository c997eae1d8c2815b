using System.Text;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// The acceleration at a point over the rhythm of people on a platform, from the slowest to the fastest, and the worst
/// rhythm: that of which a harmonic meets a natural frequency.
/// </summary>
/// <remarks>
/// Steady state, as if they never tired; people do not damp or load the statue. Immutable and safe to share between threads.
/// </remarks>
public sealed class RhythmCurve
{
    private const int EvenSteps = 200;

    private RhythmCurve(StatueModel model, RhythmicCrowd crowd, string point, Direction3 direction, double damping)
    {
        (Crowd, Point, Direction) = (crowd, point, direction);
        ModalResponse modes = BaseMotionModes.Enough(model);
        FrequencyResponse response = FrequencyResponse.OfForce(model, crowd.Point, crowd.Load.Direction, crowd.EquivalentPeople * crowd.Weight, damping, modes);
        Points = Rhythms(crowd.Load, modes).Select(f => At(response, f)).ToValueList();
        Worst = Points.FirstGreatest(p => p.Peak.MetersPerSecondSquared);
    }

    /// <summary>Draws the curve.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="crowd">The people.</param>
    /// <param name="point">The named point whose acceleration is asked for.</param>
    /// <param name="direction">The direction in which it is looked at.</param>
    /// <param name="dampingRatio">Damping ratio of all modes, above 0 to 0.5.</param>
    /// <exception cref="InvalidStatueException">The crowd has problems, or there is no such point; all are listed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The damping ratio is out of range.</exception>
    public static RhythmCurve Of(StatueModel model, RhythmicCrowd crowd, string point, Direction3 direction, double dampingRatio)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(crowd);
        var v = new Validator();
        var names = new StatueNames(model.Statue);
        crowd.Validate(v.At(nameof(Crowd)), names);
        names.RequirePoint(v, nameof(Point), point);
        v.ThrowIfAny();
        return new RhythmCurve(model, crowd, point, direction, dampingRatio);
    }

    /// <summary>The people.</summary>
    public RhythmicCrowd Crowd { get; }

    /// <summary>The point whose acceleration is given.</summary>
    public string Point { get; }

    /// <summary>The direction in which it is looked at.</summary>
    public Direction3 Direction { get; }

    /// <summary>The curve, rhythms ascending.</summary>
    public ValueList<RhythmPoint> Points { get; }

    /// <summary>The worst rhythm.</summary>
    public RhythmPoint Worst { get; }

    /// <summary>The worst peak against a limit.</summary>
    /// <param name="limit">The limit; its point must be that of the curve.</param>
    /// <exception cref="ArgumentException">The limit is for another point.</exception>
    public Check CheckAgainst(AccelerationLimit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        if (limit.Point != Point)
            throw new ArgumentException($"The limit is for \"{limit.Point}\", the curve for \"{Point}\".", nameof(limit));
        return RhythmChecks.Acceleration(Point, Worst.Peak, limit.Limit, limit.Source, FormattableString.Invariant($"{Crowd.People} people {Crowd.Load.Name} at {Worst.Rhythm.Hertz:0.00} Hz ({Crowd.Load.Source})"));
    }

    /// <summary>The curve as comma-separated values (RFC 4180).</summary>
    /// <param name="units">The units to write in.</param>
    public string ToCsv(DisplayUnits units = DisplayUnits.Metric)
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, [CsvText.Head("rhythm", Dimension.Frequency, units), CsvText.Head("peak", Dimension.Acceleration, units), CsvText.Head("rms", Dimension.Acceleration, units)]);
        foreach (RhythmPoint point in Points)
        {
            CsvText.AppendLine(text, [
                CsvText.Number(point.Rhythm.Hertz, Dimension.Frequency, units),
                CsvText.Number(point.Peak.MetersPerSecondSquared, Dimension.Acceleration, units),
                CsvText.Number(point.Rms.MetersPerSecondSquared, Dimension.Acceleration, units)]);
        }
        return text.ToString();
    }

    /// <summary>Even steps, and every rhythm of which a harmonic meets a mode.</summary>
    private static IEnumerable<double> Rhythms(RhythmicLoad load, ModalResponse modes)
    {
        double slow = load.Slowest.Hertz, fast = load.Fastest.Hertz;
        IEnumerable<double> even = Enumerable.Range(0, EvenSteps + 1).Select(i => slow + (fast - slow) * i / EvenSteps);
        IEnumerable<double> resonant = modes.Modes.SelectMany(mode => Enumerable.Range(1, load.Coefficients.Count).Select(n => mode.Frequency.Hertz / n));
        return even.Concat(resonant.Where(f => f >= slow && f <= fast)).Distinct().Order();
    }

    private RhythmPoint At(FrequencyResponse response, double f)
    {
        double sum = 0, squares = 0;
        for (int n = 1; n <= Crowd.Load.Coefficients.Count; n++)
        {
            double a = Crowd.Load.Coefficients[n - 1] * response.At(Point, Direction, Frequency.FromHertz(n * f)).Acceleration.MetersPerSecondSquared;
            sum += a;
            squares += 0.5 * a * a;
        }
        return new RhythmPoint(Frequency.FromHertz(f), Acceleration.FromMetersPerSecondSquared(sum), Acceleration.FromMetersPerSecondSquared(Math.Sqrt(squares)));
    }
}
