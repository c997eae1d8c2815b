namespace StatueFrame.Checks;

/// <summary>
/// Torsional and flexural-torsional buckling of an angle, whose shear center lies where its legs meet and whose warping
/// is negligible. SI units.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Principal axes y (strong) and z (weak) of <see cref="Section"/>. Source:
/// Timoshenko and Gere, Theory of Elastic Stability, 5.6; the same cubic as AISC 360, (E4-4).
/// </remarks>
/// <param name="y_0">Shear center from the centroid along y, m.</param>
/// <param name="z_0">Shear center from the centroid along z, m.</param>
/// <param name="i_0">Polar radius of gyration about the shear center, m.</param>
/// <param name="N_y">Euler load about y, N.</param>
/// <param name="N_z">Euler load about z, N.</param>
/// <param name="N_T">Load of pure twist, N: G J/i₀².</param>
internal readonly record struct AngleTwist(double y_0, double z_0, double i_0, double N_y, double N_z, double N_T)
{
    /// <summary>The loads of an angle for given effective lengths.</summary>
    public static AngleTwist Of(AngleBar angle, double E, double G, double L_y, double L_z)
    {
        SectionProperties p = angle.Properties;
        double t = angle.Thickness.Meters, turn = angle.PrincipalRotation.Radians;
        // From the centroid to where the middle lines meet, first along the legs (Y short, Z long), then in principal axes.
        double Y = t / 2 - angle.CentroidAlongShortLeg.Meters, Z = t / 2 - angle.CentroidAlongLongLeg.Meters;
        double c = Math.Cos(turn), s = Math.Sin(turn);
        double y_0 = c * Y + s * Z, z_0 = c * Z - s * Y;
        double i_0 = Math.Sqrt((p.Iy + p.Iz) / p.A + y_0 * y_0 + z_0 * z_0);
        return new AngleTwist(
            y_0, z_0, i_0, Math.PI * Math.PI * E * p.Iy / (L_y * L_y), Math.PI * Math.PI * E * p.Iz / (L_z * L_z), G * p.J / (i_0 * i_0));
    }

    /// <summary>
    /// The least root of (N − N_y)(N − N_z)(N − N_T) − N²(N − N_z)(y₀/i₀)² − N²(N − N_y)(z₀/i₀)² = 0, N. It is the only one
    /// below all three loads.
    /// </summary>
    public double Least
    {
        get
        {
            double low = 0, high = Math.Min(N_T, Math.Min(N_y, N_z));
            for (int i = 0; i < 200 && high - low > 1e-15 * high; i++)
            {
                double middle = (low + high) / 2;
                if (Cubic(middle) < 0)
                    low = middle;
                else
                    high = middle;
            }
            return (low + high) / 2;
        }
    }

    /// <summary>Buckling about y moves the bar along z and meets twist through y₀; about z, through z₀.</summary>
    internal double Cubic(double N)
    {
        double b_y = y_0 * y_0 / (i_0 * i_0), b_z = z_0 * z_0 / (i_0 * i_0);
        return (N - N_y) * (N - N_z) * (N - N_T) - N * N * (N - N_z) * b_y - N * N * (N - N_y) * b_z;
    }
}
