using UnitsNet;

namespace StatueFrame;

/// <summary>The drag of a tower segment that no skin covers, as force coefficient times width: m² per m of its axis.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class BareDrag
{
    private static readonly (double Ratio, double Coefficient)[] rectangle = [(0.2, 2.0), (0.6, 2.35), (0.7, 2.4), (1, 2.1), (2, 1.65), (5, 1.0), (10, 0.9)];

    /// <summary>Whether the segment's shape is known: a core needs a plan at both levels.</summary>
    public static bool HasShape(TowerSegment segment, TowerLevel lower, TowerLevel upper) =>
        segment is not CoreSegment || (lower.Plan is not null && upper.Plan is not null);

    /// <summary>Force coefficient × width for a wind across the axis, per length of axis.</summary>
    /// <param name="segment">The segment; its shape must be known.</param>
    /// <param name="lower">The level below.</param>
    /// <param name="upper">The level above.</param>
    /// <param name="t">Where along it, from 0 to 1.</param>
    /// <param name="direction">The plan angle that the wind blows towards, in the tower's own plan.</param>
    /// <param name="gust">Gust speed, m/s.</param>
    /// <param name="rule">Whose coefficients hold for lattices.</param>
    /// <param name="ice">Thickness of ice on every surface, m.</param>
    public static double PerLength(
        TowerSegment segment, TowerLevel lower, TowerLevel upper, double t, double direction, double gust, LatticeRule rule, double ice)
    {
        if (segment is LatticeSegment lattice)
            return Lattice(LatticeFace.Of(lattice, lower, upper, ice), direction, rule) / (upper.Elevation.Meters - lower.Elevation.Meters);
        // A member is taken as broad to every wind as its broad side.
        (double across, double along, bool isRound) = segment is MemberSegment member && member.SectionAt(t) is { OutlineDiameter: null } section
            ? (section.Envelope.Width, section.Envelope.Depth, false)
            : Outline(segment, lower, upper, t, direction);
        return isRound ? Cylinder(across + 2 * ice, gust) : Rectangle(across + 2 * ice, along + 2 * ice);
    }

    /// <summary>Width and depth, m, that a segment which is no lattice has in a wind across its axis, and whether it is round.</summary>
    /// <inheritdoc cref="PerLength"/>
    public static (double Across, double Along, bool IsRound) Outline(TowerSegment segment, TowerLevel lower, TowerLevel upper, double t, double direction)
    {
        switch (segment)
        {
            case MemberSegment member:
                Section section = member.SectionAt(t);
                // The wide side of a section lies along x before it is turned.
                return section.OutlineDiameter is { } d ? (d, d, true) : Box(section.Envelope.Width, section.Envelope.Depth, direction - member.Roll.Radians);
            case BlockSegment block:
                (double x, double y) = block.SectionAt(t).Widths;
                return block.Section.IsRound ? (x, x, true) : Box(x, y, direction);
            default:
                (double across, double along) = Extents(lower.Plan!, upper.Plan!, t, direction);
                return (across, along, lower.Plan is RoundPlan && upper.Plan is RoundPlan);
        }
    }

    private static (double Across, double Along, bool IsRound) Box(double x, double y, double direction)
    {
        (double sin, double cos) = Math.SinCos(direction);
        return (Math.Abs(x * sin) + Math.Abs(y * cos), Math.Abs(x * cos) + Math.Abs(y * sin), false);
    }

    /// <summary>Mass of a coat of ice, kg per m of axis: on the outline of each member, corners rounded.</summary>
    public static double IcePerLength(TowerSegment segment, TowerLevel lower, TowerLevel upper, double t, double ice, double density)
    {
        double Coat(double perimeter) => density * (perimeter * ice + Math.PI * ice * ice);
        switch (segment)
        {
            case LatticeSegment lattice:
                double mass = 0;
                foreach (LatticeMember member in new LatticePanel(lattice, lower, upper).Members)
                    mass += (member.To - member.From).Length * Coat(Perimeter(member.Section));
                return mass / (upper.Elevation.Meters - lower.Elevation.Meters);
            case MemberSegment member:
                return Coat(Perimeter(member.SectionAt(t)));
            case BlockSegment block:
                return Coat(block.SectionAt(t).Contour.Perimeter);
            default:
                return Coat((1 - t) * lower.Plan!.Outline.Perimeter + t * upper.Plan!.Outline.Perimeter);
        }
    }

    /// <summary>c_f,0 of a sharp-edged rectangle, Figure 7.23 of EN 1991-1-4: read off, linear in the logarithm of d/b.</summary>
    internal static double RectangleCoefficient(double ratio) => SemiLogChart.Read(rectangle, ratio);

    private static double Lattice(LatticeFace[] faces, double direction, LatticeRule rule)
    {
        LatticeFace facing = faces[0];
        double least = double.PositiveInfinity;
        foreach (LatticeFace face in faces)
        {
            // The face meets the wind whose way is against its normal.
            double theta = Math.Abs(Math.IEEERemainder(direction + Math.PI - face.Normal.Radians, 2 * Math.PI));
            if (theta < least)
                (facing, least) = (face, theta);
        }
        return facing.ForceCoefficient(rule, Angle.FromRadians(least)) * facing.SolidArea.SquareMeters;
    }

    private static double Cylinder(double d, double gust) =>
        d * CylinderDrag.Coefficient(CylinderDrag.Reynolds(d, gust), CylinderDrag.GalvanizedSteel / d);

    private static double Rectangle(double b, double d) => b * RectangleCoefficient(d / b);

    private static double Perimeter(Section section) =>
        section.OutlineDiameter is { } d ? Math.PI * d : 2 * (section.Envelope.Width + section.Envelope.Depth);

    private static (double Across, double Along) Extents(TowerPlan lower, TowerPlan upper, double t, double direction)
    {
        (double sin, double cos) = Math.SinCos(direction);
        double Width(double x, double y)
        {
            var (a0, a1) = lower.Outline.Extent(x, y);
            var (b0, b1) = upper.Outline.Extent(x, y);
            return (1 - t) * (a1 - a0) + t * (b1 - b0);
        }

        return (Width(-sin, cos), Width(cos, sin));
    }
}
