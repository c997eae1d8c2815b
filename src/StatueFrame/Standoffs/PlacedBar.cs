using StatueFrame.Mechanics;

namespace StatueFrame;

/// <summary>
/// One standoff between the node of its level and the node of its band. Rigid arms join the nodes to the bar's ends;
/// with the nodes' motions u in the outer axes, the skin end moves by d = B u relative to the tower end (bar axes), and
/// the 12×12 is Bᵀ K B: free of force in every rigid motion by construction.
/// </summary>
/// <remarks>Immutable and safe to share between threads. SI units; no method allocates.</remarks>
internal sealed class PlacedBar
{
    private readonly double[] b = new double[72];
    private readonly BarPlacement place;

    /// <summary>Joins a bar to two nodes; the placement and the nodes are in the same axes, m.</summary>
    public PlacedBar(BarPlacement place, Vector3D levelNode, Vector3D bandNode)
    {
        this.place = place;
        Stiffness = BarStiffness.Of(place);
        Carry(0, place.SkinEnd - levelNode, -1);
        Carry(6, place.SkinEnd - bandNode, 1);
    }

    /// <summary>The bar in its own axes; gives stress, slip and deflection.</summary>
    public BarStiffness Stiffness { get; }

    public BarPlacement Place => place;

    /// <summary>Adds the stiffness (12×12, row-major: level node, band node) to <paramref name="k144"/>.</summary>
    public void AddTo(Span<double> k144)
    {
        Span<double> kb = stackalloc double[72];
        ReadOnlySpan<double> k = Stiffness.Matrix;
        for (int i = 0; i < 6; i++)
        {
            for (int j = 0; j < 12; j++)
            {
                double sum = 0;
                for (int m = 0; m < 6; m++)
                    sum += k[6 * i + m] * b[12 * m + j];
                kb[12 * i + j] = sum;
            }
        }
        for (int i = 0; i < 12; i++)
        {
            for (int j = i; j < 12; j++)
            {
                double sum = 0;
                for (int m = 0; m < 6; m++)
                    sum += b[12 * m + i] * kb[12 * m + j];
                k144[12 * i + j] += sum;
                if (j > i)
                    k144[12 * j + i] += sum;
            }
        }
    }

    /// <summary>The motion of the skin end relative to where the tower end carries it, in bar axes (6 values), slip included.</summary>
    /// <param name="uLevel">Motion of the level's node (6 values).</param>
    /// <param name="uBand">Motion of the band's node (6 values).</param>
    /// <param name="d">Receives the motion.</param>
    /// <param name="imposed">
    /// What the skin end moves besides, in the outer axes, m: as by a skin that grows with heat, less the bar's own growth.
    /// </param>
    public void Motion(ReadOnlySpan<double> uLevel, ReadOnlySpan<double> uBand, Span<double> d, Vector3D imposed = default)
    {
        Vector3D local = place.Axes.ToLocal(imposed);
        (d[0], d[1], d[2], d[3], d[4], d[5]) = (local.X, local.Y, local.Z, 0, 0, 0);
        for (int i = 0; i < 6; i++)
        {
            for (int j = 0; j < 6; j++)
                d[i] += b[12 * i + j] * uLevel[j] + b[12 * i + 6 + j] * uBand[j];
        }
    }

    /// <summary>The forces on the bar at its ends in bar axes: tower end first, then skin end (12 values). Tension is positive in value 6.</summary>
    public void Forces(ReadOnlySpan<double> uLevel, ReadOnlySpan<double> uBand, Span<double> forces, Vector3D imposed = default)
    {
        Span<double> d = stackalloc double[6];
        Motion(uLevel, uBand, d, imposed);
        Stiffness.Forces(d, forces);
    }

    /// <summary>Adds the loads on the two nodes (12 values) by which a motion imposed on the skin end drives the frame.</summary>
    public void AddLoad(Vector3D imposed, Span<double> load12)
    {
        Span<double> d = stackalloc double[6], forces = stackalloc double[12];
        d.Clear();
        Vector3D local = place.Axes.ToLocal(imposed);
        (d[0], d[1], d[2]) = (local.X, local.Y, local.Z);
        Stiffness.Forces(d, forces);
        for (int i = 0; i < 6; i++)
        {
            for (int j = 0; j < 12; j++)
                load12[j] -= b[12 * i + j] * forces[6 + i];
        }
    }

    /// <summary>The bar alone as a cantilever under a force given in the outer axes; see <see cref="BarStiffness.Cantilever"/>.</summary>
    public bool Cantilever(Vector3D force, Span<double> forces, Span<double> deflection) =>
        Stiffness.Cantilever(place.Axes.ToLocal(force), forces, deflection);

    /// <summary>A node that moves by u and turns by θ moves a point at the arm r by u + θ×r, which along e is e·u + (r×e)·θ.</summary>
    private void Carry(int column, Vector3D arm, double sign)
    {
        for (int i = 0; i < 3; i++)
        {
            Vector3D e = i == 0 ? place.Axes.X : i == 1 ? place.Axes.Y : place.Axes.Z;
            Put(i, column, sign * e);
            Put(i, column + 3, sign * arm.Cross(e));
            Put(i + 3, column + 3, sign * e);
        }
    }

    private void Put(int row, int column, Vector3D v) =>
        (b[12 * row + column], b[12 * row + column + 1], b[12 * row + column + 2]) = (v.X, v.Y, v.Z);
}
