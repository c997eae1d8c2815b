using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Mechanics.Vibration;

/// <summary>Natural vibration: the lowest solutions of K φ = ω² M φ.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. The lowest frequencies are the most exact: rounding errs ω² of a mode by
/// about 1e-15·(ω/ω₁)², relative.
/// </remarks>
public static class Modes
{
    /// <summary>Finds the lowest modes, repeated ones as often as they occur.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="count">
    /// How many modes; fewer are returned when the frame has fewer, as many as its moving masses have freedoms.
    /// </param>
    /// <param name="options">Defaults when null.</param>
    /// <exception cref="FrameException">
    /// The frame is a mechanism (and <see cref="ModeOptions.Shift"/> is zero), has negative stiffness, or has no mass.
    /// </exception>
    public static ModeSet Solve(Frame frame, int count, ModeOptions? options = null)
    {
        options ??= new ModeOptions();
        if (!double.IsFinite(options.Shift) || options.Shift < 0)
            throw new ArgumentException("The shift must be zero or a positive number.", nameof(options));
        SymmetricMatrix shifted = options.Shift == 0
            ? frame.Stiffness
            : SymmetricMatrix.Combine(1, frame.Stiffness, options.Shift, frame.Mass);
        return Solve(frame, shifted, Pivots.FactorPositive(frame, shifted), count, options);
    }

    /// <summary>The lowest modes, from a stiffness that is factored already.</summary>
    /// <param name="statics">The first-order analysis of the frame.</param>
    /// <param name="count">As in the other method.</param>
    /// <exception cref="FrameException">The frame has no mass.</exception>
    public static ModeSet Solve(LinearStatics statics, int count) =>
        Solve(statics.Frame, statics.Frame.Stiffness, statics.Factors, count, new ModeOptions());

    private static ModeSet Solve(Frame frame, SymmetricMatrix shifted, LdlFactorization factors, int count, ModeOptions options)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(count);
        using var lanczos = new GeneralizedLanczos(shifted, frame.Mass, factors);
        lanczos.Solve(Math.Min(count, frame.EquationCount));
        if (lanczos.Found == 0)
            throw new FrameException(new FrameProblem("The frame has no modes: none of its unrestrained freedoms has mass."));
        return Collect(frame, options, lanczos);
    }

    private static ModeSet Collect(Frame frame, ModeOptions options, GeneralizedLanczos lanczos)
    {
        var omega = new double[lanczos.Found];
        var shapes = new double[lanczos.Found * frame.FreedomCount];
        var reduced = new double[frame.EquationCount];
        double error = 0;
        for (int i = 0; i < omega.Length; i++)
        {
            double theta = lanczos.Value(i);
            omega[i] = Math.Sqrt(Math.Max(0, 1 / theta - options.Shift));
            lanczos.Vector(i, reduced);
            error = Math.Max(error, lanczos.ErrorOf(theta, reduced));
            DenseVector.Scale(reduced, 1 / Math.Sqrt(theta));
            DenseVector.Orient(reduced);
            frame.Expand(reduced, shapes.AsSpan(i * frame.FreedomCount, frame.FreedomCount));
        }
        return new ModeSet(frame, options.Point, omega, shapes, lanczos.Counted, lanczos.MissedNone, error);
    }
}
