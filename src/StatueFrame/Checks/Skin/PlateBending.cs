using MathNet.Numerics.LinearAlgebra;

namespace StatueFrame.Checks;

/// <summary>
/// A rectangular plate a × b by small-deflection theory, as factors: deflection w = C_w q b⁴/D and moments
/// M = C q b² per length, with b the shorter side.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Supported edges: Lévy's and Navier's series (Timoshenko and
/// Woinowsky-Krieger, Theory of Plates and Shells, 30 and 34). Clamped edges: Ritz's method with polynomials.
/// </remarks>
internal sealed class PlateBending
{
    private const double StripRatio = 6;

    private readonly LargePlate?[] large = new LargePlate?[2];

    private PlateBending()
    {
    }

    private double Ratio { get; init; }

    private double Nu { get; init; }

    private PanelEdges Edges { get; init; }

    /// <summary>Deflection at the middle over q b⁴/D.</summary>
    public double Deflection { get; private init; }

    /// <summary>Moment at the middle over q b² that bends the shorter way.</summary>
    public double MiddleShort { get; private init; }

    /// <summary>Moment at the middle over q b² that bends the longer way.</summary>
    public double MiddleLong { get; private init; }

    /// <summary>Moment at the middle of the longer edges over q b², without sign; zero for supported edges.</summary>
    public double LongEdge { get; private init; }

    /// <summary>ω b² √(ρ t/D) of the lowest mode.</summary>
    public double Frequency { get; private init; }

    /// <summary>The factors of a plate.</summary>
    /// <param name="ratio">a/b, 1 or more; above 6 the plate is a strip.</param>
    /// <param name="nu">Poisson's ratio.</param>
    /// <param name="edges">How all four edges are held.</param>
    public static PlateBending Of(double ratio, double nu, PanelEdges edges)
    {
        double r = Math.Min(ratio, StripRatio);
        return edges == PanelEdges.Supported ? Supported(r, nu) : Clamped(r, nu);
    }

    /// <summary>The plate by large-deflection theory; found once.</summary>
    /// <param name="held">True when the edges cannot draw in.</param>
    public LargePlate Large(bool held) => large[held ? 1 : 0] ??= new LargePlate(this, Ratio, Nu, Edges, held);

    private static PlateBending Supported(double ratio, double nu)
    {
        const int Terms = 60;
        double w = 5.0 / 384, m_short = 1.0 / 8, m_long = nu / 8, sign = 1;
        for (int k = 0; k < Terms; k++, sign = -sign)
        {
            double m = 2 * k + 1, alpha = m * Math.PI * ratio / 2, inverse = alpha > 300 ? 0 : 1 / Math.Cosh(alpha);
            double A = -2 * (alpha * Math.Tanh(alpha) + 2) / Math.Pow(Math.PI * m, 5) * inverse, B = 2 / Math.Pow(Math.PI * m, 5) * inverse;
            double twice = m * Math.PI * m * Math.PI, bentLong = A + 2 * B;
            w += sign * A;
            m_short += sign * twice * (A - nu * bentLong);
            m_long += sign * twice * (nu * A - bentLong);
        }
        return new PlateBending
        {
            Ratio = ratio,
            Nu = nu,
            Edges = PanelEdges.Supported,
            Deflection = w,
            MiddleShort = m_short,
            MiddleLong = m_long,
            Frequency = Math.PI * Math.PI * (1 + 1 / (ratio * ratio)),
        };
    }

    /// <summary>
    /// Ritz with φ_i(ξ) = (1 − ξ²)² ξ^{2i} in orthogonal combinations, both ways; ξ = 2x/b and η = 2y/a. The energy is
    /// D/2 ∫(∇²w)², as for all clamped plates.
    /// </summary>
    private static PlateBending Clamped(double ratio, double nu)
    {
        const int Short = 7, Long = 11;
        ClampedBasis x = ClampedBasis.Of(Short), y = ClampedBasis.Of(Long);
        int n = Short * Long;
        // Lengths in half short sides: the short way runs from −1 to 1, the long way is stretched by the ratio.
        double s = 1 / (ratio * ratio);
        Matrix<double> K = Matrix<double>.Build.Dense(n, n), M = Matrix<double>.Build.Dense(n, n);
        Vector<double> even = Vector<double>.Build.Dense(n), point = Vector<double>.Build.Dense(n), edge = Vector<double>.Build.Dense(n);
        Vector<double> bentShort = Vector<double>.Build.Dense(n), bentLong = Vector<double>.Build.Dense(n);
        for (int p = 0; p < n; p++)
        {
            (int i, int j) = (p / Long, p % Long);
            for (int r = 0; r < n; r++)
            {
                (int k, int l) = (r / Long, r % Long);
                K[p, r] = x.Bent[i, k] * y.Plain[j, l] + 2 * s * x.Sloped[i, k] * y.Sloped[j, l] + s * s * x.Plain[i, k] * y.Bent[j, l];
                M[p, r] = x.Plain[i, k] * y.Plain[j, l];
            }
            even[p] = x.Integral[i] * y.Integral[j];
            point[p] = x.Middle[i] * y.Middle[j];
            bentShort[p] = x.MiddleBent[i] * y.Middle[j];
            bentLong[p] = s * x.Middle[i] * y.MiddleBent[j];
            edge[p] = x.EdgeBent[i] * y.Middle[j];
        }
        MathNet.Numerics.LinearAlgebra.Factorization.Cholesky<double> factor = K.Cholesky();
        // In half sides h = b/2: D/h⁴ K c = q even, so w = q h⁴/D and M = q h² of these.
        Vector<double> c = factor.Solve(even), mode = c.Clone();
        double lambda = 0;
        for (int i = 0; i < 12; i++)
        {
            Vector<double> next = factor.Solve(M * mode);
            lambda = (mode * (M * mode)) / (mode * (M * next));
            mode = next / next.L2Norm();
        }
        const double Fourth = 1.0 / 16, Square = 1.0 / 4;
        return new PlateBending
        {
            Ratio = ratio,
            Nu = nu,
            Edges = PanelEdges.Clamped,
            Deflection = Fourth * (point * c),
            MiddleShort = -Square * (bentShort * c + nu * (bentLong * c)),
            MiddleLong = -Square * (bentLong * c + nu * (bentShort * c)),
            LongEdge = Math.Abs(Square * (edge * c)),
            Frequency = 4 * Math.Sqrt(lambda),
        };
    }
}
