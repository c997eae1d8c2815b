using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A cross-section of masonry or concrete, about its center: a rectangle or a circle, solid or with a hollow of the same
/// shape in the middle. Unlike a bar's <see cref="Section"/> it keeps the x and y of the tower.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record BlockSection
{
    private protected BlockSection()
    {
    }

    /// <summary>A solid rectangle.</summary>
    /// <param name="widthX">Width along x, 0.05 to 60 m.</param>
    /// <param name="widthY">Width along y, 0.05 to 60 m.</param>
    public static RectangularBlock Rectangle(Length widthX, Length widthY) => new(widthX, widthY);

    /// <summary>A solid circle.</summary>
    /// <param name="diameter">Diameter, 0.05 to 60 m.</param>
    public static RoundBlock Round(Length diameter) => new(diameter);

    /// <summary>Area of the solid part.</summary>
    public Area Area => Area.FromSquareMeters(Plan.Whole.A);

    /// <summary>Second moment about x, ∫y² dA: for bending in the y–z plane.</summary>
    public AreaMomentOfInertia InertiaX => AreaMomentOfInertia.FromMetersToTheFourth(Plan.Whole.YY);

    /// <summary>Second moment about y, ∫x² dA: for bending in the x–z plane.</summary>
    public AreaMomentOfInertia InertiaY => AreaMomentOfInertia.FromMetersToTheFourth(Plan.Whole.XX);

    internal abstract PlanArea Plan { get; }

    /// <summary>St. Venant torsion constant, m⁴.</summary>
    internal abstract double J { get; }

    /// <summary>Area that shears for sway along x and along y, m².</summary>
    internal abstract (double X, double Y) ShearAreas { get; }

    /// <summary>Outer widths along x and y, m.</summary>
    internal abstract (double X, double Y) Widths { get; }

    internal bool IsRound => this is RoundBlock;

    /// <summary>The section between this one and one of the same shape.</summary>
    internal abstract BlockSection Blend(BlockSection other, double t);

    internal abstract PlanCurve Contour { get; }

    internal abstract void Validate(Validator v);

    /// <summary>As a beam section whose local z lies along the tower's x.</summary>
    internal BeamSection Of(double E, double G, double density)
    {
        PlanMoments m = Plan.Whole;
        (double shearX, double shearY) = ShearAreas;
        return new BeamSection
        {
            EA = E * m.A,
            EIy = E * m.XX,
            EIz = E * m.YY,
            GJ = G * J,
            GAz = G * shearX,
            GAy = G * shearY,
            Mass = density * m.A,
            RotaryY = density * m.XX,
            RotaryZ = density * m.YY,
        };
    }

    private protected static Length Between(Length a, Length b, double t) => (1 - t) * a + t * b;
}
