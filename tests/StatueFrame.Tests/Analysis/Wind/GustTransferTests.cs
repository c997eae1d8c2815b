using System.Numerics;
using CsCheck;
using StatueFrame.Analysis;

namespace StatueFrame.Tests.Analysis.Gusts;

public class GustTransferTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        new("mean square of an oscillator in white noise of one-sided density 1/Hz, ω 5 rad/s, ξ 0.01", "closed form 1/(8 ξ ω³)", 1 / (8 * 0.01 * 125), "-", 1e-4, () => WhiteNoise(5, 0.01), ValueKind.IndependentComputation),
        new("mean square of an oscillator in white noise of one-sided density 1/Hz, ω 5 rad/s, ξ 0.3", "closed form 1/(8 ξ ω³)", 1 / (8 * 0.3 * 125), "-", 1e-4, () => WhiteNoise(5, 0.3), ValueKind.IndependentComputation),
        .. Enum.GetValues<GustSpectrum>().Select(spectrum => new PublishedValue(
            $"variance of the spectrum {spectrum}, over σ²", "closed form 1", 1, "-", 1e-3, () => Variance(spectrum), ValueKind.IndependentComputation)),
        new("7.47·1.7² of R_n and (26.11-10), over (π/4)·2² of random vibration: constant of the spectrum", "closed form (2/3)·10.3, integrating to σ²", 2.0 / 3 * 10.3, "-", 1e-3, () => 7.47 * 1.7 * 1.7 / Math.PI, ValueKind.IndependentComputation),
    ];

    private static double[] Grid(int count, double from, double to) =>
        [0, .. Enumerable.Range(0, count).Select(k => from * Math.Pow(to / from, k / (count - 1.0)))];

    private static double WhiteNoise(double omega, double xi)
    {
        double[] n = Grid(80, 1e-3, 1e3);
        var transfer = new ModalTransfer(n, [omega], [xi]);
        return Enumerable.Range(0, n.Length).Sum(k => transfer.Pair(k, 0, 0).Real);
    }

    private static double Variance(GustSpectrum spectrum)
    {
        // ∫ reduced spectrum d(ln f); beyond f = 1e8 less than 1e-5 is left.
        const double from = -18, to = 18;
        const int steps = 4000;
        double h = (to - from) / steps;
        return h * Enumerable.Range(0, steps).Sum(k => Reduced(Math.Exp(from + (k + 0.5) * h)));

        double Reduced(double f) => f * GustField.Density(spectrum, f);
    }

    [Fact]
    public void Weights_integrate_straight_lines_exactly() =>
        Gen.Select(Gen.Double[0.5, 3], Gen.Double[0.005, 0.1], Gen.Double[0.5, 3], Gen.Double[0.005, 0.1]).Sample((w1, x1, w2, x2) =>
        {
            double[] n = Grid(25, 0.02, 2);
            var transfer = new ModalTransfer(n, [w1, w2], [x1, x2]);
            Complex pair = 0, single = 0, pairByPoints = 0, singleByPoints = 0;
            for (int k = 0; k < n.Length; k++)
            {
                pair += Line(n[k]) * transfer.Pair(k, 1, 0);
                single += Line(n[k]) * transfer.Single(k, 0);
            }
            const int points = 100_000;
            for (int k = 0; k < points; k++)
            {
                double at = n[^1] * (k + 0.5) / points, w = 2 * Math.PI * at;
                singleByPoints += Line(at) * transfer.At(w, 0) * n[^1] / points;
                pairByPoints += Line(at) * transfer.At(w, 1) * Complex.Conjugate(transfer.At(w, 0)) * n[^1] / points;
            }
            return Complex.Abs(pair - pairByPoints) < 1e-3 * Complex.Abs(pairByPoints) && Complex.Abs(single - singleByPoints) < 1e-3 * Complex.Abs(singleByPoints);

            static double Line(double at) => 1 + 3 * at;
        }, iter: 10);
}
