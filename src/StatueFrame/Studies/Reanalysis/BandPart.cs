using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Studies;

/// <summary>
/// A band of skin as mass on its node in the base: that of its sheet, and that of 1 kg/m² of armature. Metal, thickness and
/// armature of a variant weigh the two; the node stays where the base has its centroid. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads; the arrays must not be written to.</remarks>
internal sealed class BandPart
{
    private const int Entries = Frame.NodeSize * Frame.NodeSize;

    private BandPart(BodyModel body, int index, SkinBand sheet, SkinBand both)
    {
        Place place = body.BandPlaces[index];
        (Body, Index, Node, At) = (body, index, place.Node, place.NodeAt);
        (Sheet, SheetMoment) = (MassOf(sheet, SheetMatrix), sheet.Mass * body.Axes.ToGlobal(sheet.Centroid));
        ArmatureMoment = both.Mass * body.Axes.ToGlobal(both.Centroid) - SheetMoment;
        Armature = MassOf(both, ArmatureMatrix) - Sheet;
        for (int i = 0; i < Entries; i++)
            ArmatureMatrix[i] -= SheetMatrix[i];
    }

    public BodyModel Body { get; }

    /// <summary>Its number in its body, from 0.</summary>
    public int Index { get; }

    public int Node { get; }

    /// <summary>Where the node is.</summary>
    public Vector3D At { get; }

    /// <summary>Mass of the sheet of the base, kg.</summary>
    public double Sheet { get; }

    public Vector3D SheetMoment { get; }

    public double[] SheetMatrix { get; } = new double[Entries];

    /// <summary>Mass of 1 kg/m² of armature, kg.</summary>
    public double Armature { get; }

    public Vector3D ArmatureMoment { get; }

    public double[] ArmatureMatrix { get; } = new double[Entries];

    /// <summary>The bands of a body.</summary>
    public static IEnumerable<BandPart> Of(BodyModel body)
    {
        if (body.Skin is not { } skin)
            yield break;
        SkinBand[] sheet = BandBuilder.Bands(skin with { ArmatureMass = 0.KilogramsPerSquareMeter }), both = BandBuilder.Bands(skin with { ArmatureMass = 1.KilogramsPerSquareMeter });
        for (int i = 0; i < sheet.Length; i++)
            yield return new BandPart(body, i, sheet[i], both[i]);
    }

    /// <summary>Mass over that of the base's sheet, and mass of armature per area, kg/m².</summary>
    public readonly record struct Weighing(double Sheet, double Armature);

    public double Mass(in Weighing skin) => skin.Sheet * Sheet + skin.Armature * Armature;

    public Vector3D Moment(in Weighing skin) => skin.Sheet * SheetMoment + skin.Armature * ArmatureMoment;

    private double MassOf(SkinBand band, double[] matrix)
    {
        Vector3D offset = Body.Axes.ToGlobal(band.Centroid) - At;
        new PointMass(Node, band.Mass, offset, band.Inertia.ToGlobal(Body.Axes.Axes)).AddMass(matrix);
        return band.Mass;
    }
}
