namespace StatueFrame.Tests.Checks.Heat;

/// <summary>
/// A thin round ring whose strain is e·max(0, cos φ), by the series 1/π + ½cos φ + (2/π)Σ(−1)ᵏ⁺¹cos 2kφ/(4k² − 1): of each
/// harmonic n ≥ 2 the ring moves by −εR/(n² − 1) outward and nεR/(n² − 1) along; of the first by ½εR both ways, and turns.
/// </summary>
internal static class WarmCircle
{
    /// <summary>Movement beyond that of the mean strain, and the turn.</summary>
    public static (double Radial, double Tangential, double Turn) Under(double e, double radius, double phi)
    {
        double radial = 0.25 * Math.Cos(phi), tangential = 0.25 * Math.Sin(phi);
        for (int k = 1; k < 400; k++)
        {
            double n = 2 * k, amplitude = 2 / Math.PI * (k % 2 == 1 ? 1 : -1) / (n * n - 1) / (n * n - 1);
            radial -= amplitude * Math.Cos(n * phi);
            tangential += amplitude * n * Math.Sin(n * phi);
        }
        return (e * radius * radial, e * radius * tangential, 0.5 * e * Math.Sin(phi));
    }
}
