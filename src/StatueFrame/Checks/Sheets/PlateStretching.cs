namespace StatueFrame.Checks;

/// <summary>
/// What stretching of the middle plane adds to a plate that deflects by more than its thickness: a term k₃ w³ in the
/// pressure, from the strain energy of one shape of deflection.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Von Kármán's equations with Airy's function solved term by term for
/// w₀ sin sin (supported) or w₀/4 (1 − cos)(1 − cos) (clamped); edges straight and free to draw in, or held. SI units.
/// Within about 5 % of the many-term solution of Levy (NACA Report 737) in deflection up to two thicknesses.
/// </remarks>
internal sealed class PlateStretching
{
    /// <summary>Pressure per cubed deflection at the middle, Pa/m³.</summary>
    public required double Cubic { get; init; }

    /// <summary>Stress of the middle plane at the middle, across the shorter way, per squared deflection, Pa/m².</summary>
    public required double MiddleStress { get; init; }

    /// <summary>The same at the middle of the longer edges.</summary>
    public required double EdgeStress { get; init; }

    /// <summary>The terms of a plate.</summary>
    /// <param name="a">Longer side, m.</param>
    /// <param name="b">Shorter side, m.</param>
    /// <param name="t">Thickness, m.</param>
    /// <param name="E">Young's modulus, Pa.</param>
    /// <param name="nu">Poisson's ratio.</param>
    /// <param name="edges">How the edges are held against turning.</param>
    /// <param name="held">True when the edges cannot draw in.</param>
    public static PlateStretching Of(double a, double b, double t, double E, double nu, PanelEdges edges, bool held)
    {
        // ∇⁴φ = E (π⁴/a²b²) w₀² Σ g cos(2pπx/a) cos(2qπy/b), with y across the shorter side b.
        (int P, int Q, double G)[] terms = edges == PanelEdges.Supported
            ? [(1, 0, 0.5), (0, 1, 0.5)]
            : [(1, 0, 0.5), (2, 0, -0.5), (0, 1, 0.5), (0, 2, -0.5), (1, 1, -1), (1, 2, 0.5), (2, 1, 0.5)];
        double k = E / (a * a * b * b), energy = 0, middle = 0, edge = 0;
        foreach ((int p, int q, double g) in terms)
        {
            double s = p * p / (a * a) + q * q / (b * b), F = k * g / (16 * s * s);
            energy += t / (2 * E) * F * F * 16 * Math.Pow(Math.PI, 4) * s * s * a * b * (p > 0 && q > 0 ? 0.25 : 0.5);
            // σ_y = ∂²φ/∂x², which acts across the shorter side; at the middle x = a/2, y = b/2; at its edge y = 0.
            double curve = -F * Math.Pow(2 * p * Math.PI / a, 2) * (p % 2 == 0 ? 1 : -1);
            middle += curve * (q % 2 == 0 ? 1 : -1);
            edge += curve;
        }
        if (held)
        {
            double strain = edges == PanelEdges.Supported ? Math.PI * Math.PI / 8 : 3 * Math.PI * Math.PI / 32;
            double along = strain / (a * a), across = strain / (b * b), stiff = E / (1 - nu * nu);
            energy += t * a * b / 2 * stiff * (along * along + across * across + 2 * nu * along * across);
            middle += stiff * (across + nu * along);
            edge += stiff * (across + nu * along);
        }
        double swept = edges == PanelEdges.Supported ? 4 * a * b / (Math.PI * Math.PI) : a * b / 4;
        return new PlateStretching { Cubic = 4 * energy / swept, MiddleStress = middle, EdgeStress = edge };
    }

    /// <summary>The one root w of k₁ w + k₃ w³ = load, m.</summary>
    public static double Deflection(double k_1, double k_3, double load)
    {
        if (load <= 0 || k_3 <= 0)
            return load / k_1;
        // Sinh form of Cardano's root: no cancellation for small or large loads.
        double scale = 2 * Math.Sqrt(k_1 / (3 * k_3));
        return scale * Math.Sinh(Math.Asinh(3 * load / (k_1 * scale)) / 3);
    }
}
