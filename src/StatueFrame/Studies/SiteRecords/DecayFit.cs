using System.Numerics;

namespace StatueFrame.Studies;

/// <summary>
/// A decaying swing among noise and other modes: the signal is turned back by a frequency and averaged under a Hann window
/// over blocks of whole cycles that follow each other. The averages of a pure decay fall by one complex factor a block; its
/// size is the decay, its angle what the frequency was off. SI units.
/// </summary>
internal static class DecayFit
{
    private const int FewestBlocks = 4, Rounds = 6;
    private const double AboveNoise = 3;

    /// <summary>Decay rate ζω and damped circular frequency, with their standard errors; null when the signal decays too fast or not at all.</summary>
    internal readonly record struct Result(double Rate, double RateError, double Omega, double OmegaError, int Blocks);

    /// <summary>Fits a decay.</summary>
    /// <param name="values">The signal.</param>
    /// <param name="rate">Samples a second.</param>
    /// <param name="f">About the frequency, Hz.</param>
    /// <param name="cycles">Cycles in a block, 2 or more.</param>
    public static Result? Of(ReadOnlySpan<double> values, double rate, double f, int cycles)
    {
        double omega = 2 * Math.PI * f, decay = 0, noise = 0;
        Result? found = null;
        Complex amplitude = 0;
        for (int round = 0; round < Rounds; round++)
        {
            int length = (int)Math.Round(cycles * 2 * Math.PI / omega * rate);
            int count = length > 0 ? values.Length / length : 0;
            if (count < FewestBlocks)
                return null;
            if (round == 0)
                noise = Noise(values, rate, omega, length, count, cycles);
            Complex[] blocks = Blocks(values, rate, omega, length, count);
            if (round > 0)
                RemoveImage(blocks, rate, omega, length, decay, amplitude);
            (int first, int last) = Useful(blocks, noise);
            if (last - first + 1 < FewestBlocks)
                return found;
            (double slope, double slopeError, double turn, double turnError, Complex start) = Line(blocks, first, last);
            double T = length / rate;
            decay = -slope / T;
            double damped = omega + turn / T;
            if (!(damped > 0 && double.IsFinite(decay)))
                return null;
            found = new Result(decay, slopeError / T, damped, turnError / T, last - first + 1);
            amplitude = start;
            if (Math.Abs(damped - omega) > 1e-9 * omega)
                omega = damped;
        }
        return found;
    }

    private static Complex[] Blocks(ReadOnlySpan<double> values, double rate, double omega, int length, int count)
    {
        var blocks = new Complex[count];
        for (int k = 0; k < count; k++)
        {
            Complex sum = 0;
            for (int i = 0; i < length; i++)
            {
                int at = k * length + i;
                sum += Window(i, length) * values[at] * Complex.FromPolarCoordinates(1, -omega * at / rate);
            }
            blocks[k] = sum / length;
        }
        return blocks;
    }

    private static double Window(int i, int length)
    {
        double s = Math.Sin(Math.PI * (i + 0.5) / length);
        return 2 * s * s;
    }

    /// <summary>
    /// Takes off what the swing's mirror at −ω leaves in the blocks: with y = Re(A e^(−dt) e^(iωt)), a block holds
    /// ½A·W(−d) and ½Ā·W(−d − 2iω), W the window's transform.
    /// </summary>
    private static void RemoveImage(Complex[] blocks, double rate, double omega, int length, double decay, Complex start)
    {
        Complex own = Transform(rate, length, -decay), image = Transform(rate, length, new Complex(-decay, -2 * omega));
        Complex ratio = image / Complex.Conjugate(own);
        double T = length / rate;
        for (int k = 0; k < blocks.Length; k++)
            blocks[k] -= Complex.Conjugate(start) * ratio * Complex.Exp(new Complex(-decay, -2 * omega) * (k * T));
    }

    private static Complex Transform(double rate, int length, Complex exponent)
    {
        Complex sum = 0;
        for (int i = 0; i < length; i++)
            sum += Window(i, length) * Complex.Exp(exponent * (i / rate));
        return sum / length;
    }

    /// <summary>From the largest block to the last before one sinks into the noise, or grows again.</summary>
    private static (int First, int Last) Useful(Complex[] blocks, double noise)
    {
        double[] sizes = [.. blocks.Select(b => b.Magnitude)];
        int first = Array.IndexOf(sizes, sizes.Max()), end = first;
        for (int k = first + 1; k < sizes.Length; k++)
        {
            if (sizes[k] < AboveNoise * noise || sizes[k] > 1.5 * sizes[k - 1] || sizes[k] == 0)
                break;
            end = k;
        }
        return (first, end);
    }

    /// <summary>The usual size of blocks of noise, looked for beyond the frequency where the later blocks hold least.</summary>
    private static double Noise(ReadOnlySpan<double> values, double rate, double omega, int length, int count, int cycles)
    {
        double least = double.PositiveInfinity;
        for (int bins = 4; bins <= 8; bins++)
        {
            double beside = omega * (1 + (double)bins / cycles);
            if (beside > 0.9 * Math.PI * rate)
                break;
            double[] sizes = [.. Blocks(values, rate, beside, length, count).Skip(count / 2).Select(b => b.Magnitude).Order()];
            least = Math.Min(least, sizes[sizes.Length / 2]);
        }
        return double.IsFinite(least) ? least : 0;
    }

    /// <summary>Straight lines through the logarithms of size and the angles, weighted by the squares of the sizes.</summary>
    private static (double Slope, double SlopeError, double Turn, double TurnError, Complex Start) Line(Complex[] blocks, int first, int last)
    {
        int n = last - first + 1;
        double[] log = new double[n], angle = new double[n], weight = new double[n];
        for (int i = 0; i < n; i++)
        {
            Complex b = blocks[first + i];
            log[i] = Math.Log(b.Magnitude);
            angle[i] = i == 0 ? b.Phase : angle[i - 1] + (b / blocks[first + i - 1]).Phase;
            weight[i] = Math.Exp(2 * (log[i] - log[0]));
        }
        (double slope, double at) = Weighted(log, weight);
        for (int i = 0; i < n; i++)
            weight[i] = Math.Exp(2 * slope * i);
        (slope, at) = Weighted(log, weight);
        (double turn, double phase) = Weighted(angle, weight);
        double squares = 0, sum = 0, mean = 0, spread = 0;
        for (int i = 0; i < n; i++)
        {
            double r = log[i] - at - slope * i, p = angle[i] - phase - turn * i;
            squares += weight[i] * (r * r + p * p);
            (sum, mean) = (sum + weight[i], mean + weight[i] * i);
        }
        mean /= sum;
        for (int i = 0; i < n; i++)
            spread += weight[i] * (i - mean) * (i - mean);
        double error = Math.Sqrt(squares / (2 * n - 4) / spread);
        return (slope, error, turn, error, Complex.FromPolarCoordinates(Math.Exp(at - slope * first), phase - turn * first));
    }

    private static (double Slope, double At) Weighted(double[] y, double[] weight)
    {
        double w = 0, x = 0, f = 0;
        for (int i = 0; i < y.Length; i++)
            (w, x, f) = (w + weight[i], x + weight[i] * i, f + weight[i] * y[i]);
        (x, f) = (x / w, f / w);
        double xx = 0, xy = 0;
        for (int i = 0; i < y.Length; i++)
            (xx, xy) = (xx + weight[i] * (i - x) * (i - x), xy + weight[i] * (i - x) * (y[i] - f));
        return (xy / xx, f - xy / xx * x);
    }
}
