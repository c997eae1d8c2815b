using MathNet.Numerics.LinearAlgebra;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>
/// Frequency and damping from the half-power band of a peak in the spectrum of a record that wide-band forces stir: the band
/// of an oscillator is 2ζf wide where its power is half of the peak's.
/// </summary>
/// <remarks>
/// <para>
/// The band is that of the oscillator that fits the peak best: for accelerations f⁴/S is a parabola in f², which is fitted
/// with weights that noise does not bias. The width that the window adds is taken off. Standard errors are by jackknife over
/// the segments, and not below what theory allows for a record of that length.
/// </para>
/// <para>Stateless; safe to use from many threads. Source of the theoretical error: Au 2014, from memory; see the theory page "site-records".</para>
/// </remarks>
public static class HalfPowerBand
{
    private const int FewestCycles = 100, Groups = 8, FewestPoints = 5;
    private const double Range = 6;

    /// <summary>Frequency and damping of the mode of a peak.</summary>
    /// <param name="record">A record of accelerations in ambient vibration.</param>
    /// <param name="near">The peak's frequency; null takes the highest peak.</param>
    /// <param name="segment">Length of the spectrum's segments; null takes a ninth of the record.</param>
    /// <exception cref="InvalidStatueException">The record has problems; all of them are listed.</exception>
    /// <exception cref="SiteRecordException">The record is too short or sampled too slowly, or there is no resonance there.</exception>
    public static MeasuredMode Of(SiteRecord record, Frequency? near = null, Duration? segment = null)
    {
        WelchSpectrum spectrum = WelchSpectrum.Of(record, segment);
        double wanted = near?.Hertz ?? (spectrum.Peaks(1) is [Frequency first, ..] ? first.Hertz : throw new SiteRecordException($"\"{record.Name}\" has no clear peak in its spectrum."));
        record.RequireCycles(wanted, FewestCycles, "a spectrum in ambient vibration");
        (int from, int to) = Band(spectrum, wanted);
        (double f, double zeta) = Fit(spectrum, spectrum.Density, from, to);
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
            FrequencyError = Frequency.FromHertz(Math.Max(jackF, leastF)),
            DampingRatio = zeta,
            DampingError = Math.Max(jackZ, leastZ),
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
        if (width < 4 * step)
            yield return Invariant($"The band of {width:0.0000} Hz is narrow for a resolution of {step:0.0000} Hz: damping may be too high. Use longer segments and a longer record.");
        if (groups <= 4)
            yield return "There are few segments to tell the errors from.";
    }

    /// <summary>The bins around a peak whose density, over f⁴, is at least a sixth of the peak's.</summary>
    private static (int From, int To) Band(WelchSpectrum spectrum, double near)
    {
        double step = spectrum.Resolution.Hertz;
        int middle = (int)Math.Round(near / step), reach = Math.Max(2, (int)Math.Round(0.05 * near / step));
        int top = Math.Clamp(middle, 1, spectrum.Count - 2);
        for (int i = Math.Max(1, middle - reach); i <= Math.Min(spectrum.Count - 2, middle + reach); i++)
        {
            if (Flexibility(i) > Flexibility(top))
                top = i;
        }
        int from = top, to = top;
        while (from > 1 && Flexibility(from - 1) * Range > Flexibility(top))
            from--;
        while (to < spectrum.Count - 2 && Flexibility(to + 1) * Range > Flexibility(top))
            to++;
        while (to - from + 1 < FewestPoints && from > 1 && to < spectrum.Count - 2)
            (from, to) = (from - 1, to + 1);
        return (from, to);

        double Flexibility(int i) => spectrum.Density[i] / Math.Pow(i * step / near, 4);
    }

    /// <summary>Fits 1 = S·(a x² + b x + c)/x² with x = (f/f_m)², so that f₀² = √(c/a) and 2ζ² = 1 + b/(2√(ac)).</summary>
    private static (double Frequency, double Damping) Fit(WelchSpectrum spectrum, ReadOnlySpan<double> density, int from, int to)
    {
        double step = spectrum.Resolution.Hertz, middle = 0.5 * (from + to) * step, scale = 0;
        for (int i = from; i <= to; i++)
            scale = Math.Max(scale, density[i]);
        Matrix<double> normal = Matrix<double>.Build.Dense(3, 3);
        Vector<double> right = Vector<double>.Build.Dense(3);
        Span<double> row = stackalloc double[3];
        for (int i = from; i <= to; i++)
        {
            double x = Math.Pow(i * step / middle, 2), s = density[i] / scale, d = x - 1;
            // In powers of x − 1 the sums keep their digits.
            (row[0], row[1], row[2]) = (s / (x * x), s * d / (x * x), s * d * d / (x * x));
            for (int r = 0; r < 3; r++)
            {
                right[r] += row[r];
                for (int c = 0; c < 3; c++)
                    normal[r, c] += row[r] * row[c];
            }
        }
        Vector<double> q = Scaled(normal, right);
        // q₀ + q₁(x − 1) + q₂(x − 1)² = q₂((x − x₀)² + w²): lowest at x₀, w² there.
        double a = q[2], x0 = 1 - q[1] / (2 * q[2]), w2 = q[0] / a - (x0 - 1) * (x0 - 1);
        if (!(a > 0 && x0 > 0 && w2 > 0))
            throw new SiteRecordException(Invariant($"\"{spectrum.Record.Name}\" has no resonance near {middle:0.###} Hz that an oscillator would fit."));
        // (x − x₀)² + w² = x² − 2x₀x + x₀² + w²: the square of the natural frequency is √(x₀² + w²).
        double natural = Math.Sqrt(x0 * x0 + w2), zeta2 = 0.5 * (1 - x0 / natural);
        double f = middle * Math.Sqrt(natural), band = 2 * Math.Sqrt(zeta2) * f;
        return (f, 0.5 * Narrowed(band, WelchSpectrum.HannWidth * step) / f);
    }

    private static Vector<double> Scaled(Matrix<double> normal, Vector<double> right)
    {
        double[] size = [.. Enumerable.Range(0, 3).Select(i => 1 / Math.Sqrt(normal[i, i]))];
        for (int r = 0; r < 3; r++)
        {
            right[r] *= size[r];
            for (int c = 0; c < 3; c++)
                normal[r, c] *= size[r] * size[c];
        }
        Vector<double> q = normal.Solve(right);
        for (int r = 0; r < 3; r++)
            q[r] *= size[r];
        return q;
    }

    /// <summary>
    /// The width of a resonance that a window of the width G has made w wide: w = 0.5346 L + √(0.2166 L² + G²), solved for L
    /// (Olivero and Longbothum 1977, from memory); at least a tenth of w.
    /// </summary>
    private static double Narrowed(double w, double G)
    {
        double a = 0.5346 * 0.5346 - 0.2166, b = 2 * 0.5346 * w, c = w * w - G * G;
        double L = (b - Math.Sqrt(Math.Max(0, b * b - 4 * a * c))) / (2 * a);
        return Math.Max(0.1 * w, L);
    }
}
