using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>
/// Frequency and damping from ambient vibration by random decrement: the mean of all pieces of the record that start where
/// the swing, filtered around its frequency, rises through a level. What the forces do averages out, and a free decay is
/// left.
/// </summary>
/// <remarks>
/// <para>
/// The level is √2 standard deviations. Standard errors are by jackknife over eight parts of the record, and not below what
/// theory allows for a record of that length.
/// </para>
/// <para>Stateless; safe to use from many threads. Source: Cole 1968, from memory; see the theory page "site-records".</para>
/// </remarks>
public static class RandomDecrement
{
    private const int FewestCycles = 200, Parts = 8, Cycles = 2, FewestTriggers = 40;
    private const double HalfBand = 0.3, NearestOther = 0.08;

    /// <summary>Frequency and damping of a mode.</summary>
    /// <param name="record">A record of ambient vibration.</param>
    /// <param name="near">About the frequency; null takes the highest peak of the spectrum.</param>
    /// <param name="cycles">Length of the pieces in cycles, 8 to 200; null takes 20.</param>
    /// <exception cref="InvalidStatueException">The record has problems; all of them are listed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of cycles is out of range.</exception>
    /// <exception cref="SiteRecordException">The record is too short or sampled too slowly, or nothing in it decays.</exception>
    public static MeasuredMode Of(SiteRecord record, Frequency? near = null, int? cycles = null)
    {
        ArgumentNullException.ThrowIfNull(record);
        record.Require();
        int length = cycles ?? 20;
        if (length is < 8 or > 200)
            throw new ArgumentOutOfRangeException(nameof(cycles), $"Must be from 8 to 200, is {length}.");
        double f = near?.Hertz ?? (WelchSpectrum.Of(record).Peaks(1) is [Frequency first, ..] ? first.Hertz : throw new SiteRecordException($"\"{record.Name}\" has no clear peak in its spectrum."));
        record.RequireCycles(f, Math.Max(FewestCycles, 4 * length), "random decrement");
        double fs = record.SampleRate.Hertz;
        double[] filtered = BandPass(record, f, HalfBandFor(record, f));
        int samples = (int)Math.Round(length * fs / f);
        (double[][] sums, int[] counts) = Pieces(filtered, samples);
        if (counts.Sum() < FewestTriggers)
            throw new SiteRecordException(Invariant($"\"{record.Name}\" rises through the level {counts.Sum()} times only; at least {FewestTriggers} are needed."));
        (double omega, double zeta) = Fit(record, sums, counts, -1, fs, f) ?? throw new SiteRecordException(Invariant($"\"{record.Name}\" leaves no decay near {f:0.###} Hz."));
        var others = new List<(double Omega, double Zeta)>();
        for (int part = 0; part < Parts; part++)
        {
            if (Fit(record, sums, counts, part, fs, f) is { } other)
                others.Add(other);
        }
        int n = others.Count;
        double meanW = others.Average(o => o.Omega), meanZ = others.Average(o => o.Zeta), spread = (n - 1.0) / n;
        double jackF = Math.Sqrt(spread * others.Sum(o => (o.Omega - meanW) * (o.Omega - meanW))) / (2 * Math.PI);
        double jackZ = Math.Sqrt(spread * others.Sum(o => (o.Zeta - meanZ) * (o.Zeta - meanZ)));
        (double leastF, double leastZ) = HalfPowerBand.LeastErrors(f, Math.Max(zeta, 0), record.Duration.Seconds);
        return new MeasuredMode
        {
            Method = "random decrement",
            Frequency = Frequency.FromHertz(omega / (2 * Math.PI)),
            FrequencyError = Frequency.FromHertz(Math.Max(jackF, leastF)),
            DampingRatio = Math.Max(0, zeta),
            DampingError = Math.Max(jackZ, leastZ),
            Warnings = n < Parts ? ["Parts of the record leave no decay: the errors may be greater."] : [],
        };
    }

    private static (double Omega, double Zeta)? Fit(SiteRecord record, double[][] sums, int[] counts, int without, double fs, double f)
    {
        int skip = (int)Math.Round(fs / f);
        var mean = new double[sums[0].Length - skip];
        int count = 0;
        for (int part = 0; part < sums.Length; part++)
        {
            if (part == without)
                continue;
            count += counts[part];
            for (int i = 0; i < mean.Length; i++)
                mean[i] += sums[part][skip + i];
        }
        if (count == 0)
            return null;
        DecayFit.Result? fit = DecayFit.Of(mean, fs, f, Cycles);
        if (fit is not { } found)
            return null;
        double omega = Math.Sqrt(found.Omega * found.Omega + found.Rate * found.Rate);
        return (omega, found.Rate / omega);
    }

    /// <summary>Sums of the pieces by part of the record, and how many they are.</summary>
    private static (double[][] Sums, int[] Counts) Pieces(double[] values, int samples)
    {
        double variance = 0;
        foreach (double value in values)
            variance += value * value / values.Length;
        double level = Math.Sqrt(2 * variance);
        double[][] sums = [.. Enumerable.Range(0, Parts).Select(_ => new double[samples])];
        var counts = new int[Parts];
        for (int i = 1; i + samples <= values.Length; i++)
        {
            if (!(values[i - 1] < level && values[i] >= level))
                continue;
            int part = (int)((long)i * Parts / values.Length);
            counts[part]++;
            for (int k = 0; k < samples; k++)
                sums[part][k] += values[i + k];
        }
        return (sums, counts);
    }

    /// <summary>The part of the frequency that is kept to either side: 0.3, or so little that no other peak lies in it.</summary>
    private static double HalfBandFor(SiteRecord record, double f)
    {
        double half = HalfBand;
        foreach (Frequency peak in WelchSpectrum.Of(record).Peaks())
        {
            double off = Math.Abs(peak.Hertz / f - 1);
            if (off > NearestOther)
                half = Math.Min(half, 0.8 * off);
        }
        return half;
    }

    /// <summary>Keeps a band to either side of the frequency; its edges are half cosine waves.</summary>
    private static double[] BandPass(SiteRecord record, double f, double halfBand)
    {
        int n = record.Values.Count;
        double mean = record.Values.Average(), step = record.SampleRate.Hertz / n;
        var values = new Complex[n];
        for (int i = 0; i < n; i++)
            values[i] = record.Values[i] - mean;
        Fourier.Forward(values, FourierOptions.NoScaling);
        for (int i = 0; i < n; i++)
        {
            double at = Math.Min(i, n - i) * step, off = Math.Abs(at / f - 1);
            values[i] *= off <= 0.5 * halfBand ? 1 : off >= halfBand ? 0 : 0.5 * (1 + Math.Cos(2 * Math.PI * (off / halfBand - 0.5)));
        }
        Fourier.Inverse(values, FourierOptions.AsymmetricScaling);
        return Array.ConvertAll(values, v => v.Real);
    }
}
