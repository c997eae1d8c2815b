using System.Text;
using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// The overturning acceleration spectrum of a rocking block: for every duration of a pulse, the least peak that topples it.
/// </summary>
/// <remarks>
/// <para>
/// Peaks are raised by a tenth from the one that lifts an edge until the block topples; the first change is then halved
/// down to a relative 1e-4. Above the least toppling peak there can be peaks that do not topple, since an impact may save
/// the block; the spectrum gives the least one found.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
public sealed class OverturningSpectrum
{
    private const double Ratio = 1.1, Settled = 1e-4;
    private const int MostPoints = 500;

    private OverturningSpectrum(RockingBlock block, PulseShape shape, IEnumerable<Duration> durations, double greatest)
    {
        (Block, Shape) = (block, shape);
        Points = durations.Select(duration => Find(duration, greatest)).ToValueList();
    }

    /// <summary>Finds the spectrum.</summary>
    /// <param name="block">The block.</param>
    /// <param name="shape">Shape of the pulse.</param>
    /// <param name="durations">Durations of the pulse, 1 ms to 100 s; at most 500.</param>
    /// <param name="greatestOverUplift">The greatest peak looked at, as a multiple of the one that lifts an edge; 1.1 to 1000.</param>
    /// <exception cref="ArgumentException">There are no durations, or too many, or the greatest peak is out of range.</exception>
    /// <exception cref="InvalidStatueException">The block or a pulse has problems; all of them are listed.</exception>
    public static OverturningSpectrum Of(RockingBlock block, PulseShape shape, IEnumerable<Duration> durations, double greatestOverUplift = 50)
    {
        ArgumentNullException.ThrowIfNull(block);
        ArgumentNullException.ThrowIfNull(durations);
        Duration[] all = [.. durations.Take(MostPoints + 1)];
        if (all.Length is 0 or > MostPoints)
            throw new ArgumentException($"Give one to {MostPoints} durations.", nameof(durations));
        if (!(greatestOverUplift is >= Ratio and <= 1000))
            throw new ArgumentOutOfRangeException(nameof(greatestOverUplift), FormattableString.Invariant($"Must be from {Ratio} to 1000, is {greatestOverUplift}."));
        var v = new Validator();
        foreach (Duration duration in all)
            new BasePulse(shape, block.UpliftAcceleration, duration).Validate(v.At("Pulse"));
        v.ThrowIfAny();
        return new OverturningSpectrum(block, shape, all, greatestOverUplift);
    }

    /// <summary>The block.</summary>
    public RockingBlock Block { get; }

    /// <summary>Shape of the pulse.</summary>
    public PulseShape Shape { get; }

    /// <summary>The points, in the order of the durations given.</summary>
    public ValueList<OverturningPoint> Points { get; }

    /// <summary>The points as comma-separated values (RFC 4180).</summary>
    /// <param name="units">The units to write in.</param>
    public string ToCsv(DisplayUnits units = DisplayUnits.Metric)
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, [CsvText.Head("pulse duration", Dimension.Duration, units), CsvText.Head("uplift", Dimension.Acceleration, units), CsvText.Head("overturning", Dimension.Acceleration, units)]);
        foreach (OverturningPoint point in Points)
        {
            CsvText.AppendLine(text, [
                CsvText.Number(point.PulseDuration.Seconds, Dimension.Duration, units),
                CsvText.Number(point.Uplift.MetersPerSecondSquared, Dimension.Acceleration, units),
                CsvText.Number(point.Overturning?.MetersPerSecondSquared, Dimension.Acceleration, units)]);
        }
        return text.ToString();
    }

    private OverturningPoint Find(Duration duration, double greatest)
    {
        double uplift = Block.UpliftAcceleration.MetersPerSecondSquared, stands = uplift;
        for (double a = Ratio * uplift; a <= greatest * uplift * (1 + 1e-12); a *= Ratio)
        {
            if (!Topples(a))
            {
                stands = a;
                continue;
            }
            double falls = a;
            while (falls - stands > Settled * falls)
            {
                double middle = 0.5 * (stands + falls);
                if (Topples(middle))
                    falls = middle;
                else
                    stands = middle;
            }
            return new OverturningPoint(duration, Block.UpliftAcceleration, Acceleration.FromMetersPerSecondSquared(falls));
        }
        return new OverturningPoint(duration, Block.UpliftAcceleration, null);

        bool Topples(double peak) => Block.Shake(new BasePulse(Shape, Acceleration.FromMetersPerSecondSquared(peak), duration)).Topples;
    }
}
