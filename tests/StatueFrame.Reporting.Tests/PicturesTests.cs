using System.Xml.Linq;
using SharpGLTF.Schema2;
using StatueFrame.Analysis;
using StatueFrame.Studies;
using UnitsNet;

namespace StatueFrame.Reporting.Tests;

public class PicturesTests
{
    private static readonly StatueModel model = StatueModel.Build(Study.Heron());
    private static readonly Response response = model.Respond(Study.Situations[0]);
    private static readonly CheckSheet sheet = Study.Heron().Check(Study.Criteria, Study.Situations);

    public static TheoryData<string> Names => [.. All().Keys];

    [Theory, MemberData(nameof(Names))]
    public void Each_picture_is_well_formed_and_names_its_units(string name)
    {
        (Picture picture, string[] words) = All()[name];
        string svg = picture.ToSvg();
        string text = string.Join('|', XDocument.Parse(svg).Descendants().Where(e => e.Name.LocalName is "text" or "tspan").Select(e => e.Value));
        Assert.All(words, word => Assert.Contains(word, text));
        Assert.DoesNotContain("NaN", svg);
        Assert.NotEmpty(picture.Description);
        byte[] png = picture.ToPng(300, 300);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], png[..4]);
    }

    /// <summary>Whatever else was drawn before or at the same time.</summary>
    [Fact]
    public void The_same_picture_is_the_same_text()
    {
        string[] drawn = new string[8];
        Parallel.For(0, drawn.Length, i => drawn[i] = StatueDrawings.Elevation(model).ToSvg());
        Assert.All(drawn, svg => Assert.Equal(StatueDrawings.Elevation(model).ToSvg(), svg));
        Assert.Contains("url(#cl_1)", drawn[0]);
    }

    [Fact]
    public void A_size_out_of_range_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StatueDrawings.Elevation(model).ToSvg(10, 300));

    [Fact]
    public void Only_svg_and_png_are_saved() =>
        Assert.Throws<ArgumentException>(() => StatueDrawings.Elevation(model).Save("heron.bmp"));

    [Fact]
    public void A_picture_becomes_a_figure_of_the_package()
    {
        CalculationPackage package = Study.Package() with { Figures = [StatueDrawings.Elevation(model).ToFigure()] };
        Assert.Contains("data:image/svg+xml", package.ToHtml());
    }

    [Fact]
    public void A_scene_opens_again_with_the_statue_in_its_true_size()
    {
        byte[] glb = StatueScene.Of(model).With(response.OverturningGoverns, 20).With(model.Modes(2), 1).ToGlb();
        ModelRoot root = ModelRoot.ParseGLB(glb);
        var vertices = root.LogicalMeshes.SelectMany(m => m.Primitives).SelectMany(p => p.GetVertexAccessor("POSITION").AsVector3Array()).ToArray();
        Assert.Equal(8, vertices.Max(v => v.Y), 0.2);
        Assert.Equal(3, root.DefaultScene.VisualChildren.Count());
        Assert.Contains(root.LogicalMeshes.SelectMany(m => m.Primitives), p => p.DrawPrimitiveType == PrimitiveType.TRIANGLES);
    }

    [Fact]
    public void Lines_move_as_the_points_do()
    {
        LoadCase governs = response.OverturningGoverns;
        LineModel lines = LineModel.Of(model);
        ModelLine rest = lines.Lines.Last(l => l.Kind == LineKind.Tower), moved = lines.Moved(governs, 3).Last(l => l.Kind == LineKind.Tower);
        Movement top = governs.OfPart("7 m");
        Assert.Equal(3 * top.Sway.Meters, Math.Sqrt(Math.Pow(moved.Points[1].X - rest.Points[1].X, 2) + Math.Pow(moved.Points[1].Y - rest.Points[1].Y, 2)), 1e-9);
        Assert.Equal(0, (moved.Points[0] - rest.Points[0]).Length, 1e-12 + (lines.Lines[0] == rest ? 0 : 1));
    }

    [Fact]
    public void The_bands_together_carry_the_wind_force()
    {
        LoadCase governs = response.WindForceGoverns;
        Assert.Equal(governs.WindForce.Newtons, governs.BandWindForces().Sum(f => f.Along.Newtons), 1e-6 * governs.WindForce.Newtons);
    }

    [Fact]
    public void A_load_case_of_another_model_is_refused()
    {
        StatueModel other = StatueModel.Build(Study.Heron() with { Standoffs = [.. Study.Heron().Standoffs.SkipLast(1), Study.Heron().Standoffs[3]] });
        Assert.Throws<ArgumentException>(() => LineModel.Of(model).Moved(other.Modes(1), 1, Length.FromMeters(1)));
    }

    private static Dictionary<string, (Picture, string[])> All()
    {
        HeadingStudy study = HeadingStudy.Of(model, Study.Situations[1], 36);
        WindAction wind = (WindAction)Study.Situations[1].Actions[1].Action;
        SwayCurve curve = SwayCurve.Of(model, wind, new SwayCurveOptions { AnemometerHeight = 10.Meters });
        return new()
        {
            ["elevation"] = (StatueDrawings.Elevation(model), ["horizontal, m", "height above the base, m"]),
            ["elevation in feet"] = (StatueDrawings.Elevation(model, Angle.Zero, DisplayUnits.UsCustomary), ["horizontal, ft"]),
            ["moved"] = (StatueDrawings.Deflected(model, response.OverturningGoverns), ["times"]),
            ["mode"] = (StatueDrawings.Mode(model, model.Modes(2), 1), ["mode 1", "Hz"]),
            ["wind"] = (ResultPictures.WindProfile(model, wind.Profile), ["peak velocity pressure, kPa"]),
            ["band forces"] = (ResultPictures.BandForces(response.OverturningGoverns), ["force along the wind, kN"]),
            ["stress of the sheet"] = (ResultPictures.SkinStress(FineModel.Build(model, new FineMesh { Size = 0.4.Meters }).Respond(Study.Situations[0]).Cases[0]), ["round the axis, °", "along the axis, m", "equivalent stress, MPa"]),
            ["utilization"] = (ResultPictures.BarUtilization(model, sheet), ["utilization"]),
            ["families"] = (ResultPictures.Families(sheet), ["sway.limit"]),
            ["sway curve"] = (ResultPictures.Sway(curve), ["mean wind speed, m/s", "sway, mm", "tip, gust"]),
            ["rose"] = (ResultPictures.Rose(study.SwayAt("tip")), ["by heading, mm"]),
        };
    }
}
