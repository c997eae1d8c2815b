using System.Globalization;

namespace StatueFrame.Analysis;

/// <summary>
/// The damping of the structure itself: friction in joints and material, without that of the air. Small, uncertain, and
/// decisive for the resonant sway: measure it if you can.
/// </summary>
/// <remarks>Immutable and safe to share between threads. The values of Table F.2 are from memory.</remarks>
/// <param name="LogDecrement">Logarithmic decrement δ_s, as in 0.02: greater than 0, at most 1; 2π times the damping ratio.</param>
/// <param name="Source">Where the value comes from.</param>
public sealed record StructuralDamping(double LogDecrement, Source Source)
{
    /// <summary>Welded lattice tower, δ_s = 0.02: the least of its kind, taken when nothing is given.</summary>
    public static StructuralDamping WeldedLattice { get; } = new(0.02, Source.En1991_1_4("Table F.2, lattice steel towers, welded"));

    /// <summary>Lattice tower with high-resistance bolts, δ_s = 0.03.</summary>
    public static StructuralDamping TightlyBoltedLattice { get; } = new(0.03, Source.En1991_1_4("Table F.2, lattice steel towers, high resistance bolts"));

    /// <summary>Lattice tower with ordinary bolts, δ_s = 0.05.</summary>
    public static StructuralDamping BoltedLattice { get; } = new(0.05, Source.En1991_1_4("Table F.2, lattice steel towers, ordinary bolts"));

    /// <summary>Damping ratio ξ = δ_s / 2π.</summary>
    public double Ratio => LogDecrement / (2 * Math.PI);

    /// <summary>The user's own damping ratio, as in 0.01 for 1 % of critical.</summary>
    public static StructuralDamping FromRatio(double ratio) => new(2 * Math.PI * ratio, Source.User);

    /// <summary>The user's own logarithmic decrement, as in 0.03.</summary>
    public static StructuralDamping FromLogDecrement(double logDecrement) => new(logDecrement, Source.User);

    /// <summary>The decrement in use, and the assumption that it is when none was given.</summary>
    internal static StructuralDamping InUse(StructuralDamping? given, List<Assumption> assumptions)
    {
        StructuralDamping damping = given ?? WeldedLattice;
        if (given is null)
            assumptions.Add(new Assumption("structural damping", string.Create(CultureInfo.InvariantCulture, $"logarithmic decrement {damping.LogDecrement}"), damping.Source));
        return damping;
    }

    internal void Validate(Validator v)
    {
        if (!(LogDecrement > 0))
            v.Add(nameof(LogDecrement), "must be greater than zero", "Without damping, resonance has no bound.");
        else
            v.InRange(LogDecrement, 1e-4, 1, "Give a ratio to critical with FromRatio; decrements lie near 0.01 to 0.1.");
    }
}
