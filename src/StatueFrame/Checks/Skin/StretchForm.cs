namespace StatueFrame.Checks;

/// <summary>A quadratic form cᵀGc of a plate's shapes whose square is a part of the energy of stretching.</summary>
/// <remarks>Immutable and safe to share between threads. Units of <see cref="LargePlate"/>.</remarks>
/// <param name="Matrix">G, row by row.</param>
internal sealed record StretchForm(double[] Matrix)
{
    /// <summary>Waves of the cosine along the longer side.</summary>
    public int P { get; private init; }

    /// <summary>Waves of the cosine along the shorter side.</summary>
    public int Q { get; private init; }

    /// <summary>Wave number along the longer side.</summary>
    public double Kx { get; private init; }

    /// <summary>Wave number along the shorter side.</summary>
    public double Ky { get; private init; }

    /// <summary>Energy over the square of the form.</summary>
    public double Stiffness { get; private init; }

    /// <summary>Airy's function over the form.</summary>
    public double PerSquare { get; private init; }

    /// <summary>Mean stress along the longer side over the form.</summary>
    public double MeanX { get; private init; }

    /// <summary>Mean stress along the shorter side over the form.</summary>
    public double MeanY { get; private init; }

    /// <summary>One cosine of Airy's function: ∇⁴φ = w_xy² − w_xx w_yy, multiplied by the cosine and integrated.</summary>
    public static StretchForm Airy(PlateSide x, PlateSide y, int p, int q, double ratio)
    {
        (double kx, double ky) = (2 * Math.PI * p / ratio, 2 * Math.PI * q);
        double square = kx * kx + ky * ky, times = (p > 0 ? 2 : 1) * (q > 0 ? 2 : 1) / ratio;
        StretchForm form = Of(x, y, (i, j, k, l) => x.Sloped[p][i, k] * y.Sloped[q][j, l] - 0.5 * (x.Curved[p][i, k] * y.Curved[q][l, j] + x.Curved[p][k, i] * y.Curved[q][j, l]));
        return form with { P = p, Q = q, Kx = kx, Ky = ky, Stiffness = 0.5 * times / (square * square), PerSquare = times / (square * square) };
    }

    /// <summary>Edges that are held: the mean strains ½w_x² and ½w_y² as their sum and difference, which do not mix.</summary>
    public static IEnumerable<StretchForm> Held(PlateSide x, PlateSide y, double ratio, double nu)
    {
        foreach (int sign in new[] { 1, -1 })
        {
            StretchForm form = Of(x, y, (i, j, k, l) => 0.5 / ratio * (x.Sloped[0][i, k] * y.Plain[j, l] + sign * x.Plain[i, k] * y.Sloped[0][j, l]));
            // With e₊ and e₋: n_x = (e₊/(1 − ν) + e₋/(1 + ν))/2, n_y with the minus sign.
            double mean = sign > 0 ? 0.5 / (1 - nu) : 0.5 / (1 + nu);
            yield return form with { Stiffness = 0.5 * ratio * mean, MeanX = mean, MeanY = sign * mean };
        }
    }

    private static StretchForm Of(PlateSide x, PlateSide y, Func<int, int, int, int, double> entry)
    {
        int n = x.Count * y.Count;
        var matrix = new double[n * n];
        for (int p = 0; p < n; p++)
        {
            for (int q = 0; q < n; q++)
                matrix[p * n + q] = entry(p / y.Count, p % y.Count, q / y.Count, q % y.Count);
        }
        return new StretchForm(matrix);
    }

    /// <summary>cᵀGc.</summary>
    public double Of(double[] c)
    {
        double sum = 0;
        for (int i = 0; i < c.Length; i++)
            sum += c[i] * LargePlate.Dot(Matrix.AsSpan(i * c.Length, c.Length), c);
        return sum;
    }
}
