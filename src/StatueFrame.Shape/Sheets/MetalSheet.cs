using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>One sheet of the skin.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record MetalSheet
{
    /// <summary>Number, from 1, in the order from the lowest up.</summary>
    public required int Number { get; init; }

    /// <summary>Area, laps not included.</summary>
    public required Area Area { get; init; }

    /// <summary>Mass, laps not included.</summary>
    public required Mass Mass { get; init; }

    /// <summary>Centroid, in the axes of the mesh.</summary>
    public required Point3 Center { get; init; }

    /// <summary>Longer side, flat before shaping; an estimate from the sheet's chord and curvature.</summary>
    public required Length Length { get; init; }

    /// <summary>Shorter side, flat before shaping.</summary>
    public required Length Width { get; init; }

    /// <summary>How deep the shaped sheet is, across its middle plane.</summary>
    public required Length Depth { get; init; }

    /// <summary>Lapped seam round the sheet.</summary>
    public required Length LappedSeam { get; init; }

    /// <summary>Flush seam round the sheet.</summary>
    public required Length FlushSeam { get; init; }

    /// <summary>Edge at which the surface ends: the foot, or the joint to a limb.</summary>
    public required Length FreeEdge { get; init; }

    /// <summary>Rivet holes round the sheet: one row along every seam.</summary>
    public required int RivetHoles { get; init; }

    /// <summary>The stronger of the two principal curvatures, 1/m; positive where the sheet bulges outward.</summary>
    public required double StrongCurvature { get; init; }

    /// <summary>The weaker of the two principal curvatures, 1/m.</summary>
    public required double WeakCurvature { get; init; }

    /// <summary>Product of the principal curvatures, 1/m²: zero for a sheet that is only bent, positive for a bowl, negative for a saddle.</summary>
    public double GaussianCurvature => StrongCurvature * WeakCurvature;

    /// <summary>
    /// How much the metal must be stretched or gathered by hammering, as mean strain of area: that of a round blank of the
    /// same area, |K| A/12π; long sheets need less.
    /// </summary>
    public double AreaStrain => Math.Abs(GaussianCurvature) * Area.SquareMeters / (12 * Math.PI);

    /// <summary>False when the sheet turns more than was allowed, as at a sharp edge that no cut removes.</summary>
    public required bool WithinTurn { get; init; }

    /// <summary>The sheet's own surface.</summary>
    public required Mesh Surface { get; init; }
}
