using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>
/// Turns the coefficients of a quantity, one a coordinate, into its peak in an earthquake: modes first, by component of the
/// ground's motion, then the three components. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SpectralCombination : PeakCombination
{
    private const int Components = 3;
    private const double Share = 0.3;

    private readonly EarthquakeAction action;

    /// <summary>Covariance of the coordinates' peaks by component: ρ of two modes times their peaks Γ·S_a/ω²; null without a spectrum.</summary>
    private readonly double[]?[] covariances = new double[Components][];

    public SpectralCombination(BaseMotionModes motion, EarthquakeAction action)
    {
        this.action = action;
        GroundAccelerations = new double[Components];
        int n = motion.ModeCount;
        SpectralAccelerations = new double[Components, n];
        double[] omega = new double[n], zeta = new double[n], peaks = new double[n];
        for (int i = 0; i < n; i++)
            (omega[i], zeta[i]) = (motion.Set.CircularFrequency(i), action.DampingOf(i));
        double[] rho = action.ModalRule == ModalRule.Cqc ? ModeCorrelation.Matrix(omega, zeta) : Identity(n);
        (double sin, double cos) = Math.SinCos(action.Orientation.Radians);
        Vector3D[] directions = [new Vector3D(cos, sin, 0), new Vector3D(-sin, cos, 0), Vector3D.UnitZ];
        for (int d = 0; d < Components; d++)
        {
            if (action.SpectrumOf((EarthquakeComponent)d) is not { } spectrum)
                continue;
            for (int i = 0; i < n; i++)
            {
                DesignSpectrum damped = action.ModalDamping.Count > 0 ? spectrum.WithDamping(zeta[i])! : spectrum;
                SpectralAccelerations[d, i] = damped.AtSi(2 * Math.PI / omega[i]);
                peaks[i] = motion.Participation(i, directions[d]) * SpectralAccelerations[d, i] / (omega[i] * omega[i]);
            }
            GroundAccelerations[d] = spectrum.AtSi(0);
            covariances[d] = CovarianceOf(rho, peaks, action.MissingMass ? GroundAccelerations[d] * directions[d] : Vector3D.Zero);
        }
    }

    private SpectralCombination(SpectralCombination whole, double[]?[] covariances)
    {
        (action, SpectralAccelerations, GroundAccelerations) = (whole.action, whole.SpectralAccelerations, whole.GroundAccelerations);
        this.covariances = covariances;
    }

    /// <summary>S_a by component and mode.</summary>
    public double[,] SpectralAccelerations { get; }

    /// <summary>S_a at period zero by component.</summary>
    public double[] GroundAccelerations { get; }

    public override PeakCombination Through(double[][] rows) =>
        new SpectralCombination(this, Array.ConvertAll(covariances, covariance => covariance is null ? null : Reduced(covariance, rows)));

    public override double MainDirection(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double xx = 0, yy = 0, xy = 0;
        for (int d = 0; d < Components; d++)
            (xx, yy, xy) = (xx + Covariance(d, x, x), yy + Covariance(d, y, y), xy + Covariance(d, x, y));
        return 0.5 * Math.Atan2(2 * xy, xx - yy);
    }

    /// <summary>The peak under one component, zero or more.</summary>
    public double Peak(int component, ReadOnlySpan<double> c) => Math.Sqrt(Math.Max(0, Covariance(component, c, c)));

    /// <summary>The peak under all three components.</summary>
    public override double Peak(ReadOnlySpan<double> c) => Together([Peak(0, c), Peak(1, c), Peak(2, c)]);

    /// <summary>C c/√(cᵀC c), components combined as the action asks.</summary>
    public override bool StateAtPeak(ReadOnlySpan<double> c, Span<double> state)
    {
        Span<double> peaks = [Peak(0, c), Peak(1, c), Peak(2, c)];
        double all = Together(peaks);
        state.Clear();
        if (!(all > 0))
            return false;
        bool squares = action.DirectionRule == DirectionRule.SquareRootOfSquares;
        int main = peaks[0] >= peaks[1] && peaks[0] >= peaks[2] ? 0 : peaks[1] >= peaks[2] ? 1 : 2;
        for (int d = 0; d < Components; d++)
        {
            if (covariances[d] is not { } covariance || peaks[d] == 0)
                continue;
            double weight = squares ? 1 / all : (d == main ? 1 : Share) / peaks[d];
            for (int i = 0; i < state.Length; i++)
                state[i] += weight * DenseVector.Dot(covariance.AsSpan(i * state.Length, state.Length), c);
        }
        return true;
    }

    public override double GreatestInPlane(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Span<double> xx = stackalloc double[Components], yy = stackalloc double[Components], xy = stackalloc double[Components];
        for (int d = 0; d < Components; d++)
            (xx[d], yy[d], xy[d]) = (Covariance(d, x, x), Covariance(d, y, y), Covariance(d, x, y));
        if (action.DirectionRule == DirectionRule.SquareRootOfSquares)
            return GreatestOf(xx[0] + xx[1] + xx[2], yy[0] + yy[1] + yy[2], xy[0] + xy[1] + xy[2]);
        const int steps = 360;
        double greatest = 0;
        Span<double> peak = stackalloc double[Components];
        for (int i = 0; i < steps; i++)
        {
            (double sin, double cos) = Math.SinCos(i * Math.PI / steps);
            for (int d = 0; d < Components; d++)
                peak[d] = Math.Sqrt(Math.Max(0, cos * cos * xx[d] + 2 * sin * cos * xy[d] + sin * sin * yy[d]));
            greatest = Math.Max(greatest, Together(peak));
        }
        return greatest;
    }

    /// <summary>The greatest peak in a plane under one component.</summary>
    public double GreatestInPlane(int component, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double xx = Covariance(component, x, x), yy = Covariance(component, y, y), xy = Covariance(component, x, y);
        return GreatestOf(xx, yy, xy);
    }

    private double Together(ReadOnlySpan<double> p)
    {
        if (action.DirectionRule == DirectionRule.SquareRootOfSquares)
            return Math.Sqrt(p[0] * p[0] + p[1] * p[1] + p[2] * p[2]);
        double sum = p[0] + p[1] + p[2], most = Math.Max(p[0], Math.Max(p[1], p[2]));
        return Share * sum + (1 - Share) * most;
    }

    private double Covariance(int d, ReadOnlySpan<double> a, ReadOnlySpan<double> b) =>
        covariances[d] is { } covariance ? ModeCorrelation.Product(covariance, a, b) : 0;

    /// <summary>The three remainders follow the ground together, and are independent of the modes.</summary>
    private static double[] CovarianceOf(double[] rho, double[] peaks, Vector3D ground)
    {
        int n = peaks.Length, size = n + Components;
        var covariance = new double[size * size];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
                covariance[i * size + j] = rho[i * n + j] * peaks[i] * peaks[j];
        }
        ReadOnlySpan<double> g = [ground.X, ground.Y, ground.Z];
        for (int i = 0; i < Components; i++)
        {
            for (int j = 0; j < Components; j++)
                covariance[(n + i) * size + n + j] = g[i] * g[j];
        }
        return covariance;
    }

    private static double[] Identity(int n)
    {
        var one = new double[n * n];
        for (int i = 0; i < n; i++)
            one[i * n + i] = 1;
        return one;
    }
}
