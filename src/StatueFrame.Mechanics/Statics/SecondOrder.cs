using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Statics;

/// <summary>
/// Second-order (P-Δ) analysis: (K + K_g(u)) u = f, where K_g is the geometric stiffness under the internal forces that u
/// causes. Solved again with K_g from the last displacements until they settle. For small rotations.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class SecondOrder
{
    /// <summary>Solves one load case.</summary>
    /// <param name="statics">The first-order analysis of the frame.</param>
    /// <param name="loads">A full vector; N, N·m.</param>
    /// <param name="options">When to stop; defaults when null.</param>
    /// <exception cref="UnstableFrameException">The loads are at or beyond buckling; names the freedom that gives way.</exception>
    public static SecondOrderResult Solve(LinearStatics statics, ReadOnlySpan<double> loads, SecondOrderOptions? options = null)
    {
        statics.Frame.RequireFull(loads, nameof(loads));
        double[] first = statics.Solve(loads);
        return Solve(statics, loads, first, statics.Frame.GeometricStiffness(first), options ?? new SecondOrderOptions());
    }

    /// <summary>As the other, from the first-order displacements and the geometric stiffness that goes with them.</summary>
    internal static SecondOrderResult Solve(
        LinearStatics statics, ReadOnlySpan<double> loads, double[] first, SymmetricMatrix geometric, SecondOrderOptions options)
    {
        Frame frame = statics.Frame;
        double[] current = [.. first];
        var next = new double[current.Length];
        var reduced = new double[frame.EquationCount];
        var tangent = new SymmetricMatrix(frame.Stiffness.Pattern);
        var factors = new LdlFactorization(frame.Symbolic);
        for (int iteration = 1; iteration <= options.MaximumIterations; iteration++)
        {
            frame.Stiffness.Values.CopyTo(tangent.Values);
            if (iteration == 1)
                DenseVector.AddScaled(tangent.Values, 1, geometric.Values);
            else
                frame.AddGeometricStiffness(current, tangent);
            factors.Factor(tangent);
            if (factors.NegativePivots > 0 || factors.SingularEquation >= 0)
            {
                throw new UnstableFrameException(Pivots.At(frame, Pivots.LoosestFreedom(frame, factors),
                    "The frame is unstable: the loads are at or beyond the ones at which it buckles. It gives way most in {0}."));
            }
            frame.Reduce(loads, reduced);
            factors.Solve(reduced);
            frame.Expand(reduced, next);
            double change = LargestChange(current, next);
            (current, next) = (next, current);
            double greatest = DenseVector.LargestMagnitude(current);
            if (change <= options.Tolerance * greatest)
                return new SecondOrderResult(current, first, iteration, Amplification(first, current), greatest > 0 ? change / greatest : 0);
        }
        throw new UnstableFrameException(new FrameProblem(
            $"The frame does not settle within {options.MaximumIterations} rounds of second-order analysis; the loads are too close to buckling."));
    }

    internal static double LargestChange(ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        double largest = 0;
        for (int i = 0; i < before.Length; i++)
            largest = Math.Max(largest, Math.Abs(after[i] - before[i]));
        return largest;
    }

    internal static double Amplification(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        double before = LargestDisplacement(first);
        return before == 0 ? 1 : LargestDisplacement(second) / before;
    }

    private static double LargestDisplacement(ReadOnlySpan<double> u)
    {
        double largest = 0;
        for (int at = 0; at < u.Length; at += Frame.NodeSize)
            largest = Math.Max(largest, new Vector3D(u[at], u[at + 1], u[at + 2]).Length);
        return largest;
    }
}
