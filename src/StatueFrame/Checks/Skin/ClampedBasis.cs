using MathNet.Numerics.Integration;

namespace StatueFrame.Checks;

/// <summary>Even functions (1 − ξ²)² P₂ᵢ(ξ) on −1…1, with zero value and slope at the ends, and their integrals.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class ClampedBasis
{
    private ClampedBasis(int count)
    {
        Bent = new double[count, count];
        Sloped = new double[count, count];
        Plain = new double[count, count];
        Integral = new double[count];
        Middle = new double[count];
        MiddleBent = new double[count];
        EdgeBent = new double[count];
    }

    /// <summary>∫φ″φ″.</summary>
    public double[,] Bent { get; }

    /// <summary>∫φ′φ′.</summary>
    public double[,] Sloped { get; }

    /// <summary>∫φφ.</summary>
    public double[,] Plain { get; }

    /// <summary>∫φ.</summary>
    public double[] Integral { get; }

    /// <summary>φ(0).</summary>
    public double[] Middle { get; }

    /// <summary>φ″(0).</summary>
    public double[] MiddleBent { get; }

    /// <summary>φ″(1).</summary>
    public double[] EdgeBent { get; }

    /// <summary>The first functions and their integrals, exact by Gauss's rule.</summary>
    public static ClampedBasis Of(int count)
    {
        const int Points = 40;
        var basis = new ClampedBasis(count);
        var rule = new GaussLegendreRule(-1, 1, Points);
        var at = new (double F, double D, double DD)[count];
        for (int g = 0; g < Points; g++)
        {
            double weight = rule.GetWeight(g);
            Fill(at, rule.GetAbscissa(g));
            for (int i = 0; i < count; i++)
            {
                basis.Integral[i] += weight * at[i].F;
                for (int j = 0; j < count; j++)
                {
                    basis.Bent[i, j] += weight * at[i].DD * at[j].DD;
                    basis.Sloped[i, j] += weight * at[i].D * at[j].D;
                    basis.Plain[i, j] += weight * at[i].F * at[j].F;
                }
            }
        }
        Fill(at, 0);
        for (int i = 0; i < count; i++)
            (basis.Middle[i], basis.MiddleBent[i]) = (at[i].F, at[i].DD);
        Fill(at, 1);
        for (int i = 0; i < count; i++)
            basis.EdgeBent[i] = at[i].DD;
        return basis;
    }

    /// <summary>Values and two derivatives of all functions at a point: Legendre's recurrence, then the product rule.</summary>
    public static void Fill(Span<(double F, double D, double DD)> at, double x)
    {
        double g = (1 - x * x) * (1 - x * x), dg = -4 * x * (1 - x * x), ddg = 12 * x * x - 4;
        (double p, double d, double dd) before = (1, 0, 0), now = (x, 1, 0);
        for (int k = 0, i = 0; i < at.Length; k++)
        {
            (double p, double d, double dd) = k == 0 ? before : now;
            if (k % 2 == 0)
                at[i++] = (g * p, dg * p + g * d, ddg * p + 2 * dg * d + g * dd);
            if (k == 0)
                continue;
            double a = (2.0 * k + 1) / (k + 1), b = (double)k / (k + 1);
            (double, double, double) next = (a * x * now.p - b * before.p, a * (now.p + x * now.d) - b * before.d, a * (2 * now.d + x * now.dd) - b * before.dd);
            (before, now) = (now, next);
        }
    }
}
