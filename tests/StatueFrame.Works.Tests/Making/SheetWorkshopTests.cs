using System.Xml.Linq;
using StatueFrame.Reporting;
using UnitsNet;

namespace StatueFrame.Works.Tests.Making;

public class SheetWorkshopTests
{
    private static readonly SheetWorkshop Shop = SheetWorkshop.Of(Heron.Sheets, Heron.Cutting, Heron.Statue.Skin!.SheetSeam!);

    [Fact]
    public void Seams_and_free_edges_are_all_edges_of_the_sheets()
    {
        Assert.Equal((Heron.Sheets.LappedSeam + Heron.Sheets.FlushSeam).Meters, Shop.Seams.Sum(s => s.Length.Meters), 1e-3);
        Assert.Equal(Heron.Sheets.Sheets.Sum(s => s.FreeEdge.Meters), Shop.FreeEdge.Meters, 1e-6);
        Assert.All(Shop.Seams, s => Assert.True(s.First < s.Second && s.Rivets > 0));
    }

    [Fact]
    public void A_described_skin_without_folds_has_the_area_of_its_surface()
    {
        Skin smooth = Heron.Statue.Skin! with { FoldFactor = 1, Stations = [.. Heron.Statue.Skin.Stations.Select(s => s with { FoldFactor = null })] };
        Assert.Equal(smooth.SheetArea().SquareMeters, SkinSurface.Of(smooth).SurfaceArea().SquareMeters, 0.003 * smooth.SheetArea().SquareMeters);
        Assert.Throws<InvalidStatueException>(() => SkinSurface.Of(smooth, 1.Millimeters));
    }

    [Fact]
    public void Rivet_holes_of_two_sheets_meet()
    {
        // Every stretch of seam between two sheets has as many holes on the one as on the other.
        foreach (SheetSeam seam in Shop.Seams.Where(s => !s.Flush && s.Length.Meters > 0.3).Take(12))
        {
            int first = Holes(seam.First, seam.Second), second = Holes(seam.Second, seam.First);
            Assert.Equal(first, second);
        }

        int Holes(int sheet, int to) => Shop.Template(sheet).Lines.Count(l => l.Layer == DrawnLayer.Hole) - Shop.Seams
            .Where(s => (s.First == sheet || s.Second == sheet) && s.First != to && s.Second != to).Sum(s => s.Rivets / Shop.Seam.Rows / (s.Flush ? 2 : 1));
    }

    [Fact]
    public void Templates_are_well_formed_drawings_in_true_size()
    {
        Drawing template = Shop.Template(40);
        SheetBlank blank = Shop.Blanks[39];
        XDocument svg = XDocument.Parse(template.ToSvg());
        Assert.Equal("svg", svg.Root!.Name.LocalName);
        Assert.Contains("licensed engineer", svg.ToString());
        // In DXF group codes and values alternate; the greatest distance of vertices is that of the blank with its laps.
        string[] dxf = template.ToDxf().Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(0, dxf.Length % 2);
        Assert.Equal("EOF", dxf[^1]);
        (int Code, string Value)[] groups = [.. Enumerable.Range(0, dxf.Length / 2).Select(i => (int.Parse(dxf[2 * i]), dxf[2 * i + 1]))];
        Assert.Equal(template.Lines.Count, groups.Count(g => g is (0, "POLYLINE")));
        Assert.Equal(template.Lines.Sum(l => l.Points.Count), groups.Count(g => g is (0, "VERTEX")));
        (double X, double Y)[] edge = [.. template.Lines.Where(l => l.Layer == DrawnLayer.Edge).SelectMany(l => l.Points).Select(p => (p.X, p.Y))];
        double across = edge.Max(p => edge.Max(q => double.Hypot(p.X - q.X, p.Y - q.Y)));
        Assert.InRange(across, blank.Length.Meters, double.Hypot(blank.Length.Meters, blank.Width.Meters) + 0.04);
        Assert.Throws<ArgumentException>(() => Shop.Template(100_000));
    }

    [Fact]
    public void Ribs_of_a_form_lie_inside_the_sheet_by_its_thickness()
    {
        Drawing form = Shop.Form(1, 200.Millimeters), thick = SheetWorkshop.Of(Heron.Sheets, Heron.Cutting with { Thickness = 12.4.Millimeters }, Shop.Seam).Form(1, 200.Millimeters);
        // At the crown of the first row, where the sheet is level, the rib lies lower by what the sheet is thicker.
        Assert.Equal(0.010, Crown(form) - Crown(thick), 2e-4);
        Assert.Equal("svg", XDocument.Parse(form.ToSvg()).Root!.Name.LocalName);
        Assert.Throws<ArgumentOutOfRangeException>(() => Shop.Form(1, 1.Millimeters));

        static double Crown(Drawing drawing) => drawing.Lines.Where(l => l.Layer == DrawnLayer.Edge).SelectMany(l => l.Points).Max(p => p.Y);
    }

    [Fact]
    public void The_schedule_has_a_line_a_sheet() =>
        Assert.Equal(Heron.Sheets.Sheets.Count + 1, Shop.ToCsv(new HammeringLimits { Elongation = 0.35 }).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
}
