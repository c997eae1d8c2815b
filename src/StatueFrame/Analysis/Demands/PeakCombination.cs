namespace StatueFrame.Analysis;

/// <summary>Turns the coefficients of a quantity, one a coordinate, into its peak while the statue is shaken. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal abstract class PeakCombination
{
    /// <summary>
    /// The same for quantities that depend on the coordinates through a few others alone, as all forces in a part do
    /// through the motion of its ends: coefficients are then one a row, not one a coordinate.
    /// </summary>
    /// <param name="rows">The coefficients of each of these others, one a coordinate.</param>
    public abstract PeakCombination Through(double[][] rows);

    /// <summary>Whether all quantities have their peaks at one time, and the same state for all, as in a single mode.</summary>
    public virtual bool IsSingle => false;

    /// <summary>The peak, zero or more.</summary>
    public abstract double Peak(ReadOnlySpan<double> c);

    /// <summary>
    /// The coordinates at the time when a quantity has its peak: of all states that can be reached, the one that makes the
    /// quantity greatest. False when nothing shakes it.
    /// </summary>
    /// <param name="c">The quantity's coefficients.</param>
    /// <param name="state">Receives the coordinates.</param>
    public abstract bool StateAtPeak(ReadOnlySpan<double> c, Span<double> state);

    /// <summary>The coordinates of the one state of a single mode; its sign is open, and the same for every number of coordinates.</summary>
    public virtual double[] OneState(int count) => throw new NotSupportedException("Its peaks come at many times.");

    /// <summary>The greatest peak, over all directions in a plane, of a vector given by two components.</summary>
    public abstract double GreatestInPlane(ReadOnlySpan<double> x, ReadOnlySpan<double> y);

    /// <summary>The plan angle of the direction in which a vector's variance is greatest, rad.</summary>
    public abstract double MainDirection(ReadOnlySpan<double> x, ReadOnlySpan<double> y);

    /// <summary>Square root of the greater eigenvalue of [xx xy; xy yy].</summary>
    protected static double GreatestOf(double xx, double yy, double xy) =>
        Math.Sqrt(Math.Max(0, 0.5 * (xx + yy) + Math.Sqrt(0.25 * (xx - yy) * (xx - yy) + xy * xy)));

    /// <summary>A covariance between a few numbers in place of the many that they are made of.</summary>
    protected static double[] Reduced(double[] covariance, double[][] rows)
    {
        int few = rows.Length, many = rows[0].Length;
        var reduced = new double[few * few];
        var products = new double[many];
        for (int a = 0; a < few; a++)
        {
            for (int i = 0; i < many; i++)
                products[i] = Mechanics.Statics.DenseVector.Dot(covariance.AsSpan(i * many, many), rows[a]);
            for (int b = 0; b <= a; b++)
                reduced[a * few + b] = reduced[b * few + a] = Mechanics.Statics.DenseVector.Dot(products, rows[b]);
        }
        return reduced;
    }
}
