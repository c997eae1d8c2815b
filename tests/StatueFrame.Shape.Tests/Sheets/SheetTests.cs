using CsCheck;
using UnitsNet;

namespace StatueFrame.Shape.Tests.Sheets;

public class SheetTests
{
    private static readonly SheetCutting Cutting = new()
    {
        Metal = Copper.HalfHardR240,
        Thickness = 2.Millimeters,
        GreatestLength = 2.Meters,
        GreatestWidth = 1.5.Meters,
    };

    private static readonly SheetPlan Sphere = SheetPlan.Of(Solids.Sphere(3, 64), Cutting);

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("sheets of a sphere of radius 3: mean principal curvature", "closed form 1/R", 1.0 / 3, "1/m", 0.04, () => Sphere.Sheets.Average(s => 0.5 * (s.StrongCurvature + s.WeakCurvature)), ValueKind.IndependentComputation),
        new("sheets of a sphere: Gaussian curvature over the whole", "Gauss-Bonnet: ∫K dA = 4π", 4 * Math.PI, "-", 0.06, () => Sphere.Sheets.Sum(s => s.GaussianCurvature * s.Area.SquareMeters), ValueKind.IndependentComputation),
        new("cap of 0.5 m on a sphere of radius 3: strain of its area", "closed form r²/2R²(1 − cos r/R) − 1", CapStrain, "-", 0.05, () => Cap.AreaStrain, ValueKind.IndependentComputation),
        new("cap of 0.5 m on a sphere of radius 3: width when flat", "arc 2r", 1, "m", 0.01, () => Cap.Width.Meters, ValueKind.IndependentComputation),
        new("quarter cylinder of radius 1: width when flat", "arc πR/2", Math.PI / 2, "m", 0.06, () => Quarter.Width.Meters, ValueKind.IndependentComputation),
    ];

    private static double CapStrain => 0.25 / (18 * (1 - Math.Cos(0.5 / 3))) - 1;

    private static MetalSheet Cap => Assert.Single(SheetPlan.Of(Part(Solids.Turned([(0, -3), .. Enumerable.Range(1, 10).Select(i => (3 * Math.Sin(i / 60.0), -3 * Math.Cos(i / 60.0)))], 40), v => v.Z > -3 * Math.Cos(0.5 / 3) + 1e-9, top: true), Cutting).Sheets);

    private static MetalSheet Quarter => Assert.Single(SheetPlan.Of(
        Part(Solids.Cylinder(1, 2, 8, 64), v => v.X < -1e-9 || v.Y < -1e-9 || Math.Abs(v.Z - 1) > 1, top: false), Cutting with { GreatestWidth = 2.Meters, GreatestLength = 3.Meters }).Sheets);

    /// <summary>The triangles of a mesh that neither hold a vertex that is out, nor lie level (caps).</summary>
    private static Mesh Part(Mesh mesh, Func<Mechanics.Vector3D, bool> isOut, bool top)
    {
        var corners = new List<int>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Mechanics.Vector3D a, Mechanics.Vector3D b, Mechanics.Vector3D c) = mesh.Triangle(t);
            bool level = a.Z == b.Z && b.Z == c.Z;
            if (!(level || isOut(a) || isOut(b) || isOut(c)))
                corners.AddRange(mesh.Corners.Slice(3 * t, 3));
        }
        return Mesh.Of(mesh.Coordinates, [.. corners]);
    }

    [Fact]
    public void All_sheets_together_are_the_skin()
    {
        double area = Solids.Sphere(3, 64).SurfaceArea().SquareMeters;
        Assert.Equal(area, Sphere.Area.SquareMeters, 1e-9 * area);
        Assert.Equal(area * 0.002 * Copper.HalfHardR240.Density.KilogramsPerCubicMeter, Sphere.Mass.Kilograms, 1e-6 * area);
        Assert.All(Sphere.Sheets, s => Assert.True(s.Length.Meters <= 2 && s.Width.Meters <= 1.5 && s.WithinTurn));
        Assert.All(Sphere.Sheets, s => Assert.Equal(0, s.FreeEdge.Meters));
        Assert.Equal([.. Enumerable.Range(1, Sphere.Sheets.Count)], Sphere.Sheets.Select(s => s.Number));
    }

    [Fact]
    public void The_plan_is_the_same_every_time() => Assert.Equal(Sphere.ToCsv(), SheetPlan.Of(Solids.Sphere(3, 64), Cutting).ToCsv());

    [Fact]
    public void Area_and_seams_agree_for_any_limits() =>
        Gen.Select(Gen.Double[0.5, 3], Gen.Double[0.4, 1], Gen.Double[20, 90]).Sample((length, part, turn) =>
        {
            Mesh column = ShapeBody.Trunk(Solids.Cone(1.5, 4, 8)).Surface;
            SheetPlan plan = SheetPlan.Of(column, Cutting with { GreatestLength = length.Meters, GreatestWidth = (part * length).Meters, GreatestTurn = turn.Degrees });
            double free = plan.Sheets.Sum(s => s.FreeEdge.Meters), foot = 2 * 1.5 * 32 * Math.Sin(Math.PI / 32);
            return Math.Abs(plan.Area.SquareMeters - column.SurfaceArea().SquareMeters) < 1e-9 && Math.Abs(free - foot) < 1e-9
                && plan.Rivets >= plan.LappedSeam.Meters / 0.05 - 1;
        }, iter: 30);

    [Fact]
    public void Halving_a_box_leaves_a_seam_as_long_as_its_girth()
    {
        SheetPlan plan = SheetPlan.Of(Solids.Box(1, 1, 3), Cutting with { GreatestLength = 20.Meters, GreatestWidth = 20.Meters, GreatestTurn = 90.Degrees });
        Assert.Equal(2, plan.Sheets.Count);
        Assert.Equal(4, plan.LappedSeam.Meters, 1e-12);
        Assert.Equal(80, plan.Rivets);
        SheetPlan flush = SheetPlan.Of(Solids.Box(1, 1, 3), Cutting with { GreatestLength = 20.Meters, GreatestWidth = 20.Meters, GreatestTurn = 90.Degrees, Flush = [new FlushRegion(Point3.FromMeters(0.5, 0.5, 1.5), 9.Meters)] });
        Assert.Equal(0, flush.LappedSeam.Meters);
        Assert.Equal(plan.LappedSeam.Meters, flush.FlushSeam.Meters, 1e-12);
        Assert.InRange(flush.Rivets, 2 * plan.Rivets - 1, 2 * plan.Rivets + 1);
    }

    [Fact]
    public void A_bent_sheet_needs_no_hammering_and_a_bowl_does()
    {
        Assert.True(Quarter.AreaStrain < 0.002);
        Assert.Equal(1, Quarter.StrongCurvature, 0.25);
        Assert.True(Cap.AreaStrain > 0.002);
        Assert.True(Cap.GaussianCurvature > 0);
    }

    [Fact]
    public void Limits_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SheetPlan.Of(Solids.Box(1, 1, 1), Cutting with { GreatestLength = 0.Meters }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SheetPlan.Of(Solids.Box(1, 1, 1), Cutting with { GreatestWidth = 3.Meters }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SheetPlan.Of(Solids.Box(1, 1, 1), Cutting with { Thickness = 2.Meters }));
    }
}
