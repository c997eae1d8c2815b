using System.Buffers;
using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Statics;

/// <summary>
/// First-order static analysis: the stiffness is factored once, in the constructor, and any number of load cases can be
/// solved with it.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class LinearStatics
{
    /// <summary>Factors the stiffness of a frame.</summary>
    /// <exception cref="FrameException">
    /// The frame is a mechanism or has negative stiffness; names the node and freedom where it shows.
    /// </exception>
    public LinearStatics(Frame frame)
    {
        Frame = frame;
        Factors = Pivots.FactorPositive(frame, frame.Stiffness);
    }

    /// <summary>The frame.</summary>
    public Frame Frame { get; }

    /// <summary>The factored stiffness; solve with it, and do not factor anything else.</summary>
    internal LdlFactorization Factors { get; }

    /// <summary>The displacements under one or more load cases, as full vectors one after the other; m, rad.</summary>
    /// <param name="loads">
    /// Full vectors, one after the other; N, N·m. Loads at restrained freedoms go straight into the ground.
    /// </param>
    /// <exception cref="ArgumentException">The length is no multiple of the frame's, or a load is not finite.</exception>
    public double[] Solve(ReadOnlySpan<double> loads)
    {
        var displacements = new double[loads.Length];
        Solve(loads, displacements);
        return displacements;
    }

    /// <summary>As <see cref="Solve(ReadOnlySpan{double})"/>, into room that the caller provides.</summary>
    public void Solve(ReadOnlySpan<double> loads, Span<double> displacements)
    {
        int cases = Frame.RequireFull(loads, nameof(loads), single: false);
        if (displacements.Length != loads.Length)
            throw new ArgumentException("Displacements need as many values as loads.", nameof(displacements));
        int full = Frame.FreedomCount, order = Frame.EquationCount;
        double[] rented = ArrayPool<double>.Shared.Rent(cases * order);
        Span<double> reduced = rented.AsSpan(0, cases * order);
        for (int i = 0; i < cases; i++)
            Frame.Reduce(loads.Slice(i * full, full), reduced.Slice(i * order, order));
        Factors.Solve(reduced);
        for (int i = 0; i < cases; i++)
            Frame.Expand(reduced.Slice(i * order, order), displacements.Slice(i * full, full));
        ArrayPool<double>.Shared.Return(rented);
    }

    /// <summary>
    /// How far solutions are off by rounding: the greatest displacement that their residual f − K u causes, over the greatest
    /// displacement. Near 1e-16 times the ratio of the greatest to the least stiffness that takes part; no unit.
    /// </summary>
    /// <param name="loads">Full vectors, one after the other; N, N·m.</param>
    /// <param name="displacements">Their displacements; m, rad.</param>
    /// <remarks>Source: Higham, Accuracy and Stability of Numerical Algorithms, 2nd ed., 12.1 (iterative refinement).</remarks>
    public double ErrorOf(ReadOnlySpan<double> loads, ReadOnlySpan<double> displacements)
    {
        int cases = Frame.RequireFull(loads, nameof(loads), single: false), full = Frame.FreedomCount, order = Frame.EquationCount;
        if (displacements.Length != loads.Length)
            throw new ArgumentException("Displacements need as many values as loads.", nameof(displacements));
        double worst = 0;
        double[] u = new double[order], residual = new double[order];
        for (int i = 0; i < cases; i++)
        {
            Frame.Reduce(displacements.Slice(i * full, full), u);
            Frame.Stiffness.Multiply(u, residual);
            for (int equation = 0; equation < order; equation++)
                residual[equation] = loads[i * full + Frame.FreedomOf(equation)] - residual[equation];
            Factors.Solve(residual);
            double most = Greatest(u);
            if (most > 0)
                worst = Math.Max(worst, Greatest(residual) / most);
        }
        return worst;

        static double Greatest(ReadOnlySpan<double> vector)
        {
            double greatest = 0;
            foreach (double value in vector)
                greatest = Math.Max(greatest, Math.Abs(value));
            return greatest;
        }
    }
}
