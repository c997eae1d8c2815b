using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Statics;

/// <summary>
/// Linear buckling: the factors λ for which K + λ·K_g(u₀) is singular, where u₀ are the displacements under the base loads.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class LinearBuckling
{
    /// <summary>The least factor that is looked for, as a part of the greatest.</summary>
    private const double LeastPart = 1e-12;

    /// <summary>Finds the lowest positive load factors, repeated ones as often as they occur.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="baseState">Displacements under the base loads, a full vector; m, rad.</param>
    /// <param name="count">How many factors; fewer are returned when fewer lie below <paramref name="limit"/>.</param>
    /// <param name="limit">Factors above this are not looked for.</param>
    /// <exception cref="FrameException">The frame is a mechanism without any load.</exception>
    public static BucklingResult Solve(Frame frame, ReadOnlySpan<double> baseState, int count, double limit = 1e4)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(count);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(limit);
        return Solve(new LinearStatics(frame), frame.GeometricStiffness(baseState), count, limit);
    }

    /// <summary>As the other, from a first-order analysis and the geometric stiffness under the base loads.</summary>
    internal static BucklingResult Solve(LinearStatics statics, SymmetricMatrix geometric, int count, double limit)
    {
        Frame frame = statics.Frame;
        SymmetricMatrix softening = SymmetricMatrix.Combine(0, frame.Stiffness, -1, geometric);
        using var lanczos = new GeneralizedLanczos(frame.Stiffness, softening, statics.Factors);
        int wanted = Math.Min(count, lanczos.CountAbove(1 / limit));
        if (wanted == 0)
            return new BucklingResult([], [], true, 0);
        lanczos.Solve(wanted);

        bool settled = lanczos.MissedNone && lanczos.Found == wanted;
        var loadFactors = new List<double>(wanted);
        var shapes = new List<double[]>(wanted);
        var reduced = new double[frame.EquationCount];
        double error = 0;
        for (int i = 0; i < wanted; i++)
        {
            double theta = settled ? lanczos.Value(i) : lanczos.Bisect(i, 1 / limit, 1 / (LeastPart * limit), reduced);
            if (theta <= 0)
                return new BucklingResult([.. loadFactors], [.. shapes], false, error);
            if (settled)
                lanczos.Vector(i, reduced);
            error = Math.Max(error, lanczos.ErrorOf(theta, reduced));
            loadFactors.Add(1 / theta);
            shapes.Add(new double[frame.FreedomCount]);
            frame.Expand(reduced, shapes[i]);
            DenseVector.Orient(shapes[i], 1);
        }
        return new BucklingResult([.. loadFactors], [.. shapes], true, error);
    }
}
