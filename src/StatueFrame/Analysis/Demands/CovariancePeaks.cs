using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>
/// Peaks of what swings with one covariance: of a quantity c the peak is √(cᵀCc), C the covariance of the coordinates times
/// the square of the peak factor. Of a single mode C is the square of its greatest amplitude.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="covariance">C, row by row.</param>
/// <param name="single">The state of that mode; null when there are more.</param>
internal sealed class CovariancePeaks(double[] covariance, double[]? single = null) : PeakCombination
{
    /// <summary>A single mode with a greatest amplitude.</summary>
    public static CovariancePeaks OfAmplitude(double amplitude) => new([amplitude * amplitude], [amplitude]);

    public override bool IsSingle => single is not null;

    public override double[] OneState(int count) => single ?? base.OneState(count);

    public override PeakCombination Through(double[][] rows) =>
        new CovariancePeaks(Reduced(covariance, rows), single is null ? null : Array.ConvertAll(rows, row => DenseVector.Dot(row, single)));

    public override double Peak(ReadOnlySpan<double> c) => Math.Sqrt(Math.Max(0, ModeCorrelation.Product(covariance, c, c)));

    public override bool StateAtPeak(ReadOnlySpan<double> c, Span<double> state)
    {
        double peak = Peak(c);
        state.Clear();
        if (!(peak > 0))
            return false;
        for (int i = 0; i < state.Length; i++)
            state[i] = DenseVector.Dot(covariance.AsSpan(i * state.Length, state.Length), c) / peak;
        return true;
    }

    public override double GreatestInPlane(ReadOnlySpan<double> x, ReadOnlySpan<double> y) =>
        GreatestOf(ModeCorrelation.Product(covariance, x, x), ModeCorrelation.Product(covariance, y, y), ModeCorrelation.Product(covariance, x, y));

    public override double MainDirection(ReadOnlySpan<double> x, ReadOnlySpan<double> y) =>
        0.5 * Math.Atan2(2 * ModeCorrelation.Product(covariance, x, y), ModeCorrelation.Product(covariance, x, x) - ModeCorrelation.Product(covariance, y, y));
}
