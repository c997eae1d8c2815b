namespace StatueFrame.Checks;

/// <summary>The shapes at one place of a plate.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="x">Along the longer side, from <see cref="PlateSide.At"/>.</param>
/// <param name="y">Along the shorter side.</param>
internal sealed class PlatePlace((double[] F, double[] D, double[] DD, double[] Cos, double[] Sin) x, (double[] F, double[] D, double[] DD, double[] Cos, double[] Sin) y)
{
    /// <summary>Deflection and curvatures for the parts of the shapes, times a number.</summary>
    public (double W, double Xx, double Yy, double Xy) Bend(double[] c, double times)
    {
        double w = 0, xx = 0, yy = 0, xy = 0;
        for (int p = 0; p < c.Length; p++)
        {
            (int i, int j) = (p / y.F.Length, p % y.F.Length);
            double part = times * c[p];
            w += part * x.F[i] * y.F[j];
            xx += part * x.DD[i] * y.F[j];
            yy += part * x.F[i] * y.DD[j];
            xy += part * x.D[i] * y.D[j];
        }
        return (w, xx, yy, xy);
    }

    /// <summary>Adds the stress of one cosine φ of Airy's function: n_x = φ_yy, n_y = φ_xx, n_xy = −φ_xy.</summary>
    public void AddStretch(StretchForm form, double phi, ref double n_x, ref double n_y, ref double n_xy)
    {
        double cos = x.Cos[form.P] * y.Cos[form.Q];
        n_x -= phi * form.Ky * form.Ky * cos;
        n_y -= phi * form.Kx * form.Kx * cos;
        n_xy -= phi * form.Kx * form.Ky * x.Sin[form.P] * y.Sin[form.Q];
    }
}
