namespace StatueFrame.Checks;

/// <summary>
/// The pressure at which a shallow arch strip with hinged ends that cannot move snaps through, or bends to one side.
/// </summary>
/// <remarks>
/// Stateless; safe to use from many threads. Shallow arches only. The equilibrium path is exact for shallow arches: with the thrust N,
/// D w'''' + N w'' = p − N/R and N/A = (1/R)∫w − ½∫w'². Along the path the pressure reaches its first maximum (snap), or
/// N reaches 4π²D/b² before (sideways buckling). A strip so flat that the pressure never falls has no such pressure.
/// Derived here; the sideways load is the first term of Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., §7.6.
/// </remarks>
internal static class ArchSnap
{
    private const int Steps = 2000;

    /// <summary>p b⁴/(E t⁴) at which the strip snaps; +∞ when it never does.</summary>
    /// <param name="c">b²/(R t), with the arc b; zero or more.</param>
    /// <param name="nu">Poisson's ratio.</param>
    public static double Pressure(double c, double nu)
    {
        double A = 1 / (1 - nu * nu), D = A / 12, most = 0;
        // Out along the branch of small deflections as the thrust grows, and back along that of large ones as it falls.
        for (int branch = -1; branch <= 1; branch += 2)
        {
            for (int i = 1; i <= Steps; i++)
            {
                double v = Math.PI * (branch < 0 ? i : Steps - i + 0.5) / (Steps + 0.25);
                if (v < 0.05)
                    continue;
                double N = 4 * v * v * D;
                (double a, double b) = MeanAndStretch(v, N);
                double inside = c * c - 2 * b * N / A;
                if (inside < 0)
                {
                    if (branch < 0)
                        break;
                    continue;
                }
                double h = (c + branch * Math.Sqrt(inside)) / b, pressure = h * a + N * c;
                if (pressure < most * (1 - 1e-12))
                    return most;
                most = Math.Max(most, pressure);
                if (branch < 0 && i == Steps)
                    return pressure;
            }
        }
        return double.PositiveInfinity;
    }

    /// <summary>For a strip of length 1: load over mean deflection, and ∫w'² over the square of the mean deflection.</summary>
    private static (double LoadOverMean, double StretchOverSquare) MeanAndStretch(double v, double N)
    {
        double k = 2 * v, cos = Math.Cos(v), sin = Math.Sin(v);
        double mean = (sin / v - cos * (1 + v * v / 3)) / (N * k * k);
        double stretch = ((0.5 - Math.Sin(k) / (2 * k)) / (k * k) - 2 * cos / k * (2 * sin / (k * k) - cos / k) + cos * cos / 12) / (N * N);
        return (cos / mean, stretch / (mean * mean));
    }
}
