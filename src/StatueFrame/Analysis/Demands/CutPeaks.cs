using StatueFrame.Mechanics;
using UnitsNet;
using static System.FormattableString;

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

    /// <summary>Every 15°, from the direction that is bent most.</summary>
    private const int Directions = 24;

    /// <summary>
    /// The states of shear towards each of many directions with tipping towards it, axial force up and down, and torsion whose
    /// sign is open; or, where all peaks come at one time, that one state, both ways. Cuts of a segment have theirs in one order.
    /// </summary>
    /// <param name="first">The first direction, rad.</param>
    /// <param name="what">What shakes, in words.</param>
    public IEnumerable<(Vector3D Force, Vector3D Moment, bool TorsionIsOpen, string When)> States(double first, string what)
    {
        if (spectral.IsSingle)
        {
            (Vector3D force, Vector3D moment) = SingleState();
            yield return (force, moment, false, $"{what}, one way");
            yield return (-1 * force, -1 * moment, false, $"{what}, the other way");
            yield break;
        }
        for (int i = 0; i < Directions; i++)
        {
            double direction = first + 2 * Math.PI * i / Directions, degrees = Angle.FromRadians(direction).Degrees;
            degrees = Math.Round(degrees < 0 ? degrees + 360 : degrees, 1) % 360;
            (double sin, double cos) = Math.SinCos(direction);
            (double V, double M) = Towards(direction);
            foreach (int sign in (int[])[-1, 1])
                yield return (new Vector3D(V * cos, V * sin, sign * Axial), new Vector3D(-M * sin, M * cos, Torsion), true, Invariant($"{what} towards {degrees:0.#}°, {(sign < 0 ? "pressed" : "lifted")}"));
        }
    }

    private (Vector3D Force, Vector3D Moment) SingleState()
    {
        double[] state = spectral.OneState(rows[0].Length);
        double Part(int i) => Mechanics.Statics.DenseVector.Dot(rows[i], state);
        return (new Vector3D(Part(0), Part(1), Part(2)), new Vector3D(Part(3), Part(4), Part(5)));
    }
}
