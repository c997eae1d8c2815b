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
    public double A => b * t;

    /// <summary>Shear area κA with κ = 5/6, the same along both sides, m².</summary>
    public double ShearArea => 5.0 / 6.0 * A;

    public double WeakI => b * t * t * t / 12;

    public double StrongI => t * b * b * b / 12;

    public double WeakW => b * t * t / 6;

    public double StrongW => t * b * b / 6;

    /// <summary>St. Venant torsion constant, m⁴.</summary>
    public double J => SolidRectangle.TorsionConstant(Math.Max(b, t), Math.Min(b, t));

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
