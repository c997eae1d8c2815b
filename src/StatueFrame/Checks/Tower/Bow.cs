namespace StatueFrame.Checks;

/// <summary>A way in which a block that stands free bows out.</summary>
/// <param name="X">Its direction, a unit vector.</param>
/// <param name="Y">Its direction, a unit vector.</param>
/// <param name="Depth">Depth of a solid rectangle with the same radius of gyration that way, √12 i, m.</param>
internal readonly record struct Bow(double X, double Y, double Depth)
{
    /// <summary>How far a thrust lies off the centroid that way, m, without sign.</summary>
    public double Eccentricity(double ex, double ey) => Math.Abs(X * ex + Y * ey);

    /// <summary>A thrust moved farther out by an initial bow.</summary>
    public (double X, double Y) Moved(double ex, double ey, double initial)
    {
        double outward = X * ex + Y * ey < 0 ? -initial : initial;
        return (ex + outward * X, ey + outward * Y);
    }
}
