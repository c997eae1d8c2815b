namespace StatueFrame.Checks;

/// <summary>
/// A flat rectangular plate that deflects by more than its thickness: von Kármán's equations, with Airy's function solved
/// for every shape of deflection by cosines (straight edges without shear along them, free to draw in or held), and the
/// energy made least over a few shapes. In the units of the plate: lengths of the shorter side b, deflections of the
/// thickness t, pressure Q = q b⁴/(E t⁴), stress over E t²/b².
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The stretching energy is a sum Σ λ(cᵀGc)² over the cosines of Airy's
/// function, where c are the parts of the shapes. Source: Levy, NACA Reports 737 and 740 (1942), with shapes of our own.
/// </remarks>
internal sealed class LargePlate
{
    private static readonly double[] places = [0, 0.3, 0.6, 0.8, 0.92, 1];

    private readonly PlateBending exact;
    private readonly double[] stiffness, load, linear;
    private readonly StretchForm[] forms;
    private readonly PlatePlace[] grid;
    private readonly double nu;
    private readonly int n;

    /// <summary>Prepares a plate.</summary>
    /// <param name="exact">The same plate by small-deflection theory.</param>
    /// <param name="ratio">Longer over shorter side, 1 or more.</param>
    /// <param name="nu">Poisson's ratio.</param>
    /// <param name="edges">How the edges are held against turning.</param>
    /// <param name="held">True when the edges cannot draw in.</param>
    /// <param name="countLong">Shapes along the longer side; null takes as many as its length needs.</param>
    /// <param name="countShort">Shapes along the shorter side.</param>
    public LargePlate(PlateBending exact, double ratio, double nu, PanelEdges edges, bool held, int? countLong = null, int countShort = 3)
    {
        (this.exact, this.nu) = (exact, nu);
        int manyLong = countLong ?? (int)Math.Ceiling(3 + ratio), harmonicsLong = manyLong + 2, harmonicsShort = countShort + 2;
        n = manyLong * countShort;
        PlateSide x = new(edges, manyLong, harmonicsLong, ratio / 2), y = new(edges, countShort, harmonicsShort, 0.5);
        (stiffness, load) = (new double[n * n], new double[n]);
        double D = 1 / (12 * (1 - nu * nu));
        for (int p = 0; p < n; p++)
        {
            (int i, int j) = (p / countShort, p % countShort);
            load[p] = x.Integral[i] * y.Integral[j];
            for (int q = 0; q < n; q++)
            {
                (int k, int l) = (q / countShort, q % countShort);
                stiffness[p * n + q] = D * (x.Bent[i, k] * y.Plain[j, l] + 2 * x.Sloped[0][i, k] * y.Sloped[0][j, l] + x.Plain[i, k] * y.Bent[j, l]);
            }
        }
        var made = new List<StretchForm>();
        for (int p = 0; p <= harmonicsLong; p++)
        {
            for (int q = 0; q <= harmonicsShort; q++)
            {
                if (p + q > 0)
                    made.Add(StretchForm.Airy(x, y, p, q, ratio));
            }
        }
        if (held)
            made.AddRange(StretchForm.Held(x, y, ratio, nu));
        forms = [.. made];
        grid = [.. places.SelectMany(at => places.Select(across => new PlatePlace(x.At(at), y.At(across))))];
        linear = new double[n];
        Solve(stiffness, load, linear);
    }

    /// <summary>The greatest deflection, and the greatest principal stress on either face, without sign.</summary>
    /// <param name="Q">The pressure; zero or more.</param>
    public (double Deflection, double Stress) Under(double Q)
    {
        if (Q <= 0)
            return (0, 0);
        double[] c = Shape(Q);
        double meanX = 0, meanY = 0;
        var airy = new double[forms.Length];
        for (int f = 0; f < forms.Length; f++)
        {
            double square = forms[f].Of(c);
            airy[f] = square * forms[f].PerSquare;
            (meanX, meanY) = (meanX + forms[f].MeanX * square, meanY + forms[f].MeanY * square);
        }
        double stress = 0, deflection = 0;
        for (int at = 0; at < grid.Length; at++)
        {
            (double w, double w_xx, double w_yy, double w_xy) = grid[at].Bend(c, 1);
            (double short_xx, double short_yy) = Missing(at, Q);
            (double n_x, double n_y, double n_xy) = (meanX, meanY, 0);
            for (int f = 0; f < forms.Length; f++)
                grid[at].AddStretch(forms[f], airy[f], ref n_x, ref n_y, ref n_xy);
            double face = 1 / (2 * (1 - nu * nu));
            double m_x = -face * (w_xx + nu * w_yy) + short_xx, m_y = -face * (w_yy + nu * w_xx) + short_yy, m_xy = -face * (1 - nu) * w_xy;
            stress = Math.Max(stress, Math.Max(Principal(n_x + m_x, n_y + m_y, n_xy + m_xy), Principal(n_x - m_x, n_y - m_y, n_xy - m_xy)));
            if (at == 0)
                w += Q * (12 * (1 - nu * nu) * exact.Deflection - grid[0].Bend(linear, 1).W);
            deflection = Math.Max(deflection, Math.Abs(w));
        }
        return (deflection, stress);
    }

    /// <summary>
    /// What the few shapes miss of the bending stress by small-deflection theory, along x and y: the sharp parts, which
    /// stretching does not change. Known at the middle and amid the longer edges.
    /// </summary>
    private (double X, double Y) Missing(int at, double Q)
    {
        if (at != 0 && at != places.Length - 1)
            return (0, 0);
        (_, double w_xx, double w_yy, _) = grid[at].Bend(linear, Q);
        double face = 1 / (2 * (1 - nu * nu)), x = -face * (w_xx + nu * w_yy), y = -face * (w_yy + nu * w_xx);
        return at == 0 ? (6 * Q * exact.MiddleLong - x, 6 * Q * exact.MiddleShort - y) : (-6 * Q * nu * exact.LongEdge - x, -6 * Q * exact.LongEdge - y);
    }

