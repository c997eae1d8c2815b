namespace StatueFrame.Shape.Tests.Meshes;

public class MeshTests
{
    private const double Coarse = 32;

    public static IEnumerable<PublishedValue> Rows =>
    [
        Extrapolated("sphere of radius 2: area", 16 * Math.PI, "m²", n => Solids.Sphere(2, n).SurfaceArea().SquareMeters),
        Extrapolated("sphere of radius 2: volume", 32 * Math.PI / 3, "m³", n => Solids.Sphere(2, n).EnclosedVolume().CubicMeters),
        Extrapolated("ellipsoid of half axes 1, 2, 3: volume", 8 * Math.PI, "m³", n => Solids.Ellipsoid(1, 2, 3, n).EnclosedVolume().CubicMeters),
        Extrapolated("torus of radii 3 and 1: area", 12 * Math.PI * Math.PI, "m²", n => Solids.Torus(3, 1, n).SurfaceArea().SquareMeters),
        Extrapolated("torus of radii 3 and 1: volume", 6 * Math.PI * Math.PI, "m³", n => Solids.Torus(3, 1, n).EnclosedVolume().CubicMeters),
        Extrapolated("cone of radius 1 and height 2: area with its base", Math.PI * (1 + Math.Sqrt(5)), "m²", n => Solids.Cone(1, 2, n).SurfaceArea().SquareMeters),
    ];

    /// <summary>What a value tends to when its error falls with the square of the triangles' size.</summary>
    private static PublishedValue Extrapolated(string feature, double expected, string unit, Func<int, double> of) =>
        new(feature + " (two meshes, extrapolated)", "closed form", expected, unit, 1e-5, () => (4 * of((int)(2 * Coarse)) - of((int)Coarse)) / 3, ValueKind.IndependentComputation);

    [Theory]
    [InlineData("sphere"), InlineData("ellipsoid"), InlineData("torus"), InlineData("cone")]
    public void Volume_error_falls_with_the_square_of_the_triangle_size(string solid)
    {
        (Func<int, Mesh> of, double exact) = solid switch
        {
            "sphere" => ((Func<int, Mesh>)(n => Solids.Sphere(2, n)), 32 * Math.PI / 3),
            "ellipsoid" => (n => Solids.Ellipsoid(1, 2, 3, n), 8 * Math.PI),
            "torus" => (n => Solids.Torus(3, 1, n), 6 * Math.PI * Math.PI),
            _ => (n => Solids.Cone(1, 2, n), 2 * Math.PI / 3),
        };
        double coarse = of(16).EnclosedVolume().CubicMeters - exact, fine = of(32).EnclosedVolume().CubicMeters - exact;
        Assert.InRange(Math.Log2(coarse / fine), 1.95, 2.05);
    }

    [Theory]
    [InlineData("sphere"), InlineData("torus"), InlineData("cone"), InlineData("box")]
    public void Closed_solids_are_sound(string solid)
    {
        Mesh mesh = solid switch { "sphere" => Solids.Sphere(1, 8), "torus" => Solids.Torus(3, 1, 8), "cone" => Solids.Cone(1, 2, 4), _ => Solids.Box(1, 2, 3) };
        MeshReport report = MeshReport.Of(mesh);
        Assert.True(report.IsSound, report.ToString());
        Assert.Equal(1, report.Shells);
        Assert.Empty(MeshRepair.Of(mesh).Done);
    }

    [Fact]
    public void Every_flaw_is_named_with_its_place()
    {
        Mesh box = Solids.Box(1, 2, 3);
        Assert.Equal(MeshFlawKind.OpenEdges, Kind(Changed(box, c => c.RemoveRange(6, 6))));
        Assert.Equal(MeshFlawKind.FlippedFaces, Kind(Changed(box, c => (c[0], c[1]) = (c[1], c[0]))));
        Assert.Equal(MeshFlawKind.InwardShells, Kind(Mesh.Of(box.Coordinates, [.. box.Corners.ToArray().Reverse()])));
        Mesh twice = Changed(box, c => c.AddRange([0, 2, 1]));
        Assert.Contains(MeshReport.Of(twice).Flaws, f => f.Kind == MeshFlawKind.DuplicateFaces && f.Places[0] == Point3.FromMeters(2.0 / 3, 2.0 / 3, 0));
        Assert.Contains(MeshReport.Of(twice).Flaws, f => f.Kind == MeshFlawKind.NonManifoldEdges);
        Assert.Contains(MeshReport.Of(Changed(box, c => c.AddRange([0, 1, 1]))).Flaws, f => f.Kind == MeshFlawKind.DegenerateFaces);
        Mesh inside = Solids.Box(0.2, 0.2, 0.2).Moved(0.4.Meters, 0.5.Meters, 0.6.Meters);
        Assert.Equal(MeshFlawKind.NestedShells, Kind(Solids.Together(box, inside)));
        Mesh beside = Solids.Together(box, box.Moved(5.Meters, 0.Meters, 0.Meters));
        Assert.Equal(2, MeshReport.Of(beside).Shells);
        Assert.True(MeshReport.Of(beside).IsSound);

        static MeshFlawKind Kind(Mesh mesh) => Assert.Single(MeshReport.Of(mesh).Flaws).Kind;
    }

