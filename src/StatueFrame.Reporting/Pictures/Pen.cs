using ScottPlot;
using ScottPlot.Plottables;

namespace StatueFrame.Reporting;

/// <summary>The look that all pictures share: graphite lines, one warm accent, dashes that tell kinds apart in print.</summary>
internal static class Pen
{
    private static readonly LinePattern[] dashes = [LinePattern.Solid, LinePattern.Dashed, LinePattern.Dotted, LinePattern.DenselyDashed];
    private static readonly MarkerShape[] marks = [MarkerShape.FilledCircle, MarkerShape.OpenSquare, MarkerShape.FilledTriangleUp, MarkerShape.OpenDiamond];

    public static Color Graphite { get; } = Color.FromHex("#26292c");

    public static Color Gray { get; } = Color.FromHex("#9aa0a6");

    public static Color Accent { get; } = Color.FromHex("#a6501e");

    private static readonly Color[] inks = [Graphite, Accent, Color.FromHex("#5b6770"), Color.FromHex("#c08552")];

    public static Plot NewPlot(string title)
    {
        var plot = new Plot();
        plot.Font.Set("DejaVu Sans");
        plot.FigureBackground.Color = Colors.White;
        plot.DataBackground.Color = Colors.White;
        plot.Axes.Color(Graphite);
        plot.Grid.MajorLineColor = Color.FromHex("#e3e5e6");
        plot.Axes.Title.Label.Text = title;
        plot.Axes.Title.Label.FontSize = 15;
        plot.Axes.Title.Label.Bold = false;
        plot.Axes.Right.IsVisible = false;
        plot.Axes.Top.IsVisible = false;
        plot.Legend.OutlineColor = Gray;
        plot.Legend.ShadowColor = Colors.Transparent;
        return plot;
    }

    /// <summary>One of a few curves: each with a dash, a mark and an ink of its own.</summary>
    public static Scatter Curve(Plot plot, double[] x, double[] y, int number, string legend, bool marked = true)
    {
        Scatter line = plot.Add.Scatter(x, y);
        line.LegendText = legend;
        line.Color = inks[number % inks.Length];
        line.LinePattern = dashes[number % dashes.Length];
        line.LineWidth = 1.8f;
        line.MarkerShape = marked ? marks[number % marks.Length] : MarkerShape.None;
        line.MarkerSize = marked ? 6 : 0;
        return line;
    }

    /// <summary>A line of a drawing.</summary>
    public static void Stroke(Plot plot, double[] x, double[] y, Color color, float width, LinePattern? dash = null)
    {
        Scatter line = plot.Add.ScatterLine(x, y);
        line.Color = color;
        line.LineWidth = width;
        line.LinePattern = dash ?? LinePattern.Solid;
        line.MarkerSize = 0;
    }

    public static void Axes(Plot plot, string x, string y)
    {
        plot.XLabel(x);
        plot.YLabel(y);
        plot.Axes.Bottom.Label.Bold = plot.Axes.Left.Label.Bold = false;
    }
}
