using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Statics;

/// <summary>Says in words which part of a frame is loose when a factorization meets pivots that are not positive.</summary>
internal static class Pivots
{
    /// <summary>Factors the plain stiffness (or the stiffness with some mass added) and insists that it is positive.</summary>
    /// <exception cref="FrameException">The frame is a mechanism, or some stiffness is negative.</exception>
    public static LdlFactorization FactorPositive(Frame frame, SymmetricMatrix matrix)
    {
        var factors = new LdlFactorization(frame.Symbolic);
        factors.Factor(matrix);
        if (factors.SingularEquation >= 0)
        {
            throw new FrameException(At(frame, frame.FreedomOf(factors.SingularEquation),
                "The frame is a mechanism: nothing resists {0} once the rest of the frame has given way. Restrain it, or attach something stiff."));
        }
        if (factors.NegativePivots > 0)
        {
            throw new FrameException(At(frame, LoosestFreedom(frame, factors),
                $"The stiffness of the frame is negative in {factors.NegativePivots} way(s), most in {{0}}: some element or spring has negative stiffness."));
        }
        return factors;
    }

    /// <summary>A problem at a freedom; {0} in the message becomes the freedom's description.</summary>
    public static FrameProblem At(Frame frame, int freedom, string message) =>
        new(message.Replace("{0}", frame.Describe(freedom), StringComparison.Ordinal), freedom / Frame.NodeSize,
            (Freedoms)(1 << freedom % Frame.NodeSize));

    /// <summary>The freedom that moves most in the softest motion of a matrix, found by a few steps of inverse iteration.</summary>
    public static int LoosestFreedom(Frame frame, LdlFactorization factors)
    {
        if (factors.SingularEquation >= 0)
            return frame.FreedomOf(factors.SingularEquation);
        var motion = new double[frame.EquationCount];
        new StartVectors().Fill(motion);
        for (int i = 0; i < 6; i++)
        {
            factors.Solve(motion);
            DenseVector.Orient(motion, 1);
        }
        int most = 0;
        for (int equation = 1; equation < motion.Length; equation++)
        {
            if (motion[equation] > motion[most])
                most = equation;
        }
        return frame.FreedomOf(most);
    }
}
