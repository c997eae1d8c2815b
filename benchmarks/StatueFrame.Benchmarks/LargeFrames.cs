using System.Diagnostics;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Benchmarks;

/// <summary>The mesh of a lattice tower with every member as its own element: order, factor, solve, and 12 modes.</summary>
internal static class LargeFrames
{
    /// <summary>One line of the table.</summary>
    internal sealed record Row(string Name, int Equations, int Elements, double Order, double Factor, double Solve, double Modes, double FactorMegabytes, double Residual, double LowestHertz);

    /// <summary>Measures one size; also writes its matrices to a directory unless that is null.</summary>
    public static Row Measure(string name, Frame frame, string? directory)
    {
        if (directory is not null)
        {
            MatrixFile.Write(Path.Combine(directory, name + ".k"), frame.Stiffness);
            MatrixFile.Write(Path.Combine(directory, name + ".m"), frame.Mass);
        }
        int n = frame.EquationCount;
        var ones = new double[n];
        Array.Fill(ones, 1);
        var b = new double[n];
        frame.Stiffness.Multiply(ones, b);
        double order = Least(() => SymbolicFactorization.Analyze(frame.Stiffness.Pattern));
        var factors = new LdlFactorization(frame.Symbolic);
        double factor = Least(() => factors.Factor(frame.Stiffness));
        double[] x = [.. b];
        double solve = Least(() =>
        {
            b.CopyTo(x, 0);
            factors.Solve(x);
            return x;
        });
        var product = new double[n];
        frame.Stiffness.Multiply(x, product);
        double residual = 0, size = 0;
        for (int i = 0; i < n; i++)
            (residual, size) = (residual + (product[i] - b[i]) * (product[i] - b[i]), size + b[i] * b[i]);
        var statics = new LinearStatics(frame);
        ModeSet? modes = null;
        double seconds = Least(() => modes = Modes.Solve(statics, 12));
        return new Row(
            name, n, frame.Elements.Count, order, factor, solve, seconds, 8e-6 * frame.Symbolic.FactorCount, Math.Sqrt(residual / size),
            modes!.CircularFrequency(0) / (2 * Math.PI));
    }

    /// <summary>The least time of runs that take three seconds together, s.</summary>
    internal static double Least(Func<object?> run, double together = 3)
    {
        double least = double.PositiveInfinity;
        long begin = Stopwatch.GetTimestamp();
        for (int i = 0; i < 3000 && (i == 0 || Stopwatch.GetElapsedTime(begin).TotalSeconds < together); i++)
        {
            long start = Stopwatch.GetTimestamp();
            run();
            least = Math.Min(least, Stopwatch.GetElapsedTime(start).TotalSeconds);
        }
        return least;
    }
}
