using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Studies;

/// <summary>What the geometry alone says of a ring of standoffs, bar by bar. SI units.</summary>
/// <remarks>Immutable and safe to share between threads; the arrays must not be written to.</remarks>
internal sealed class RingPart
{
    private const int Node = Frame.NodeSize;

    public RingPart(RingElement ring, int element, int bandInStatue, BodyModel body)
    {
        (Ring, Element, Band) = (ring, element, bandInStatue);
        int count = ring.Bars.Length;
        Motions = new double[count * Node * Node];
        Link = body.BandPlaces[ring.Band].NodeAt - LevelOf(body, ring).NodeAt;
        LevelNode = LevelOf(body, ring).NodeAt;
        BandNode = body.BandPlaces[ring.Band].NodeAt;
        for (int i = 0; i < count; i++)
        {
            BarPlacement place = ring.Bars[i].Bar.Place;
            FindMotion(place, place.SkinEnd - BandNode, Motions.AsSpan(i * Node * Node, Node * Node));
        }
    }

    public RingElement Ring { get; }

    /// <summary>Number of the ring's element in the frame.</summary>
    public int Element { get; }

    /// <summary>Number, in the whole statue, of the band it carries.</summary>
    public int Band { get; }

    public Vector3D LevelNode { get; }

    public Vector3D BandNode { get; }

    /// <summary>From the level's node to the band's.</summary>
    public Vector3D Link { get; }

    /// <summary>Per bar the 6×6 that takes the motion of the band's node, relative to where the level would carry it, to that of the skin end in bar axes.</summary>
    public double[] Motions { get; }

    private static Place LevelOf(BodyModel body, RingElement ring) => Array.Find(body.Levels, l => l.Node == ring.Start);

    private static void FindMotion(BarPlacement place, Vector3D arm, Span<double> motion)
    {
        for (int j = 0; j < Node; j++)
        {
            Vector3D unit = (j % 3) switch { 0 => Vector3D.UnitX, 1 => Vector3D.UnitY, _ => Vector3D.UnitZ };
            Vector3D move = place.Axes.ToLocal(j < 3 ? unit : unit.Cross(arm)), turn = j < 3 ? Vector3D.Zero : place.Axes.ToLocal(unit);
            (motion[j], motion[Node + j], motion[2 * Node + j]) = (move.X, move.Y, move.Z);
            (motion[3 * Node + j], motion[4 * Node + j], motion[5 * Node + j]) = (turn.X, turn.Y, turn.Z);
        }
    }
}
