namespace StatueFrame;

/// <summary>
/// The numbers of a flat bar's rectangle in SI units, with the torsion of the exact series. "Weak" is the axis along
/// the width, about which the bar bends easily.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="b">Width, m; positive.</param>
/// <param name="t">Thickness, m; positive.</param>
internal readonly record struct FlatRectangle(double b, double t)
{
    /// <summary>Σ 1/n⁵ over odd n, which is 31/32 ζ(5).</summary>
    private const double OddFifths = 1.0045237627951383;

    public double A => b * t;

    /// <summary>Shear area κA with κ = 5/6, the same along both sides, m².</summary>
    public double ShearArea => 5.0 / 6.0 * A;

    public double WeakI => b * t * t * t / 12;

    public double StrongI => t * b * b * b / 12;

    public double WeakW => b * t * t / 6;

    public double StrongW => t * b * b / 6;

    /// <summary>
    /// St. Venant torsion constant, m⁴: J = bt³/3 (1 − 192t/(π⁵b) Σ tanh(nπb/2t)/n⁵) over odd n, with b the longer
    /// side. The sum is taken as that of 1/n⁵ less a remainder that dies out within six terms.
    /// </summary>
    public double J
    {
        get
        {
            (double longer, double shorter) = (Math.Max(b, t), Math.Min(b, t));
            double sum = OddFifths;
            for (int n = 1; n <= 11; n += 2)
                sum -= 2 / ((Math.Exp(n * Math.PI * longer / shorter) + 1) * Math.Pow(n, 5));
            return longer * shorter * shorter * shorter / 3 * (1 - 192 * shorter / (Math.Pow(Math.PI, 5) * longer) * sum);
        }
    }

    /// <summary>
    /// Torsion modulus T/τ, m³, where τ is the greatest shear stress, at the middle of the longer side:
    /// τ = (T/J) t (1 − 8/π² Σ 1/(n² cosh(nπb/2t))) over odd n.
    /// </summary>
    public double TorsionW
    {
        get
        {
            (double longer, double shorter) = (Math.Max(b, t), Math.Min(b, t));
            double sum = 0;
            for (int n = 1; n <= 21; n += 2)
                sum += 1 / (n * n * Math.Cosh(0.5 * n * Math.PI * longer / shorter));
            return J / (shorter * (1 - 8 / (Math.PI * Math.PI) * sum));
        }
    }
}
