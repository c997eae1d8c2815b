namespace StatueFrame;

/// <summary>
/// The soil factor and the corner periods of a spectrum: it rises to the corner T_B, is flat to T_C, falls with 1/T to T_D
/// and with 1/T² from there on.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1998-1:2004, 3.2.2.2, Tables 3.2 to 3.4.</remarks>
/// <param name="S">Soil factor, 0.5 to 5.</param>
/// <param name="TB">Start of the plateau, s; above zero.</param>
/// <param name="TC">End of the plateau, s; at or above <paramref name="TB"/>.</param>
/// <param name="TD">Start of constant displacement, s; at or above <paramref name="TC"/>.</param>
public sealed record SpectrumShape(double S, double TB, double TC, double TD)
{
    /// <summary>The recommended values for horizontal motion. Source: EN 1998-1:2004, Tables 3.2 and 3.3.</summary>
    /// <param name="type">Type of spectrum.</param>
    /// <param name="ground">Ground type.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such type or ground.</exception>
    public static SpectrumShape Horizontal(En1998SpectrumType type, GroundType ground) => (type, ground) switch
    {
        (En1998SpectrumType.Type1, GroundType.A) => new(1.0, 0.15, 0.4, 2.0),
        (En1998SpectrumType.Type1, GroundType.B) => new(1.2, 0.15, 0.5, 2.0),
        (En1998SpectrumType.Type1, GroundType.C) => new(1.15, 0.20, 0.6, 2.0),
        (En1998SpectrumType.Type1, GroundType.D) => new(1.35, 0.20, 0.8, 2.0),
        (En1998SpectrumType.Type1, GroundType.E) => new(1.4, 0.15, 0.5, 2.0),
        (En1998SpectrumType.Type2, GroundType.A) => new(1.0, 0.05, 0.25, 1.2),
        (En1998SpectrumType.Type2, GroundType.B) => new(1.35, 0.05, 0.25, 1.2),
        (En1998SpectrumType.Type2, GroundType.C) => new(1.5, 0.10, 0.25, 1.2),
        (En1998SpectrumType.Type2, GroundType.D) => new(1.8, 0.10, 0.30, 1.2),
        (En1998SpectrumType.Type2, GroundType.E) => new(1.6, 0.05, 0.25, 1.2),
        _ => throw new ArgumentOutOfRangeException(nameof(ground), $"There is no spectrum of {type} for ground {ground}."),
    };

    /// <summary>The recommended values for vertical motion, on any ground. Source: EN 1998-1:2004, Table 3.4.</summary>
    public static SpectrumShape Vertical { get; } = new(1.0, 0.05, 0.15, 1.0);

    internal void Validate(Validator v)
    {
        v.InRange(S, 0.5, 5, "Soil factors lie near 1 to 1.8.");
        v.InRange(TB, 0.001, 10, "It is a period in seconds, near 0.05 to 0.2.");
        v.InRange(TC, TB, 20, "It is a period in seconds, at or above TB.");
        v.InRange(TD, TC, 100, "It is a period in seconds, at or above TC.");
    }
}
