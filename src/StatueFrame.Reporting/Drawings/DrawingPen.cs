using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Reporting;

/// <summary>Collects the lines and words of a drawing, in true size in m.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class DrawingPen
{
    private readonly List<DrawnLine> lines = [];
    private readonly List<DrawnText> texts = [];

    public void Line(DrawnLayer layer, params ReadOnlySpan<(double X, double Y)> points) => Add(layer, false, points);

    public void Closed(DrawnLayer layer, params ReadOnlySpan<(double X, double Y)> points) => Add(layer, true, points);

    public void Rectangle(DrawnLayer layer, double x, double y, double width, double height) =>
        Closed(layer, (x - width / 2, y - height / 2), (x + width / 2, y - height / 2), (x + width / 2, y + height / 2), (x - width / 2, y + height / 2));

    public void Circle(DrawnLayer layer, double x, double y, double radius)
    {
        var points = new (double, double)[24];
        for (int i = 0; i < points.Length; i++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * i / points.Length);
            points[i] = (x + radius * cos, y + radius * sin);
        }
        Closed(layer, points);
    }

    public void Text(string text, double x, double y, bool upright = false) => texts.Add(new DrawnText(text, new Vector3D(x, y, 0), upright));

    /// <summary>A level dimension between two x, at a height.</summary>
    public void Across(double from, double to, double y, double tick)
    {
        Line(DrawnLayer.Dimension, (from, y), (to, y));
        Line(DrawnLayer.Dimension, (from, y - tick), (from, y + tick));
        Line(DrawnLayer.Dimension, (to, y - tick), (to, y + tick));
        Text(Invariant($"{1000 * Math.Abs(to - from):0}"), 0.5 * (from + to), y + 1.6 * tick);
    }

    /// <summary>An upright dimension between two y, at an x.</summary>
    public void Up(double from, double to, double x, double tick)
    {
        Line(DrawnLayer.Dimension, (x, from), (x, to));
        Line(DrawnLayer.Dimension, (x - tick, from), (x + tick, from));
        Line(DrawnLayer.Dimension, (x - tick, to), (x + tick, to));
        Text(Invariant($"{1000 * Math.Abs(to - from):0}"), x - 1.6 * tick, 0.5 * (from + to), upright: true);
    }

    public Drawing Finish(string title, string description) => new() { Title = title, Description = description, Lines = [.. lines], Texts = [.. texts] };

    private void Add(DrawnLayer layer, bool closed, ReadOnlySpan<(double X, double Y)> points)
    {
        var at = new Vector3D[points.Length];
        for (int i = 0; i < at.Length; i++)
            at[i] = new Vector3D(points[i].X, points[i].Y, 0);
        lines.Add(new DrawnLine(layer, [.. at], closed));
    }
}
