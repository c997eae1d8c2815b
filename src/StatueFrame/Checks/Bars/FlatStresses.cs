using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Elastic stresses of a flat under all six forces, at the four points of the rectangle where they can be greatest.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. Corner: normal stresses of both moments, no shear. Middle of a wide face:
/// weak moment, torsion (greatest there) and shear along the width. Middle of a narrow face: strong moment, torsion and
/// shear along the thickness. Center: both shears, no torsion. Magnitudes are added, which is the worst of all signs.
/// </remarks>
internal static class FlatStresses
{
    private const double Catalan = 0.915965594177219015;

    private static readonly Source bending = Source.Roark("section 8.1; shear 1.5 V/A");
    private static readonly Source torsion = new("Timoshenko and Goodier, Theory of Elasticity", "torsion of a rectangular bar");
    private static readonly Source vonMises = Source.En1993_1_1("6.2.1 (5), (6.1): von Mises");

    /// <summary>
    /// Torsion modulus T/τ at the middle of the narrow faces, m³: τ = (T/J) t 8/π² Σ (−1)^k tanh(nπb/2t)/n², n = 2k + 1
    /// (from the stress function of the rectangle; the slow part of the series is Catalan's constant).
    /// </summary>
    public static double NarrowTorsionW(double b, double t)
    {
        double sum = Catalan;
        for (int n = 1, sign = 1; n <= 13; n += 2, sign = -sign)
            sum -= sign * (1 - Math.Tanh(n * Math.PI * b / (2 * t))) / (n * n);
        return new FlatRectangle(b, t).J / (t * 8 / (Math.PI * Math.PI) * sum);
    }

    /// <summary>The greatest equivalent stress, Pa.</summary>
    public static double Equivalent(Working? w, in FlatForces f, double b, double t) =>
        Equivalent(w, f, b, t, new FlatRectangle(b, t).TorsionW, NarrowTorsionW(b, t));

    /// <summary>As the other, with the torsion moduli at the middle of wide and narrow faces, which are series.</summary>
    public static double Equivalent(Working? w, in FlatForces f, double b, double t, double wideTorsionW, double narrowTorsionW)
    {
        (double N, double M_weak, double M_strong, double T, double V_t, double V_b) = f;
        double A = Section(w, f, b, t);
        double W_weak = w.Let("W_weak", b * t * t / 6, Dimension.SectionModulus);
        double W_strong = w.Let("W_strong", t * b * b / 6, Dimension.SectionModulus);
        double W_Tw = w.Given("W_Tw", wideTorsionW, Dimension.SectionModulus, "torsion modulus, middle of wide face", torsion);
        double W_Tn = w.Given("W_Tn", narrowTorsionW, Dimension.SectionModulus, "torsion modulus, middle of narrow face", torsion);
        double sigma_N = w.Let("sigma_N", Math.Abs(N) / A, Dimension.Stress, bending);
        double sigma_weak = w.Let("sigma_weak", Math.Abs(M_weak) / W_weak, Dimension.Stress, bending);
        double sigma_strong = w.Let("sigma_strong", Math.Abs(M_strong) / W_strong, Dimension.Stress, bending);
        double tau_wide = w.Let("tau_wide", Math.Abs(T) / W_Tw + 1.5 * Math.Abs(V_b) / A, Dimension.Stress, torsion);
        double tau_narrow = w.Let("tau_narrow", Math.Abs(T) / W_Tn + 1.5 * Math.Abs(V_t) / A, Dimension.Stress, torsion);
        double tau_mid = w.Let("tau_mid", 1.5 * Math.Sqrt(V_t * V_t + V_b * V_b) / A, Dimension.Stress, bending);
        double corner = w.Let("corner", sigma_N + sigma_weak + sigma_strong, Dimension.Stress, bending, "corner");
        double wide = w.Let("wide", Math.Sqrt(Math.Pow(sigma_N + sigma_weak, 2) + 3 * Math.Pow(tau_wide, 2)), Dimension.Stress, vonMises, "middle of wide face");
        double narrow = w.Let("narrow", Math.Sqrt(Math.Pow(sigma_N + sigma_strong, 2) + 3 * Math.Pow(tau_narrow, 2)), Dimension.Stress, vonMises, "middle of narrow face");
        double mid = w.Let("mid", Math.Sqrt(Math.Pow(sigma_N, 2) + 3 * Math.Pow(tau_mid, 2)), Dimension.Stress, vonMises, "center");
        return w.Let("sigma_v", Math.Max(Math.Max(corner, wide), Math.Max(narrow, mid)), Dimension.Stress, vonMises, "greatest equivalent stress");
    }

    /// <summary>The greatest shear stress of torsion and transverse forces, Pa, as if they met at one point.</summary>
    public static double Shear(Working? w, in FlatForces f, double b, double t)
    {
        (double T, double V_t, double V_b) = (f.T, f.AlongThickness, f.AlongWidth);
        double A = b * t;
        double W_T = w.Given("W_T", new FlatRectangle(b, t).TorsionW, Dimension.SectionModulus, "torsion modulus", torsion);
        return w.Let("tau", Math.Abs(T) / W_T + 1.5 * Math.Sqrt(V_t * V_t + V_b * V_b) / A, Dimension.Stress, torsion);
    }

    /// <summary>Tells what acts; returns the area.</summary>
    public static double Section(Working? w, in FlatForces f, double b, double t)
    {
        (double N, double M_weak, double M_strong, double T, double V_t, double V_b) = f;
        w.Given(b, Dimension.SmallLength, "width");
        w.Given(t, Dimension.SmallLength, "thickness");
        w.Given(N, Dimension.Force, "axial force, tension positive");
        w.Given(M_weak, Dimension.Moment, "moment about the weak axis");
        w.Given(M_strong, Dimension.Moment, "moment about the strong axis");
        w.Given(T, Dimension.Moment, "torsion");
        w.Given(V_t, Dimension.Force, "shear along the thickness");
        w.Given(V_b, Dimension.Force, "shear along the width");
        return w.Let("A", b * t, Dimension.SmallArea);
    }
}
