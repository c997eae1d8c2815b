using System.Runtime.Intrinsics;
using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// The gusts at all parts of a statue as a random field: for every frequency of a grid the cross-spectra
/// S_ab = √(s_a s_b)·coh_ab of the gusts u/σ_u averaged over the parts a and b.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Each part stands for a few points; two points are coherent by
/// exp(−n √((C_y Δy)² + (C_z Δz)²) / V), V the mean of their parts' speeds. Means over points of such a kernel keep every
/// variance positive.
/// </remarks>
internal sealed class GustField
{
    private const int FewestHeights = 24, MostAlong = 3, TwistingPoints = 8;

    /// <summary>Length scale of gusts across the wind over that of those along it: with three quarters of their intensity small eddies are then as strong either way as in isotropic turbulence, 4/3, within 7 %.</summary>
    private const double AcrossScale = 0.25;

    private readonly double[] spectra;
    private readonly double[] decays;
    private readonly double[] factors;
    private readonly int[] starts;
    private readonly int across, along;

    /// <summary>Gusts at the parts in a wind.</summary>
    /// <param name="wind">The wind that the parts meet.</param>
    /// <param name="spectrum">The spectrum.</param>
    /// <param name="options">How they are described.</param>
    /// <param name="highestMode">The highest frequency that matters, Hz.</param>
    /// <param name="kind">Which of the gusts.</param>
    public GustField(StatueWind wind, GustSpectrum spectrum, GustOptions options, double highestMode, GustKind kind)
    {
        Count = wind.Parts.Length;
        across = kind == GustKind.Twisting ? Math.Max(TwistingPoints, options.PointsAcross) : options.PointsAcross;
        along = options.PointsAlong ?? Math.Clamp((FewestHeights + Count - 1) / Count, 1, MostAlong);
        Frequencies = Grid(wind.Parts, options.FrequencyCount, highestMode);
        spectra = new double[Frequencies.Length * Count];
        for (int part = 0; part < Count; part++)
            FillSpectrum(part, (kind == GustKind.Across ? AcrossScale : 1) * wind.Parts[part].Scale / wind.Parts[part].Speed, spectrum);
        starts = new int[Count * (Count + 1) / 2 + 1];
        (decays, factors) = PointPairs(wind, options, kind == GustKind.Twisting);
    }

    public int Count { get; }

    /// <summary>The frequencies n, Hz; the first is zero.</summary>
    public double[] Frequencies { get; }

    /// <summary>The cross-spectra at one frequency of the grid: N×N, symmetric, 1/Hz.</summary>
    public void CrossSpectra(int frequency, Span<double> S)
    {
        double n = Frequencies[frequency];
        ReadOnlySpan<double> s = spectra.AsSpan(frequency * Count, Count);
        int pair = 0;
        for (int a = 0; a < Count; a++)
        {
            for (int b = 0; b <= a; b++)
            {
                double value = Math.Sqrt(s[a] * s[b]) * MeanCoherence(pair++, n);
                S[a * Count + b] = value;
                S[b * Count + a] = value;
            }
        }
    }

    /// <summary>Spectrum S·V/(L·σ²) at f = n·L/V; over f it integrates to 1.</summary>
    public static double Density(GustSpectrum spectrum, double f) => spectrum switch
    {
        GustSpectrum.En1991 => 6.8 / Power53(1 + 10.2 * f),
        GustSpectrum.Kaimal => 2.0 / 3 * 10.3 / Power53(1 + 10.3 * f),
        _ => 4 / Math.Pow(1 + 70.8 * f * f, 5.0 / 6),
    };

    private static double Power53(double x)
    {
        double root = Math.Cbrt(x);
        return x * root * root;
    }

    /// <summary>Zero, then equal ratios: from where the spectrum is still level to where 0.2 % of the energy is left, beyond all modes.</summary>
    private static double[] Grid(StatueWind.Part[] parts, int count, double highestMode)
    {
        const double lowest = 1e-3, highest = 1e3, beyondModes = 4;
        double slow = 0, fast = double.MaxValue;
        foreach (StatueWind.Part part in parts)
        {
            slow = Math.Max(slow, part.Scale / part.Speed);
            fast = Math.Min(fast, part.Scale / part.Speed);
        }
        double from = lowest / slow, ratio = Math.Log(Math.Max(highest / fast, beyondModes * highestMode) / from);
        var grid = new double[count];
        for (int k = 1; k < count; k++)
            grid[k] = from * Math.Exp(ratio * (k - 1) / (count - 2));
        return grid;
    }

