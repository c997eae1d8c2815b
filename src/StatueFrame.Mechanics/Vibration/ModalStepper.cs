using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// Many damped oscillators stepped at once, each exactly, under forces that run straight within each step; they may jump
/// between steps. Four oscillators go through the arithmetic together.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. A row holds one number an oscillator, filled up with zeros to
/// <see cref="Stride"/>. The step is that of <see cref="PiecewiseLinearOscillator"/>.
/// </remarks>
public sealed class ModalStepper
{
    private const int Lanes = 4, Numbers = 8;

    /// <summary>For every four oscillators the eight numbers of the step, four of each.</summary>
    private readonly double[] numbers;

    /// <summary>Prepares the step.</summary>
    /// <param name="omega">Undamped circular frequencies, rad/s; zero or more.</param>
    /// <param name="damping">Damping ratios; 0 ≤ ζ &lt; 1.</param>
    /// <param name="step">Length of a step, s; positive.</param>
    /// <exception cref="ArgumentException">There is not one damping ratio an oscillator.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public ModalStepper(ReadOnlySpan<double> omega, ReadOnlySpan<double> damping, double step)
    {
        if (damping.Length != omega.Length)
            throw new ArgumentException($"Expected {omega.Length} damping ratios, one an oscillator, not {damping.Length}.", nameof(damping));
        Count = omega.Length;
        Stride = (Count + Lanes - 1) / Lanes * Lanes;
        numbers = new double[Stride * Numbers];
        Span<double> eight = stackalloc double[Numbers];
        for (int i = 0; i < Count; i++)
        {
            new PiecewiseLinearOscillator(omega[i], damping[i], step).CopyTo(eight);
            for (int k = 0; k < Numbers; k++)
                numbers[i / Lanes * Lanes * Numbers + k * Lanes + i % Lanes] = eight[k];
        }
    }

    /// <summary>Number of oscillators.</summary>
    public int Count { get; }

    /// <summary>Length of a row: the number of oscillators, up to the next multiple of four.</summary>
    public int Stride { get; }

    /// <summary>Goes a number of steps ahead from the state in the first rows of <paramref name="u"/> and <paramref name="v"/>.</summary>
    /// <param name="steps">How many steps.</param>
    /// <param name="before">Forces per mass at the start of each step, a row a step; empty when nothing drives.</param>
    /// <param name="after">Forces per mass at the end of each step; empty when nothing drives.</param>
    /// <param name="u">Displacements: the first row is read, the <paramref name="steps"/> rows after it are filled in.</param>
    /// <param name="v">Velocities, as the displacements.</param>
    public void Run(int steps, ReadOnlySpan<double> before, ReadOnlySpan<double> after, Span<double> u, Span<double> v)
    {
        if (u.Length < (steps + 1) * Stride || v.Length < (steps + 1) * Stride)
            throw new ArgumentException("There is no room for all steps.", nameof(u));
        if (before.Length != after.Length || (before.Length > 0 && before.Length < steps * Stride))
            throw new ArgumentException("Expected a row of forces a step, or none at all.", nameof(before));
        ReadOnlySpan<Vector256<double>> c = Vectors(numbers), p = Vectors(before), q = Vectors(after);
        Span<Vector256<double>> us = Vectors(u), vs = Vectors(v);
        int groups = Stride / Lanes;
        bool free = before.Length == 0;
        for (int row = 0; row < steps * groups; row += groups)
        {
            for (int g = 0; g < groups; g++)
            {
                ReadOnlySpan<Vector256<double>> eight = c.Slice(g * Numbers, Numbers);
                Vector256<double> u0 = us[row + g], v0 = vs[row + g];
                Vector256<double> u1 = eight[0] * u0 + eight[1] * v0, v1 = eight[4] * u0 + eight[5] * v0;
                if (!free)
                {
                    Vector256<double> start = p[row + g], change = q[row + g] - start;
                    u1 += eight[2] * start + eight[3] * change;
                    v1 += eight[6] * start + eight[7] * change;
                }
                us[row + groups + g] = u1;
                vs[row + groups + g] = v1;
            }
        }
    }

    private static Span<Vector256<double>> Vectors(Span<double> x) => MemoryMarshal.Cast<double, Vector256<double>>(x);

    private static ReadOnlySpan<Vector256<double>> Vectors(ReadOnlySpan<double> x) => MemoryMarshal.Cast<double, Vector256<double>>(x);
}
