using System.Xml.Linq;
using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Reporting.Tests.Drawings;

public class MarkedDrawingsTests
{
    private static readonly Statue heron = StatueFile.Load(Path.Combine(Repository.Root, "docs", "examples", "saltmere-heron.json")).Statue;

    private static readonly StatueModel model = StatueModel.Build(heron);

    [Fact]
    public void Every_drawing_is_well_formed_says_its_scale_and_carries_the_caution()
    {
        foreach (Drawing drawing in MarkedDrawings.All(model))
        {
            var svg = XDocument.Parse(drawing.ToSvg());
            Assert.Contains($"1:{drawing.Scale}", svg.Root!.Value);
            Assert.Contains("no permission to build", svg.Root.Value);
            // On an A3 sheet, one way or the other.
            double width = Millimeters(svg.Root, "width"), height = Millimeters(svg.Root, "height");
            Assert.True(Math.Max(width, height) <= 420 && Math.Min(width, height) <= 297, $"{drawing.Title}: {width} × {height} mm");
        }

        static double Millimeters(XElement svg, string side) => double.Parse(((string)svg.Attribute(side)!)[..^2], System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Names_on_the_drawings_are_those_of_the_sheet()
    {
        string[] elevation = [.. MarkedDrawings.Elevation(model).Texts.Select(t => t.Text)];
        Assert.All(heron.Tower.Levels.Where(l => l.Name != "base"), level => Assert.Contains(level.Name, elevation));
        Assert.All(Enumerable.Range(1, heron.Skin!.BandCount), band => Assert.Contains($"band {band}", elevation));
        Assert.Contains("30000", elevation);
        string[] ring = [.. MarkedDrawings.Ring(model, "band 8").Texts.Select(t => t.Text)];
        Assert.All(Enumerable.Range(1, 40), bar => Assert.Contains($"{bar}", ring));
        Assert.All(Enumerable.Range(1, 4), leg => Assert.True(ring.Contains($"leg {leg}") && ring.Contains($"face {leg}")));
        string[] plates = [.. MarkedDrawings.Base(heron).Texts.Select(t => t.Text)];
        Assert.All(Enumerable.Range(1, heron.HoldDown!.Bars.Count), bar => Assert.Contains($"{bar}", plates));
    }

    [Fact]
    public void A_drawing_is_in_true_size_whatever_the_scale()
    {
        Drawing ring = MarkedDrawings.Ring(model, "band 8");
        DrawnLine edge = ring.Lines.Single(l => l.Layer == DrawnLayer.Edge);
        // Stations of the Heron: 4.2 m wide at 4 m, 5.6 m at 8 m; the ring lies at 7.5 m.
        Assert.Equal(4.2 + 3.5 / 4 * 1.4, edge.Points.Max(p => p.X) - edge.Points.Min(p => p.X), 2e-3);
        string[] dxf = ring.ToDxf().Split("\r\n");
        Assert.Contains(dxf, line => line == (1000 * edge.Points[0].X).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture));
        Assert.Throws<ArgumentOutOfRangeException>(() => ring.ToSvg(0));
        Assert.Throws<ArgumentException>(() => ring.Save("ring.pdf"));
    }

    [Fact]
    public void What_is_not_there_cannot_be_drawn()
    {
        Assert.Contains("band", Assert.Throws<ArgumentException>(() => MarkedDrawings.Ring(model, "band 99")).Message);
        Assert.Throws<ArgumentException>(() => MarkedDrawings.Base(heron with { HoldDown = null }));
    }

    [Fact]
    public void A_hostile_name_stays_a_word()
    {
        Drawing drawing = MarkedDrawings.Elevation(StatueModel.Build(heron with { Name = "</svg><script>\"" }));
        Assert.Equal("svg", XDocument.Parse(drawing.ToSvg()).Root!.Name.LocalName);
        Assert.All(drawing.ToDxf(), c => Assert.True(c is '\r' or '\n' or (>= ' ' and <= '~')));
    }
}
