using System.Globalization;
using System.Text;
using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Reporting;

/// <summary>Writes a drawing on paper, in mm.</summary>
internal static class DrawingSvg
{
    private const double Margin = 12, Foot = 22, TextHeight = 2.5;

    public static string Of(Drawing drawing, int scale)
    {
        Vector3D least = drawing.Least, most = drawing.Most;
        double perMeter = 1000.0 / scale;
        double inner = Math.Max((most.X - least.X) * perMeter, 110), width = inner + 2 * Margin, high = (most.Y - least.Y) * perMeter, height = high + 2 * Margin + Foot;
        double left = Margin + 0.5 * (inner - (most.X - least.X) * perMeter);
        var svg = new HtmlText();
        svg.Trusted("<?xml version=\"1.0\" encoding=\"utf-8\"?>\n");
        using (svg.Element("svg", ("xmlns", "http://www.w3.org/2000/svg"), ("width", Mm(width)), ("height", Mm(height)), ("viewBox", Invariant($"0 0 {width:0.##} {height:0.##}")), ("role", "img"), ("font-family", "Arial, Helvetica, sans-serif"), ("font-size", Number(TextHeight)), ("fill", "none"), ("stroke", "#1d2226"), ("stroke-linecap", "round"), ("stroke-linejoin", "round")))
        {
            svg.Element("title", drawing.Title).Element("desc", drawing.Description).Line();
            svg.Element("rect", "", ("x", "0"), ("y", "0"), ("width", Number(width)), ("height", Number(height)), ("fill", "white"), ("stroke", "none")).Line();
            foreach (IGrouping<DrawnLayer, DrawnLine> layer in drawing.Lines.GroupBy(line => line.Layer).OrderByDescending(g => g.Key))
            {
                (double pen, string? dash) = Pen(layer.Key);
                var path = new StringBuilder();
                foreach (DrawnLine line in layer)
                {
                    for (int i = 0; i < line.Points.Count; i++)
                        path.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{X(line.Points[i]):0.##} {Y(line.Points[i]):0.##}");
                    path.Append(line.Closed ? "Z" : "");
                }
                svg.Element("path", "", ("class", layer.Key.ToString()), ("stroke-width", Number(pen)), ("stroke-dasharray", dash), ("d", path.ToString())).Line();
            }
            foreach (DrawnText text in drawing.Texts)
            {
                string turn = text.Upright ? Invariant($"rotate(-90 {X(text.At):0.##} {Y(text.At):0.##})") : "";
                svg.Element("text", text.Text, ("x", Number(X(text.At))), ("y", Number(Y(text.At) + 0.35 * TextHeight)), ("transform", turn.Length > 0 ? turn : null), ("text-anchor", "middle"), ("fill", "#1d2226"), ("stroke", "white"), ("stroke-width", "0.7"), ("paint-order", "stroke"), ("direction", "ltr"), ("unicode-bidi", "isolate")).Line();
            }
            Bottom(svg, drawing, scale, width, height);
        }
        return svg.ToString();

        double X(Vector3D p) => left + (p.X - least.X) * perMeter;

        double Y(Vector3D p) => Margin + high - (p.Y - least.Y) * perMeter;
    }

    /// <summary>Title, scale bar and caution below the drawing.</summary>
    private static void Bottom(HtmlText svg, Drawing drawing, int scale, double width, double height)
    {
        double y = height - Foot + 2;
        svg.Element("path", "", ("stroke-width", "0.5"), ("d", Invariant($"M{Margin} {y:0.##}H{width - Margin:0.##}"))).Line();
        Word(drawing.Title, y + 5, 3);
        Word($"1:{scale} when printed at full size, dimensions in mm", y + 9.5, TextHeight);
        Word(Drawing.Caution, y + 17.5, 2);
        // A bar of a round number of meters, 20 to 50 mm long on paper.
        double length = new[] { 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200 }.LastOrDefault(m => m * 1000 / scale <= 50, 0.05), paper = length * 1000 / scale;
        svg.Element("path", "", ("stroke-width", "0.7"), ("d", Invariant($"M{Margin} {y + 12.3:0.##}v1.4h{paper:0.##}v-1.4M{Margin + paper / 2:0.##} {y + 13.7:0.##}v-1"))).Line();
        svg.Element("text", Invariant($"0 to {length:0.##} m"), ("x", Number(Margin + paper + 2)), ("y", Number(y + 13.9)), ("fill", "#1d2226"), ("stroke", "none")).Line();

        void Word(string text, double at, double size) =>
            svg.Element("text", text, ("x", Number(Margin)), ("y", Number(at)), ("font-size", Number(size)), ("fill", "#1d2226"), ("stroke", "none"), ("direction", "ltr"), ("unicode-bidi", "isolate")).Line();
    }

    /// <summary>Widths of 0.25, 0.35 and 0.5 mm, as of ISO 128-2 (from memory).</summary>
    private static (double Width, string? Dash) Pen(DrawnLayer layer) => layer switch
    {
        DrawnLayer.Edge => (0.5, null),
        DrawnLayer.Member or DrawnLayer.Bracket => (0.35, null),
        DrawnLayer.Axis => (0.18, "4 1 0.6 1"),
        DrawnLayer.Dimension => (0.18, null),
        _ => (0.25, null),
    };

    private static string Mm(double value) => Number(value) + "mm";

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
