using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>A standoff between its level and one node of the meshed skin.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class FineBar : FrameElement
{
    private readonly double[] stiffness = new double[Frame.NodeSize * Frame.NodeSize];
    private readonly Vector3D arm, offSkin;
    private readonly double skinExpansion;

    public FineBar(BodyModel body, RingElement ring, BarModel bar, Place level, int node, Vector3D nodeAt) : base(level.Node, node)
    {
        (Ring, Bar, arm, offSkin) = (ring, bar, nodeAt - level.NodeAt, bar.Bar.Place.SkinEnd - nodeAt);
        skinExpansion = HeatField.ExpansionOf(body);
        Placed = new PlacedBar(bar.Bar.Place, level.NodeAt, nodeAt);
        Placed.AddTo(stiffness);
    }

    public RingElement Ring { get; }

    public BarModel Bar { get; }

    /// <summary>The bar between the two nodes.</summary>
    public PlacedBar Placed { get; }

    /// <summary>What heat would move and turn its skin end besides the nodes' own motion: the growth of what carries it from the node, less its own and what its level carries it.</summary>
    public (Vector3D Move, Vector3D Turn) Freely(HeatField heat)
    {
        (Vector3D own, Vector3D carried, Vector3D turn) = heat.BesideSkin(Ring, Bar);
        BarPlacement place = Bar.Bar.Place;
        return (skinExpansion * heat.SkinChange(place.SkinEnd, place.Outward) * offSkin - own - carried, -turn);
    }

    public override void AddStiffness(Span<double> k) => RigidPair.AddTo(stiffness, arm, k);
}
