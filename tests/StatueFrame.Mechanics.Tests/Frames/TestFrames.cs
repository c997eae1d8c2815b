using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Tests;

/// <summary>Frames to test with, and their matrices for a dense solver.</summary>
internal static class TestFrames
{
    /// <summary>A straight row of beams along <paramref name="direction"/> whose first node is held fast.</summary>
    public static Frame Cantilever(
        int elements, double length, Vector3D direction, double EI = 1e5, double EA = 1e8, double mass = 20, bool supported = true)
    {
        var builder = new FrameBuilder();
        AddRow(builder, Vector3D.Zero, length * direction.Normalized(), elements, EI, EA, mass);
        if (supported)
            builder.Restrain(0, Freedoms.All);
        return builder.Build();
    }

    public static int AddRow(
        FrameBuilder builder, Vector3D from, Vector3D to, int elements, double EI = 1e5, double EA = 1e8, double mass = 20)
    {
        int last = builder.AddNode(from);
        for (int i = 1; i <= elements; i++)
        {
            Vector3D a = from + (i - 1.0) / elements * (to - from), b = from + (double)i / elements * (to - from);
            int next = builder.AddNode(b);
            builder.Add(new UniformBeam(last, next, a, b, EA: EA, EI: EI, mass: mass));
            last = next;
        }
        return last;
    }

    /// <summary>Random nodes, a random spanning tree and some more beams, random restraints, ground springs and masses.</summary>
    public static FrameBuilder Random(int seed, bool supported = true)
    {
        var random = new Random(seed);
        var builder = new FrameBuilder();
        int count = random.Next(2, 9);
        var positions = new Vector3D[count];
        for (int i = 0; i < count; i++)
        {
            positions[i] = new Vector3D(3 * random.NextDouble(), 3 * random.NextDouble(), i + random.NextDouble());
            builder.AddNode(positions[i], $"joint {i}");
        }
        for (int i = 1; i < count; i++)
            AddBeam(random.Next(i), i);
        for (int extra = random.Next(count); extra > 0; extra--)
        {
            int a = random.Next(count), b = random.Next(count);
            if (a != b)
                AddBeam(a, b);
        }
        if (supported)
        {
            if (random.Next(2) == 0)
                builder.Restrain(random.Next(count), Freedoms.All);
            else
                builder.AddStiffness(random.Next(count), PositiveMatrix(random, 1e6));
            for (int i = random.Next(3); i > 0; i--)
                builder.Restrain(random.Next(count), (Freedoms)random.Next(64));
            builder.AddAtNode(random.Next(count), PositiveMatrix(random, 1e4), PositiveMatrix(random, 30));
        }
        return builder;

        void AddBeam(int a, int b) => builder.Add(new UniformBeam(a, b, positions[a], positions[b],
            EA: Spread(1e8), EI: Spread(1e5), GJ: Spread(8e4), mass: Spread(20)));

        double Spread(double middle) => middle * Math.Pow(10, 2 * random.NextDouble() - 1);
    }

    /// <summary>A symmetric positive definite 6×6 of about the given size.</summary>
    public static double[] PositiveMatrix(Random random, double size)
    {
        Matrix<double> a = Matrix<double>.Build.Dense(6, 6, (_, _) => random.NextDouble() - 0.5);
        return (size * (a * a.Transpose() + 0.1 * Matrix<double>.Build.DenseIdentity(6))).ToRowMajorArray();
    }

    public static double[] RandomLoads(Frame frame, int seed, double size = 1000)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, frame.FreedomCount).Select(_ => size * (2 * random.NextDouble() - 1))];
    }

    public static Matrix<double> Dense(SymmetricMatrix matrix) =>
        Matrix<double>.Build.Dense(matrix.Order, matrix.Order, (i, j) => matrix[i, j]);

    public static Vector<double> Reduced(Frame frame, ReadOnlySpan<double> full)
    {
        var reduced = new double[frame.EquationCount];
        frame.Reduce(full, reduced);
        return Vector<double>.Build.Dense(reduced);
    }

    /// <summary>All eigenvalues θ of B x = θ A x, descending, by a dense solver.</summary>
    public static double[] DenseEigenvalues(Matrix<double> a, Matrix<double> b)
    {
        Matrix<double> l = a.Cholesky().Factor;
        Matrix<double> half = l.Solve(b);
        Matrix<double> c = l.Solve(half.Transpose());
        double[] values = (0.5 * (c + c.Transpose())).Evd(Symmetricity.Symmetric).EigenValues.Select(v => v.Real).ToArray();
        return [.. values.OrderDescending()];
    }
}
