using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>
/// The power spectral density of a record by Welch's method: the mean of the spectra of segments that overlap by half, each
/// without its mean and under a Hann window. One-sided: its integral over frequency is the variance.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source: Welch 1967, IEEE Trans. Audio Electroacoust. 15, 70–73, from memory.</remarks>
public sealed class WelchSpectrum
{
    private const int FewestInSegment = 32, DefaultSegments = 16;

    private readonly double[][] segments;
    private readonly double[] density;

    private WelchSpectrum(SiteRecord record, int length)
    {
        Record = record;
        Length = length;
        int hop = Math.Max(1, length / 2), count = 1 + (record.Values.Count - length) / hop;
        double fs = record.SampleRate.Hertz, power = 0;
        var window = new double[length];
        for (int i = 0; i < length; i++)
        {
            double s = Math.Sin(Math.PI * (i + 0.5) / length);
            window[i] = s * s;
            power += window[i] * window[i];
        }
        segments = new double[count][];
        density = new double[length / 2 + 1];
        var values = new Complex[length];
        ReadOnlySpan<double> all = record.Values.AsSpan();
        for (int k = 0; k < count; k++)
        {
            ReadOnlySpan<double> part = all.Slice(k * hop, length);
            double mean = 0;
            foreach (double value in part)
                mean += value / length;
            for (int i = 0; i < length; i++)
                values[i] = window[i] * (part[i] - mean);
            Fourier.Forward(values, FourierOptions.NoScaling);
            segments[k] = new double[density.Length];
            for (int i = 0; i < density.Length; i++)
            {
                bool isTwin = i > 0 && 2 * i < length;
                double square = values[i].Real * values[i].Real + values[i].Imaginary * values[i].Imaginary;
                segments[k][i] = (isTwin ? 2 : 1) * square / (fs * power);
                density[i] += segments[k][i] / count;
            }
        }
    }

    /// <summary>Finds the spectrum of a record.</summary>
    /// <param name="record">The record.</param>
    /// <param name="segment">
    /// Length of the segments; its inverse is the resolution. Null takes a ninth of the record, which makes sixteen.
    /// </param>
    /// <exception cref="InvalidStatueException">The record has problems; all of them are listed.</exception>
    /// <exception cref="SiteRecordException">The segments are longer than the record, or too short.</exception>
    public static WelchSpectrum Of(SiteRecord record, Duration? segment = null)
    {
        ArgumentNullException.ThrowIfNull(record);
        record.Require();
        double samples = segment is { } given ? given.Seconds * record.SampleRate.Hertz : Math.Max(FewestInSegment, 2.0 * record.Values.Count / (DefaultSegments + 1));
        if (!(samples >= FewestInSegment && samples <= record.Values.Count + 0.5))
            throw new SiteRecordException(Invariant($"Segments must hold {FewestInSegment} samples to the whole record of {record.Values.Count}, not {samples:0}."));
        return new WelchSpectrum(record, Math.Min((int)Math.Round(samples), record.Values.Count));
    }

    /// <summary>The record.</summary>
    public SiteRecord Record { get; }

    /// <summary>Number of segments.</summary>
    public int SegmentCount => segments.Length;

    /// <summary>Step between frequencies: one over the length of a segment.</summary>
    public Frequency Resolution => Frequency.FromHertz(Record.SampleRate.Hertz / Length);

    /// <summary>Number of frequencies, from zero to half the sample rate.</summary>
    public int Count => density.Length;

    /// <summary>A frequency of the spectrum.</summary>
    /// <param name="index">From 0.</param>
    public Frequency FrequencyAt(int index) => index * Resolution;

    /// <summary>The densities, (unit of the record)²/Hz.</summary>
    public ReadOnlySpan<double> Density => density;

    internal int Length { get; }

    /// <summary>
    /// The highest peaks, highest first: greater than all within two resolutions to either side, and than the median density
    /// times a factor.
    /// </summary>
    /// <param name="most">How many at most, 1 or more.</param>
    /// <param name="overMedian">The factor; 5 unless it is given.</param>
    public IReadOnlyList<Frequency> Peaks(int most = 6, double overMedian = 5)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        double[] sorted = density[1..];
        Array.Sort(sorted);
        double floor = overMedian * sorted[sorted.Length / 2];
        double highest = Record.HighestFrequency.Hertz / Resolution.Hertz;
        var found = new List<int>();
        for (int i = 2; i + 2 < density.Length && i <= highest; i++)
        {
            double p = density[i];
            if (p > floor && p > density[i - 1] && p > density[i - 2] && p >= density[i + 1] && p >= density[i + 2])
                found.Add(i);
        }
        return [.. found.OrderByDescending(i => density[i]).ThenBy(i => i).Take(most).Select(i => Frequency.FromHertz(Refined(i)))];
    }

    /// <summary>The mean of all segments but those of one of several groups that follow each other in time.</summary>
    internal double[] Without(int group, int groups)
    {
        var mean = new double[density.Length];
        int kept = 0;
        for (int k = 0; k < segments.Length; k++)
        {
            if ((long)k * groups / segments.Length == group)
                continue;
            kept++;
            for (int i = 0; i < mean.Length; i++)
                mean[i] += segments[k][i];
        }
        for (int i = 0; i < mean.Length; i++)
            mean[i] /= Math.Max(1, kept);
        return mean;
    }

    /// <summary>The top of the parabola through the logarithms of three densities, Hz.</summary>
    private double Refined(int i)
    {
        double a = Math.Log(density[i - 1]), b = Math.Log(density[i]), c = Math.Log(density[i + 1]), curve = a - 2 * b + c;
        double shift = double.IsFinite(curve) && curve < 0 ? Math.Clamp(0.5 * (a - c) / curve, -0.5, 0.5) : 0;
        return (i + shift) * Resolution.Hertz;
    }
}
