using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;
using static System.FormattableString;
using Complex = System.Numerics.Complex;

namespace StatueFrame.Studies;

/// <summary>
/// Frequency and damping from the half-power band of a peak in the spectrum of a record that wide-band forces stir: the band
/// of an oscillator is 2ζf wide where its power is half of the peak's.
/// </summary>
/// <remarks>
/// <para>
/// The band is that of the oscillator that fits the peak best: 1/S is a parabola in f², times a straight line for the slope of
/// the forces, and is fitted with weights that noise does not bias. What the window adds to the width is taken off. Standard errors are by jackknife over
/// the segments, and not below one and a half times what theory allows for a record of that length.
/// </para>
/// <para>Stateless; safe to use from many threads. Source of the theoretical error: Au 2014, from memory; see the theory page "site-records".</para>
/// </remarks>
public static class HalfPowerBand
{
    private const int FewestCycles = 100, Groups = 8, FewestPoints = 7, Corrections = 12, Unknowns = 4;
    private const double Range = 6, BandInSteps = 4, FewestInSegment = 12;

    /// <summary>Errors of the method over the least ones of theory, as found in trials.</summary>
    private const double Usual = 1.5;

    /// <summary>Frequency and damping of the mode of a peak.</summary>
    /// <param name="record">A record of accelerations in ambient vibration.</param>
    /// <param name="near">The peak's frequency; null takes the highest peak.</param>
    /// <param name="segment">
    /// Length of the spectrum's segments; null makes the band four resolutions wide, as a compromise between what the window
    /// adds and the number of segments.
    /// </param>
    /// <exception cref="InvalidStatueException">The record has problems; all of them are listed.</exception>
    /// <exception cref="SiteRecordException">The record is too short or sampled too slowly, or there is no resonance there.</exception>
    public static MeasuredMode Of(SiteRecord record, Frequency? near = null, Duration? segment = null)
    {
        WelchSpectrum spectrum = WelchSpectrum.Of(record, segment);
        double wanted = near?.Hertz ?? (spectrum.Peaks(1) is [Frequency first, ..] ? first.Hertz : throw new SiteRecordException($"\"{record.Name}\" has no clear peak in its spectrum."));
        record.RequireCycles(wanted, FewestCycles, "a spectrum in ambient vibration");
        (int from, int to) = Band(spectrum, wanted);
        (double f, double zeta) = Fit(spectrum, spectrum.Density, from, to);
        double better = BandInSteps / (2 * zeta * f);
        if (segment is null && better < 1 / spectrum.Resolution.Hertz && better * f > FewestInSegment)
        {
            spectrum = WelchSpectrum.Of(record, Duration.FromSeconds(better));
            (from, to) = Band(spectrum, f);
            (f, zeta) = Fit(spectrum, spectrum.Density, from, to);
        }
        int groups = Math.Min(Groups, spectrum.SegmentCount);
        double sumF = 0, sumZ = 0, squareF = 0, squareZ = 0;
        for (int g = 0; g < groups; g++)
        {
            (double fg, double zg) = groups > 2 ? Fit(spectrum, spectrum.Without(g, groups), from, to) : (f, zeta);
            (sumF, sumZ, squareF, squareZ) = (sumF + fg, sumZ + zg, squareF + fg * fg, squareZ + zg * zg);
        }
        double spread = (groups - 1.0) / groups;
        double jackF = Math.Sqrt(Math.Max(0, spread * (squareF - sumF * sumF / groups))), jackZ = Math.Sqrt(Math.Max(0, spread * (squareZ - sumZ * sumZ / groups)));
        (double leastF, double leastZ) = LeastErrors(f, zeta, record.Duration.Seconds);
        return new MeasuredMode
        {
            Method = "half-power band",
            Frequency = Frequency.FromHertz(f),
            FrequencyError = Frequency.FromHertz(Math.Max(jackF, Usual * leastF)),
            DampingRatio = zeta,
            DampingError = Math.Max(jackZ, Usual * leastZ),
            Warnings = Warn(spectrum, f, zeta, groups).ToValueList(),
        };
    }

    /// <summary>The least standard errors for a wide band of noise: f·√(ζ/2πN) and ζ/√(2πζN) with the number N of cycles.</summary>
    internal static (double Frequency, double Damping) LeastErrors(double f, double zeta, double duration)
    {
        double cycles = f * duration;
        return (f * Math.Sqrt(zeta / (2 * Math.PI * cycles)), Math.Sqrt(zeta / (2 * Math.PI * cycles)));
    }

    private static IEnumerable<string> Warn(WelchSpectrum spectrum, double f, double zeta, int groups)
    {
        double width = 2 * zeta * f, step = spectrum.Resolution.Hertz;
        if (width < 0.75 * BandInSteps * step)
            yield return Invariant($"The band of {width:0.0000} Hz is narrow for a resolution of {step:0.0000} Hz: the correction for the window is large. Use longer segments and a longer record.");
        if (groups <= 4)
            yield return "There are few segments to tell the errors from.";
    }

