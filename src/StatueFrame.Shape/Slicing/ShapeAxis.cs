using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>A limb's axis: from where it leaves the trunk to its tip, in the statue's axes.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Root">Where distances along the axis begin.</param>
/// <param name="Tip">Where the axis points to.</param>
public sealed record ShapeAxis(Point3 Root, Point3 Tip)
{
    /// <summary>Plan angle of the axis, as in <see cref="Limb.Heading"/>; zero for an upright axis.</summary>
    public Angle Heading => Angle.FromRadians(Math.Abs(Direction.X) + Math.Abs(Direction.Y) < 1e-12 ? 0 : Math.Atan2(Direction.Y, Direction.X));

    /// <summary>Angle above the horizontal, as in <see cref="Limb.Inclination"/>.</summary>
    public Angle Inclination => Angle.FromRadians(Math.Asin(Math.Clamp(Direction.Z, -1, 1)));

    /// <summary>Distance from root to tip.</summary>
    public Length Length => Length.FromMeters((At(Tip) - At(Root)).Length);

    /// <summary>
    /// The axis along which a surface is longest: through the centroid of its area, in the direction of its greatest
    /// moment, from end to end of the surface.
    /// </summary>
    /// <param name="surface">The surface of a limb.</param>
    /// <param name="rootNear">The root is the end nearer to this point, such as the shoulder.</param>
    /// <exception cref="InvalidMeshException">The surface has no area.</exception>
    public static ShapeAxis Principal(Mesh surface, Point3 rootNear)
    {
        ArgumentNullException.ThrowIfNull(surface);
        var moments = new SheetMoments();
        for (int t = 0; t < surface.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = surface.Triangle(t);
            moments.Add(a, b, c);
        }
        if (!(moments.Area > 0))
            throw new InvalidMeshException("A surface without area has no axis.");
        (double xx, double yy, double zz, double xy, double xz, double yz) = moments.Central;
        var evd = Matrix<double>.Build.DenseOfRowMajor(3, 3, [xx, xy, xz, xy, yy, yz, xz, yz, zz]).Evd(Symmetricity.Symmetric);
        var along = new Vector3D(evd.EigenVectors[0, 2], evd.EigenVectors[1, 2], evd.EigenVectors[2, 2]).Normalized();
        Vector3D center = moments.Centroid;
        double least = double.PositiveInfinity, greatest = double.NegativeInfinity;
        foreach (int corner in surface.Corners)
        {
            double s = (surface.Vertex(corner) - center).Dot(along);
            least = Math.Min(least, s);
            greatest = Math.Max(greatest, s);
        }
        (Vector3D one, Vector3D other) = (center + least * along, center + greatest * along);
        return (one - At(rootNear)).Length <= (other - At(rootNear)).Length
            ? new ShapeAxis(Mesh.Point(one), Mesh.Point(other))
            : new ShapeAxis(Mesh.Point(other), Mesh.Point(one));
    }

    internal Vector3D Direction
    {
        get
        {
            Vector3D d = At(Tip) - At(Root);
            return d.Length > 0 && d.IsFinite ? d.Normalized() : throw new ArgumentException("An axis needs two different points.");
        }
    }

    /// <summary>The root and the local axes: those of a <see cref="Limb"/> with this heading and inclination.</summary>
    internal (Vector3D Root, Axes3D Axes) Frame
    {
        get
        {
            (double sin, double cos) = Math.SinCos(Heading.Radians);
            Vector3D z = Direction, y = new(-sin, cos, 0);
            return (At(Root), new Axes3D(y.Cross(z), y, z));
        }
    }

    /// <summary>Distance of a point from the segment between root and tip.</summary>
    internal double DistanceOf(Vector3D p)
    {
        Vector3D root = At(Root), d = At(Tip) - root;
        double t = Math.Clamp((p - root).Dot(d) / d.Dot(d), 0, 1);
        return (p - root - t * d).Length;
    }

    internal static Vector3D At(Point3 p) => new(p.X.Meters, p.Y.Meters, p.Z.Meters);
}
