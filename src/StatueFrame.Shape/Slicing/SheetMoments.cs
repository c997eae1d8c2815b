using StatueFrame.Mechanics;

namespace StatueFrame.Shape;

/// <summary>Area and moments of pieces of surface, summed triangle by triangle, exactly.</summary>
/// <remarks>Not safe to share between threads.</remarks>
internal sealed class SheetMoments
{
    private double area, sx, sy, sz, xx, yy, zz, xy, xz, yz;

    public double Area => area;

    /// <summary>Centroid; the origin when there is no area.</summary>
    public Vector3D Centroid => area > 0 ? new Vector3D(sx, sy, sz) / area : Vector3D.Zero;

    public void Add(Vector3D a, Vector3D b, Vector3D c)
    {
        double A = 0.5 * (b - a).Cross(c - a).Length;
        Vector3D s = a + b + c;
        area += A;
        sx += A / 3 * s.X;
        sy += A / 3 * s.Y;
        sz += A / 3 * s.Z;
        // ∫ p q dA = A/12 (Σ p_k q_k + Σ p_k Σ q_k) over the corners k.
        double w = A / 12;
        xx += w * (a.X * a.X + b.X * b.X + c.X * c.X + s.X * s.X);
        yy += w * (a.Y * a.Y + b.Y * b.Y + c.Y * c.Y + s.Y * s.Y);
        zz += w * (a.Z * a.Z + b.Z * b.Z + c.Z * c.Z + s.Z * s.Z);
        xy += w * (a.X * a.Y + b.X * b.Y + c.X * c.Y + s.X * s.Y);
        xz += w * (a.X * a.Z + b.X * b.Z + c.X * c.Z + s.X * s.Z);
        yz += w * (a.Y * a.Z + b.Y * b.Z + c.Y * c.Z + s.Y * s.Z);
    }

    /// <summary>The covariances of the surface about its centroid, m⁴: xx, yy, zz, xy, xz, yz.</summary>
    public (double XX, double YY, double ZZ, double XY, double XZ, double YZ) Central
    {
        get
        {
            Vector3D c = Centroid;
            return (xx - area * c.X * c.X, yy - area * c.Y * c.Y, zz - area * c.Z * c.Z, xy - area * c.X * c.Y, xz - area * c.X * c.Z, yz - area * c.Y * c.Z);
        }
    }

    /// <summary>Adds the part of a triangle between two heights.</summary>
    public void AddBetween(Vector3D a, Vector3D b, Vector3D c, double bottom, double top)
    {
        if (Math.Min(a.Z, Math.Min(b.Z, c.Z)) >= bottom && Math.Max(a.Z, Math.Max(b.Z, c.Z)) <= top)
        {
            Add(a, b, c);
            return;
        }
        Span<Vector3D> polygon = stackalloc Vector3D[5], clipped = stackalloc Vector3D[5];
        (polygon[0], polygon[1], polygon[2]) = (a, b, c);
        int count = Clip(polygon[..3], clipped, bottom, 1);
        count = Clip(clipped[..count], polygon, top, -1);
        for (int i = 2; i < count; i++)
            Add(polygon[0], polygon[i - 1], polygon[i]);
    }

    /// <summary>Keeps what lies above a height, or below it with <paramref name="sign"/> −1; gives the number of corners.</summary>
    private static int Clip(ReadOnlySpan<Vector3D> polygon, Span<Vector3D> kept, double z, int sign)
    {
        int count = 0;
        for (int i = 0; i < polygon.Length; i++)
        {
            Vector3D p = polygon[i], q = polygon[(i + 1) % polygon.Length];
            double dp = sign * (p.Z - z), dq = sign * (q.Z - z);
            if (dp >= 0)
                kept[count++] = p;
            if (dp >= 0 != dq >= 0)
                kept[count++] = p + dp / (dp - dq) * (q - p);
        }
        return count;
    }
}