    /// <summary>The bins around a peak whose density is at least a sixth of the peak's.</summary>
    private static (int From, int To) Band(WelchSpectrum spectrum, double near)
    {
        double step = spectrum.Resolution.Hertz;
        int middle = (int)Math.Round(near / step), reach = Math.Max(2, (int)Math.Round(0.05 * near / step));
        int top = Math.Clamp(middle, 1, spectrum.Count - 2);
        for (int i = Math.Max(1, middle - reach); i <= Math.Min(spectrum.Count - 2, middle + reach); i++)
        {
            if (spectrum.Density[i] > spectrum.Density[top])
                top = i;
        }
        int from = top, to = top;
        while (from > 1 && spectrum.Density[from - 1] * Range > spectrum.Density[top])
            from--;
        while (to < spectrum.Count - 2 && spectrum.Density[to + 1] * Range > spectrum.Density[top])
            to++;
        while (to - from + 1 < FewestPoints && from > 1 && to < spectrum.Count - 2)
            (from, to) = (from - 1, to + 1);
        return (from, to);
    }

    /// <summary>The oscillator that a window of the spectrum's length makes look like the fitted one.</summary>
    private static (double Frequency, double Damping) Fit(WelchSpectrum spectrum, ReadOnlySpan<double> density, int from, int to)
    {
        (double seenF, double seenZeta) = FitSeen(spectrum, density, from, to);
        (double f, double zeta) = (seenF, seenZeta);
        var seen = new double[to + 1];
        for (int i = 0; i < Corrections; i++)
        {
            Smear(seen.AsSpan(from), from, spectrum.Resolution.Hertz, f, zeta);
            (double againF, double againZeta) = FitSeen(spectrum, seen, from, to);
            f += seenF - againF;
            zeta = Math.Max(zeta * Math.Clamp(seenZeta / againZeta, 0.5, 2), 0.02 * seenZeta);
        }
        return (f, zeta);
    }

    /// <summary>The density of an oscillator as a Hann window of the length 1/step shows it, bin by bin.</summary>
    private static void Smear(Span<double> seen, int from, double step, double f, double zeta)
    {
        const int parts = 8, reach = 6 * parts;
        for (int i = 0; i < seen.Length; i++)
        {
            double sum = 0;
            for (int j = -reach; j <= reach; j++)
            {
                double x = (double)j / parts, at = (from + i + x) * step / f;
                // The transform of a Hann window, over its value at zero: sin(πx)/(πx(1 − x²)).
                double window = Math.Abs(x) < 1e-9 ? 1 : Math.Abs(Math.Abs(x) - 1) < 1e-9 ? 0.5 : Math.Sin(Math.PI * x) / (Math.PI * x * (1 - x * x));
                double square = at * at, off = 1 - square;
                sum += window * window / (off * off + 4 * zeta * zeta * square);
            }
            seen[i] = sum;
        }
    }

    /// <summary>
    /// Fits 1 = S·(q₀ + q₁d + q₂d² + q₃d³) with d = (f/f_m)² − 1. The cubic is the oscillator's parabola times a straight
    /// line for the slope of the forces; the pair of complex roots is the oscillator's.
    /// </summary>
    private static (double Frequency, double Damping) FitSeen(WelchSpectrum spectrum, ReadOnlySpan<double> density, int from, int to)
    {
        double step = spectrum.Resolution.Hertz, middle = 0.5 * (from + to) * step, scale = 0;
        for (int i = from; i <= to; i++)
            scale = Math.Max(scale, density[i]);
        Matrix<double> normal = Matrix<double>.Build.Dense(Unknowns, Unknowns);
        Vector<double> right = Vector<double>.Build.Dense(Unknowns);
        Span<double> row = stackalloc double[Unknowns];
        double wide = Math.Pow((to + 1) * step / middle, 2) - 1;
        for (int i = from; i <= to; i++)
        {
            double d = (Math.Pow(i * step / middle, 2) - 1) / wide;
            row[0] = density[i] / scale;
            for (int r = 1; r < Unknowns; r++)
                row[r] = row[r - 1] * d;
            for (int r = 0; r < Unknowns; r++)
            {
                right[r] += row[r];
                for (int c = 0; c < Unknowns; c++)
                    normal[r, c] += row[r] * row[c];
            }
        }
        Vector<double> q = Scaled(normal, right);
        (Complex a, Complex b, Complex c3) = FindRoots.Cubic(q[0], q[1], q[2], q[3]);
        Complex pole = new[] { a, b, c3 }.MaxBy(root => root.Imaginary);
        double x0 = 1 + wide * pole.Real, w = wide * pole.Imaginary;
        if (!(x0 > 0 && w > 1e-9 * x0 && Math.Abs(pole.Real) < 1.5))
            throw new SiteRecordException(Invariant($"\"{spectrum.Record.Name}\" has no resonance near {middle:0.###} Hz that an oscillator would fit."));
        double natural = Math.Sqrt(x0 * x0 + w * w);
        // ½(1 − x₀/n) without loss of digits.
        return (middle * Math.Sqrt(natural), w / Math.Sqrt(2 * natural * (natural + x0)));
    }

    private static Vector<double> Scaled(Matrix<double> normal, Vector<double> right)
    {
        double[] size = [.. Enumerable.Range(0, Unknowns).Select(i => 1 / Math.Sqrt(normal[i, i]))];
        for (int r = 0; r < Unknowns; r++)
        {
            right[r] *= size[r];
            for (int c = 0; c < Unknowns; c++)
                normal[r, c] *= size[r] * size[c];
        }
        Vector<double> q = normal.Solve(right);
        for (int r = 0; r < Unknowns; r++)
            q[r] *= size[r];
        return q;
    }
}
