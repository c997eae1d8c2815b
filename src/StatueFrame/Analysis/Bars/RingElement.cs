using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>A ring of standoffs as one element between the node of its level and the node of its band: the sum of its bars.</summary>
/// <remarks>
/// Immutable and safe to share between threads. The bars' own geometric stiffness is left out: their axial forces are
/// small against their buckling loads, or the strut check fails.
/// </remarks>
internal sealed class RingElement : FrameElement
{
    private readonly double[] stiffness = new double[Frame.NodeSize * Frame.NodeSize];
    private readonly Vector3D arm;

    public RingElement(string level, int band, string bandName, BarModel[] bars, Place levelPlace, Place bandPlace)
        : base(levelPlace.Node, bandPlace.Node)
    {
        (Level, Band, BandName, Bars) = (level, band, bandName, bars);
        arm = bandPlace.NodeAt - levelPlace.NodeAt;
        foreach (BarModel bar in bars)
            bar.Bar.AddTo(stiffness);
    }

    /// <summary>Full name of the level the bars stand on.</summary>
    public string Level { get; }

    /// <summary>Index of the band in its body.</summary>
    public int Band { get; }

    /// <summary>Full name of the band the bars carry.</summary>
    public string BandName { get; }

    /// <summary>The bars that hold the band.</summary>
    public BarModel[] Bars { get; }

    /// <summary>The skin's outline where the bars meet it, in the body's axes.</summary>
    public required PlanCurve Outline { get; init; }

    /// <summary>Bars that hang from the level and hold nothing.</summary>
    public BarPlacement[] Loose { get; init; } = [];

    /// <summary>The brackets that are described, those of loose bars too.</summary>
    public IEnumerable<PlacedBracket> Brackets => Bars.Select(bar => bar.Bar.Place).Concat(Loose).Select(place => place.Bracket).OfType<PlacedBracket>();

    public override void AddStiffness(Span<double> k) => RigidPair.AddTo(stiffness, arm, k);
}
