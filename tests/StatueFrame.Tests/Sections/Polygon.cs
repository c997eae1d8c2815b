namespace StatueFrame.Tests.Sections;

/// <summary>Moments of a polygon from its boundary by Green's theorem: a way to section properties that shares nothing with ours.</summary>
internal sealed record Polygon(params (double Y, double Z)[] Points)
{
    public (double A, double Y, double Z, double IYY, double IZZ, double IYZ) Moments()
    {
        double A = 0, SY = 0, SZ = 0, JYY = 0, JZZ = 0, JYZ = 0;
        for (int i = 0; i < Points.Length; i++)
        {
            (double y0, double z0) = Points[i];
            (double y1, double z1) = Points[(i + 1) % Points.Length];
            double cross = y0 * z1 - y1 * z0;
            A += cross / 2;
            SY += cross * (y0 + y1) / 6;
            SZ += cross * (z0 + z1) / 6;
            JYY += cross * (z0 * z0 + z0 * z1 + z1 * z1) / 12;
            JZZ += cross * (y0 * y0 + y0 * y1 + y1 * y1) / 12;
            JYZ += cross * (y0 * z1 + 2 * y0 * z0 + 2 * y1 * z1 + y1 * z0) / 24;
        }
        double Y = SY / A, Z = SZ / A;
        return (A, Y, Z, JYY - A * Z * Z, JZZ - A * Y * Y, JYZ - A * Y * Z);
    }

    /// <summary>The greatest second moment about any axis through the centroid, and the axis's angle, by trying.</summary>
    public (double Iy, double Iz, double Rotation) Principal()
    {
        var (_, _, _, IYY, IZZ, IYZ) = Moments();
        double About(double angle) =>
            IYY * Math.Cos(angle) * Math.Cos(angle) + IZZ * Math.Sin(angle) * Math.Sin(angle) - IYZ * Math.Sin(2 * angle);
        double low = -Math.PI / 4, high = Math.PI / 2;
        for (int i = 0; i < 200; i++)
        {
            double third = (high - low) / 3;
            if (About(low + third) < About(high - third))
                low += third;
            else
                high -= third;
        }
        double rotation = (low + high) / 2;
        return (About(rotation), About(rotation + Math.PI / 2), rotation);
    }

    public static Polygon Rectangle(double width, double depth) =>
        new((-width / 2, -depth / 2), (width / 2, -depth / 2), (width / 2, depth / 2), (-width / 2, depth / 2));

    public static Polygon AngleBar(double a, double b, double t) => new((0, 0), (b, 0), (b, t), (t, t), (t, a), (0, a));

    public static Polygon Circle(double diameter, int sides) =>
        new([.. Enumerable.Range(0, sides).Select(i =>
            (diameter / 2 * Math.Cos(2 * Math.PI * i / sides), diameter / 2 * Math.Sin(2 * Math.PI * i / sides)))]);
}
