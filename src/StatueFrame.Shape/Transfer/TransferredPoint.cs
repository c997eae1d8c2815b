using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>A point at full size, with its error and the readings that set it out from the enlarged frame.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record TransferredPoint
{
    /// <summary>The point's name.</summary>
    public required string Name { get; init; }

    /// <summary>Its place at full size.</summary>
    public required Point3 At { get; init; }

    /// <summary>Covariance, m²: the six different entries xx, yy, zz, xy, xz, yz.</summary>
    public required (double XX, double YY, double ZZ, double XY, double XZ, double YZ) Covariance { get; init; }

    /// <summary>Distances from the nearest lines of the enlarged frame, the nearest first.</summary>
    public required ValueList<(string Line, Length Distance)> Distances { get; init; }

    /// <summary>Standard error along x.</summary>
    public Length ErrorX => Length.FromMeters(Math.Sqrt(Covariance.XX));

    /// <summary>Standard error along y.</summary>
    public Length ErrorY => Length.FromMeters(Math.Sqrt(Covariance.YY));

    /// <summary>Standard error along z.</summary>
    public Length ErrorZ => Length.FromMeters(Math.Sqrt(Covariance.ZZ));
}
