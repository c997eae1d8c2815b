using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Vortex resonance by the spectral model: vortices push by chance, and the motion they make feeds itself, as negative damping
/// does, until it comes near its limit. Where the Scruton number is below 4π K_a the body swings far.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1991-1-4:2005, E.1.5.3, approach 2, from memory.</remarks>
public sealed record SpectralVortices
{
    /// <summary>Normalized limit of the amplitude a_L, Table E.6.</summary>
    internal const double Limit = 0.4;

    private static readonly Source deviation = Source.En1991_1_4("E.1.5.3 (E.15), (E.16), from memory"), peak = Source.En1991_1_4("E.1.5.3 (E.13), (E.17), from memory");

    internal SpectralVortices() { }

    /// <summary>Aerodynamic constant C_c, Table E.6.</summary>
    public required double AerodynamicConstant { get; init; }

    /// <summary>
    /// Negative damping of the air K_a: K_a,max of Table E.6, times what turbulence leaves of it, times the part of ∫Φ² ds where
    /// vortices can be in step, which is 1 for a body of one width.
    /// </summary>
    public required double AerodynamicDamping { get; init; }

    /// <summary>Height over width h/b of the body.</summary>
    public required double HeightToWidth { get; init; }

    /// <summary>Standard deviation of the movement σ_y, (E.14).</summary>
    public required Length Deviation { get; init; }

    /// <summary>Peak over standard deviation k_p, √2 of a steady swing to about 4 of chance, (E.17).</summary>
    public required double PeakFactor { get; init; }

    /// <summary>Greatest amplitude y_max = σ_y k_p, (E.13).</summary>
    public required Length Amplitude { get; init; }

    /// <summary>The numbers; null where the model does not hold.</summary>
    internal static SpectralVortices? Of(VortexInput input, VortexBody body, int strip, double criticalSpeed, double Sc, double Re)
    {
        ModeLine line = body.Line;
        if (input.Approach == VortexApproach.VortexResonance || input.Strips[strip].Section.SpectralConstants(Re) is not var (C_c, K_max) || !line.IsOfCantilever)
            return null;
        (double from, double to) = body.InStep(strip, criticalSpeed);
        double b = input.Strips[strip].Width.Meters, h = body.Edges[^1], K_a = K_max * input.TurbulenceReduction * line.SquareBetween(from, to) / line.Square;
        (double sigma, double k_p, double y) = Peak(null, b, input.Strips[strip].Section.StrouhalNumber, Sc, C_c, K_a, h / b, input.AirDensity.KilogramsPerCubicMeter, input.EquivalentMass.KilogramsPerMeter);
        return new SpectralVortices
        {
            AerodynamicConstant = C_c,
            AerodynamicDamping = K_a,
            HeightToWidth = h / b,
            Deviation = Length.FromMeters(sigma),
            PeakFactor = k_p,
            Amplitude = Length.FromMeters(y),
        };
    }

    internal static (double Deviation, double PeakFactor, double Amplitude) Peak(Working? w, double b, double St, double Sc, double C_c, double K_a, double slenderness, double rho, double m_e)
    {
        w.Given(C_c, Dimension.Number, "aerodynamic constant", deviation);
        w.Given(K_a, Dimension.Number, "negative damping of the air", deviation);
        double a_L = w.Given("a_L", Limit, Dimension.Number, "limit of the amplitude over the width", deviation);
        w.Given(slenderness, Dimension.Number, "height over width h/b");
        double S = w.Let("S", Sc / (4 * Math.PI), Dimension.Number);
        double c_1 = w.Let("c_1", a_L * a_L / 2 * (1 - S / K_a), Dimension.Number, deviation);
        double c_2 = w.Let("c_2", rho * b * b / m_e * (a_L * a_L / K_a) * (C_c * C_c / Math.Pow(St, 4)) / slenderness, Dimension.Number, deviation);
        // c₁ + √(c₁² + c₂), without its cancellation for c₁ below zero.
        double square = w.Let("square", c_1 > 0 ? c_1 + Math.Sqrt(c_1 * c_1 + c_2) : c_2 / (Math.Sqrt(c_1 * c_1 + c_2) - c_1), Dimension.Number, deviation, "(σ_y/b)²");
        double sigma = w.Let("sigma", b * Math.Sqrt(square), Dimension.SmallLength, deviation, "standard deviation of the movement");
        double k_p = w.Let("k_p", Math.Sqrt(2) * (1 + 1.2 * Math.Atan(0.75 * S / K_a)), Dimension.Number, peak, "peak factor");
        return (sigma, k_p, w.Let("y_2", k_p * sigma, Dimension.SmallLength, peak, "greatest amplitude on this body by approach 2"));
    }
}
