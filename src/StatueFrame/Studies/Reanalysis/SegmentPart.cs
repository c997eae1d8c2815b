using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Studies;

/// <summary>A tower segment as numbers: its matrices. SI units.</summary>
/// <remarks>Immutable and safe to share between threads; the arrays must not be written to.</remarks>
internal sealed class SegmentPart
{
    private const int Size = FrameElement.Size;

    public SegmentPart(SegmentModel model)
    {
        Segment = model.Segment;
        (Kilograms, Center, JointMass) = (model.Mass, model.CenterOfMass, model.JointMass);
        model.Element.AddStiffness(Stiffness);
        model.Element.AddMass(Mass);
        for (int i = 0; i < Size; i++)
            Lifted[i] = Mass[i * Size + 2] + Mass[i * Size + Frame.NodeSize + 2];
        Stiffenings = model.Element is Superelement sum ? sum.AxialStiffenings.ToArray()
            : AxialStiffening.Of(model.Element) is { } own ? [own] : [];
    }

    /// <summary>The description it was made from.</summary>
    public TowerSegment Segment { get; }

    public double[] Stiffness { get; } = new double[Size * Size];

    public double[] Mass { get; } = new double[Size * Size];

    /// <summary>Mass times a unit lift of both nodes.</summary>
    public double[] Lifted { get; } = new double[Size];

    public double Kilograms { get; }

    public Vector3D Center { get; }

    /// <summary>Mass of the joint on its lower level, kg.</summary>
    public double JointMass { get; }

    public AxialStiffening[] Stiffenings { get; }
}
