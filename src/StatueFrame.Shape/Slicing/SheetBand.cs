using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>The sheet between two heights along a body's axis, measured on the mesh itself.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SheetBand
{
    private readonly (double XX, double YY, double ZZ, double XY, double XZ, double YZ) central;

    internal SheetBand(double bottom, double top, SheetMoments moments)
    {
        Bottom = Length.FromMeters(bottom);
        Top = Length.FromMeters(top);
        SheetArea = Area.FromSquareMeters(moments.Area);
        Centroid = Mesh.Point(moments.Centroid);
        central = moments.Central;
    }

    /// <summary>Lower edge, along the body's axis.</summary>
    public Length Bottom { get; }

    /// <summary>Upper edge, along the body's axis.</summary>
    public Length Top { get; }

    /// <summary>True area of the sheet, folds included.</summary>
    public Area SheetArea { get; }

    /// <summary>Centroid of the sheet in the body's axes.</summary>
    public Point3 Centroid { get; }

    /// <summary>Area of the smooth surface through the band's two stations; zero for a band that was only measured.</summary>
    public Area LoftArea { get; init; }

    /// <summary>True area over smooth area: how much sheet folds and relief take; 1 for a band that was only measured.</summary>
    public double FoldFactor => LoftArea.SquareMeters > 0 ? SheetArea / LoftArea : 1;

    /// <summary>Mass of the sheet.</summary>
    /// <param name="thickness">Thickness of the sheet.</param>
    /// <param name="metal">Its metal.</param>
    public Mass Mass(Length thickness, Material metal)
    {
        ArgumentNullException.ThrowIfNull(metal);
        return UnitsNet.Mass.FromKilograms(SheetArea.SquareMeters * thickness.Meters * metal.Density.KilogramsPerCubicMeter);
    }

    /// <summary>Inertia of the thin sheet about its centroid, kg·m², in the body's axes.</summary>
    /// <param name="thickness">Thickness of the sheet.</param>
    /// <param name="metal">Its metal.</param>
    public InertiaTensor Inertia(Length thickness, Material metal)
    {
        ArgumentNullException.ThrowIfNull(metal);
        double m = thickness.Meters * metal.Density.KilogramsPerCubicMeter;
        return new InertiaTensor(
            m * (central.YY + central.ZZ), m * (central.XX + central.ZZ), m * (central.XX + central.YY),
            -m * central.XY, -m * central.XZ, -m * central.YZ);
    }
}
