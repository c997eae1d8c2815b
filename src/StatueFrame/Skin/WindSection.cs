namespace StatueFrame;

/// <summary>One of the sections of a band at which the wind's width is taken. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal readonly struct WindSection
{
    private readonly SkinSlab slab;
    private readonly double part;

    /// <summary>Takes a section of a slab.</summary>
    /// <param name="slab">The slab.</param>
    /// <param name="part">Where in it, from 0 at its lower to 1 at its upper end.</param>
    /// <param name="height">The height that the section stands for, m.</param>
    public WindSection(SkinSlab slab, double part, double height)
    {
        this.slab = slab;
        this.part = part;
        Height = height;
        (_, CentroidX, CentroidY) = PlanCurve.MomentsBetween(slab.Lower.Curve, slab.Upper.Curve, part);
    }

    /// <summary>The height that the section stands for, m.</summary>
    public double Height { get; }

    /// <summary>Elevation, m.</summary>
    public double Z => slab.Lower.Z + part * slab.Height;

    public double CentroidX { get; }

    public double CentroidY { get; }

    /// <summary>The least and the greatest coordinate of the section along a unit direction.</summary>
    public (double Least, double Greatest) Extent(double directionX, double directionY) =>
        PlanCurve.ExtentBetween(slab.Lower.Curve, slab.Upper.Curve, part, directionX, directionY);
}
