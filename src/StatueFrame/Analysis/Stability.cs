using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// Second-order effects of the load case in which the statue buckles first: by how much the loads' action on the swayed statue
/// adds to the sway, and at which multiple of the loads it buckles.
/// </summary>
/// <remarks>
/// <para>Small rotations; geometric stiffness of the tower's and the limbs' members. Tension-only braces act as in the modes.</para>
/// <para>Immutable and safe to share between threads.</para>
/// <para>Source of the factor's use: EN 1993-1-1:2005, 5.2.1 (3): second-order effects may be left out when it is 10 or more.</para>
/// </remarks>
public sealed class Stability
{
    /// <summary>Above this factor buckling is out of reach, and the factor is not looked for.</summary>
    internal const double GreatestFactor = 1e4;

    /// <summary>Relative change of displacements at which the second-order analysis stops; what is left is about a thousandth of it.</summary>
    internal const double Settled = 1e-6;

    /// <summary>How much earlier, relative, it must buckle in another load case to count: by more than rounding.</summary>
    internal const double Earlier = 1e-6;

    private Stability(StatueModel model, LoadCase loadCase, ReadOnlySpan<double> nodal, double[] first, SymmetricMatrix geometric, BucklingResult buckling)
    {
        Case = loadCase;
        try
        {
            Amplification = SecondOrder.Solve(model.Statics, nodal, first, geometric, new SecondOrderOptions { Tolerance = Settled }).Amplification;
        }
        catch (UnstableFrameException e)
        {
            Amplification = null;
            Instability = $"the loads are at or beyond those at which it buckles; it gives way most in {LooseParts.Where(model.Bodies, e.Problems[0])}";
        }
        BucklingFactor = Least(buckling);
        Error = buckling.Error;
        IsLost = !buckling.MissedNone || (BucklingFactor is null && Amplification is null);
    }

    /// <summary>Of the load case in which the statue buckles first; of those in which it does at the same factor, or does not, the first.</summary>
    /// <param name="model">The statue.</param>
    /// <param name="cases">Its load cases.</param>
    /// <param name="nodal">What they put on the nodes, one after the other.</param>
    internal static Stability Of(StatueModel model, ReadOnlySpan<LoadCase> cases, ReadOnlySpan<double> nodal)
    {
        int size = model.Frame.FreedomCount;
        double[] first = model.Statics.Solve(nodal);
        (int At, SymmetricMatrix Geometric, BucklingResult Buckling)? least = null;
        for (int i = 0; i < cases.Length && least is not { Buckling.MissedNone: false }; i++)
        {
            // Of every other case only whether it buckles earlier is asked, and if so, when.
            double limit = least is null || Least(least.Value.Buckling) is not { } known ? GreatestFactor : (1 - Earlier) * known;
            SymmetricMatrix geometric = model.Frame.GeometricStiffness(first.AsSpan(i * size, size));
            BucklingResult buckling = LinearBuckling.Solve(model.Statics, geometric, 1, limit);
            if (least is null || Least(buckling) is not null || !buckling.MissedNone)
                least = (i, geometric, buckling);
        }
        (int at, SymmetricMatrix softened, BucklingResult found) = least!.Value;
        return new Stability(model, cases[at], nodal.Slice(at * size, size), first[(at * size)..((at + 1) * size)], softened, found);
    }

    private static double? Least(BucklingResult buckling) => buckling.LoadFactors.Length > 0 ? buckling.LoadFactors[0] : null;

    /// <summary>The load case.</summary>
    public LoadCase Case { get; }

    /// <summary>The wind's heading; null without wind.</summary>
    public Angle? Heading => Case.Heading;

    /// <summary>Greatest displacement with second-order effects over that without; null when the statue does not stand.</summary>
    public double? Amplification { get; }

    /// <summary>The multiple of the loads at which the statue buckles, α_cr; null when it is above 10 000.</summary>
    public double? BucklingFactor { get; }

    /// <summary>What a sheet says when <see cref="IsLost"/>.</summary>
    internal const string Lost = "the count of buckling factors says that some lie below the limit, and the lowest was not found";

    /// <summary>A bound of the relative error of the factor.</summary>
    internal double Error { get; }

    /// <summary>True when the lowest factor could not be proved: then nothing may rest on it.</summary>
    internal bool IsLost { get; }

    /// <summary>Why there is no amplification; empty when the statue stands.</summary>
    public string Instability { get; } = "";
}
