namespace StatueFrame;

/// <summary>The numbers of a solid rectangle, shared by the shapes that are one.</summary>
internal static class SolidRectangle
{
    /// <summary>Energy of the parabolic shear stress: the area that shears is 5/6 of the area.</summary>
    private const double ShearFactor = 5.0 / 6.0;

    /// <summary>The section with the long side <paramref name="b"/> along z and the short side <paramref name="t"/> along y.</summary>
    public static SectionProperties Of(double b, double t)
    {
        double A = b * t, Iy = t * b * b * b / 12, Iz = b * t * t * t / 12;
        return new SectionProperties(
            A, Iy, Iz, TorsionConstant(b, t), ShearFactor * A, ShearFactor * A, Wy: Iy / (b / 2), Wz: Iz / (t / 2));
    }

    /// <summary>
    /// St. Venant torsion constant, J = b t³/3 · (1 − 192/π⁵ · t/b · Σ tanh(n π b / 2 t)/n⁵ over odd n), for b ≥ t
    /// (Timoshenko and Goodier, Theory of Elasticity, torsion of a rectangular bar).
    /// </summary>
    /// <remarks>
    /// The part of the series that does not fall off fast is known, Σ 1/n⁵ over odd n = 31/32 ζ(5); of the rest, five
    /// terms already reach the last digit of a double at b = t, where it converges slowest.
    /// </remarks>
    public static double TorsionConstant(double b, double t)
    {
        const double zeta5 = 1.0369277551433699;
        double sum = 31.0 / 32.0 * zeta5;
        for (int n = 1; n <= 9; n += 2)
            sum -= (1 - Math.Tanh(n * Math.PI * b / (2 * t))) / Math.Pow(n, 5);
        return b * t * t * t / 3 * (1 - 192 / Math.Pow(Math.PI, 5) * (t / b) * sum);
    }
}
