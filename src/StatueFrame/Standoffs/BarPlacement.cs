using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame;

/// <summary>Where one standoff is and how it is turned, in the body's axes and SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed record BarPlacement
{
    public required Standoff Standoff { get; init; }

    public required Vector3D TowerEnd { get; init; }

    public required Vector3D SkinEnd { get; init; }

    /// <summary>The bar's axes: x from tower end to skin end, y along the thickness, z along the width.</summary>
    public required Axes3D Axes { get; init; }

    /// <summary>The free direction of the saddle, of length 1; zero when it does not slide.</summary>
    public required Vector3D Slide { get; init; }

    /// <summary>The skin's outward unit normal at the skin end, across the body's axis.</summary>
    public required Vector3D Outward { get; init; }

    /// <summary>Where the skin end is along the skin's outline, m anticlockwise from the outline's first vertex.</summary>
    public required double Position { get; init; }

    /// <summary>What carries the tower end; null when it stands on the tower, or on a bracket that is not described and does not give.</summary>
    public PlacedBracket? Bracket { get; init; }

    /// <summary>
    /// The springs of the tower end against turning, those of the bracket in series, N·m/rad. The bracket's tip is taken as free
    /// to move sideways.
    /// </summary>
    public EndSprings TowerSprings
    {
        get
        {
            EndSprings own = Standoff.TowerFixity.Springs;
            if (Bracket is null)
                return own;
            Span<double> k = stackalloc double[36];
            Bracket.StiffnessAtTip(Axes, k);
            SmallMatrix.InvertPositive(k, 6);
            return new EndSprings(Series(own.Weak, k[35]), Series(own.Strong, k[28]), Series(own.Twist, k[21]));

            static double Series(double spring, double give) => 1 / (1 / spring + give);
        }
    }

    public double Length => (SkinEnd - TowerEnd).Length;

    /// <summary>Mass of the bar, kg.</summary>
    public double Mass =>
        Standoff.Material.Density.KilogramsPerCubicMeter * Standoff.Section.Width.Meters * Standoff.Section.Thickness.Meters * Length;

    /// <summary>Places a bar by its ends; the flat's width stands up, or along the outward normal when the bar itself stands up.</summary>
    public static BarPlacement Between(Vector3D towerEnd, Vector3D skinEnd, Vector3D outward, double position, Standoff standoff)
    {
        Vector3D along = skinEnd - towerEnd;
        bool upright = along.Cross(Vector3D.UnitZ).Length <= 1e-6 * along.Length;
        Axes3D axes = Axes3D.Along(along, upright ? outward : Vector3D.UnitZ).Rolled(standoff.Roll.Radians);
        return new BarPlacement
        {
            Standoff = standoff,
            TowerEnd = towerEnd,
            SkinEnd = skinEnd,
            Axes = axes,
            Slide = standoff.Slide.In(axes.X, outward),
            Outward = outward,
            Position = position,
        };
    }

    /// <summary>The same bar in the axes that the body itself stands in.</summary>
    /// <param name="body">The body's axes in the outer ones.</param>
    /// <param name="origin">The body's origin in the outer axes, m.</param>
    public BarPlacement Moved(Axes3D body, Vector3D origin) => body == Axes3D.Global && origin == Vector3D.Zero ? this : this with
    {
        TowerEnd = origin + body.ToGlobal(TowerEnd),
        SkinEnd = origin + body.ToGlobal(SkinEnd),
        Axes = new Axes3D(body.ToGlobal(Axes.X), body.ToGlobal(Axes.Y), body.ToGlobal(Axes.Z)),
        Slide = body.ToGlobal(Slide),
        Outward = body.ToGlobal(Outward),
        Bracket = Bracket?.Moved(body, origin),
    };
}
