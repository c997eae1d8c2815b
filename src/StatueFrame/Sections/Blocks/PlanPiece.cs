namespace StatueFrame;

/// <summary>One convex piece of a plan figure, added or, as a hole, taken away.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal abstract class PlanPiece
{
    public required double CenterX { get; init; }

    public required double CenterY { get; init; }

    /// <summary>Moments, about the piece's own center, of the part where a + b x + c y &gt; 0, with x and y from that center.</summary>
    public abstract PlanMoments Where(double a, double b, double c);

    /// <summary>The point of the piece, from its center, that lies farthest in a direction of any length.</summary>
    public abstract (double X, double Y) Farthest(double ux, double uy);

    /// <summary>By how much a point, from the center, must be scaled down to lie on the outline: 1 there, below 1 inside.</summary>
    public abstract double Gauge(double x, double y);
}
