using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics;

namespace StatueFrame.Shape;

/// <summary>Size and curvature of a piece of surface, from a plane and a quadric fitted to it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal readonly record struct SheetForm(
    double Area, Vector3D Center, double ChordU, double ChordV, double Depth, double Length, double Width, double Strong, double Weak, double Turn)
{
    public static SheetForm Of(SurfaceCutter cutter, List<int> corners)
    {
        var moments = new SheetMoments();
        Vector3D facing = Vector3D.Zero;
        var weight = new Dictionary<int, double>();
        for (int t = 0; t < corners.Count; t += 3)
        {
            (Vector3D a, Vector3D b, Vector3D c) = (cutter[corners[t]], cutter[corners[t + 1]], cutter[corners[t + 2]]);
            moments.Add(a, b, c);
            Vector3D n = (b - a).Cross(c - a);
            facing += n;
            for (int k = 0; k < 3; k++)
                weight[corners[t + k]] = weight.GetValueOrDefault(corners[t + k]) + n.Length / 6;
        }
        Vector3D w = facing.Length > 1e-9 * moments.Area ? facing.Normalized() : Vector3D.UnitZ, center = moments.Centroid;
        Axes3D axes = Principal(moments, w);
        double turn = 0;
        for (int t = 0; t < corners.Count; t += 3)
        {
            Vector3D n = (cutter[corners[t + 1]] - cutter[corners[t]]).Cross(cutter[corners[t + 2]] - cutter[corners[t]]);
            if (n.Length > 1e-9 * moments.Area)
                turn = Math.Max(turn, Math.Acos(Math.Clamp(n.Dot(w) / n.Length, -1, 1)));
        }
        var points = new List<(Vector3D At, double Weight)>(weight.Count);
        (double lowU, double highU, double lowV, double highV, double lowW, double highW) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue, double.MaxValue, double.MinValue);
        foreach ((int vertex, double share) in weight)
        {
            Vector3D p = axes.ToLocal(cutter[vertex] - center);
            points.Add((p, share));
            (lowU, highU) = (Math.Min(lowU, p.X), Math.Max(highU, p.X));
            (lowV, highV) = (Math.Min(lowV, p.Y), Math.Max(highV, p.Y));
            (lowW, highW) = (Math.Min(lowW, p.Z), Math.Max(highW, p.Z));
        }
        double u = highU - lowU, v = highV - lowV;
        (double strong, double weak, double alongU, double alongV) = Curvatures(points, Math.Max(u, v));
        (double length, double width) = (Arc(u, alongU), Arc(v, alongV));
        return new SheetForm(moments.Area, center, u, v, highW - lowW, Math.Max(length, width), Math.Min(length, width), strong, weak, turn);
    }

    /// <summary>Axes with z along the facing and x where the piece is longest.</summary>
    private static Axes3D Principal(SheetMoments moments, Vector3D w)
    {
        Axes3D start = Math.Abs(w.Z) < 0.9 ? Axes3D.Along(w, Vector3D.UnitZ) : Axes3D.Along(w, Vector3D.UnitX);
        (Vector3D p, Vector3D q) = (start.Y, start.Z);
        (double xx, double yy, double zz, double xy, double xz, double yz) = moments.Central;
        double Of(Vector3D a, Vector3D b) =>
            a.X * (xx * b.X + xy * b.Y + xz * b.Z) + a.Y * (xy * b.X + yy * b.Y + yz * b.Z) + a.Z * (xz * b.X + yz * b.Y + zz * b.Z);
        double angle = 0.5 * Math.Atan2(2 * Of(p, q), Of(p, p) - Of(q, q));
        (double sin, double cos) = Math.SinCos(angle);
        Vector3D u = cos * p + sin * q;
        return new Axes3D(u, w.Cross(u), w);
    }

    /// <summary>
    /// Fits w = c + p u + q v + (a u² + 2b uv + c v²)/2 by least squares, weighted by area, and takes the principal curvatures
    /// at the middle; bulging outward is positive.
    /// </summary>
    private static (double Strong, double Weak, double AlongU, double AlongV) Curvatures(List<(Vector3D At, double Weight)> points, double size)
    {
        if (points.Count < 6 || !(size > 0))
            return default;
        double total = points.Sum(p => p.Weight);
        Matrix<double> A = Matrix<double>.Build.Dense(points.Count, 6);
        Vector<double> z = Vector<double>.Build.Dense(points.Count);
        for (int i = 0; i < points.Count; i++)
        {
            (Vector3D at, double share) = points[i];
            double s = Math.Sqrt(share / total), u = at.X / size, v = at.Y / size;
            (A[i, 0], A[i, 1], A[i, 2], A[i, 3], A[i, 4], A[i, 5]) = (s, s * u, s * v, 0.5 * s * u * u, s * u * v, 0.5 * s * v * v);
            z[i] = s * at.Z / size;
        }
        Matrix<double> normal = A.TransposeThisAndMultiply(A);
        // A trace of damping keeps strips of a few triangles, which do not fix all six, from running away.
        for (int k = 0; k < 6; k++)
            normal[k, k] += 1e-9;
        Vector<double> x = normal.Cholesky().Solve(A.TransposeThisAndMultiply(z));
        double p = x[1], q = x[2], E = 1 + p * p, F = p * q, G = 1 + q * q, slope = Math.Sqrt(1 + p * p + q * q);
        double L = -x[3] / (slope * size), M = -x[4] / (slope * size), N = -x[5] / (slope * size), det = E * G - F * F;
        double H = (E * N - 2 * F * M + G * L) / (2 * det), K = (L * N - M * M) / det;
        double root = Math.Sqrt(Math.Max(0, H * H - K));
        (double one, double two) = (H + root, H - root);
        return Math.Abs(one) >= Math.Abs(two) ? (one, two, L / E, N / G) : (two, one, L / E, N / G);
    }

    private static double Arc(double chord, double curvature)
    {
        double half = 0.5 * chord * Math.Abs(curvature);
        return half < 1e-6 ? chord : half < 1 ? 2 / Math.Abs(curvature) * Math.Asin(half) : 0.5 * Math.PI * chord;
    }
}
