using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// How fast free vibration dies away: the logarithmic decrement δ is the natural logarithm of the ratio of two amplitudes
/// one period apart. The total is δ = δ_s + δ_a + δ_d of the structure, the air and dampers, (F.15).
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1991-1-4:2005, F.5.</remarks>
public sealed record DampingModel
{
    private const double TwoPi = 2 * Math.PI;

    /// <summary>Logarithmic decrement of the structure itself δ_s, 0.001 to 1.</summary>
    public required double StructuralDecrement { get; init; }

    /// <summary>Dampers built in for the purpose: what they add, δ_d, counts in the modes that they are tuned to.</summary>
    public ValueList<TunedDamper> Dampers { get; init; } = [];

    /// <summary>The kind of structure whose table value was taken; null when the decrement was given.</summary>
    public DampingCategory? Category { get; private init; }

    /// <summary>Where <see cref="StructuralDecrement"/> comes from.</summary>
    public Source StructuralSource => IsFromTable ? Source.En1991_1_4("Table F.2") : Source.User;

    /// <summary>The table value until a measured one is given, and that dampers are kept; empty for a value that was given, without dampers.</summary>
    public IReadOnlyList<Assumption> Assumptions =>
    [
        .. IsFromTable ? [new Assumption("structural damping", Invariant($"logarithmic decrement {StructuralDecrement:0.###} of a {InWords(Category!.Value)}, in all modes"), StructuralSource)] : Array.Empty<Assumption>(),
        .. Dampers.Where(damper => damper.Decrement > 0).Select(damper => damper.Assumption),
    ];

    private bool IsFromTable => Category is { } category && StructuralDecrement == TableValue(category);

    /// <summary>The damping that the standard's table gives to a kind of structure.</summary>
    /// <param name="category">The kind of structure.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kind.</exception>
    public static DampingModel Of(DampingCategory category) => new() { StructuralDecrement = TableValue(category), Category = category };

    /// <summary>The damping of a structure whose damping ratio is known.</summary>
    /// <param name="dampingRatio">Damping ratio ζ as a part of critical damping, from 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is out of range.</exception>
    public static DampingModel OfRatio(double dampingRatio) => new() { StructuralDecrement = DecrementOf(dampingRatio) };

    /// <summary>Structural decrement δ_s of a kind of structure. Source: EN 1991-1-4:2005, Table F.2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kind.</exception>
    public static double TableValue(DampingCategory category) => category switch
    {
        DampingCategory.SteelBuilding => 0.05,
        DampingCategory.MixedBuilding => 0.08,
        DampingCategory.ConcreteBuilding => 0.10,
        DampingCategory.ConcreteTower => 0.03,
        DampingCategory.WeldedSteelTube => 0.012,
        DampingCategory.InsulatedSteelTube => 0.020,
        DampingCategory.WeldedLattice => 0.02,
        DampingCategory.FrictionBoltedLattice => 0.03,
        DampingCategory.BoltedLattice => 0.05,
        _ => throw new ArgumentOutOfRangeException(nameof(category), category, "There is no such kind of structure."),
    };

    /// <summary>Logarithmic decrement δ = 2πζ/√(1−ζ²) of a damping ratio; exact for viscous damping.</summary>
    /// <param name="dampingRatio">Damping ratio ζ, from 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is out of range.</exception>
    public static double DecrementOf(double dampingRatio) =>
        TwoPi * Ratio(dampingRatio) / Math.Sqrt((1 - dampingRatio) * (1 + dampingRatio));

    /// <summary>Damping ratio ζ = δ/√(4π²+δ²) of a logarithmic decrement; exact for viscous damping.</summary>
    /// <param name="decrement">Logarithmic decrement δ, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The decrement is negative or not finite.</exception>
    public static double RatioOf(double decrement) => Decrement(decrement) / Math.Sqrt(TwoPi * TwoPi + decrement * decrement);

    /// <summary>Logarithmic decrement δ ≈ 2πζ; 1 % low at ζ = 0.14.</summary>
    /// <inheritdoc cref="DecrementOf"/>
    public static double SmallDecrementOf(double dampingRatio) => TwoPi * Ratio(dampingRatio);

    /// <summary>Damping ratio ζ ≈ δ/2π; 1 % high at δ = 0.89.</summary>
    /// <inheritdoc cref="RatioOf"/>
    public static double SmallRatioOf(double decrement) => Decrement(decrement) / TwoPi;

    /// <summary>What acts without any wind, δ_s + δ_d.</summary>
    /// <param name="frequency">Frequency of the mode, Hz.</param>
    /// <param name="lowest">Frequency of the lowest mode, Hz.</param>
    internal double DecrementAt(double frequency, double lowest) =>
        StructuralDecrement + Dampers.Where(damper => damper.ActsAt(frequency, lowest)).Sum(damper => damper.Decrement);

    internal void Validate(Validator v)
    {
        v.InRange(StructuralDecrement, 0.001, 1, "Logarithmic decrements of structures lie near 0.01 to 0.1; the damping ratio is 2π times less.");
        ValidateDampers(v);
    }

    internal void ValidateDampers(Validator v)
    {
        foreach ((_, TunedDamper damper, Validator at) in v.Items(Dampers, 100))
            damper.Validate(at);
    }

    private static string InWords(DampingCategory category) => category switch
    {
        DampingCategory.SteelBuilding => "steel building",
        DampingCategory.MixedBuilding => "building of concrete and steel",
        DampingCategory.ConcreteBuilding => "concrete building",
        DampingCategory.ConcreteTower => "concrete tower",
        DampingCategory.WeldedSteelTube => "welded steel tube",
        DampingCategory.InsulatedSteelTube => "welded steel tube with insulation",
        DampingCategory.WeldedLattice => "welded lattice tower",
        DampingCategory.FrictionBoltedLattice => "lattice tower with friction-grip bolts",
        _ => "lattice tower with ordinary bolts",
    };

    private static double Ratio(double dampingRatio) =>
        dampingRatio is >= 0 and < 1
            ? dampingRatio
            : throw new ArgumentOutOfRangeException(nameof(dampingRatio), Invariant($"Must be from 0 to below 1, is {dampingRatio}."));

    private static double Decrement(double decrement) =>
        decrement is >= 0 and < double.PositiveInfinity
            ? decrement
            : throw new ArgumentOutOfRangeException(nameof(decrement), Invariant($"Must be zero or more, is {decrement}."));
}
