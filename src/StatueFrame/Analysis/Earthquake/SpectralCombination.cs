using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>
/// Turns the coefficients of a quantity, one a coordinate, into its peak in an earthquake: modes first, by component of the
/// ground's motion, then the three components. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SpectralCombination
{
    private const int Components = 3;
    private const double Share = 0.3;

    private readonly BaseMotionModes motion;
    private readonly EarthquakeAction action;
    private readonly double[] rho;

    /// <summary>Peak of each mode's coordinate by component: Γ·S_a/ω².</summary>
    private readonly double[][] peaks = new double[Components][];

    public SpectralCombination(BaseMotionModes motion, EarthquakeAction action)
    {
        (this.motion, this.action) = (motion, action);
        int n = motion.ModeCount;
        SpectralAccelerations = new double[Components, n];
        double[] omega = new double[n], zeta = new double[n];
        for (int i = 0; i < n; i++)
            (omega[i], zeta[i]) = (motion.Set.CircularFrequency(i), action.DampingOf(i));
        rho = action.ModalRule == ModalRule.Cqc ? ModeCorrelation.Matrix(omega, zeta) : Identity(n);
        (double sin, double cos) = Math.SinCos(action.Orientation.Radians);
        Directions = [new Vector3D(cos, sin, 0), new Vector3D(-sin, cos, 0), Vector3D.UnitZ];
        for (int d = 0; d < Components; d++)
        {
            DesignSpectrum? spectrum = action.SpectrumOf((EarthquakeComponent)d);
            peaks[d] = new double[n];
            if (spectrum is null)
                continue;
            for (int i = 0; i < n; i++)
            {
                SpectralAccelerations[d, i] = spectrum.WithDamping(action.ModalDamping.Count > 0 ? zeta[i] : spectrum.DampingRatio)!.AtSi(2 * Math.PI / omega[i]);
                peaks[d][i] = motion.Participation(i, Directions[d]) * SpectralAccelerations[d, i] / (omega[i] * omega[i]);
            }
            GroundAccelerations[d] = spectrum.AtSi(0);
        }
    }

    public Vector3D[] Directions { get; }

    /// <summary>S_a by component and mode.</summary>
    public double[,] SpectralAccelerations { get; }

    /// <summary>S_a at period zero by component.</summary>
    public double[] GroundAccelerations { get; } = new double[Components];

    /// <summary>The peak under one component, zero or more.</summary>
    public double Peak(int component, ReadOnlySpan<double> c) => Math.Sqrt(Math.Max(0, Covariance(component, c, c)));

    /// <summary>The peak under all three components.</summary>
    public double Peak(ReadOnlySpan<double> c) => Together([Peak(0, c), Peak(1, c), Peak(2, c)]);

    /// <summary>The greatest peak, over all directions in a plane, of a vector given by two components.</summary>
    public double GreatestInPlane(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
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

    /// <summary>The same under one component.</summary>
    public double GreatestInPlane(int component, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double xx = Covariance(component, x, x), yy = Covariance(component, y, y), xy = Covariance(component, x, y);
        return GreatestOf(xx, yy, xy);
    }

    /// <summary>Square root of the greater eigenvalue of [xx xy; xy yy].</summary>
    private static double GreatestOf(double xx, double yy, double xy) =>
        Math.Sqrt(Math.Max(0, 0.5 * (xx + yy) + Math.Sqrt(0.25 * (xx - yy) * (xx - yy) + xy * xy)));

    private double Together(ReadOnlySpan<double> p)
    {
        if (action.DirectionRule == DirectionRule.SquareRootOfSquares)
            return Math.Sqrt(p[0] * p[0] + p[1] * p[1] + p[2] * p[2]);
        double sum = p[0] + p[1] + p[2], most = Math.Max(p[0], Math.Max(p[1], p[2]));
        return Share * sum + (1 - Share) * most;
    }

    /// <summary>Covariance of two quantities under one component; the remainder is independent of the modes.</summary>
    private double Covariance(int d, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        int n = motion.ModeCount;
        if (action.SpectrumOf((EarthquakeComponent)d) is null)
            return 0;
        double[] first = new double[n], second = new double[n];
        for (int i = 0; i < n; i++)
            (first[i], second[i]) = (a[i] * peaks[d][i], b[i] * peaks[d][i]);
        double sum = ModeCorrelation.Product(rho, first, second);
        return action.MissingMass ? sum + Rest(a) * Rest(b) * GroundAccelerations[d] * GroundAccelerations[d] : sum;

        double Rest(ReadOnlySpan<double> c) =>
            Directions[d].X * c[n] + Directions[d].Y * c[n + 1] + Directions[d].Z * c[n + 2];
    }

    private static double[] Identity(int n)
    {
        var one = new double[n * n];
        for (int i = 0; i < n; i++)
            one[i * n + i] = 1;
        return one;
    }
}
