using MathNet.Numerics.Integration;

namespace StatueFrame.Checks;

/// <summary>The shapes along one side, −1 to 1 from edge to edge, and the integrals over it that the energy needs.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class PlateSide
{
    private const int Points = 32;

    private readonly PanelEdges edges;
    private readonly double half;
    private readonly int harmonics;

    /// <summary>Prepares a side.</summary>
    /// <param name="edges">How its ends are held.</param>
    /// <param name="count">Number of shapes.</param>
    /// <param name="harmonics">Number of cosines of Airy's function.</param>
    /// <param name="half">Half its length.</param>
    public PlateSide(PanelEdges edges, int count, int harmonics, double half)
    {
        (this.edges, Count, this.harmonics, this.half) = (edges, count, harmonics, half);
        (Integral, Plain, Bent) = (new double[count], new double[count, count], new double[count, count]);
        Sloped = [.. Enumerable.Range(0, harmonics + 1).Select(_ => new double[count, count])];
        Curved = [.. Enumerable.Range(0, harmonics + 1).Select(_ => new double[count, count])];
        var rule = new GaussLegendreRule(-1, 1, Points);
        for (int g = 0; g < Points; g++)
        {
            (double[] f, double[] d, double[] dd, double[] cos, _) = At(rule.GetAbscissa(g));
            double weight = rule.GetWeight(g) * half;
            for (int i = 0; i < count; i++)
            {
                Integral[i] += weight * f[i];
                for (int k = 0; k < count; k++)
                {
                    Plain[i, k] += weight * f[i] * f[k];
                    Bent[i, k] += weight * dd[i] * dd[k];
                    for (int p = 0; p <= harmonics; p++)
                    {
                        Sloped[p][i, k] += weight * cos[p] * d[i] * d[k];
                        Curved[p][i, k] += weight * cos[p] * dd[i] * f[k];
                    }
                }
            }
        }
    }

    public int Count { get; }

    /// <summary>∫f.</summary>
    public double[] Integral { get; }

    /// <summary>∫fᵢf_k.</summary>
    public double[,] Plain { get; }

    /// <summary>∫fᵢ″f_k″.</summary>
    public double[,] Bent { get; }

    /// <summary>∫fᵢ′f_k′ cos pπξ.</summary>
    public double[][,] Sloped { get; }

    /// <summary>∫fᵢ″f_k cos pπξ.</summary>
    public double[][,] Curved { get; }

    /// <summary>Shapes with two derivatives along the side, and the cosines and sines of Airy's function, at a place.</summary>
    public (double[] F, double[] D, double[] DD, double[] Cos, double[] Sin) At(double xi)
    {
        (double[] f, double[] d, double[] dd) = (new double[Count], new double[Count], new double[Count]);
        if (edges == PanelEdges.Clamped)
        {
            var at = new (double F, double D, double DD)[Count];
            ClampedBasis.Fill(at, xi);
            for (int i = 0; i < Count; i++)
                (f[i], d[i], dd[i]) = (at[i].F, at[i].D / half, at[i].DD / (half * half));
        }
        else
        {
            for (int i = 0; i < Count; i++)
            {
                double k = (2 * i + 1) * Math.PI / 2;
                (double sin, double cos) = Math.SinCos(k * xi);
                (f[i], d[i], dd[i]) = (cos, -k / half * sin, -k * k / (half * half) * cos);
            }
        }
        var (cosines, sines) = (new double[harmonics + 1], new double[harmonics + 1]);
        for (int p = 0; p <= harmonics; p++)
            (sines[p], cosines[p]) = Math.SinCos(p * Math.PI * xi);
        return (f, d, dd, cosines, sines);
    }
}
