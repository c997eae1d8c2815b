using StatueFrame.Mechanics;

namespace StatueFrame.Shape.Tests;

/// <summary>Meshes of solids whose area, volume and sections are known.</summary>
internal static class Solids
{
    /// <summary>A profile turned about z: (r, z) from bottom to top; r = 0 at an end is a pole, else the end is closed flat.</summary>
    public static Mesh Turned(IReadOnlyList<(double R, double Z)> profile, int sectors)
    {
        var builder = new Surface();
        int[][] rings = [.. profile.Select(p => p.R == 0
            ? [builder.Vertex(0, 0, p.Z)]
            : Enumerable.Range(0, sectors).Select(i => builder.Vertex(p.R * Math.Cos(2 * Math.PI * i / sectors), p.R * Math.Sin(2 * Math.PI * i / sectors), p.Z)).ToArray())];
        if (rings[0].Length > 1)
            builder.Fan(builder.Vertex(0, 0, profile[0].Z), rings[0], up: false);
        for (int k = 1; k < rings.Length; k++)
        {
            if (rings[k - 1].Length == 1)
                builder.Fan(rings[k - 1][0], rings[k], up: false);
            else if (rings[k].Length == 1)
                builder.Fan(rings[k][0], rings[k - 1], up: true);
            else
                builder.Strip(rings[k - 1], rings[k]);
        }
        if (rings[^1].Length > 1)
            builder.Fan(builder.Vertex(0, 0, profile[^1].Z), rings[^1], up: true);
        return builder.ToMesh();
    }

    public static Mesh Sphere(double radius, int n, double z = 0) =>
        Turned([.. Enumerable.Range(0, n + 1).Select(i => (i == 0 || i == n ? 0 : radius * Math.Sin(Math.PI * i / n), z - radius * Math.Cos(Math.PI * i / n)))], 2 * n);

    public static Mesh Ellipsoid(double a, double b, double c, int n) => Sphere(1, n).Mapped(v => new Vector3D(a * v.X, b * v.Y, c * v.Z));

    public static Mesh Cone(double radius, double height, int n) =>
        Turned([.. Enumerable.Range(0, n + 1).Select(i => (radius * (n - i) / n, height * i / n))], 4 * n);

    public static Mesh Cylinder(double radius, double height, int n, int sectors) =>
        Turned([.. Enumerable.Range(0, n + 1).Select(i => (radius, height * i / n))], sectors);

    public static Mesh Torus(double ring, double tube, int n)
    {
        var builder = new Surface();
        int[][] rings = [.. Enumerable.Range(0, n).Select(k =>
        {
            (double s, double c) = Math.SinCos(2 * Math.PI * k / n);
            return Enumerable.Range(0, 2 * n).Select(i =>
            {
                (double sin, double cos) = Math.SinCos(Math.PI * i / n);
                return builder.Vertex((ring + tube * c) * cos, (ring + tube * c) * sin, tube * s);
            }).ToArray();
        })];
        for (int k = 0; k < n; k++)
            builder.Strip(rings[k], rings[(k + 1) % n]);
        return builder.ToMesh();
    }

    /// <summary>A box with one corner at the origin.</summary>
    public static Mesh Box(double x, double y, double z)
    {
        double[] v = [0, 0, 0, x, 0, 0, x, y, 0, 0, y, 0, 0, 0, z, x, 0, z, x, y, z, 0, y, z];
        int[] t = [0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7];
        return Mesh.Of(v, t);
    }

    public static Mesh Together(params Mesh[] meshes)
    {
        var coordinates = new List<double>();
        var corners = new List<int>();
        foreach (Mesh mesh in meshes)
        {
            int first = coordinates.Count / 3;
            coordinates.AddRange(mesh.Coordinates);
            corners.AddRange(mesh.Corners.ToArray().Select(c => first + c));
        }
        return Mesh.Of([.. coordinates], [.. corners]);
    }

    private sealed class Surface
    {
        private readonly List<double> coordinates = [];
        private readonly List<int> corners = [];

        public int Vertex(double x, double y, double z)
        {
            coordinates.AddRange([x, y, z]);
            return coordinates.Count / 3 - 1;
        }

        public void Fan(int pole, int[] ring, bool up)
        {
            for (int i = 0; i < ring.Length; i++)
            {
                (int a, int b) = (ring[i], ring[(i + 1) % ring.Length]);
                corners.AddRange(up ? [pole, a, b] : [pole, b, a]);
            }
        }

        public void Strip(int[] lower, int[] upper)
        {
            for (int i = 0; i < lower.Length; i++)
            {
                int j = (i + 1) % lower.Length;
                corners.AddRange([lower[i], lower[j], upper[j], lower[i], upper[j], upper[i]]);
            }
        }

        public Mesh ToMesh() => Mesh.Of([.. coordinates], [.. corners]);
    }
}
