using CsCheck;
using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame.Shape.Tests.Slicing;

public class SlicingTests
{
    private static readonly Mesh FineSphere = Solids.Sphere(2, 128, 2);

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("sphere of radius 2: plan area at half its upper radius", "closed form π(R² − z²)", 3 * Math.PI, "m²", 1e-3, () => Sphere.SliceAt(3.Meters).Area.SquareMeters, ValueKind.IndependentComputation),
        new("sphere of radius 2: outline there", "closed form 2π√(R² − z²)", 2 * Math.PI * Math.Sqrt(3), "m", 1e-3, () => Sphere.SliceAt(3.Meters).Perimeter.Meters, ValueKind.IndependentComputation),
        new("sphere of radius 2: sheet of the zone between 1 m and 2.5 m", "Archimedes: 2πRh", 6 * Math.PI, "m²", 5e-4, () => Sphere.Measure(1.Meters, 2.5.Meters)[0].SheetArea.SquareMeters, ValueKind.IndependentComputation),
        new("sphere of radius 2: projected area", "closed form πR²", 4 * Math.PI, "m²", 1e-3, () => Sphere.ProjectedArea(30.Degrees, 0.Meters, 4.Meters, 400).Area.SquareMeters, ValueKind.IndependentComputation),
        new("spherical shell of 2 mm copper, radius 2: inertia", "closed form 2/3 m R²", 2.0 / 3 * 4 * ShellMass, "kg·m²", 1e-3, () => ShellInertia.ZZ, ValueKind.IndependentComputation),
        new("hemispherical shell of radius 2: height of its centroid", "closed form R/2", 1, "m", 1e-3, () => Sphere.Measure(2.Meters, 4.Meters)[0].Centroid.Z.Meters - 2, ValueKind.IndependentComputation),
        new("cone of radius 1 and height 2: sheet of its lower half", "closed form 3/4 πr√(r² + h²)", 0.75 * Math.PI * Math.Sqrt(5), "m²", 1e-3, () => ShapeBody.Trunk(Solids.Cone(1, 2, 64)).Measure(0.Meters, 1.Meters)[0].SheetArea.SquareMeters, ValueKind.IndependentComputation),
        new("torus of radii 3 and 1: plan area at mid height", "closed form π(4² − 2²)", 12 * Math.PI, "m²", 2e-3, () => ShapeBody.Trunk(Solids.Torus(3, 1, 64)).SliceAt(1e-3.Meters).Area.SquareMeters, ValueKind.IndependentComputation),
    ];

    private static ShapeBody Sphere { get; } = ShapeBody.Trunk(FineSphere);

    private static double ShellMass => 16 * Math.PI * 0.002 * Copper.HalfHardR240.Density.KilogramsPerCubicMeter;

    private static InertiaTensor ShellInertia => Sphere.Measure(0.Meters, 4.Meters)[0].Inertia(2.Millimeters, Copper.HalfHardR240);

    [Fact]
    public void Slice_areas_integrate_to_the_volume()
    {
        Mesh torus = Solids.Torus(3, 1, 24);
        ShapeBody body = ShapeBody.Trunk(torus, standsOpen: false);
        double Volume(int n) => Enumerable.Range(0, n).Sum(i => 2.0 / n * body.SliceAt((-1 + 2 * (i + 0.5) / n).Meters).Area.SquareMeters);
        double exact = torus.EnclosedVolume().CubicMeters;
        Assert.Equal(exact, Volume(400), 1e-3 * exact);
        Assert.True(Math.Abs(Volume(400) - exact) < 0.3 * Math.Abs(Volume(100) - exact));
    }

    [Fact]
    public void A_torus_upright_has_one_outline_then_two_and_a_flat_one_has_a_hole()
    {
        Mesh torus = Solids.Torus(3, 1, 24);
        Mesh upright = torus.Mapped(v => new Mechanics.Vector3D(v.X, -v.Z, v.Y));
        Assert.Equal(2, ShapeBody.Trunk(upright).SliceAt(0.1.Meters).Loops.Count);
        Assert.Single(ShapeBody.Trunk(upright).SliceAt(2.7.Meters).Loops);
        PlanSlice flat = ShapeBody.Trunk(torus).SliceAt(0.1.Meters);
        Assert.Equal(1, flat.Loops.Count(l => l.IsHole));
        Assert.Equal(8, flat.ProjectedWidth(20.Degrees).Meters, 0.05);
    }

    [Fact]
    public void A_slice_through_vertices_closes()
    {
        Mesh sphere = Solids.Sphere(1, 16);
        for (int i = 1; i < 16; i++)
        {
            double z = -Math.Cos(Math.PI * i / 16);
            PlanSlice slice = ShapeBody.Trunk(sphere).SliceAt(z.Meters);
            Assert.Equal(1 - z * z, Assert.Single(slice.Loops).Area.SquareMeters / Math.PI, 0.01);
        }
    }

    [Fact]
    public void An_open_place_is_named()
    {
        List<int> corners = [.. Solids.Box(1, 2, 3).Corners];
        corners.RemoveRange(18, 3);
        InvalidMeshException refused = Assert.Throws<InvalidMeshException>(() => new ShapeBody("open", Mesh.Of(Solids.Box(1, 2, 3).Coordinates, [.. corners]), 11, null).SliceAt(1.Meters));
        Assert.Contains("The cut at 1 m is no closed line", refused.Message);
    }

    [Fact]
    public void Bands_share_out_all_sheet_but_the_standing_face() =>
        Gen.Double[0.2, 0.8].Array[1, 6].Sample(parts =>
        {
            Mesh cone = Solids.Cone(1, 2, 6);
            double z = 0;
            Length[] edges = [0.Meters, .. parts.Select(p => (z += p / 5).Meters), 2.Meters];
            double sum = ShapeBody.Trunk(cone).Measure(edges).Sum(b => b.SheetArea.SquareMeters);
            double lateral = ShapeBody.Trunk(cone).SheetArea.SquareMeters;
            double foot = 0.5 * 24 * Math.Sin(2 * Math.PI / 24);
            return Math.Abs(sum - lateral) < 1e-12 * sum && Math.Abs(lateral + foot - cone.SurfaceArea().SquareMeters) < 1e-12 * sum;
        }, iter: 50);

    [Fact]
    public void Moving_and_turning_about_z_change_nothing() =>
        Gen.Select(Gen.Double[-180, 180], Gen.Double[-5, 5], Gen.Double[-5, 5]).Sample((angle, x, y) =>
        {
            Mesh mesh = Solids.Ellipsoid(1, 2, 3, 10);
            ShapeBody one = ShapeBody.Trunk(mesh), other = ShapeBody.Trunk(mesh.Turned(angle.Degrees).Moved(x.Meters, y.Meters, 0.Meters));
            SheetBand a = one.Measure(-1.Meters, 2.Meters)[0], b = other.Measure(-1.Meters, 2.Meters)[0];
            InertiaTensor i = a.Inertia(2.Millimeters, Copper.HalfHardR240), j = b.Inertia(2.Millimeters, Copper.HalfHardR240);
            return Same(a.SheetArea.SquareMeters, b.SheetArea.SquareMeters)
                && Same(a.Mass(2.Millimeters, Copper.HalfHardR240).Kilograms, b.Mass(2.Millimeters, Copper.HalfHardR240).Kilograms)
                && Same(i.ZZ, j.ZZ) && Same(i.XX + i.YY, j.XX + j.YY) && Same(a.Centroid.Z.Meters, b.Centroid.Z.Meters)
                && Same(one.SliceAt(0.4.Meters).Area.SquareMeters, other.SliceAt(0.4.Meters).Area.SquareMeters)
                && Same(one.SliceAt(0.4.Meters).ProjectedWidth(20.Degrees).Meters, other.SliceAt(0.4.Meters).ProjectedWidth((20 + angle).Degrees).Meters);
            static bool Same(double p, double q) => Math.Abs(p - q) < 1e-9 * (1 + Math.Abs(p));
        }, iter: 50);

    [Fact]
    public void Stations_hold_the_sheet_and_their_error_falls_with_the_square_of_the_band()
    {
        ShapeBody body = ShapeBody.Trunk(Solids.Ellipsoid(1, 1.5, 4, 64), standsOpen: false);
        SlicedSkin coarse = body.Slice(new SkinSlicing { Elevations = Even(-3, 3, 8), OutlinePoints = 400 }), fine = body.Slice(new SkinSlicing { Elevations = Even(-3, 3, 16), OutlinePoints = 400 });
        Assert.InRange(Math.Log2(coarse.OutlineError / fine.OutlineError), 1.7, 2.3);
        Assert.InRange(Math.Log2(coarse.ProjectedError / fine.ProjectedError), 1.7, 2.3);
        Assert.Equal(body.SheetArea.SquareMeters, fine.SheetArea.SquareMeters, 1e-9);
        Assert.Equal(fine.SheetArea.SquareMeters, fine.ModelArea.SquareMeters, 2e-3 * fine.SheetArea.SquareMeters);
        Assert.Equal(fine.ModelArea.SquareMeters, fine.ToSkin(Copper.HalfHardR240, 2.Millimeters).SheetArea().SquareMeters, 1e-9);
    }

    [Fact]
    public void Relief_shows_in_the_fold_factor()
    {
        // Flutes: twelve waves round a column.
        Mesh fluted = Solids.Cylinder(2, 10, 20, 480).Mapped(v =>
        {
            double r = 1 + 0.05 * Math.Cos(36 * Math.Atan2(v.Y, v.X));
            return new Mechanics.Vector3D(r * v.X, r * v.Y, v.Z);
        });
        SlicedSkin skin = ShapeBody.Trunk(fluted).Slice(new SkinSlicing { Bands = 5, OutlinePoints = 24 });
        Assert.InRange(skin.Bands[2].FoldFactor, 1.3, 3);
        Assert.Equal(skin.SheetArea.SquareMeters, skin.ModelArea.SquareMeters, 1e-6 * skin.SheetArea.SquareMeters);
    }

    [Fact]
    public void Several_outlines_are_refused_taken_or_wrapped_as_asked()
    {
        Mesh legs = Solids.Together(Solids.Cylinder(0.5, 4, 4, 24), Solids.Cylinder(0.4, 4, 4, 24).Moved(2.Meters, 0.Meters, 0.Meters));
        ShapeBody body = ShapeBody.Trunk(legs);
        var slicing = new SkinSlicing { Bands = 4 };
        Assert.Contains("2 outlines", Assert.Throws<InvalidMeshException>(() => body.Slice(slicing)).Message);
        SlicedSkin largest = body.Slice(slicing with { Several = SeveralOutlines.Largest }), hull = body.Slice(slicing with { Several = SeveralOutlines.Hull });
        Assert.NotEmpty(largest.Notes);
        Assert.Equal(largest.SheetArea.SquareMeters, hull.SheetArea.SquareMeters, 1e-12);
        Assert.True(largest.Bands[1].FoldFactor > hull.Bands[1].FoldFactor);
    }

    [Fact]
    public void Trunk_and_limb_share_out_the_sheet()
    {
        // A column with a thick arm: one surface, made by drawing out part of a sphere.
        Mesh figure = Solids.Sphere(1, 48).Mapped(v => v.X > 0.5 ? new Mechanics.Vector3D(0.5 + 6 * (v.X - 0.5), v.Y, v.Z) : v);
        var arm = new LimbCut { Name = "arm", Axis = new ShapeAxis(Point3.FromMeters(0.7, 0, 0), Point3.FromMeters(3.5, 0, 0)) };
        double whole = figure.SurfaceArea().SquareMeters;
        ShapeDivision planes = ShapeDivision.ByPlanes(figure, [arm], standsOpen: false);
        Assert.Equal(whole, planes.SheetArea.SquareMeters, 1e-12 * whole);
        ShapeDivision nearest = ShapeDivision.ByNearestAxis(figure, new ShapeAxis(Point3.FromMeters(0, 0, -1), Point3.FromMeters(0, 0, 1)), [arm], standsOpen: false);
        Assert.Equal(whole, nearest.SheetArea.SquareMeters, 1e-12 * whole);
        SlicedSkin skin = planes.Limbs[0].Slice(new SkinSlicing { Bands = 6 });
        Assert.Equal(planes.Limbs[0].SheetArea.SquareMeters, skin.SheetArea.SquareMeters, 1e-12 * whole);
        Assert.Equal(0, skin.Stations[0].Elevation.Meters, 1e-4);
        _ = planes.Trunk.Slice(new SkinSlicing { Bands = 10 });
        _ = nearest.Trunk.Slice(new SkinSlicing { Bands = 10 });
        ShapeAxis found = ShapeAxis.Principal(planes.Limbs[0].Surface, Point3.FromMeters(0, 0, 0));
        Assert.Equal(3.5, found.Tip.X.Meters, 0.05);
        Assert.Equal(0, found.Inclination.Degrees, 0.5);
    }

    [Fact]
    public void A_turned_figure_divides_alike()
    {
        Mesh figure = Solids.Sphere(1, 24).Mapped(v => v.X > 0.5 ? new Mechanics.Vector3D(0.5 + 6 * (v.X - 0.5), v.Y, v.Z) : v);
        ShapeBody Arm(Angle turn)
        {
            (double s, double c) = Math.SinCos(turn.Radians);
            var axis = new ShapeAxis(Point3.FromMeters(0.7 * c, 0.7 * s, 0), Point3.FromMeters(3.5 * c, 3.5 * s, 0));
            return ShapeDivision.ByPlanes(figure.Turned(turn), [new LimbCut { Name = "arm", Axis = axis }], false).Limbs[0];
        }
        PlanSlice one = Arm(0.Degrees).SliceAt(1.Meters), other = Arm(77.Degrees).SliceAt(1.Meters);
        Assert.Equal(one.Area.SquareMeters, other.Area.SquareMeters, 1e-9);
        Assert.Equal(one.ProjectedWidth(90.Degrees).Meters, other.ProjectedWidth(90.Degrees).Meters, 1e-9);
    }

    private static ValueList<Length> Even(double from, double to, int count) =>
        [.. Enumerable.Range(0, count + 1).Select(i => (from + (to - from) * i / count).Meters)];
}
