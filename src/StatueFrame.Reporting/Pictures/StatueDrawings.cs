using ScottPlot;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Reporting;

/// <summary>Pictures of the statue itself: how it stands, and how a load case or a mode moves it. Drawings to scale are <see cref="MarkedDrawings"/>.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class StatueDrawings
{
    /// <summary>The statue seen from one side.</summary>
    /// <param name="model">The model.</param>
    /// <param name="looking">The plan angle the view looks towards; null looks along +y, with x to the right.</param>
    /// <param name="units">The units of the axes.</param>
    public static Picture Elevation(StatueModel model, UnitsNet.Angle? looking = null, DisplayUnits units = DisplayUnits.Metric)
    {
        LineModel lines = LineModel.Of(model);
        UnitsNet.Angle view = looking ?? UnitsNet.Angle.FromDegrees(90);
        return new Picture(
            $"{model.Statue.Name}: elevation",
            Invariant($"Side view looking towards {view.Degrees:0.#}°: {Parts(model)}, {Dimension.Length.Format(lines.Size.Meters, units)} in its greatest extent."),
            plot => DrawSide(plot, lines.Lines, view, units, 1), 560, 760);
    }

    /// <summary>The statue at rest and as a load case moves it, seen across the wind.</summary>
    /// <param name="model">The model.</param>
    /// <param name="loadCase">A load case of it.</param>
    /// <param name="scale">How many times the movement is drawn, 0 to 1e6; null takes a round number that shows it well.</param>
    /// <param name="units">The units of the axes.</param>
    public static Picture Deflected(StatueModel model, LoadCase loadCase, double? scale = null, DisplayUnits units = DisplayUnits.Metric)
    {
        LineModel lines = LineModel.Of(model);
        double times = scale ?? RoundScale(lines, loadCase);
        ValueList<ModelLine> moved = lines.Moved(loadCase, times);
        UnitsNet.Angle view = (loadCase.Heading ?? UnitsNet.Angle.Zero) + UnitsNet.Angle.FromDegrees(90);
        return new Picture(
            Invariant($"{model.Statue.Name}: moved, drawn {times:0.##} times, {Headings.Describe(loadCase.Heading)}"),
            Invariant($"Side view across the wind: at rest in gray, and moved with the movement drawn {times:0.##} times."),
            plot =>
            {
                DrawSide(plot, lines.Lines, view, units, 0);
                DrawSide(plot, moved, view, units, 1);
            }, 560, 760);
    }

    /// <summary>The statue at rest and in a mode of vibration.</summary>
    /// <param name="model">The model.</param>
    /// <param name="modes">Modes of it.</param>
    /// <param name="number">Number of the mode, from 1.</param>
    /// <param name="looking">The plan angle the view looks towards; null looks along +y.</param>
    /// <param name="units">The units of the axes.</param>
    public static Picture Mode(StatueModel model, ModalResponse modes, int number, UnitsNet.Angle? looking = null, DisplayUnits units = DisplayUnits.Metric)
    {
        LineModel lines = LineModel.Of(model);
        ValueList<ModelLine> moved = lines.Moved(modes, number, 0.08 * lines.Size);
        ModeResult mode = modes.Modes[number - 1];
        UnitsNet.Angle view = looking ?? UnitsNet.Angle.FromDegrees(90);
        return new Picture(
            Invariant($"{model.Statue.Name}: mode {number}, {Dimension.Frequency.Format(mode.Frequency.Hertz, units)}"),
            Invariant($"Side view looking towards {view.Degrees:0.#}°: at rest in gray, and in mode {number}: {mode.Description}."),
            plot =>
            {
                DrawSide(plot, lines.Lines, view, units, 0);
                DrawSide(plot, moved, view, units, 1);
            }, 560, 760);
    }

    private static string Parts(StatueModel model)
    {
        Statue statue = model.Statue;
        int bands = statue.Skin?.BandCount ?? 0;
        return Invariant($"a tower of {statue.Tower.Levels.Count} levels, {bands} bands of skin, {statue.Limbs.Count} limbs");
    }

    /// <summary>A round number of times that shows the greatest movement as about a twelfth of the statue.</summary>
    private static double RoundScale(LineModel lines, LoadCase loadCase)
    {
        double most = 0;
        foreach ((ModelLine rest, ModelLine moved) in lines.Lines.Zip(lines.Moved(loadCase, 1)))
        {
            for (int i = 0; i < rest.Points.Count; i++)
                most = Math.Max(most, (moved.Points[i] - rest.Points[i]).Length);
        }
        double wanted = most > 0 ? lines.Size.Meters / 12 / most : 1;
        double decade = Math.Pow(10, Math.Floor(Math.Log10(wanted)));
        return Math.Clamp(decade * (wanted / decade >= 5 ? 5 : wanted / decade >= 2 ? 2 : 1), 1e-3, 1e6);
    }

    private static void DrawSide(Plot plot, IEnumerable<ModelLine> lines, UnitsNet.Angle view, DisplayUnits units, float ink)
    {
        // Looking towards +y, x runs to the right.
        double rightX = Math.Sin(view.Radians), rightY = -Math.Cos(view.Radians);
        Draw(plot, lines, p => (p.X * rightX + p.Y * rightY, p.Z), units, ink);
        Square(plot, "horizontal", "height above the base", units);
    }

    private static void Draw(Plot plot, IEnumerable<ModelLine> lines, Func<Vector3D, (double X, double Y)> view, DisplayUnits units, float ink)
    {
        // Lines of one kind are one line with gaps: a drawing has thousands.
        foreach (IGrouping<LineKind, ModelLine> kind in lines.GroupBy(l => l.Kind).OrderByDescending(g => g.Key))
        {
            var x = new List<double>();
            var y = new List<double>();
            foreach (ModelLine line in kind)
            {
                foreach (Vector3D point in line.Points)
                {
                    (double px, double py) = view(point);
                    x.Add(Dimension.Length.Value(px, units));
                    y.Add(Dimension.Length.Value(py, units));
                }
                x.Add(double.NaN);
                y.Add(double.NaN);
            }
            (Color color, float width) = kind.Key switch
            {
                LineKind.Tower => (Pen.Graphite, 2.4f),
                LineKind.Brace => (Pen.Graphite, 0.8f),
                LineKind.Bracket => (Pen.Graphite, 1.2f),
                LineKind.Standoff => (Pen.Accent, 0.9f),
                LineKind.Outline => (Color.FromHex("#5b6770"), 0.9f),
                _ => (Pen.Gray, 0.6f),
            };
            Pen.Stroke(plot, [.. x], [.. y], ink > 0 ? color : Color.FromHex("#d4d7d9"), ink > 0 ? width : 0.7f * width);
        }
    }

    private static void Square(Plot plot, string x, string y, DisplayUnits units)
    {
        string unit = Dimension.Length.Unit(units);
        Pen.Axes(plot, $"{x}, {unit}", $"{y}, {unit}");
        plot.Axes.SquareUnits();
    }
}
