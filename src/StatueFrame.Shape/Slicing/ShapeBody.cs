using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// A trunk or a limb as a surface with an axis, across which it is sliced. Heights and plan coordinates are those of the
/// body's own axes: the statue's for the trunk; for a limb z along it, y level and to the left, as for <see cref="Limb"/>.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class ShapeBody
{
    private const double Level = 1e-6;

    private readonly double[] local;
    private readonly int[] corners;
    private readonly int sheets;

    /// <summary>Takes a surface whose first triangles are sheet and whose others only close it.</summary>
    internal ShapeBody(string name, Mesh mesh, int sheets, ShapeAxis? axis)
    {
        Name = name;
        this.sheets = sheets;
        corners = mesh.Corners.ToArray();
        Surface = sheets == mesh.TriangleCount ? mesh : new Mesh(mesh.Coordinates.ToArray(), corners[..(3 * sheets)]);
        (Vector3D root, Axes3D axes) = axis is null ? (Vector3D.Zero, new Axes3D(Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ)) : axis.Frame;
        Axis = axis;
        local = new double[mesh.Coordinates.Length];
        (LowestZ, HighestZ) = (double.PositiveInfinity, double.NegativeInfinity);
        for (int i = 0; i < mesh.VertexCount; i++)
        {
            Vector3D v = axes.ToLocal(mesh.Vertex(i) - root);
            (local[3 * i], local[3 * i + 1], local[3 * i + 2]) = (v.X, v.Y, v.Z);
        }
        foreach (int corner in corners)
        {
            LowestZ = Math.Min(LowestZ, local[3 * corner + 2]);
            HighestZ = Math.Max(HighestZ, local[3 * corner + 2]);
        }
    }

    /// <summary>A whole figure as one body that stands upright, in the statue's axes.</summary>
    /// <param name="mesh">A closed surface that faces outward; see <see cref="MeshRepair"/>.</param>
    /// <param name="standsOpen">
    /// Whether the level faces at its lowest height are where it stands and no sheet; true by default.
    /// </param>
    /// <exception cref="InvalidMeshException">The surface is not closed, or faces inward.</exception>
    public static ShapeBody Trunk(Mesh mesh, bool standsOpen = true)
    {
        RequireClosed(mesh);
        return Standing("trunk", mesh, mesh.TriangleCount, standsOpen);
    }

    internal static void RequireClosed(Mesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        MeshFlaw[] flaws = [.. MeshReport.Of(mesh).Flaws.Where(f => f.Kind is not (MeshFlawKind.Slivers or MeshFlawKind.DegenerateFaces or MeshFlawKind.UnjoinedVertices))];
        if (flaws.Length > 0)
            throw new InvalidMeshException("The surface must be closed and face outward; repair it first", flaws);
    }

    internal static ShapeBody Standing(string name, Mesh mesh, int sheets, bool standsOpen)
    {
        if (!standsOpen)
            return new ShapeBody(name, mesh, sheets, axis: null);
        (Vector3D least, _) = mesh.Box;
        double floor = least.Z + Level * mesh.Size;
        var first = new List<int>();
        var last = new List<int>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            bool sheet = t < sheets && Math.Max(a.Z, Math.Max(b.Z, c.Z)) > floor;
            (sheet ? first : last).AddRange(mesh.Corners.Slice(3 * t, 3));
        }
        return new ShapeBody(name, new Mesh(mesh.Coordinates.ToArray(), [.. first, .. last]), first.Count / 3, axis: null);
    }

    /// <summary>"trunk", or the limb's name.</summary>
    public string Name { get; }

    /// <summary>The limb's axis; null for the trunk, whose axis is the statue's z.</summary>
    public ShapeAxis? Axis { get; }

    /// <summary>The sheet alone, in the statue's axes.</summary>
    public Mesh Surface { get; }

    /// <summary>Area of the sheet, folds included.</summary>
    public Area SheetArea => Surface.SurfaceArea();

    /// <summary>The lowest place along the body's axis.</summary>
    public Length Lowest => Length.FromMeters(LowestZ);

    /// <summary>The highest place along the body's axis.</summary>
    public Length Highest => Length.FromMeters(HighestZ);

    internal double LowestZ { get; }

    internal double HighestZ { get; }

    /// <summary>The outlines at a height along the axis.</summary>
    /// <param name="elevation">The height; outside the body there are no outlines.</param>
    /// <exception cref="InvalidMeshException">The surface is open at that height.</exception>
    public PlanSlice SliceAt(Length elevation) => SlicesAt([elevation.Meters])[0];

    /// <summary>The sheet between heights along the axis, which must ascend; what lies beyond the ends is left out.</summary>
    /// <param name="edges">At least two heights.</param>
    /// <exception cref="ArgumentException">Fewer than two edges, or edges that do not ascend.</exception>
    public SheetBand[] Measure(params ReadOnlySpan<Length> edges)
    {
        var z = new double[edges.Length];
        for (int i = 0; i < z.Length; i++)
            z[i] = edges[i].Meters;
        return Measured(z, beyond: false);
    }

    /// <summary>The area that the body between two heights shows to a wind in a heading, with an estimate of its error.</summary>
    /// <param name="heading">Plan angle in the body's axes.</param>
    /// <param name="bottom">Lower height.</param>
    /// <param name="top">Upper height, above the lower.</param>
    /// <param name="slices">Number of slices, even, 2 to 10 000; the error falls with their square or faster.</param>
    /// <exception cref="ArgumentException">The heights do not ascend, or the number of slices is out of range.</exception>
    public (Area Area, Area Error) ProjectedArea(Angle heading, Length bottom, Length top, int slices = 64)
    {
        if (!(top.Meters > bottom.Meters) || !double.IsFinite(top.Meters - bottom.Meters))
            throw new ArgumentException("must lie above the bottom", nameof(top));
        if (slices is < 2 or > 10_000 || slices % 2 != 0)
            throw new ArgumentOutOfRangeException(nameof(slices), slices, "must be even, 2 to 10 000");
        // Midpoints: no slice falls on an end, where a flat top or foot would count half.
        double Sum(int n)
        {
            double step = (top.Meters - bottom.Meters) / n;
            return step * SlicesAt([.. Enumerable.Range(0, n).Select(i => bottom.Meters + (i + 0.5) * step)]).Sum(s => s.Width(heading.Radians));
        }
        double fine = Sum(slices), coarse = Sum(slices / 2);
        return (Area.FromSquareMeters(fine), Area.FromSquareMeters(Math.Abs(fine - coarse) / 3));
    }

    /// <summary>Cuts the skin into bands with stations between, as the statue's description takes them.</summary>
    /// <param name="slicing">Where and how.</param>
    /// <exception cref="InvalidMeshException">A slice is open, or has several outlines where one is asked for.</exception>
    /// <exception cref="ArgumentException">A member of <paramref name="slicing"/> is out of range.</exception>
    public SlicedSkin Slice(SkinSlicing slicing)
    {
        ArgumentNullException.ThrowIfNull(slicing);
        return SkinSlicer.Slice(this, slicing);
    }

    internal PlanSlice[] SlicesAt(double[] heights) => Slicer.Slice(local, corners, heights);

    /// <summary>The bands between edges; with <paramref name="beyond"/> the end bands take what lies beyond them.</summary>
    internal SheetBand[] Measured(double[] edges, bool beyond)
    {
        if (edges.Length < 2)
            throw new ArgumentException("must be at least two", nameof(edges));
        for (int i = 1; i < edges.Length; i++)
        {
            if (!(edges[i] > edges[i - 1]))
                throw new ArgumentException("must ascend", nameof(edges));
        }
        double[] limits = [.. edges];
        if (beyond)
            (limits[0], limits[^1]) = (Math.Min(limits[0], LowestZ), Math.Max(limits[^1], HighestZ));
        SheetMoments[] moments = [.. Enumerable.Range(0, edges.Length - 1).Select(_ => new SheetMoments())];
        for (int t = 0; t < sheets; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = (Local(corners[3 * t]), Local(corners[3 * t + 1]), Local(corners[3 * t + 2]));
            double least = Math.Min(a.Z, Math.Min(b.Z, c.Z)), greatest = Math.Max(a.Z, Math.Max(b.Z, c.Z));
            int band = Array.BinarySearch(limits, least);
            band = band >= 0 ? band : ~band - 1;
            // A level triangle on an edge belongs to the band below, the lowest edge's to the first.
            if (least == greatest && band > 0 && limits[Math.Min(band, limits.Length - 1)] == least)
                band--;
            for (band = Math.Max(band, 0); band < moments.Length && (limits[band] < greatest || least == greatest && limits[band] <= least); band++)
            {
                moments[band].AddBetween(a, b, c, limits[band], limits[band + 1]);
                if (least == greatest)
                    break;
            }
        }
        return [.. moments.Select((m, i) => new SheetBand(edges[i], edges[i + 1], m))];
    }

    private Vector3D Local(int i) => new(local[3 * i], local[3 * i + 1], local[3 * i + 2]);
}
