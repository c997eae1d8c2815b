using UnitsNet;

namespace StatueFrame;

/// <summary>The strength of a bolt.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BoltGrade
{
    private static readonly Source steel = new("EN 1993-1-8:2005", "Table 3.1");
    private static readonly Source stainless = new("EN ISO 3506-1, EN 1993-1-4:2006", "6.2, values from memory");
    private static readonly Source aisc = new("AISC 360-10", "Table J3.2; 360-16 and 360-22 keep the values");

    /// <summary>Name, as in "8.8" or "A4-70".</summary>
    public required string Name { get; init; }

    /// <summary>Ultimate strength f_ub.</summary>
    public required Pressure UltimateStrength { get; init; }

    /// <summary>Whether EN 1993-1-8 or EN 1993-1-4 knows the grade.</summary>
    public bool IsEuropean { get; init; } = true;

    /// <summary>α_v of EN 1993-1-8 with threads in the shear plane, 0.5 or 0.6; without threads it is 0.6 always.</summary>
    public double ThreadShearFactor { get; init; } = 0.5;

    /// <summary>Nominal shear strength F_nv of AISC with threads in the shear plane; null takes 0.450 F_u.</summary>
    public Pressure? AiscShearThreads { get; init; }

    /// <summary>Nominal shear strength F_nv of AISC without threads in the shear plane; null takes 0.563 F_u.</summary>
    public Pressure? AiscShearShank { get; init; }

    /// <summary>Nominal tensile strength F_nt of AISC; null takes 0.75 F_u.</summary>
    public Pressure? AiscTension { get; init; }

    /// <summary>Where the values come from.</summary>
    public required Source Source { get; init; }

    /// <summary>Name and ultimate strength on one line, as in "8.8 (800 MPa)".</summary>
    public override string ToString() => FormattableString.Invariant($"{Name} ({UltimateStrength.Megapascals:0.#} MPa)");

    /// <summary>Class 4.6: 400 MPa.</summary>
    public static BoltGrade Class46 { get; } = Steel("4.6", 400, 0.6);

    /// <summary>Class 4.8: 400 MPa.</summary>
    public static BoltGrade Class48 { get; } = Steel("4.8", 400, 0.5);

    /// <summary>Class 5.6: 500 MPa.</summary>
    public static BoltGrade Class56 { get; } = Steel("5.6", 500, 0.6);

    /// <summary>Class 5.8: 500 MPa.</summary>
    public static BoltGrade Class58 { get; } = Steel("5.8", 500, 0.5);

    /// <summary>Class 6.8: 600 MPa.</summary>
    public static BoltGrade Class68 { get; } = Steel("6.8", 600, 0.5);

    /// <summary>Class 8.8: 800 MPa.</summary>
    public static BoltGrade Class88 { get; } = Steel("8.8", 800, 0.6);

    /// <summary>Class 10.9: 1000 MPa.</summary>
    public static BoltGrade Class109 { get; } = Steel("10.9", 1000, 0.5);

    /// <summary>Stainless A2 or A4, property class 50: 500 MPa; α_v = 0.5 with threads in the shear plane.</summary>
    public static BoltGrade Stainless50 { get; } = Stainless("A2/A4-50", 500);

    /// <summary>Stainless A2 or A4, property class 70: 700 MPa, up to M24.</summary>
    public static BoltGrade Stainless70 { get; } = Stainless("A2/A4-70", 700);

    /// <summary>Stainless A2 or A4, property class 80: 800 MPa, up to M24.</summary>
    public static BoltGrade Stainless80 { get; } = Stainless("A2/A4-80", 800);

    /// <summary>ASTM F3125 grade A325 (group A): F_nv 54 or 68 ksi, F_nt 90 ksi.</summary>
    public static BoltGrade A325 { get; } = American("A325", 120, 54, 68, 90);

    /// <summary>ASTM F3125 grade A490 (group B): F_nv 68 or 84 ksi, F_nt 113 ksi.</summary>
    public static BoltGrade A490 { get; } = American("A490", 150, 68, 84, 113);

    private static BoltGrade Steel(string name, double f_ub, double factor) =>
        new() { Name = name, UltimateStrength = f_ub.Megapascals, ThreadShearFactor = factor, Source = steel };

    private static BoltGrade Stainless(string name, double f_ub) =>
        new() { Name = name, UltimateStrength = f_ub.Megapascals, Source = stainless };

    private static BoltGrade American(string name, double F_u, double threads, double shank, double tension) => new()
    {
        Name = name,
        UltimateStrength = F_u.KilopoundsForcePerSquareInch,
        IsEuropean = false,
        AiscShearThreads = threads.KilopoundsForcePerSquareInch,
        AiscShearShank = shank.KilopoundsForcePerSquareInch,
        AiscTension = tension.KilopoundsForcePerSquareInch,
        Source = aisc,
    };
}
