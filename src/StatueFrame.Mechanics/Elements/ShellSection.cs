using static System.FormattableString;

namespace StatueFrame.Mechanics.Elements;

/// <summary>The sheet of a shell: an isotropic plate of one thickness.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public readonly record struct ShellSection
{
    /// <summary>Young's modulus, Pa; positive.</summary>
    public required double E { get; init; }

    /// <summary>Poisson's ratio, 0 to below 0.5.</summary>
    public required double Nu { get; init; }

    /// <summary>Thickness, m; positive.</summary>
    public required double Thickness { get; init; }

    /// <summary>Mass per area of the middle surface, kg/m²; zero or more.</summary>
    public double Mass { get; init; }

    /// <summary>Creates a section; the required members are set in an object initializer.</summary>
    public ShellSection()
    {
    }

    /// <summary>Modulus of plane stress, E/(1 − ν²), Pa.</summary>
    internal double PlaneModulus => E / (1 - Nu * Nu);

    internal void Check()
    {
        if (!(E > 0 && double.IsFinite(E)))
            throw new ArgumentException(Invariant($"A shell needs a positive, finite Young's modulus, not {E}."), nameof(E));
        if (!(Nu is >= 0 and < 0.5))
            throw new ArgumentException(Invariant($"A shell needs a Poisson's ratio from 0 to below 0.5, not {Nu}."), nameof(Nu));
        if (!(Thickness > 0 && double.IsFinite(Thickness)))
            throw new ArgumentException(Invariant($"A shell needs a positive, finite thickness, not {Thickness}."), nameof(Thickness));
        if (!(Mass >= 0 && double.IsFinite(Mass)))
            throw new ArgumentException(Invariant($"A shell needs a finite mass per area of 0 or more, not {Mass}."), nameof(Mass));
    }
}
