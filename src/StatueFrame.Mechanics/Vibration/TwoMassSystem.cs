using System.Numerics;

namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// Two masses in closed form: a tower that moves by y on its own stiffness, and a skin that moves by x relative to it on
/// springs. T = ½(A ẏ² + 2B ẏẋ + C ẋ²), V = ½(k_t y² + k_s x²). For a mass m₁ on a spring to the ground and a mass m₂ on a
/// spring to m₁, A = m₁ + m₂ and B = C = m₂. A force F pushes the skin: it does the work F (y + x).
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source: Den Hartog, Mechanical Vibrations, chapter 3.</remarks>
public sealed class TwoMassSystem
{
    private readonly double omega1, omega2;
    private readonly (double Y, double X) shape1, shape2;

    /// <summary>Makes the system from its masses and stiffnesses.</summary>
    /// <param name="A">Mass that moves with the tower, skin included, kg.</param>
    /// <param name="B">Mass that couples both motions, kg; B² &lt; A C.</param>
    /// <param name="C">Mass that moves on the springs, kg.</param>
    /// <param name="towerStiffness">k_t, N/m; positive.</param>
    /// <param name="springStiffness">k_s, N/m; positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public TwoMassSystem(double A, double B, double C, double towerStiffness, double springStiffness)
    {
        Require(A > 0 && double.IsFinite(A), nameof(A));
        Require(C > 0 && double.IsFinite(C), nameof(C));
        Require(B * B < A * C, nameof(B));
        Require(towerStiffness > 0 && double.IsFinite(towerStiffness), nameof(towerStiffness));
        Require(springStiffness > 0 && double.IsFinite(springStiffness), nameof(springStiffness));
        (this.A, this.B, this.C, TowerStiffness, SpringStiffness) = (A, B, C, towerStiffness, springStiffness);
        // det(K − ω²M) = (AC − B²) ω⁴ − (A k_s + C k_t) ω² + k_t k_s; the root of the difference is written without cancellation.
        double determinant = A * C - B * B, p = A * springStiffness + C * towerStiffness, difference = A * springStiffness - C * towerStiffness;
        double root = Math.Sqrt(difference * difference + 4 * B * B * towerStiffness * springStiffness);
        omega1 = Math.Sqrt(2 * towerStiffness * springStiffness / (p + root));
        omega2 = Math.Sqrt((p + root) / (2 * determinant));
        (shape1, shape2) = (Shape(omega1), Shape(omega2));
    }

    /// <summary>A mass on a spring to the ground, and a second one on a spring to the first.</summary>
    public static TwoMassSystem Chain(double m1, double k1, double m2, double k2) => new(m1 + m2, m2, m2, k1, k2);

    /// <summary>Mass that moves with the tower, kg.</summary>
    public double A { get; }

    /// <summary>Mass that couples both motions, kg.</summary>
    public double B { get; }

    /// <summary>Mass that moves on the springs, kg.</summary>
    public double C { get; }

    /// <summary>k_t, N/m.</summary>
    public double TowerStiffness { get; }

    /// <summary>k_s, N/m.</summary>
    public double SpringStiffness { get; }

    /// <summary>The lower natural frequency, Hz.</summary>
    public double LowerFrequency => omega1 / (2 * Math.PI);

    /// <summary>The higher natural frequency, Hz.</summary>
    public double HigherFrequency => omega2 / (2 * Math.PI);

    /// <summary>
    /// Amplitude of the forces in tower (k_t y) and springs (k_s x), over that of a steady force on the skin, from the
    /// equations of motion themselves. Damping is that of springs and tower alike: stiffnesses times (1 + 2iζ).
    /// </summary>
    /// <param name="frequency">Frequency of the force, Hz; zero or more.</param>
    /// <param name="damping">ζ; zero or more. At a natural frequency without damping the result is infinite.</param>
    public (double Tower, double Springs) Transmissibility(double frequency, double damping)
    {
        double omega = 2 * Math.PI * frequency, square = omega * omega;
        var loss = new Complex(1, 2 * damping);
        Complex yy = TowerStiffness * loss - square * A, xx = SpringStiffness * loss - square * C;
        Complex determinant = yy * xx - square * square * B * B;
        if (determinant == Complex.Zero)
            return (double.PositiveInfinity, double.PositiveInfinity);
        Complex y = (xx + square * B) / determinant, x = (yy + square * B) / determinant;
        return (TowerStiffness * (y * loss).Magnitude, SpringStiffness * (x * loss).Magnitude);
    }

    /// <summary>
    /// The greatest forces in tower and springs, without sign, under a force on the skin that runs straight between
    /// samples, each mode stepped exactly.
    /// </summary>
    /// <param name="samples">The force at 0, h, 2h, …, N; zero afterwards.</param>
    /// <param name="step">h, s.</param>
    /// <param name="damping">Damping ratio of both modes; 0 ≤ ζ &lt; 1.</param>
    /// <param name="duration">How long to look, s.</param>
    public (double Tower, double Springs) PeakForces(ReadOnlySpan<double> samples, double step, double damping, double duration)
    {
        var first = new PiecewiseLinearOscillator(omega1, damping, step);
        var second = new PiecewiseLinearOscillator(omega2, damping, step);
        double q1 = 0, v1 = 0, q2 = 0, v2 = 0, tower = 0, springs = 0;
        double g1 = shape1.Y + shape1.X, g2 = shape2.Y + shape2.X;
        for (int i = 1; i * step <= duration; i++)
        {
            double before = i <= samples.Length ? samples[i - 1] : 0, after = i < samples.Length ? samples[i] : 0;
            first.Step(ref q1, ref v1, g1 * before, g1 * after);
            second.Step(ref q2, ref v2, g2 * before, g2 * after);
            tower = Math.Max(tower, Math.Abs(q1 * shape1.Y + q2 * shape2.Y));
            springs = Math.Max(springs, Math.Abs(q1 * shape1.X + q2 * shape2.X));
        }
        return (TowerStiffness * tower, SpringStiffness * springs);
    }

    /// <summary>The mode shape with unit modal mass, from whichever equation of motion says more.</summary>
    private (double Y, double X) Shape(double omega)
    {
        double square = omega * omega, yy = TowerStiffness - square * A, xx = SpringStiffness - square * C;
        (double y, double x) = Math.Abs(yy) * C > Math.Abs(xx) * A ? (square * B, yy) : (xx, square * B);
        if (y == 0 && x == 0)
            (y, x) = omega == omega1 ? (1, 0) : (0, 1);
        double mass = A * y * y + 2 * B * y * x + C * x * x, scale = 1 / Math.Sqrt(mass);
        return (y * scale, x * scale);
    }

    private static void Require(bool holds, string name)
    {
        if (!holds)
            throw new ArgumentOutOfRangeException(name);
    }
}
