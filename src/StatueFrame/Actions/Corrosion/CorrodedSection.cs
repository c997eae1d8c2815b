using UnitsNet;

namespace StatueFrame;

/// <summary>Sections that have lost an even layer from every open face; tubes are sealed.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class CorrodedSection
{
    /// <summary>The section that is left; it may be impossible when too much is gone, which its validation tells.</summary>
    /// <param name="section">The section as described.</param>
    /// <param name="loss">The layer lost, m.</param>
    public static Section Of(Section section, double loss)
    {
        if (loss == 0)
            return section;
        Length d = Length.FromMeters(loss), both = 2 * d;
        return section switch
        {
            FlatBar flat => Flat(flat, loss),
            AngleBar angle => new AngleBar(angle.LongLeg - both, angle.ShortLeg - both, angle.Thickness - both),
            RoundBar round => new RoundBar(round.Diameter - both),
            Rectangle rectangle => new Rectangle(rectangle.SideA - both, rectangle.SideB - both),
            Tube tube => new Tube(tube.OuterDiameter - both, tube.Wall - d),
            RectangularTube tube => new RectangularTube(tube.SideA - both, tube.SideB - both, tube.Wall - d),
            _ => throw new NotSupportedException($"How a {section.GetType().Name} corrodes is not known."),
        };
    }

    public static FlatBar Flat(FlatBar flat, double loss)
    {
        Length both = Length.FromMeters(2 * loss);
        return loss == 0 ? flat : new FlatBar(flat.Width - both, flat.Thickness - both);
    }

    /// <summary>The thickness that corrodes, m, and from how many faces.</summary>
    public static (double Thickness, int Faces) Thinnest(Section section) => section switch
    {
        FlatBar flat => (flat.Thickness.Meters, 2),
        AngleBar angle => (angle.Thickness.Meters, 2),
        RoundBar round => (round.Diameter.Meters, 2),
        Rectangle rectangle => (Math.Min(rectangle.SideA.Meters, rectangle.SideB.Meters), 2),
        Tube tube => (tube.Wall.Meters, 1),
        RectangularTube tube => (tube.Wall.Meters, 1),
        _ => throw new NotSupportedException($"How a {section.GetType().Name} corrodes is not known."),
    };
}
