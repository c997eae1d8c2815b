using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Bearing resistance of the ground under a footing with eccentric and inclined load, EN 1997-1, Annex D: horizontal base and ground.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class BearingResistance
{
    private static readonly Source drained = new("EN 1997-1:2004", "Annex D.4 (D.2)");
    private static readonly Source undrained = new("EN 1997-1:2004", "Annex D.3 (D.1)");

    /// <summary>Drained: q_R = c′N_c s_c i_c + q′N_q s_q i_q + ½γ′B′N_γ s_γ i_γ, the pressure on the effective area.</summary>
    /// <param name="friction">φ′, above 0 to 50°.</param>
    /// <param name="cohesion">c′, zero or more.</param>
    /// <param name="overburden">q′ at the level of the base.</param>
    /// <param name="unitWeight">γ′ below the base.</param>
    /// <param name="effectiveX">Effective width along x, positive.</param>
    /// <param name="effectiveY">Effective width along y, positive.</param>
    /// <param name="vertical">V, positive.</param>
    /// <param name="horizontalX">H along x.</param>
    /// <param name="horizontalY">H along y.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Pressure Drained(Angle friction, Pressure cohesion, Pressure overburden, SpecificWeight unitWeight, Length effectiveX, Length effectiveY, Force vertical, Force horizontalX, Force horizontalY)
    {
        double phi = CheckInput.Within(friction.Radians, 1e-4, 50 * Math.PI / 180, nameof(friction)), c = CheckInput.NotNegative(cohesion.Pascals, nameof(cohesion));
        double q = CheckInput.NotNegative(overburden.Pascals, nameof(overburden)), gamma = CheckInput.NotNegative(unitWeight.NewtonsPerCubicMeter, nameof(unitWeight));
        double x = CheckInput.Positive(effectiveX.Meters, nameof(effectiveX)), y = CheckInput.Positive(effectiveY.Meters, nameof(effectiveY)), V = CheckInput.Positive(vertical.Newtons, nameof(vertical));
        return Pressure.FromPascals(Drained(null, phi, c, q, gamma, x, y, V, CheckInput.Finite(horizontalX.Newtons, nameof(horizontalX)), CheckInput.Finite(horizontalY.Newtons, nameof(horizontalY))));
    }

    /// <summary>Undrained: q_R = (π + 2) c_u s_c i_c + q, the pressure on the effective area; q alone when H is more than A′c_u.</summary>
    /// <param name="strength">c_u, positive.</param>
    /// <param name="overburden">q at the level of the base.</param>
    /// <param name="effectiveX">Effective width along x, positive.</param>
    /// <param name="effectiveY">Effective width along y, positive.</param>
    /// <param name="horizontal">H, without direction.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Pressure Undrained(Pressure strength, Pressure overburden, Length effectiveX, Length effectiveY, Force horizontal) => Pressure.FromPascals(Undrained(
        null, CheckInput.Positive(strength.Pascals, nameof(strength)), CheckInput.NotNegative(overburden.Pascals, nameof(overburden)),
        CheckInput.Positive(effectiveX.Meters, nameof(effectiveX)), CheckInput.Positive(effectiveY.Meters, nameof(effectiveY)), Math.Abs(CheckInput.Finite(horizontal.Newtons, nameof(horizontal)))));

    internal static double Drained(Working? w, double phi, double c, double q, double gamma, double x, double y, double V, double Hx, double Hy)
    {
        w.Given(phi, Dimension.Angle, "friction angle");
        w.Given(c, Dimension.Pressure, "cohesion");
        w.Given(q, Dimension.Pressure, "overburden at the base");
        double gammaB = w.Given("gammaB", gamma * Math.Min(x, y), Dimension.Pressure, "γ′B′");
        double ratio = w.Given("ratio", Math.Min(x, y) / Math.Max(x, y), Dimension.Number, "B′/L′");
        double tan_phi = w.Let("tan_phi", Math.Tan(phi), Dimension.Number), sin_phi = w.Let("sin_phi", Math.Sin(phi), Dimension.Number);
        double N_q = w.Let("N_q", Math.Exp(Math.PI * tan_phi) * (1 + sin_phi) / (1 - sin_phi), Dimension.Number, drained);
        double N_c = w.Let("N_c", (N_q - 1) / tan_phi, Dimension.Number, drained), N_g = w.Let("N_g", 2 * (N_q - 1) * tan_phi, Dimension.Number, drained);
        double s_q = w.Let("s_q", 1 + ratio * sin_phi, Dimension.Number, drained), s_g = w.Let("s_g", 1 - 0.3 * ratio, Dimension.Number, drained);
        double s_c = w.Let("s_c", (s_q * N_q - 1) / (N_q - 1), Dimension.Number, drained);
        double H = w.Given("H", Math.Sqrt(Hx * Hx + Hy * Hy), Dimension.Force, "horizontal force");
        double m = w.Given("m", Exponent(ratio, x <= y ? (Hx, Hy) : (Hy, Hx)), Dimension.Number, "between that of B′ and that of L′", drained);
        double left = w.Let("left", Math.Max(0, 1 - H / (V + x * y * c / tan_phi)), Dimension.Number, drained);
        double i_q = w.Let("i_q", Math.Pow(left, m), Dimension.Number, drained), i_g = w.Let("i_g", Math.Pow(left, m + 1), Dimension.Number, drained);
        double i_c = w.Let("i_c", Math.Max(0, i_q - (1 - i_q) / (N_c * tan_phi)), Dimension.Number, drained);
        return w.Let("q_R", c * N_c * s_c * i_c + q * N_q * s_q * i_q + 0.5 * gammaB * N_g * s_g * i_g, Dimension.Pressure, drained);
    }

    internal static double Undrained(Working? w, double c_u, double q, double x, double y, double H)
    {
        w.Given(c_u, Dimension.Pressure, "undrained strength");
        w.Given(q, Dimension.Pressure, "overburden at the base");
        w.Given(H, Dimension.Force, "horizontal force");
        double s_c = w.Let("s_c", 1 + 0.2 * Math.Min(x, y) / Math.Max(x, y), Dimension.Number, undrained);
        double left = 1 - H / (x * y * c_u);
        if (left < 0)
            return w.Let("q_R", q, Dimension.Pressure, undrained, "the base slides: no strength is left");
        double i_c = w.Let("i_c", 0.5 * (1 + Math.Sqrt(left)), Dimension.Number, undrained);
        return w.Let("q_R", (Math.PI + 2) * c_u * s_c * i_c + q, Dimension.Pressure, undrained);
    }

    /// <summary>m = m_L cos²θ + m_B sin²θ, θ from L′ to H.</summary>
    private static double Exponent(double ratio, (double B, double L) H)
    {
        double m_B = (2 + ratio) / (1 + ratio), m_L = (2 + 1 / ratio) / (1 + 1 / ratio), square = H.B * H.B + H.L * H.L;
        return square == 0 ? m_B : (m_L * H.L * H.L + m_B * H.B * H.B) / square;
    }
}
