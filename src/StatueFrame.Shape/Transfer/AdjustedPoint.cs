using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>A measured point after adjustment, with how well it is known.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record AdjustedPoint
{
    /// <summary>The point's name.</summary>
    public required string Name { get; init; }

    /// <summary>Its place in the frame's axes.</summary>
    public required Point3 At { get; init; }

    /// <summary>
    /// Covariance of x and y, m²: xx, yy, xy; and the variance of z. From the standard errors of the readings as they were
    /// stated, not as they turned out.
    /// </summary>
    public required (double XX, double YY, double XY, double ZZ) Covariance { get; init; }

    /// <summary>Greatest difference between the two readings of one distance or height.</summary>
    public required Length ClosingError { get; init; }

    /// <summary>Readings kept, less three.</summary>
    public required int Redundancy { get; init; }

    /// <summary>Σ(residual / standard error)² of the readings kept.</summary>
    public required double WeightedSquares { get; init; }

    /// <summary>Readings that do not fit.</summary>
    public required ValueList<Blunder> Blunders { get; init; }

    /// <summary>Standard error along x.</summary>
    public Length ErrorX => Length.FromMeters(Math.Sqrt(Covariance.XX));

    /// <summary>Standard error along y.</summary>
    public Length ErrorY => Length.FromMeters(Math.Sqrt(Covariance.YY));

    /// <summary>Standard error along z.</summary>
    public Length ErrorZ => Length.FromMeters(Math.Sqrt(Covariance.ZZ));
}
