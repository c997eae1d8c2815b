namespace StatueFrame.Shape.Tests.Meshes;

/// <summary>A real scan against another library: the Stanford bunny of the npm package "bunny" 1.0.1, in the public domain.</summary>
public class ScanTests
{
    private const string Vtk = "VTK 9.1 on the same mesh: vtkMassProperties, vtkCutter, vtkContourTriangulator";

    private static readonly Mesh scan = MeshFile.Read(
        Path.Combine(Repository.Root, "tests", "StatueFrame.Shape.Tests", "Data", "scan.obj"), new MeshReading { Unit = 1.Meters, Up = UpAxis.Y });

    private static readonly ShapeBody body = ShapeBody.Trunk(scan, standsOpen: false);

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("scan: surface", Vtk, 218.6892712, "m²", 1e-6, () => scan.SurfaceArea().SquareMeters, ValueKind.IndependentComputation),
        new("scan: volume", Vtk, 194.2883713, "m³", 1e-6, () => scan.EnclosedVolume().CubicMeters, ValueKind.IndependentComputation),
        new("scan: outline at 1 m", Vtk, 20.0468471, "m", 1e-6, () => body.SliceAt(1.Meters).Perimeter.Meters, ValueKind.IndependentComputation),
        new("scan: plan area at 3 m", Vtk, 37.3891345, "m²", 1e-6, () => body.SliceAt(3.Meters).Area.SquareMeters, ValueKind.IndependentComputation),
        new("scan: plan area at 6 m, two outlines", Vtk, 15.0557659, "m²", 1e-6, () => body.SliceAt(6.Meters).Area.SquareMeters, ValueKind.IndependentComputation),
        new("scan: outlines at 8 m, through both ears", Vtk, 11.0091198, "m", 1e-6, () => body.SliceAt(8.Meters).Perimeter.Meters, ValueKind.IndependentComputation),
    ];

    [Fact]
    public void A_real_scan_is_read_whole()
    {
        MeshReport report = MeshReport.Of(scan);
        Assert.True(report.IsSound, report.ToString());
        Assert.Equal((1839, 3674, 1), (report.Vertices, report.Triangles, report.Shells));
        Assert.Equal(2, body.SliceAt(8.Meters).Loops.Count);
    }
}
