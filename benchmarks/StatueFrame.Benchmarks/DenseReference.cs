using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using StatueFrame.Analysis;
using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Benchmarks;

/// <summary>
/// What a short script with a general dense library would do for the statue with 40 levels, from the finished matrices on:
/// one dense solution for self-weight and 16 headings, and all modes by reducing K φ = ω² M φ to a standard problem.
/// Building the matrices, second order, buckling and checks are not even part of it.
/// </summary>
[MemoryDiagnoser]
public class DenseReference
{
    private Matrix<double> stiffness = null!, mass = null!, loads = null!;

    [GlobalSetup]
    public void Setup()
    {
        StatueModel model = StatueModel.Build(SyntheticStatue.Of(40));
        stiffness = Dense(model.Frame.Stiffness);
        mass = Dense(model.Frame.Mass);
        var reduced = new double[model.Frame.EquationCount];
        model.Frame.Reduce(model.SelfWeightLoads, reduced);
        loads = DenseMatrix.OfColumnArrays(Enumerable.Repeat(reduced, 17));
    }

    [Benchmark]
    public Matrix<double> SelfWeightAndSixteenHeadings() => stiffness.Cholesky().Solve(loads);

    [Benchmark]
    public double LowestFrequency()
    {
        // K = L Lᵀ makes it L⁻¹ M L⁻ᵀ y = ω⁻² y.
        Matrix<double> L = stiffness.Cholesky().Factor;
        Matrix<double> half = L.Solve(mass);
        Matrix<double> standard = L.Solve(half.Transpose());
        double greatest = (0.5 * (standard + standard.Transpose())).Evd(Symmetricity.Symmetric).EigenValues.Real().Maximum();
        return 1 / Math.Sqrt(greatest) / (2 * Math.PI);
    }

    private static Matrix<double> Dense(SymmetricMatrix sparse)
    {
        var dense = DenseMatrix.Create(sparse.Order, sparse.Order, 0);
        var unit = new double[sparse.Order];
        var column = new double[sparse.Order];
        for (int j = 0; j < sparse.Order; j++)
        {
            unit[j] = 1;
            sparse.Multiply(unit, column);
            dense.SetColumn(j, column);
            unit[j] = 0;
        }
        return dense;
    }
}
