using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Elements;

/// <summary>A small frame solved with dense matrices, to see elements at work without the sparse solvers.</summary>
internal sealed class DenseModel(int nodes)
{
    private readonly List<FrameElement> elements = [];
    private readonly bool[] isFixed = new bool[6 * nodes];
    private readonly double[] load = new double[6 * nodes];

    /// <summary>A straight chain of n equal beams along x, each with its own part of the section function.</summary>
    public static DenseModel Chain(int n, double L, Func<double, BeamSection> section)
    {
        var model = new DenseModel(n + 1);
        for (int i = 0; i < n; i++)
        {
            double from = i;
            model.Add(new BeamElement(i, new(i * L / n, 0, 0), i + 1, new((i + 1) * L / n, 0, 0),
                new BeamDefinition(xi => section((from + xi) / n))));
        }
        return model;
    }

    public static DenseModel Chain(int n, double L, BeamSection section) => Chain(n, L, _ => section);

    public DenseModel Add(FrameElement element)
    {
        elements.Add(element);
        return this;
    }

    public DenseModel Fix(int node, Freedoms freedoms = Freedoms.All)
    {
        for (int i = 0; i < 6; i++)
            isFixed[6 * node + i] |= freedoms.HasFlag((Freedoms)(1 << i));
        return this;
    }

    public DenseModel FixEverywhere(Freedoms freedoms)
    {
        for (int node = 0; node < nodes; node++)
            Fix(node, freedoms);
        return this;
    }

    public DenseModel Load(int node, int freedom, double value)
    {
        load[6 * node + freedom] += value;
        return this;
    }

    /// <summary>The displacements of all freedoms under the load.</summary>
    public double[] Solve()
    {
        int[] free = Free();
        Vector<double> x = Assemble(ElementMatrix.Stiffness, free)
            .Solve(Vector<double>.Build.Dense(free.Length, i => load[free[i]]));
        var u = new double[6 * nodes];
        for (int i = 0; i < free.Length; i++)
            u[free[i]] = x[i];
        return u;
    }

    /// <summary>The natural frequencies, Hz, rising.</summary>
    public double[] Frequencies()
    {
        int[] free = Free();
        double[] inverse = Pencil(Assemble(ElementMatrix.Stiffness, free), Assemble(ElementMatrix.Mass, free));
        return [.. inverse.Where(mu => mu > 0).Select(mu => 1 / Math.Sqrt(mu) / (2 * Math.PI))];
    }

    /// <summary>The frequencies, Hz, rising, under the stress that the displacements u cause.</summary>
    public double[] StressedFrequencies(double[] u)
    {
        int[] free = Free();
        double[] inverse = Pencil(
            Assemble(ElementMatrix.Stiffness, free) + Assemble(ElementMatrix.Geometric(Of(u)), free),
            Assemble(ElementMatrix.Mass, free));
        return [.. inverse.Where(mu => mu > 0).Select(mu => 1 / Math.Sqrt(mu) / (2 * Math.PI))];
    }

    /// <summary>The lowest positive factor on the load at which the frame buckles.</summary>
    public double BucklingFactor()
    {
        int[] free = Free();
        double[] u = Solve();
        return 1 / Pencil(
            Assemble(ElementMatrix.Stiffness, free), -Assemble(ElementMatrix.Geometric(Of(u)), free))[0];
    }

    private static Func<FrameElement, double[]> Of(double[] u) => element =>
        [.. u.AsSpan(6 * element.Start, 6), .. u.AsSpan(6 * element.End, 6)];

    private int[] Free() => [.. Enumerable.Range(0, isFixed.Length).Where(i => !isFixed[i])];

    private Matrix<double> Assemble(Func<FrameElement, double[]> matrix, int[] free)
    {
        var assembled = Matrix<double>.Build.Dense(free.Length, free.Length);
        foreach (FrameElement element in elements)
        {
            double[] m = matrix(element);
            int[] places = [.. Enumerable.Range(0, 12).Select(i => Array.BinarySearch(free, Place(element, i)))];
            for (int i = 0; i < 12; i++)
                for (int j = 0; j < 12; j++)
                    if (places[i] >= 0 && places[j] >= 0)
                        assembled[places[i], places[j]] += m[12 * i + j];
        }
        return assembled;
    }

    private static int Place(FrameElement element, int i) => i < 6 ? 6 * element.Start + i : 6 * element.End + i - 6;

    /// <summary>The numbers μ of B x = μ A x, falling; A positive definite.</summary>
    private static double[] Pencil(Matrix<double> a, Matrix<double> b)
    {
        Matrix<double> l = a.Cholesky().Factor;
        Matrix<double> c = l.Solve(l.Solve(b).Transpose());
        double[] values = [.. (0.5 * (c + c.Transpose())).Evd(Symmetricity.Symmetric).EigenValues.Select(v => v.Real)];
        Array.Sort(values);
        Array.Reverse(values);
        return values;
    }
}
