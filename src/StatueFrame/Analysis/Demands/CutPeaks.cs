using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// The peaks, while the statue is shaken, of the three forces and three moments in a cut square to a body's z, in any direction of the
/// cut. SI units; without sign, and not at one time.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class CutPeaks
{
    private readonly PeakCombination spectral;

    /// <summary>The coefficients of the six, in the numbers that the combination is about.</summary>
    private readonly double[][] rows;

    private readonly double[] tipX, tipY;

    public CutPeaks(PeakCombination spectral, double[][] rows)
    {
        (this.spectral, this.rows) = (spectral, rows);
        // A moment that tips towards x is one about y; towards y, against x.
        (tipX, tipY) = (rows[4], Array.ConvertAll(rows[3], c => -c));
        MainDirection = spectral.MainDirection(tipX, tipY);
    }

    public double Axial => Of(2);

    public double Torsion => Of(5);

    /// <summary>The greatest shear along any direction of the cut.</summary>
    public double Shear => spectral.GreatestInPlane(rows[0], rows[1]);

    /// <summary>The greatest moment about any axis in the cut.</summary>
    public double Bending => spectral.GreatestInPlane(rows[3], rows[4]);

    /// <summary>The direction towards which the cut is tipped most, rad.</summary>
    public double MainDirection { get; }

    /// <summary>One of the six: forces along x, y, z, moments about x, y, z.</summary>
    public double Of(int part) => spectral.Peak(rows[part]);

    /// <summary>The peaks of the shear towards a direction, and of the moment that tips towards it.</summary>
    /// <param name="direction">Angle from the body's x, rad.</param>
    public (double Shear, double Tipping) Towards(double direction)
    {
        (double sin, double cos) = Math.SinCos(direction);
        return (Along(rows[0], rows[1]), Along(tipX, tipY));

        double Along(double[] x, double[] y)
        {
            Span<double> c = stackalloc double[x.Length];
            for (int i = 0; i < c.Length; i++)
                c[i] = cos * x[i] + sin * y[i];
            return spectral.Peak(c);
        }
    }

    /// <summary>
    /// Forces and moments with the peaks towards a direction: shear towards it, tipping towards it, and axial force, torsion
    /// with a sign each.
    /// </summary>
    /// <param name="direction">Angle from the body's x, rad.</param>
    /// <param name="axialSign">Sign of the axial force.</param>
    public (Vector3D Force, Vector3D Moment) State(double direction, int axialSign)
    {
        (double sin, double cos) = Math.SinCos(direction);
        (double V, double M) = Towards(direction);
        return (new Vector3D(V * cos, V * sin, axialSign * Axial), new Vector3D(-M * sin, M * cos, Torsion));
    }
}
