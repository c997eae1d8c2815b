using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Statics;

/// <summary>
/// The largest positive eigenvalues θ of B x = θ A x, with A positive definite and B symmetric, by a banded Lanczos
/// process in the scalar product of A. Pairs that are still far from settled when the process would have settled
/// well-spaced ones have close neighbors; they are settled by Rayleigh quotient steps, whose vectors join the space.
/// The number of negative pivots of A − B/σ (Sylvester's law of inertia) proves that no eigenvalue was missed; while it
/// says that one was, the process goes on with new start vectors.
/// </summary>
/// <remarks>For one thread. The factorization that it is given must hold A, and holds it at the end.</remarks>
internal sealed class GeneralizedLanczos(SymmetricMatrix a, SymmetricMatrix b, LdlFactorization factors) : IDisposable
{
    private const int BlockSize = 2;
    private const double Tolerance = 1e-10, Rounding = 1e-13, BisectionWidth = 1e-9;

    /// <summary>The distance of a shift from the Ritz value, relative; the least at which the matrix is regular is taken.</summary>
    private const double LeastOffset = 1e-8, GreatestOffset = 1e-3;

    private readonly RitzSpace space = new(a, b, factors);
    private readonly SymmetricMatrix shifted = new(a.Pattern);
    private readonly LdlFactorization shiftedFactors = new(factors.Symbolic);
    private StartVectors random = new();

    /// <summary>Whether the space holds vectors of Rayleigh quotient steps, so that residuals must be computed as they stand.</summary>
    private bool refined;

    /// <summary>How many pairs were found; less than wanted only when there are no more.</summary>
    public int Found { get; private set; }

    /// <summary>Number of eigenvalues above the one at which the count was made, by negative pivots.</summary>
    public int Counted { get; private set; }

    /// <summary>True when the count agrees with what was found.</summary>
    public bool MissedNone { get; private set; }

    /// <summary>The eigenvalue θ of pair <paramref name="i"/>, descending.</summary>
    public double Value(int i) => space.Value(i);

    /// <summary>The eigenvector of pair <paramref name="i"/>, of length 1 in the scalar product of A.</summary>
    public void Vector(int i, Span<double> x) => space.Vector(i, x);

    /// <summary>The number of eigenvalues above <paramref name="theta"/> &gt; 0.</summary>
    public int CountAbove(double theta)
    {
        for (int attempt = 0; ; attempt++)
        {
            FactorShifted(theta);
            if (shiftedFactors.SingularEquation < 0 || attempt == 3)
                return shiftedFactors.NegativePivots;
            theta *= 1 - 1e-7;
        }
    }

    /// <summary>
    /// The eigenvalue number <paramref name="i"/>, descending, between two others by halving the range on the count of negative
    /// pivots, with its vector by inverse iteration: where rounding keeps the process from settling. Zero when the count does
    /// not tell.
    /// </summary>
    /// <param name="i">Its number, from 0.</param>
    /// <param name="least">An eigenvalue below it.</param>
    /// <param name="greatest">An eigenvalue above it.</param>
    /// <param name="vector">Becomes its vector.</param>
    public double Bisect(int i, double least, double greatest, Span<double> vector)
    {
        if (CountAbove(greatest) > i || CountAbove(least) <= i)
            return 0;
        while (greatest > (1 + BisectionWidth) * least)
        {
            double middle = Math.Sqrt(least * greatest);
            if (CountAbove(middle) > i)
                least = middle;
            else
                greatest = middle;
        }
        FactorShifted(greatest);
        var x = new double[a.Order];
        random.Fill(x);
        for (int step = 0; step < 3; step++)
        {
            b.Multiply(x, vector);
            shiftedFactors.Solve(vector);
            double length = DenseVector.LargestMagnitude(vector);
            for (int k = 0; k < x.Length; k++)
                x[k] = vector[k] / length;
        }
        x.CopyTo(vector);
        return Math.Sqrt(least * greatest);
    }

    /// <summary>
    /// A bound of the relative error of an eigenvalue: ‖A⁻¹B x − θ x‖ over θ‖x‖, lengths in the scalar product of A, with A x and
    /// B x formed anew. An eigenvalue lies within it of θ.
    /// </summary>
    /// <remarks>Source: Parlett, The Symmetric Eigenvalue Problem, 4.5 and 15.9.</remarks>
    public double ErrorOf(double theta, ReadOnlySpan<double> x)
    {
        double[] ax = new double[a.Order], left = new double[a.Order];
        a.Multiply(x, ax);
        b.Multiply(x, left);
        double square = DenseVector.Dot(x, ax);
        DenseVector.AddScaled(left, -theta, ax);
        left.CopyTo(ax, 0);
        factors.Solve(ax);
        return Math.Sqrt(Math.Max(0, DenseVector.Dot(left, ax)) / square) / theta;
    }

