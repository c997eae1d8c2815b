using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Tests.Skins;

/// <summary>Short ways to write skins in tests, SI units.</summary>
internal static class Shells
{
    public const double Density = 8900, Thickness = 2e-3;

    public static Material Copper { get; } = new()
    {
        Name = "test copper",
        YoungsModulus = Pressure.FromGigapascals(120),
        ShearModulus = Pressure.FromGigapascals(45),
        Density = UnitsNet.Density.FromKilogramsPerCubicMeter(Density),
        YieldStrength = Pressure.FromMegapascals(180),
        UltimateStrength = Pressure.FromMegapascals(240),
        ThermalExpansion = CoefficientOfThermalExpansion.FromPerKelvin(1.7e-5),
        Source = Source.User,
    };

    public static EllipseOutline Ellipse(double a, double b, double x = 0, double y = 0, double rotation = 0) => new()
    {
        WidthX = Length.FromMeters(a),
        WidthY = Length.FromMeters(b),
        CenterX = Length.FromMeters(x),
        CenterY = Length.FromMeters(y),
        Rotation = Angle.FromRadians(rotation),
    };

    public static PolygonOutline Polygon(params (double X, double Y)[] vertices) =>
        new() { Vertices = vertices.Select(p => new PlanPoint(Length.FromMeters(p.X), Length.FromMeters(p.Y))).ToValueList() };

    public static PolygonOutline Box(double a, double b, double x = 0, double y = 0) =>
        Polygon((x - a / 2, y - b / 2), (x + a / 2, y - b / 2), (x + a / 2, y + b / 2), (x - a / 2, y + b / 2));

    public static SkinStation At(double z, Outline outline, double? thickness = null, double? fold = null) => new()
    {
        Elevation = Length.FromMeters(z),
        Outline = outline,
        Thickness = thickness is { } t ? Length.FromMeters(t) : null,
        FoldFactor = fold,
    };

    /// <summary>A skin without cap.</summary>
    public static Skin Open(params SkinStation[] stations) => new()
    {
        Stations = [.. stations],
        Material = Copper,
        Thickness = Length.FromMeters(Thickness),
        ClosedTop = false,
    };

    /// <summary>The only band of a skin with two stations and no cap.</summary>
    public static SkinBand Band(SkinStation lower, SkinStation upper) => BandBuilder.Bands(Open(lower, upper))[0];

    /// <summary>A cone frustum of bottom and top radius on z = 0 to h.</summary>
    public static SkinBand Frustum(double bottom, double top, double h) =>
        Band(At(0, Ellipse(2 * bottom, 2 * bottom)), At(h, Ellipse(2 * top, 2 * top)));

    public static Skin WithEdges(this Skin skin, params double[] edges) =>
        skin with { BandEdges = edges.Select(e => Length.FromMeters(e)).ToValueList() };

    public static Vector3D Heading(double angle) => new(Math.Cos(angle), Math.Sin(angle), 0);

    public static void Close(double expected, double actual, double tolerance = 1e-9) =>
        Assert.True(Math.Abs(actual - expected) <= tolerance, $"expected {expected:g12}, is {actual:g12}, off by {Math.Abs(actual - expected):g3}");

    public static void Near(double expected, double actual, double relative = 1e-9) =>
        Close(expected, actual, relative * Math.Abs(expected));

    public static void Close(Vector3D expected, Vector3D actual, double tolerance = 1e-9) => Close(0, (actual - expected).Length, tolerance);

    /// <summary>The width that a strip between two perimeter fractions shows; it runs on across vertex 0 when the end is below the beginning.</summary>
    public static double Strip(SkinBand band, double from, double to, Vector3D wind)
    {
        double turns = Math.Floor(from), end = to < from ? to + 1 : to;
        return band.ProjectedWidth(PlanCurve.Stretch(band.MidOutline.Fractions(), from - turns, end - turns), wind);
    }
}
