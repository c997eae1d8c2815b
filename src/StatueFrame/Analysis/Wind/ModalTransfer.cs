using System.Numerics;

namespace StatueFrame.Analysis;

/// <summary>
/// Weights by which ∫ g(n) H_i(n) H̄_j(n) dn and ∫ g(n) H_i(n) dn become sums over a grid of frequencies: exact for a g
/// that runs straight between them, however sharp the resonances of H = 1/(ω_i² − ω² + 2iξ_iω_iω) are.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. H_i = −1/((ω − p)(ω + p̄)) with the pole p = ω_i(√(1 − ξ²) + iξ); by partial
/// fractions the integral over an interval is Σ R·(weight at the pole)·ln((ω₂ − z)/(ω₁ − z)) over the poles z.
/// </remarks>
internal sealed class ModalTransfer
{
    /// <summary>So far above both resonances the product is smooth, and the logarithms would cancel.</summary>
    private const double Beyond = 20;

    private readonly Complex[] single, pairs, residues;
    private readonly double[] omega, xi;
    private readonly int count;

    public ModalTransfer(double[] frequencies, double[] omega, double[] xi)
    {
        (this.omega, this.xi, count) = (omega, xi, omega.Length);
        single = new Complex[frequencies.Length * count];
        pairs = new Complex[frequencies.Length * count * count];
        var poles = new Complex[2 * count];
        for (int i = 0; i < count; i++)
        {
            poles[2 * i] = omega[i] * new Complex(Math.Sqrt(1 - xi[i] * xi[i]), xi[i]);
            poles[2 * i + 1] = -Complex.Conjugate(poles[2 * i]);
        }
        residues = new Complex[4 * count * count];
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j <= i; j++)
                AddResidues(i, j, [poles[2 * i], poles[2 * i + 1], Complex.Conjugate(poles[2 * j]), Complex.Conjugate(poles[2 * j + 1])]);
        }
        var logs = new Complex[2 * count];
        for (int k = 1; k < frequencies.Length; k++)
        {
            double from = 2 * Math.PI * frequencies[k - 1], to = 2 * Math.PI * frequencies[k];
            for (int i = 0; i < poles.Length; i++)
                logs[i] = Complex.Log((to - poles[i]) / (from - poles[i]));
            for (int i = 0; i < count; i++)
                AddInterval(k, i, from, to, poles, logs);
        }
    }

    /// <summary>Number of modes.</summary>
    public int Count => count;

    /// <summary>(ω² − 2iξ_iω_iω)/ω_i², by which a mode's amplitude exceeds the quasi-static one, as a part of it.</summary>
    public Complex Excess(double w, int i) => new Complex(w * w, -2 * xi[i] * omega[i] * w) / (omega[i] * omega[i]);

    /// <summary>The weight of g at a frequency in ∫ g H_i dn.</summary>
    public Complex Single(int frequency, int i) => single[frequency * count + i];

    /// <summary>The weight of g at a frequency in ∫ g H_i H̄_j dn; j ≤ i.</summary>
    public Complex Pair(int frequency, int i, int j) => pairs[(frequency * count + i) * count + j];

    /// <summary>H_i at a circular frequency.</summary>
    public Complex At(double w, int i) => 1 / new Complex(omega[i] * omega[i] - w * w, 2 * xi[i] * omega[i] * w);

    private void AddInterval(int k, int i, double from, double to, Complex[] poles, Complex[] logs)
    {
        double step = to - from;
        Complex left, right;
        if (from > Beyond * omega[i])
        {
            (left, right) = (0.5 * step * At(from, i), 0.5 * step * At(to, i));
        }
        else
        {
            Complex p = poles[2 * i], q = poles[2 * i + 1], residue = -1 / (p - q);
            left = residue * ((to - p) * logs[2 * i] - (to - q) * logs[2 * i + 1]) / step;
            right = residue * ((p - from) * logs[2 * i] - (q - from) * logs[2 * i + 1]) / step;
        }
        Add(single, (k - 1) * count + i, k * count + i, left, right);
        for (int j = 0; j <= i; j++)
        {
            if (from > Beyond * Math.Max(omega[i], omega[j]))
            {
                left = 0.5 * step * At(from, i) * Complex.Conjugate(At(from, j));
                right = 0.5 * step * At(to, i) * Complex.Conjugate(At(to, j));
            }
            else
            {
                (left, right) = PairOver(from, to, i, j, poles, logs);
            }
            Add(pairs, ((k - 1) * count + i) * count + j, (k * count + i) * count + j, left, right);
        }
    }

    private (Complex Left, Complex Right) PairOver(double from, double to, int i, int j, Complex[] poles, Complex[] logs)
    {
        ReadOnlySpan<Complex> z = [poles[2 * i], poles[2 * i + 1], Complex.Conjugate(poles[2 * j]), Complex.Conjugate(poles[2 * j + 1])];
        ReadOnlySpan<Complex> log = [logs[2 * i], logs[2 * i + 1], Complex.Conjugate(logs[2 * j]), Complex.Conjugate(logs[2 * j + 1])];
        Complex left = 0, right = 0;
        for (int m = 0; m < z.Length; m++)
        {
            Complex part = residues[4 * (i * count + j) + m] * log[m];
            left += (to - z[m]) * part;
            right += (z[m] - from) * part;
        }
        return (left / (to - from), right / (to - from));
    }

    private void AddResidues(int i, int j, ReadOnlySpan<Complex> z)
    {
        for (int m = 0; m < z.Length; m++)
        {
            Complex product = 1;
            for (int l = 0; l < z.Length; l++)
            {
                if (l != m)
                    product *= z[m] - z[l];
            }
            residues[4 * (i * count + j) + m] = 1 / product;
        }
    }

    private static void Add(Complex[] weights, int leftAt, int rightAt, Complex left, Complex right)
    {
        weights[leftAt] += left / (2 * Math.PI);
        weights[rightAt] += right / (2 * Math.PI);
    }
}
