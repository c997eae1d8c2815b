using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// A frame stepped in its own freedoms by Newmark's method with γ = ½, which takes parts that yield. Damping is
/// C = a M + b K with the elastic stiffness. Each step is iterated with the elastic stiffness until it is in equilibrium.
/// </summary>
/// <remarks>
/// For one thread. β = ¼ takes the acceleration as its mean over the step: stable for any step, and the energies of a
/// linear frame balance to rounding. β = 1/6 takes it as linear; stable up to a step of 0.55 of the shortest period.
/// Source: Newmark (1959), "A method of computation for structural dynamics", ASCE J. Eng. Mech. Div. 85.
/// </remarks>
public sealed class DirectIntegration
{
    private const int MostIterations = 200;
    private const double Settled = 1e-11;

    private readonly double a, b, h, beta;
    private readonly IYieldingPart? yielding;
    private readonly LdlFactorization effective;
    private readonly double[] u, v, acceleration, force, next, guess, relief, scratch, product, inertia, massProduct;
    private readonly double[] full, fullRelief;

    /// <summary>Prepares the stepping of a frame at rest.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="massDamping">a, 1/s; zero or more.</param>
    /// <param name="stiffnessDamping">b, s; zero or more.</param>
    /// <param name="step">h, s; positive.</param>
    /// <param name="yielding">What yields; null for a linear frame.</param>
    /// <param name="beta">β, from 1/8 to 1/2; ¼ unless given.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public DirectIntegration(
        Frame frame, double massDamping, double stiffnessDamping, double step, IYieldingPart? yielding = null, double beta = 0.25)
    {
        Require(massDamping >= 0 && double.IsFinite(massDamping), nameof(massDamping));
        Require(stiffnessDamping >= 0 && double.IsFinite(stiffnessDamping), nameof(stiffnessDamping));
        Require(step > 0 && double.IsFinite(step), nameof(step));
        Require(beta is >= 0.125 and <= 0.5, nameof(beta));
        Frame = frame;
        (a, b, h, this.beta, this.yielding) = (massDamping, stiffnessDamping, step, beta, yielding);
        int n = frame.EquationCount;
        (u, v, acceleration, force, next, guess) = (new double[n], new double[n], new double[n], new double[n], new double[n], new double[n]);
        (relief, scratch, product, inertia, massProduct) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
        (full, fullRelief) = (new double[frame.FreedomCount], new double[frame.FreedomCount]);
        double m = 1 / (beta * h * h) + a / (2 * beta * h), k = 1 + b / (2 * beta * h);
        effective = Pivots.FactorPositive(frame, SymmetricMatrix.Combine(m, frame.Mass, k, frame.Stiffness));
    }

    /// <summary>The frame.</summary>
    public Frame Frame { get; }

    /// <summary>Work of the loads so far, J, by the trapezoidal rule; what the start brought in is not part of it.</summary>
    public double Work { get; private set; }

    /// <summary>Energy that damping has taken so far, J.</summary>
    public double Damped { get; private set; }

    /// <summary>Kinetic energy, J.</summary>
    public double Kinetic => 0.5 * Product(Frame.Mass, v);

    /// <summary>Elastic energy, J.</summary>
    public double Strain => 0.5 * Product(Frame.Stiffness, u) + (yielding?.StrainCorrection ?? 0);

    /// <summary>Starts from displacements and velocities under loads; all full vectors, empty for none.</summary>
    public void Start(ReadOnlySpan<double> displacements, ReadOnlySpan<double> velocities, ReadOnlySpan<double> loads)
    {
        Load(displacements, u);
        Load(velocities, v);
        Load(loads, force);
        Expand(u);
        yielding?.Accept(full);
        Relieve(u);
        Damping(v, product);
        Frame.Stiffness.Multiply(u, acceleration);
        for (int i = 0; i < acceleration.Length; i++)
            acceleration[i] = force[i] + relief[i] - product[i] - acceleration[i];
        // A trace of stiffness keeps freedoms without mass from having no acceleration at all.
        double trace = 1e-6 * h;
        Pivots.FactorPositive(Frame, SymmetricMatrix.Combine(1, Frame.Mass, trace * trace, Frame.Stiffness)).Solve(acceleration);
        (Work, Damped) = (0, 0);
    }

    /// <summary>Goes one step ahead.</summary>
    /// <param name="loads">A full vector: the loads at the end of the step; N, N·m.</param>
    /// <exception cref="FrameException">The step does not come to equilibrium: it is too long for what yields.</exception>
    public void Step(ReadOnlySpan<double> loads)
    {
        int n = u.Length;
        Load(loads, next);
        // K̂ u₁ = f₁ + M (u₀/βh² + v₀/βh + (1/2β − 1) a₀) + C (u₀/2βh + (1/2β − 1) v₀ + h (1/4β − 1) a₀) + (K u₁ − f(u₁))
        double c1 = 1 / (beta * h * h), c2 = 1 / (beta * h), c3 = 1 / (2 * beta) - 1;
        double d1 = 1 / (2 * beta * h), d2 = 1 / (2 * beta) - 1, d3 = h * (1 / (4 * beta) - 1);
        for (int i = 0; i < n; i++)
            scratch[i] = d1 * u[i] + d2 * v[i] + d3 * acceleration[i];
        Damping(scratch, product);
        for (int i = 0; i < n; i++)
            scratch[i] = c1 * u[i] + c2 * v[i] + c3 * acceleration[i];
        Frame.Mass.Multiply(scratch, inertia);
        for (int i = 0; i < n; i++)
            inertia[i] += product[i] + next[i];
        u.CopyTo(guess, 0);
        Iterate();
        for (int i = 0; i < n; i++)
        {
            double moved = guess[i] - u[i], v1 = d1 * moved - d2 * v[i] - d3 * acceleration[i];
            acceleration[i] = c1 * moved - c2 * v[i] - c3 * acceleration[i];
            Work += 0.5 * (force[i] + next[i]) * moved;
            scratch[i] = moved;
            v[i] = v1;
        }
        Damping(scratch, product);
        Damped += DenseVector.Dot(scratch, product) / h;
        guess.CopyTo(u, 0);
        next.CopyTo(force, 0);
        Expand(u);
        yielding?.Accept(full);
    }

    /// <summary>Copies the motion out as a full vector.</summary>
    public void CopyTo(Span<double> vector, Motion motion = Motion.Displacement) => Frame.Expand(motion switch
    {
        Motion.Displacement => u,
        Motion.Velocity => v,
        _ => acceleration,
    }, vector);

    private void Iterate()
    {
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            inertia.CopyTo(scratch, 0);
            if (yielding is not null)
            {
                Relieve(guess);
                DenseVector.AddScaled(scratch, 1, relief);
            }
            effective.Solve(scratch);
            double change = 0, size = 0;
            for (int i = 0; i < scratch.Length; i++)
            {
                change = Math.Max(change, Math.Abs(scratch[i] - guess[i]));
                size = Math.Max(size, Math.Abs(scratch[i]));
                guess[i] = scratch[i];
            }
            if (yielding is null || change <= Settled * size)
                return;
        }
        throw new FrameException(new FrameProblem("A step in time does not come to equilibrium: make it shorter."));
    }

    private void Relieve(ReadOnlySpan<double> at)
    {
        if (yielding is null)
            return;
        Frame.Expand(at, full);
        Array.Clear(fullRelief);
        yielding.AddRelief(full, fullRelief);
        Frame.Reduce(fullRelief, relief);
    }

    private void Expand(ReadOnlySpan<double> reduced) => Frame.Expand(reduced, full);

    private void Load(ReadOnlySpan<double> vector, double[] reduced)
    {
        Array.Clear(reduced);
        if (vector.Length == 0)
            return;
        Frame.RequireFull(vector, nameof(vector));
        Frame.Reduce(vector, reduced);
    }

    /// <summary>y = C x.</summary>
    private void Damping(ReadOnlySpan<double> x, double[] y)
    {
        Array.Clear(y);
        if (b > 0)
        {
            Frame.Stiffness.Multiply(x, y);
            DenseVector.Scale(y, b);
        }
        if (a > 0)
        {
            Frame.Mass.Multiply(x, massProduct);
            DenseVector.AddScaled(y, a, massProduct);
        }
    }

    private double Product(SymmetricMatrix matrix, ReadOnlySpan<double> x)
    {
        matrix.Multiply(x, product);
        return DenseVector.Dot(x, product);
    }

    private static void Require(bool holds, string name)
    {
        if (!holds)
            throw new ArgumentOutOfRangeException(name);
    }
}
