using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The plan of a tower at a level, about the level's center: a rectangle, a regular polygon of legs, or a circle.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record TowerPlan
{
    private protected TowerPlan()
    {
    }

    /// <summary>A square with sides parallel to x and y.</summary>
    /// <param name="width">Distance between leg axes.</param>
    public static RectangularPlan Square(Length width) => new(width, width);

    /// <summary>A circle, for tubes and cores.</summary>
    /// <param name="diameter">Outer diameter, where standoffs attach.</param>
    public static RoundPlan Round(Length diameter) => new(diameter);

    /// <summary>Where the legs stand, anticlockwise; empty for a circle, which has none.</summary>
    internal abstract (double X, double Y)[] Legs { get; }

    /// <summary>How many legs there are; may be asked of a plan that is not valid.</summary>
    internal abstract int Feet { get; }

    /// <summary>The outline that standoffs attach to, about the level's center.</summary>
    internal abstract PlanCurve Outline { get; }

    internal abstract void Validate(Validator v);

    private protected static PlanCurve Through((double X, double Y)[] points) =>
        new(Array.ConvertAll(points, p => p.X), Array.ConvertAll(points, p => p.Y));
}
