using StatueFrame.Mechanics;
using StatueFrame.Shape;

namespace StatueFrame.Works;

/// <summary>A sheet in axes of its own: w along its mean facing, u where it is longest, from its centroid.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SheetAxes
{
    public SheetAxes(MetalSheet sheet)
    {
        Mesh mesh = sheet.Surface;
        Vector3D facing = Vector3D.Zero, first = Vector3D.Zero;
        double area = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            Vector3D n = 0.5 * (b - a).Cross(c - a);
            facing += n;
            area += n.Length;
            first += n.Length / 3 * (a + b + c);
        }
        Center = first / area;
        Vector3D w = facing.Length > 1e-9 * area ? facing.Normalized() : Vector3D.UnitZ;
        Axes3D start = Axes3D.Along(w, Math.Abs(w.Z) < 0.9 ? Vector3D.UnitZ : Vector3D.UnitX);
        double xx = 0, yy = 0, xy = 0;
        for (int i = 0; i < mesh.VertexCount; i++)
        {
            Vector3D d = mesh.Vertex(i) - Center;
            (double p, double q) = (d.Dot(start.Y), d.Dot(start.Z));
            (xx, yy, xy) = (xx + p * p, yy + q * q, xy + p * q);
        }
        (double sin, double cos) = Math.SinCos(0.5 * Math.Atan2(2 * xy, xx - yy));
        Vector3D u = cos * start.Y + sin * start.Z;
        Axes = new Axes3D(u, w.Cross(u), w);
        Points = [.. Enumerable.Range(0, mesh.VertexCount).Select(i => Axes.ToLocal(mesh.Vertex(i) - Center))];
    }

    public Vector3D Center { get; }

    public Axes3D Axes { get; }

    /// <summary>The vertices in these axes, m.</summary>
    public Vector3D[] Points { get; }

    public Vector3D Least => new(Points.Min(p => p.X), Points.Min(p => p.Y), Points.Min(p => p.Z));

    public Vector3D Most => new(Points.Max(p => p.X), Points.Max(p => p.Y), Points.Max(p => p.Z));
}
