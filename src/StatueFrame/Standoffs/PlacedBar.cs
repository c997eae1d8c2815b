using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame;

/// <summary>
/// One standoff between the node of its level and the node of its band. Rigid arms join the nodes to the bar's ends;
/// with the nodes' motions u in the outer axes, the skin end moves by d relative to where the tower end would carry it
/// (bar axes), and a rigid motion of both nodes gives d = 0: the bar is free of force in it by construction.
/// </summary>
/// <remarks>Immutable and safe to share between threads. SI units; no method allocates.</remarks>
internal sealed class PlacedBar
{
    private readonly BarPlacement place;
    private readonly Vector3D levelArm, bandArm;

    /// <summary>Joins a bar to two nodes; the placement and the nodes are in the same axes, m.</summary>
    public PlacedBar(BarPlacement place, Vector3D levelNode, Vector3D bandNode)
    {
        this.place = place;
        Stiffness = BarStiffness.Of(place);
        (levelArm, bandArm) = (place.SkinEnd - levelNode, place.SkinEnd - bandNode);
    }

    /// <summary>The bar in its own axes; gives stress, slip and deflection.</summary>
    public BarStiffness Stiffness { get; }

    public BarPlacement Place => place;

    /// <summary>From the level's node to the band's, m.</summary>
    public Vector3D Link => levelArm - bandArm;

    /// <summary>
    /// Adds the stiffness against a motion of the band's node relative to where the level would carry it (6×6,
    /// row-major), so that the bars of a ring are summed before the sum is spread over the two nodes.
    /// </summary>
    public void AddTo(Span<double> k36)
    {
        Span<double> k = stackalloc double[36];
        Stiffness.CopyTo(k);
        SmallMatrix.ToGlobal(k, 6, place.Axes);
        SmallMatrix.CarryByArm(k, 6, 0, bandArm);
        SmallMatrix.AddSymmetric(k, k36, 6);
    }

    /// <summary>The motion of the skin end relative to where the tower end carries it, in bar axes (6 values), slip included.</summary>
    /// <param name="uLevel">Motion of the level's node (6 values).</param>
    /// <param name="uBand">Motion of the band's node (6 values).</param>
    /// <param name="d">Receives the motion.</param>
    /// <param name="imposed">
    /// What the skin end moves besides, in the outer axes, m: as by a skin that grows with heat, less the bar's own growth.
    /// </param>
    /// <param name="imposedTurn">What it turns besides, in the outer axes, rad.</param>
    public void Motion(ReadOnlySpan<double> uLevel, ReadOnlySpan<double> uBand, Span<double> d, Vector3D imposed = default, Vector3D imposedTurn = default)
    {
        Vector3D levelTurn = new(uLevel[3], uLevel[4], uLevel[5]), bandTurn = new(uBand[3], uBand[4], uBand[5]);
        Vector3D moved = new Vector3D(uBand[0] - uLevel[0], uBand[1] - uLevel[1], uBand[2] - uLevel[2])
            + bandTurn.Cross(bandArm) - levelTurn.Cross(levelArm) + imposed;
        Vector3D move = place.Axes.ToLocal(moved), turn = place.Axes.ToLocal(bandTurn - levelTurn + imposedTurn);
        (d[0], d[1], d[2], d[3], d[4], d[5]) = (move.X, move.Y, move.Z, turn.X, turn.Y, turn.Z);
    }

    /// <summary>The forces on the bar at its ends in bar axes: tower end first, then skin end (12 values). Tension is positive in value 6.</summary>
    public void Forces(ReadOnlySpan<double> uLevel, ReadOnlySpan<double> uBand, Span<double> forces, Vector3D imposed = default, Vector3D imposedTurn = default)
    {
        Span<double> d = stackalloc double[6];
        Motion(uLevel, uBand, d, imposed, imposedTurn);
        Stiffness.Forces(d, forces);
    }

    /// <summary>Adds the loads on the two nodes (12 values) by which a motion imposed on the skin end drives the frame.</summary>
    public void AddLoad(Vector3D imposed, Span<double> load12, Vector3D imposedTurn = default)
    {
        Span<double> d = stackalloc double[6], f = stackalloc double[12];
        Vector3D local = place.Axes.ToLocal(imposed), turn = place.Axes.ToLocal(imposedTurn);
        (d[0], d[1], d[2], d[3], d[4], d[5]) = (local.X, local.Y, local.Z, turn.X, turn.Y, turn.Z);
        Stiffness.Forces(d, f);
        Vector3D force = place.Axes.ToGlobal(new Vector3D(f[6], f[7], f[8])), moment = place.Axes.ToGlobal(new Vector3D(f[9], f[10], f[11]));
        Add(force, moment + levelArm.Cross(force), load12[..6]);
        Add(-force, -moment - bandArm.Cross(force), load12[6..]);

        static void Add(Vector3D force, Vector3D moment, Span<double> load)
        {
            load[0] += force.X;
            load[1] += force.Y;
            load[2] += force.Z;
            load[3] += moment.X;
            load[4] += moment.Y;
            load[5] += moment.Z;
        }
    }

    /// <summary>The bar alone as a cantilever under a force given in the outer axes; see <see cref="BarStiffness.Cantilever"/>.</summary>
    public bool Cantilever(Vector3D force, Span<double> forces, Span<double> deflection) =>
        Stiffness.Cantilever(place.Axes.ToLocal(force), forces, deflection);
}
