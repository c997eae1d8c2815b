using StatueFrame.Mechanics.Elements;
using static StatueFrame.Tests.Skins.Shells;

namespace StatueFrame.Tests.Skins;

/// <summary>Area, mass, centroid and inertia of bands against closed forms of thin shells.</summary>
public class SkinShellTests
{
    private const string Geometry = "closed form, surface of revolution";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("lateral area of a cylinder, r = 1.5 m, h = 2 m", Geometry, 2 * Math.PI * 1.5 * 2, "m²", 1e-9,
            () => Frustum(1.5, 1.5, 2).OutlineArea, ValueKind.IndependentComputation),
        new("lateral area of a cone frustum, r = 2 and 0.5 m, h = 3 m", Geometry, Math.PI * 2.5 * Math.Sqrt(9 + 2.25), "m²", 1e-4,
            () => Frustum(2, 0.5, 3).OutlineArea, ValueKind.IndependentComputation),
        new("centroid height of the same frustum, h(r₁+2r₂)/(3(r₁+r₂))", Geometry, 3 * (2 + 2 * 0.5) / (3 * 2.5), "m", 1e-9,
            () => Frustum(2, 0.5, 3).Centroid.Z, ValueKind.IndependentComputation),
        new("inertia of a cylinder about its axis over mass, r²", Geometry, 1.5 * 1.5, "m²", 5e-4,
            () => PerMass(Frustum(1.5, 1.5, 2)).ZZ, ValueKind.IndependentComputation),
        new("inertia of a cylinder about a diameter over mass, r²/2 + h²/12", Geometry, 1.5 * 1.5 / 2 + 4 / 12.0, "m²", 5e-4,
            () => PerMass(Frustum(1.5, 1.5, 2)).XX, ValueKind.IndependentComputation),
        new("inertia of the frustum about its axis over mass, (r₁²+r₂²)/2", Geometry, (4 + 0.25) / 2, "m²", 5e-4,
            () => PerMass(Frustum(2, 0.5, 3)).ZZ, ValueKind.IndependentComputation),
        new("lateral area of an elliptic cylinder, 3 m × 1 m, h = 2 m", "perimeter by the arithmetic-geometric mean", 2 * EllipsePerimeter(1.5, 0.5), "m²", 1e-9,
            () => Band(At(0, Ellipse(3, 1)), At(2, Ellipse(3, 1))).OutlineArea, ValueKind.IndependentComputation),
        new("lateral area of an elliptic cylinder, 5 m × 1 m, h = 2 m", "perimeter by the arithmetic-geometric mean", 2 * EllipsePerimeter(2.5, 0.5), "m²", 1e-9,
            () => Band(At(0, Ellipse(5, 1)), At(2, Ellipse(5, 1))).OutlineArea, ValueKind.IndependentComputation),
        new("zone of a prolate spheroid, a = 2 m, c = 4 m, |z| < 3.2 m, 32 bands", Geometry, SpheroidZone(2, 4, 3.2), "m²", 1e-3,
            () => SpheroidArea(2, 4, 3.2, 32), ValueKind.IndependentComputation),
        new("enclosed area of an ellipse, 3 m × 1 m", "closed form", Math.PI * 1.5 * 0.5, "m²", 1e-3,
            () => Ellipse(3, 1).Curve().Area, ValueKind.IndependentComputation),
    ];

    [Fact]
    public void Spheroid_converges_at_second_order_as_stations_double()
    {
        double coarse = SpheroidArea(2, 4, 3.2, 4), middle = SpheroidArea(2, 4, 3.2, 8), fine = SpheroidArea(2, 4, 3.2, 16);
        Assert.InRange((middle - coarse) / (fine - middle), 3.7, 4.3);
    }

    [Fact]
    public void Box_is_exact()
    {
        SkinBand band = Band(At(1, Box(3, 1, 0.4, -0.2)), At(3, Box(3, 1, 0.4, -0.2)));
        double m = Density * Thickness;
        Near(16, band.OutlineArea);
        Near(16 * m, band.Mass);
        Close(new(0.4, -0.2, 2), band.Centroid);
        // Two walls 3 m at y = ±0.5 and two walls 1 m at x = ±1.5, each 2 m high.
        double sx = 2 * m * (2 * 27 / 12.0 + 2 * 1.5 * 1.5), sy = 2 * m * (2 * 1 / 12.0 + 2 * 3 * 0.25), sz = 8 * m * 8 / 12.0;
        Near(sy + sz, band.Inertia.XX);
        Near(sz + sx, band.Inertia.YY);
        Near(sx + sy, band.Inertia.ZZ);
        Close(0, band.Inertia.XY);
        Close(0, band.Inertia.YZ);
        Close(0, band.Inertia.XZ);
    }

    [Fact]
    public void Sheared_strip_has_the_product_of_inertia_of_its_lean()
    {
        // All points of a leaning prism move by z/2 along x: Zx = −∫xz dm = −½∫z² dm about the centroid.
        SkinBand band = Band(At(0, Box(1, 1)), At(2, Box(1, 1, 1)));
        Near(-0.5 * band.Mass * 4 / 12, band.Inertia.XZ);
        Close(0, band.Inertia.XY);
    }

    [Fact]
    public void Pyramid_frustum_is_exact()
    {
        SkinBand band = Band(At(0, Box(4, 4)), At(3, Box(2, 2)));
        double slant = Math.Sqrt(9 + 1);
        Near(4 * slant * 3, band.OutlineArea);
        Near(3 * (4 + 2 * 2) / (3.0 * 6), band.Centroid.Z);
    }

    [Fact]
    public void Thickness_and_fold_factor_run_linearly()
    {
        SkinBand band = Band(At(0, Box(1, 1), 1e-3, 1), At(2, Box(1, 1), 3e-3, 2));
        // ∫(1+2s)(1+s)ds = 1 + 3/2 + 2/3 and ∫s(1+2s)(1+s)ds = 1/2 + 1 + 1/2 over s = 0..1.
        Near(8 * 1.5, band.SheetArea);
        Near(8 * Density * 1e-3 * (1 + 1.5 + 2 / 3.0), band.Mass);
        Near(2 * 2 / (1 + 1.5 + 2 / 3.0), band.Centroid.Z);
        Near(2e-3, band.MidThickness);
    }

    [Fact]
    public void Armature_adds_to_outline_area_not_to_folds()
    {
        Skin skin = Open(At(0, Box(1, 1)), At(2, Box(1, 1))) with { FoldFactor = 1.5, ArmatureMass = UnitsNet.AreaDensity.FromKilogramsPerSquareMeter(7) };
        Near(8 * (1.5 * Density * Thickness + 7), skin.Mass().Kilograms);
        Near(12, skin.SheetArea().SquareMeters);
    }

    [Fact]
    public void Cap_adds_its_sheet_at_the_top()
    {
        Skin open = Open(At(0, Box(1, 2)), At(3, Box(1, 2)));
        SkinBand bare = BandBuilder.Bands(open)[0], capped = BandBuilder.Bands(open with { ClosedTop = true })[0];
        double m = Density * Thickness;
        Near(2 * m, capped.Mass - bare.Mass);
        Near(bare.OutlineArea, capped.OutlineArea);
        Near(2, capped.CapArea);
        Near((18 * 1.5 + 2 * 3) / 20, capped.Centroid.Z);
        // The plate has m(a²+b²)/12 about the axis.
        Near(2 * m * (1 + 4) / 12.0, capped.Inertia.ZZ - bare.Inertia.ZZ);
    }

    [Fact]
    public void Only_the_last_band_carries_the_cap()
    {
        Skin skin = Open(At(0, Box(1, 1)), At(1, Box(1, 1)), At(2, Box(1, 1))) with { ClosedTop = true };
        Assert.Equal([0, 1], BandBuilder.Bands(skin).Select(b => Math.Round(b.CapArea, 12)));
    }

    private static InertiaTensor PerMass(SkinBand band)
    {
        InertiaTensor i = band.Inertia;
        return new InertiaTensor(i.XX / band.Mass, i.YY / band.Mass, i.ZZ / band.Mass, i.XY / band.Mass, i.XZ / band.Mass, i.YZ / band.Mass);
    }

    /// <summary>Gauss: perimeter = (2π/M)·(a² − Σ 2ⁿ⁻¹cₙ²), M the arithmetic-geometric mean of a and b, c₀² = a²−b².</summary>
    private static double EllipsePerimeter(double a, double b)
    {
        double x = a, y = b, sum = 0.5 * (a * a - b * b), power = 1;
        for (int n = 1; n < 12; n++)
        {
            double c = 0.5 * (x - y);
            (x, y) = (0.5 * (x + y), Math.Sqrt(x * y));
            sum += power * c * c;
            power *= 2;
        }
        return 2 * Math.PI / x * (a * a - sum);
    }

    /// <summary>2πa∫√(1−e²z²/c²)dz over |z| &lt; zone, e² = 1−a²/c², prolate.</summary>
    private static double SpheroidZone(double a, double c, double zone)
    {
        double e = Math.Sqrt(1 - a * a / (c * c)), k = e * zone / c;
        return 2 * Math.PI * a * (zone * Math.Sqrt(1 - k * k) + c / e * Math.Asin(k));
    }

    private static double SpheroidArea(double a, double c, double zone, int bands)
    {
        var stations = new SkinStation[bands + 1];
        for (int i = 0; i <= bands; i++)
        {
            double z = zone * (2.0 * i / bands - 1), r = a * Math.Sqrt(1 - z * z / (c * c));
            stations[i] = At(z, Ellipse(2 * r, 2 * r));
        }
        return Open(stations).SheetArea().SquareMeters;
    }
}