    [Fact]
    public void Repair_joins_clears_and_turns_outward()
    {
        // Every triangle with its own vertices, one doubled, one without area, some inside out.
        Mesh sphere = Solids.Sphere(1, 6);
        var coordinates = new List<double>();
        var corners = new List<int>();
        for (int t = 0; t < sphere.TriangleCount; t++)
        {
            for (int k = 0; k < 3; k++)
            {
                int v = sphere.Corners[3 * t + (t % 3 == 0 ? 2 - k : k)];
                coordinates.AddRange(sphere.Coordinates.Slice(3 * v, 3));
                corners.Add(corners.Count);
            }
        }
        corners.AddRange([0, 1, 2, 0, 0, 1]);
        MeshRepair repair = MeshRepair.Of(Mesh.Of([.. coordinates], [.. corners]));
        Assert.True(repair.Report.IsSound);
        Assert.Equal(4, repair.Done.Count);
        Assert.Equal(sphere.VertexCount, repair.Mesh.VertexCount);
        Assert.Equal(sphere.EnclosedVolume().CubicMeters, repair.Mesh.EnclosedVolume().CubicMeters, 12);
    }

    [Fact]
    public void Vertices_near_each_other_are_joined_when_asked()
    {
        Mesh sphere = Solids.Sphere(1, 6);
        var own = sphere.Corners.ToArray().SelectMany((v, i) => sphere.Coordinates.Slice(3 * v, 3).ToArray().Select(c => c + 1e-6 * Math.Sin(i)));
        Mesh loose = Mesh.Of([.. own], [.. Enumerable.Range(0, sphere.Corners.Length)]);
        Assert.Throws<InvalidMeshException>(() => MeshRepair.Of(loose));
        Assert.Equal(sphere.VertexCount, MeshRepair.Of(loose, 0.01.Millimeters).Mesh.VertexCount);
    }

    [Fact]
    public void A_hole_is_refused_with_its_place_and_allowed_on_request()
    {
        Mesh open = Changed(Solids.Box(1, 2, 3), c => c.RemoveRange(6, 6));
        InvalidMeshException refused = Assert.Throws<InvalidMeshException>(() => MeshRepair.Of(open));
        Assert.Contains("1 loops of open edges, at (0, 0, 3) m", refused.Message);
        Assert.Equal(10, MeshRepair.Of(open, allowOpen: true).Mesh.TriangleCount);
    }

    [Fact]
    public void A_one_sided_strip_is_refused()
    {
        const int n = 12;
        var coordinates = new List<double>();
        for (int i = 0; i < n; i++)
        {
            double a = 2 * Math.PI * i / n;
            for (int k = -1; k <= 1; k += 2)
            {
                double r = 2 + 0.5 * k * Math.Cos(a / 2);
                coordinates.AddRange([r * Math.Cos(a), r * Math.Sin(a), 0.5 * k * Math.Sin(a / 2)]);
            }
        }
        var corners = new List<int>();
        for (int i = 0; i < n; i++)
        {
            (int a, int b) = (2 * i, 2 * i + 1);
            (int c, int d) = i + 1 < n ? (2 * i + 2, 2 * i + 3) : (1, 0);
            corners.AddRange([a, b, d, a, d, c]);
        }
        Mesh strip = Mesh.Of([.. coordinates], [.. corners]);
        Assert.NotNull(MeshReport.Of(strip).Of(MeshFlawKind.OneSidedShells));
        Assert.Throws<InvalidMeshException>(() => MeshRepair.Of(strip, allowOpen: true));
    }

    [Fact]
    public void Nonsense_makes_no_mesh()
    {
        Assert.Throws<ArgumentException>(() => Mesh.Of([0, 0, double.NaN], []));
        Assert.Throws<ArgumentException>(() => Mesh.Of([0, 0, 0], [0, 0, 1]));
        Assert.Throws<ArgumentException>(() => Mesh.Of([0, 0], []));
        Assert.Throws<ArgumentOutOfRangeException>(() => Solids.Box(1, 1, 1).Enlarged(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Solids.Box(1, 1, 1).Enlarged(1e9));
    }

    private static Mesh Changed(Mesh mesh, Action<List<int>> change)
    {
        List<int> corners = [.. mesh.Corners];
        change(corners);
        return Mesh.Of(mesh.Coordinates, [.. corners]);
    }
}
