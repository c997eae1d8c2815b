namespace StatueFrame;

/// <summary>The end effect: air flows round the free ends of a short body and weakens drag and suction.</summary>
/// <remarks>Stateless; safe to use from many threads. Source: EN 1991-1-4:2005, 7.13, Table 7.16, Figure 7.36.</remarks>
internal static class EndEffect
{
    private static readonly (double Slenderness, double Factor)[] solid = [(1, 0.60), (10, 0.70), (70, 0.92), (200, 1.00)];

    /// <summary>Effective slenderness λ of a cylinder of length l and diameter b, Table 7.16: l/b below 15 m, 0.7 l/b from 50 m, at most 70.</summary>
    public static double CylinderSlenderness(double l, double b)
    {
        double t = Math.Clamp((l - 15) / 35, 0, 1);
        return (1 - t) * Math.Min(l / b, 70) + t * Math.Min(0.7 * l / b, 70);
    }

    /// <summary>End-effect factor ψ_λ of a solid body, Figure 7.36 with φ = 1: read off to 0.01, linear in the logarithm of λ.</summary>
    public static double Factor(double slenderness) => SemiLogChart.Read(solid, slenderness);
}
