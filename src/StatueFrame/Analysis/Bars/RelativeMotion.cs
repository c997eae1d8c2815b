using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// The motion of one node against another that carries it rigidly: all that strains what is between them. Six values;
/// small rotations. Forces between the nodes are those of the relative motion with the first node held.
/// </summary>
internal static class RelativeMotion
{
    /// <summary>Six values for a full vector of displacements.</summary>
    /// <param name="u">The full vector.</param>
    /// <param name="start">The node that carries.</param>
    /// <param name="end">The node that moves against it.</param>
    /// <param name="arm">From the first node to the second, m.</param>
    /// <param name="r">Receives the motion.</param>
    public static void Of(ReadOnlySpan<double> u, int start, int end, Vector3D arm, Span<double> r)
    {
        ReadOnlySpan<double> a = u.Slice(Frame.NodeSize * start, Frame.NodeSize), b = u.Slice(Frame.NodeSize * end, Frame.NodeSize);
        Vector3D carried = new Vector3D(a[3], a[4], a[5]).Cross(arm);
        (r[0], r[1], r[2]) = (b[0] - a[0] - carried.X, b[1] - a[1] - carried.Y, b[2] - a[2] - carried.Z);
        (r[3], r[4], r[5]) = (b[3] - a[3], b[4] - a[4], b[5] - a[5]);
    }
}