    /// <summary>The parts of the shapes by Newton's method on the energy, from the best multiple of the small deflection.</summary>
    private double[] Shape(double Q)
    {
        const int MostSteps = 60;
        double quartic = 0, bending = 0;
        for (int i = 0; i < n; i++)
            bending += load[i] * linear[i];
        foreach (StretchForm form in forms)
            quartic += form.Stiffness * Math.Pow(form.Of(linear), 2);
        double scale = Root(bending, 4 * quartic, Q * bending);
        double[] c = Array.ConvertAll(linear, v => v * scale), trial = new double[n], step = new double[n];
        double[] gradient = new double[n], next = new double[n], hessian = new double[n * n], nextHessian = new double[n * n];
        double energy = Derivatives(c, Q, gradient, hessian), shift = 0;
        for (int turn = 0; turn < MostSteps; turn++)
        {
            if (!Shifted(hessian, shift, gradient, step))
            {
                shift = shift == 0 ? 1e-3 : 10 * shift;
                continue;
            }
            double slope = Dot(gradient, step), reach = 1;
            if (shift == 0 && slope < 1e-12 * Math.Abs(energy))
                break;
            for (; reach > 1e-4; reach /= 2)
            {
                for (int i = 0; i < n; i++)
                    trial[i] = c[i] - reach * step[i];
                double found = Derivatives(trial, Q, next, nextHessian);
                if (found > energy - 1e-4 * reach * slope)
                    continue;
                energy = found;
                (c, trial, gradient, next, hessian, nextHessian) = (trial, c, next, gradient, nextHessian, hessian);
                break;
            }
            if (reach <= 1e-4)
                break;
            shift = shift <= 1e-3 ? 0 : shift / 10;
        }
        return c;
    }

    /// <summary>The one root s of k₁ s + k₃ s³ = load.</summary>
    internal static double Root(double k_1, double k_3, double load)
    {
        if (load <= 0 || k_3 <= 0)
            return load / k_1;
        // Sinh form of Cardano's root: no cancellation for small or large loads.
        double scale = 2 * Math.Sqrt(k_1 / (3 * k_3));
        return scale * Math.Sinh(Math.Asinh(3 * load / (k_1 * scale)) / 3);
    }

    private double Derivatives(double[] c, double Q, double[] gradient, double[] hessian)
    {
        stiffness.CopyTo(hessian, 0);
        double energy = 0;
        for (int i = 0; i < n; i++)
        {
            double force = Row(stiffness, i, c);
            energy += c[i] * (0.5 * force - Q * load[i]);
            gradient[i] = force - Q * load[i];
        }
        Span<double> turned = stackalloc double[n];
        foreach (StretchForm form in forms)
        {
            double square = 0;
            for (int i = 0; i < n; i++)
            {
                turned[i] = Row(form.Matrix, i, c);
                square += c[i] * turned[i];
            }
            energy += form.Stiffness * square * square;
            double once = 4 * form.Stiffness * square, twice = 8 * form.Stiffness;
            for (int i = 0; i < n; i++)
            {
                gradient[i] += once * turned[i];
                for (int j = 0; j <= i; j++)
                    hessian[i * n + j] += once * form.Matrix[i * n + j] + twice * turned[i] * turned[j];
            }
        }
        return energy;
    }

    private double Row(double[] matrix, int row, double[] c) => Dot(matrix.AsSpan(row * n, n), c);

    /// <summary>A sum of products in four strands, the same on every machine.</summary>
    internal static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double s0 = 0, s1 = 0, s2 = 0, s3 = 0;
        int i = 0;
        for (; i <= a.Length - 4; i += 4)
            (s0, s1, s2, s3) = (s0 + a[i] * b[i], s1 + a[i + 1] * b[i + 1], s2 + a[i + 2] * b[i + 2], s3 + a[i + 3] * b[i + 3]);
        for (; i < a.Length; i++)
            s0 += a[i] * b[i];
        return s0 + s1 + (s2 + s3);
    }

    private bool Shifted(double[] hessian, double shift, double[] right, double[] solution)
    {
        for (int i = 0; i < n && shift > 0; i++)
            hessian[i * n + i] += shift * Math.Abs(stiffness[i * n + i]);
        return Solve(hessian, right, solution);
    }

    /// <summary>Solves by Cholesky from the lower triangle; false when the matrix is not positive definite.</summary>
    private bool Solve(double[] matrix, double[] right, double[] solution)
    {
        var l = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = matrix[i * n + j];
                for (int k = 0; k < j; k++)
                    sum -= l[i * n + k] * l[j * n + k];
                if (i == j && !(sum > 1e-14 * Math.Abs(matrix[i * n + i])))
                    return false;
                l[i * n + j] = i == j ? Math.Sqrt(sum) : sum / l[j * n + j];
            }
        }
        for (int i = 0; i < n; i++)
        {
            double sum = right[i];
            for (int k = 0; k < i; k++)
                sum -= l[i * n + k] * solution[k];
            solution[i] = sum / l[i * n + i];
        }
        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++)
                solution[i] -= l[k * n + i] * solution[k];
            solution[i] /= l[i * n + i];
        }
        return true;
    }

    private static double Principal(double x, double y, double xy) => Math.Abs(x + y) / 2 + Math.Sqrt((x - y) * (x - y) / 4 + xy * xy);
}