    /// <summary>Finds the <paramref name="wanted"/> largest positive eigenvalues.</summary>
    public void Solve(int wanted)
    {
        space.Reserve(Math.Min(a.Order, 3 * wanted + 8) + BlockSize);
        Start();
        int next = 2 * wanted + 10, patience = next + Patience();
        while (true)
        {
            while (space.Processed < space.Count && space.Processed < next)
                space.Step(3 * BlockSize);
            bool closed = !refined && space.Processed == space.Count;
            space.FindPairs();
            int converged = Converged(closed);
            if (closed && converged < wanted && Start())
            {
                next = space.Processed + BlockSize;
                continue;
            }
            if (!closed && converged <= LastOfCluster(wanted - 1))
            {
                if (space.Processed < space.Count && space.Processed < patience)
                {
                    next = space.Processed + Math.Max(4, wanted / 3);
                    continue;
                }
                converged = Refine(converged, wanted);
            }
            int last = LastOfCluster(Math.Min(wanted, converged) - 1);
            bool found = closed || last < converged;
            if (found)
            {
                Verify(last, Math.Min(wanted, converged));
                if (MissedNone || Counted <= last)
                    return;
            }
            if ((found || space.Processed == space.Count) && !Start())
                return;
            next = space.Processed + Math.Max(4, wanted / 3);
        }
    }

    /// <summary>
    /// Steps worth taking before pairs are refined: where a factorization costs many solutions, the process had better go on
    /// until close neighbors settle by themselves.
    /// </summary>
    private int Patience() => factors.Symbolic.WorkRatio < 2 ? 0 : (int)Math.Min(4 * factors.Symbolic.WorkRatio, 200);

    /// <summary>Gives back the rented room.</summary>
    public void Dispose() => space.Dispose();

    /// <summary>Appends start vectors A⁻¹B r with random r; false when nothing new is left in that range.</summary>
    private bool Start()
    {
        int before = space.Count;
        var r = new double[a.Order];
        for (int i = 0; i < BlockSize && space.Count < a.Order; i++)
        {
            random.Fill(r);
            space.AppendSolved(r);
        }
        return space.Count > before;
    }

    /// <summary>How many of the largest positive eigenvalues have converged, as the steps tell; none when they cannot tell.</summary>
    private int Converged(bool closed)
    {
        int i = 0;
        while (!refined && space.IsPositive(i) && (closed || space.ResidualOfSteps(i) <= Tolerance * Value(i)))
            i++;
        return i;
    }

    /// <summary>
    /// Settles the pairs from number <paramref name="converged"/> to the wanted ones, and to the end of the last one's
    /// cluster, by steps x ← (A − B/θ)⁻¹ B x that join the space. Returns how many of the largest are settled.
    /// </summary>
    private int Refine(int converged, int wanted)
    {
        refined = true;
        var x = new double[a.Order];
        var bx = new double[a.Order];
        for (int first = converged; ; first = 0)
        {
            space.Close();
            space.FindPairs();
            int target = Math.Max(wanted, LastOfCluster(wanted - 1) + 1), settled = -1, before = space.Count;
            for (int i = first; i < target; i++)
            {
                if (!space.IsPositive(i))
                    return settled < 0 ? i : settled;
                if (space.Residual(i, x, bx) <= Tolerance * Value(i) + Rounding * Value(0))
                    continue;
                settled = settled < 0 ? i : settled;
                if (!ShiftNear(Value(i)))
                    continue;
                shiftedFactors.Solve(bx);
                space.AppendVector(bx);
            }
            if (settled < 0)
                return target;
            if (space.Count == before)
                return settled;
        }
    }

    private bool ShiftNear(double theta)
    {
        for (double offset = LeastOffset; offset < GreatestOffset; offset *= 100)
        {
            FactorShifted((1 + offset) * theta);
            if (!shiftedFactors.IsSingular)
                return true;
        }
        return false;
    }

    private void FactorShifted(double theta)
    {
        ReadOnlySpan<double> av = a.Values, bv = b.Values;
        Span<double> difference = shifted.Values;
        double factor = 1 / theta;
        for (int k = 0; k < difference.Length; k++)
            difference[k] = av[k] - factor * bv[k];
        shiftedFactors.Factor(shifted);
    }

    /// <summary>The last of the eigenvalues that equal number <paramref name="i"/> within 1e-6.</summary>
    private int LastOfCluster(int i)
    {
        while (i >= 0 && space.IsPositive(i + 1) && Value(i + 1) > (1 - 1e-6) * Value(i))
            i++;
        return i;
    }

    private void Verify(int last, int wanted)
    {
        Found = wanted;
        MissedNone = last < 0;
        if (last < 0)
            return;
        double lambda = 1 / Value(last), step = 1e-3 * lambda;
        if (space.IsPositive(last + 1))
            step = Math.Min(step, 0.5 * (1 / Value(last + 1) - lambda));
        Counted = CountAbove(1 / (lambda + step));
        MissedNone = Counted == last + 1;
    }
}