    /// <summary>The part's spectrum, scaled by what the grid misses so that its variance is exact.</summary>
    private void FillSpectrum(int part, double time, GustSpectrum spectrum)
    {
        double sum = 0;
        for (int k = 0; k < Frequencies.Length; k++)
        {
            double s = time * Density(spectrum, Frequencies[k] * time);
            spectra[k * Count + part] = s;
            if (k > 0)
                sum += 0.5 * (Frequencies[k] - Frequencies[k - 1]) * (s + spectra[(k - 1) * Count + part]);
        }
        for (int k = 0; k < Frequencies.Length; k++)
            spectra[k * Count + part] /= sum;
    }

    /// <summary>
    /// For every pair of parts, the decay d of each pair of points, whose gusts are coherent by exp(−n·d), and its weight.
    /// Equal ones are counted together; each list is filled up with weight zero to whole vectors.
    /// </summary>
    private (double[] Decays, double[] Factors) PointPairs(StatueWind wind, GustOptions options, bool twisting)
    {
        const double same = 1e-9;
        int points = across * along, pair = 0;
        double[] levers = [.. Enumerable.Range(0, points).Select(i => twisting ? Beside(i) * LeverFactor() : 1)];
        List<double> all = [], weights = [];
        for (int a = 0; a < Count; a++)
        {
            for (int b = 0; b <= a; b++)
            {
                double speed = 0.5 * (wind.Parts[a].Speed + wind.Parts[b].Speed);
                for (int i = 0; i < points * points; i++)
                {
                    Vector3D apart = Point(wind.Parts[a], i / points) - Point(wind.Parts[b], i % points);
                    double decay = double.Hypot(options.DecayAcross * apart.Dot(wind.Across), options.DecayVertical * apart.Z) / speed;
                    int known = starts[pair];
                    while (known < all.Count && Math.Abs(all[known] - decay) > same * decay)
                        known++;
                    if (known == all.Count)
                    {
                        all.Add(decay);
                        weights.Add(0);
                    }
                    weights[known] += levers[i / points] * levers[i % points] / (points * points);
                }
                for (; all.Count % Vector256<double>.Count != 0; weights.Add(0))
                    all.Add(0);
                starts[++pair] = all.Count;
            }
        }
        return ([.. all], [.. weights]);
    }

    /// <summary>
    /// Points across are spaced so that their mean distance is that of all pairs of points of the width, a third of it;
    /// along, evenly, so that those of neighboring bands make one row.
    /// </summary>
    private Vector3D Point(StatueWind.Part part, int number)
    {
        double beside = Beside(number);
        double above = (number / across + 0.5) / along - 0.5;
        return part.At + beside * part.SpanAcross + above * part.SpanAlong;
    }

    /// <summary>Where a point is across its band, as a part of the width.</summary>
    private double Beside(int number) => across == 1 ? 0 : (number % across - 0.5 * (across - 1)) * across / (across * across - 1.0);

    /// <summary>
    /// By which the levers of a few points are too long for what twists: with it gusts that are large against the width, whose coherence
    /// falls straight, twist as they do over a whole width, Σ y y'|y − y'| = −1/60.
    /// </summary>
    private double LeverFactor()
    {
        double sum = 0;
        for (int i = 0; i < across; i++)
        {
            for (int j = 0; j < across; j++)
                sum -= Beside(i) * Beside(j) * Math.Abs(Beside(i) - Beside(j)) / (across * across);
        }
        return sum > 0 ? Math.Sqrt(1 / (60 * sum)) : 0;
    }

    private double MeanCoherence(int pair, double n)
    {
        Vector256<double> sum = default;
        for (int i = starts[pair]; i < starts[pair + 1]; i += Vector256<double>.Count)
            sum += Vector256.Create<double>(factors.AsSpan(i)) * Vector256.Exp(-n * Vector256.Create<double>(decays.AsSpan(i)));
        return Vector256.Sum(sum);
    }
}
