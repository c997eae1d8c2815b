using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>The lines in which a plane across a body's axis cuts its surface, in the body's local x and y.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class PlanSlice
{
    private readonly SliceLoop[] loops;

    internal PlanSlice(double z, SliceLoop[] loops) => (Z, this.loops) = (z, loops);

    /// <summary>Distance along the axis.</summary>
    public Length Elevation => Length.FromMeters(Z);

    /// <summary>The closed lines; none where the plane misses the body.</summary>
    public IReadOnlyList<SliceLoop> Loops => loops;

    /// <summary>Area inside the surface: outer lines less holes.</summary>
    public Area Area => Area.FromSquareMeters(NetArea);

    /// <summary>Length of all lines, holes included.</summary>
    public Length Perimeter => Length.FromMeters(loops.Sum(l => l.Round));

    /// <summary>Centroid of the area inside the surface; the origin where there is none.</summary>
    public PlanPoint Centroid
    {
        get
        {
            double area = NetArea;
            return area == 0
                ? default
                : new PlanPoint(
                    Length.FromMeters(loops.Sum(l => l.SignedArea * l.CenterX) / area),
                    Length.FromMeters(loops.Sum(l => l.SignedArea * l.CenterY) / area));
        }
    }

    /// <summary>The width seen by a wind in a heading: what the lines cover together, gaps between them left out.</summary>
    /// <param name="heading">Plan angle in the body's axes, anticlockwise from local +x.</param>
    public Length ProjectedWidth(Angle heading) => Length.FromMeters(Width(heading.Radians));

    internal double Z { get; }

    internal double NetArea => loops.Sum(l => l.SignedArea);

    internal double Width(double heading)
    {
        (double sin, double cos) = Math.SinCos(heading);
        (double Least, double Greatest)[] covered = [.. loops.Where(l => !l.IsHole).Select(l => l.Extent(-sin, cos)).Order()];
        double width = 0, reached = double.NegativeInfinity;
        foreach ((double least, double greatest) in covered)
        {
            if (greatest > reached)
                width += greatest - Math.Max(least, reached);
            reached = Math.Max(reached, greatest);
        }
        return width;
    }
}
