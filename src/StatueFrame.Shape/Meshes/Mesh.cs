using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// The surface of a figure as triangles that share their vertices: a scan of the sculptor's maquette, or a model made on
/// a screen. In meters, z up. A triangle's vertices run anticlockwise seen from outside.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class Mesh
{
    private readonly double[] coordinates;
    private readonly int[] corners;

    /// <summary>Takes over the two arrays, which must be valid; the caller must not change them afterwards.</summary>
    internal Mesh(double[] coordinates, int[] corners) => (this.coordinates, this.corners) = (coordinates, corners);

    /// <summary>A mesh of given vertices and triangles.</summary>
    /// <param name="coordinates">x, y, z of each vertex in turn, m; each from −1e6 to 1e6.</param>
    /// <param name="corners">The three vertices of each triangle in turn, counted from 0.</param>
    /// <exception cref="ArgumentException">
    /// A length is not a multiple of three, a coordinate is not a number in the range, or a vertex does not exist.
    /// </exception>
    public static Mesh Of(ReadOnlySpan<double> coordinates, ReadOnlySpan<int> corners)
    {
        if (coordinates.Length % 3 != 0)
            throw new ArgumentException("must hold x, y and z of each vertex", nameof(coordinates));
        if (corners.Length % 3 != 0)
            throw new ArgumentException("must hold three vertices for each triangle", nameof(corners));
        foreach (double c in coordinates)
        {
            if (!(Math.Abs(c) <= FarthestCoordinate))
                throw new ArgumentException($"must be numbers from -1e6 to 1e6 m, one is {c}", nameof(coordinates));
        }
        foreach (int corner in corners)
        {
            if ((uint)corner >= (uint)(coordinates.Length / 3))
                throw new ArgumentException($"there is no vertex {corner}", nameof(corners));
        }
        return new Mesh(coordinates.ToArray(), corners.ToArray());
    }

    /// <summary>Greatest magnitude of a coordinate, m.</summary>
    internal const double FarthestCoordinate = 1e6;

    /// <summary>Number of vertices.</summary>
    public int VertexCount => coordinates.Length / 3;

    /// <summary>Number of triangles.</summary>
    public int TriangleCount => corners.Length / 3;

    /// <summary>x, y, z of each vertex in turn, m.</summary>
    public ReadOnlySpan<double> Coordinates => coordinates;

    /// <summary>The three vertices of each triangle in turn, counted from 0.</summary>
    public ReadOnlySpan<int> Corners => corners;

    /// <summary>Area of all triangles.</summary>
    public Area SurfaceArea()
    {
        double sum = 0;
        for (int t = 0; t < TriangleCount; t++)
            sum += Facing(t).Length;
        return Area.FromSquareMeters(0.5 * sum);
    }

    /// <summary>
    /// The volume enclosed, by the divergence theorem; negative when the surface faces inward. Without meaning for a
    /// surface that is not closed.
    /// </summary>
    public Volume EnclosedVolume()
    {
        Vector3D middle = Middle;
        double sum = 0;
        for (int t = 0; t < TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = Triangle(t);
            sum += (a - middle).Dot((b - middle).Cross(c - middle));
        }
        return Volume.FromCubicMeters(sum / 6);
    }

    /// <summary>The least and the greatest coordinates; both zero for a mesh without vertices.</summary>
    public (Point3 Least, Point3 Greatest) Bounds
    {
        get
        {
            (Vector3D least, Vector3D greatest) = Box;
            return (Point(least), Point(greatest));
        }
    }

    /// <summary>The mesh enlarged from the origin.</summary>
    /// <param name="factor">Full size over present size, greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not a positive number, or makes the mesh too large.</exception>
    public Mesh Enlarged(double factor)
    {
        if (!(factor > 0 && double.IsFinite(factor)))
            throw new ArgumentOutOfRangeException(nameof(factor), factor, "must be greater than zero");
        return Mapped(v => factor * v);
    }

    /// <summary>The mesh moved.</summary>
    public Mesh Moved(Length x, Length y, Length z)
    {
        var by = new Vector3D(x.Meters, y.Meters, z.Meters);
        return Mapped(v => v + by);
    }

    /// <summary>The mesh turned anticlockwise about the z axis.</summary>
    public Mesh Turned(Angle angle)
    {
        (double sin, double cos) = Math.SinCos(angle.Radians);
        return Mapped(v => new Vector3D(cos * v.X - sin * v.Y, sin * v.X + cos * v.Y, v.Z));
    }

    /// <summary>The mesh moved so that it stands on z = 0 with the middle of its box over the origin.</summary>
    public Mesh StoodAtOrigin()
    {
        (Vector3D least, Vector3D greatest) = Box;
        var by = new Vector3D(-0.5 * (least.X + greatest.X), -0.5 * (least.Y + greatest.Y), -least.Z);
        return Mapped(v => v + by);
    }

    internal Vector3D Vertex(int i) => new(coordinates[3 * i], coordinates[3 * i + 1], coordinates[3 * i + 2]);

    internal (Vector3D A, Vector3D B, Vector3D C) Triangle(int t) =>
        (Vertex(corners[3 * t]), Vertex(corners[3 * t + 1]), Vertex(corners[3 * t + 2]));

    /// <summary>The outward normal with twice the triangle's area for its length.</summary>
    internal Vector3D Facing(int t)
    {
        (Vector3D a, Vector3D b, Vector3D c) = Triangle(t);
        return (b - a).Cross(c - a);
    }

    internal (Vector3D Least, Vector3D Greatest) Box
    {
        get
        {
            if (VertexCount == 0)
                return default;
            Vector3D least = Vertex(0), greatest = least;
            for (int i = 1; i < VertexCount; i++)
            {
                Vector3D v = Vertex(i);
                least = new(Math.Min(least.X, v.X), Math.Min(least.Y, v.Y), Math.Min(least.Z, v.Z));
                greatest = new(Math.Max(greatest.X, v.X), Math.Max(greatest.Y, v.Y), Math.Max(greatest.Z, v.Z));
            }
            return (least, greatest);
        }
    }

    /// <summary>The longest side of the box around the mesh, m.</summary>
    internal double Size
    {
        get
        {
            (Vector3D least, Vector3D greatest) = Box;
            Vector3D d = greatest - least;
            return Math.Max(d.X, Math.Max(d.Y, d.Z));
        }
    }

    internal Mesh Mapped(Func<Vector3D, Vector3D> map)
    {
        var moved = new double[coordinates.Length];
        for (int i = 0; i < VertexCount; i++)
        {
            Vector3D v = map(Vertex(i));
            if (!(Math.Abs(v.X) <= FarthestCoordinate && Math.Abs(v.Y) <= FarthestCoordinate && Math.Abs(v.Z) <= FarthestCoordinate))
                throw new ArgumentOutOfRangeException(nameof(map), v, "the mesh would reach farther than 1e6 m");
            (moved[3 * i], moved[3 * i + 1], moved[3 * i + 2]) = (v.X, v.Y, v.Z);
        }
        return new Mesh(moved, corners);
    }

    private Vector3D Middle
    {
        get
        {
            (Vector3D least, Vector3D greatest) = Box;
            return 0.5 * (least + greatest);
        }
    }

    internal static Point3 Point(Vector3D v) => Point3.FromMeters(v.X, v.Y, v.Z);
}
