using MathNet.Numerics.Integration;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame;

/// <summary>
/// Sums areas, mass and mass moments of a thin shell. Each strip between two corresponding edges is a bilinear patch
/// r(u, v), u along the edges and v up the axis, integrated by Gauss points. For a flat strip the element
/// |∂r/∂u × ∂r/∂v| is linear, squares of coordinates are of degree 2, and thickness × fold factor adds degree 2 in v:
/// 2 points in u and 3 in v are exact. A twist τ adds to the element a part of the order τ², of degree 2 in u and v as
/// long as τ is small: 3 × 4 points then. More twisted slabs get 6 × 6 points, or 12 × 12. Unlike triangles, patches
/// prefer no diagonal, so that cutting a skin into bands changes no sum.
/// </summary>
/// <remarks>For one thread.</remarks>
/// <param name="reference">Point near the shell about which the moments are summed, to save digits.</param>
/// <param name="density">Density of the sheet, kg/m³.</param>
/// <param name="armature">Further mass per outline area, kg/m².</param>
internal sealed class ShellMoments(Vector3D reference, double density, double armature)
{
    private static readonly (double At, double Weight)[] two = Gauss(2), three = Gauss(3), four = Gauss(4), six = Gauss(6), twelve = Gauss(12);

    private const double Flat = 1e-9, Slight = 1e-2, Strong = 0.1;

    private double xx, yy, zz, xy, yz, zx;
    private Vector3D first;
    private double[] room = [];

    public double OutlineArea { get; private set; }

    public double SheetArea { get; private set; }

    public double Mass { get; private set; }

    public Vector3D Centroid => reference + first / Mass;

    /// <summary>About the centroid, kg·m².</summary>
    public InertiaTensor Inertia
    {
        get
        {
            (double x, double y, double z) = first / Mass;
            double sxx = xx - Mass * x * x, syy = yy - Mass * y * y, szz = zz - Mass * z * z;
            return new InertiaTensor(syy + szz, szz + sxx, sxx + syy, XY: Mass * x * y - xy, XZ: Mass * z * x - zx, YZ: Mass * y * z - yz);
        }
    }

    /// <summary>Adds the lateral surface of a slab.</summary>
    public void AddWall(SkinSlab slab)
    {
        (SkinSection lower, SkinSection upper) = (slab.Lower, slab.Upper);
        double twist = TwistOf(slab);
        var (along, up) = twist > Strong ? (twelve, twelve) : twist > Slight ? (six, six) : twist > Flat ? (three, four) : (two, three);
        var wall = new ShellWall(slab, reference, ref room);
        foreach ((double v, double wv) in up)
        {
            double thickness = lower.Thickness + v * (upper.Thickness - lower.Thickness);
            double fold = lower.FoldFactor + v * (upper.FoldFactor - lower.FoldFactor);
            double z = lower.Z + v * slab.Height - reference.Z;
            foreach ((double u, double wu) in along)
                Add(wall.At(u, v), wu * wv, z, thickness, fold);
        }
    }

    /// <summary>Adds the flat sheet that fills a section: triangles from its first vertex, signed, three mid-edge points each.</summary>
    public void AddCap(SkinSection section)
    {
        Vector3D a = Point(section, 0);
        for (int i = 1; i + 1 < section.Curve.Count; i++)
        {
            Vector3D b = Point(section, i), c = Point(section, i + 1);
            double third = (b - a).Cross(c - a).Z / 6;
            Add(0.5 * (a + b), third, section.Thickness, section.FoldFactor);
            Add(0.5 * (b + c), third, section.Thickness, section.FoldFactor);
            Add(0.5 * (c + a), third, section.Thickness, section.FoldFactor);
        }
    }

    private Vector3D Point(SkinSection section, int i) =>
        new Vector3D(section.Curve.X[i], section.Curve.Y[i], section.Z) - reference;

    private void Add(Vector3D p, double area, double thickness, double fold)
    {
        SheetArea += fold * area;
        double m = (density * thickness * fold + armature) * area;
        Mass += m;
        first += m * p;
        xx += m * p.X * p.X;
        yy += m * p.Y * p.Y;
        zz += m * p.Z * p.Z;
        xy += m * p.X * p.Y;
        yz += m * p.Y * p.Z;
        zx += m * p.Z * p.X;
    }

    private void Add(in PlanSums sums, double weight, double z, double thickness, double fold)
    {
        OutlineArea += weight * sums.One;
        SheetArea += weight * fold * sums.One;
        double m = weight * (density * thickness * fold + armature);
        Mass += m * sums.One;
        first += m * new Vector3D(sums.X, sums.Y, z * sums.One);
        xx += m * sums.XX;
        yy += m * sums.YY;
        zz += m * z * z * sums.One;
        xy += m * sums.XY;
        yz += m * z * sums.Y;
        zx += m * z * sums.X;
    }

    /// <summary>How much the most twisted strip of a slab is out of plane.</summary>
    private static double TwistOf(SkinSlab slab)
    {
        ReadOnlySpan<double> lowerX = slab.Lower.Curve.X, lowerY = slab.Lower.Curve.Y, upperX = slab.Upper.Curve.X, upperY = slab.Upper.Curve.Y;
        double most = 0;
        for (int i = 0; i < lowerX.Length; i++)
        {
            int j = i + 1 == lowerX.Length ? 0 : i + 1;
            double bx = lowerX[j] - lowerX[i], by = lowerY[j] - lowerY[i], cx = upperX[i] - lowerX[i], cy = upperY[i] - lowerY[i];
            double dx = upperX[j] - upperX[i] - bx, dy = upperY[j] - upperY[i] - by;
            double twist = slab.Height * Math.Abs(dx * by - dy * bx) / (Math.Sqrt(bx * bx + by * by) * (cx * cx + cy * cy + slab.Height * slab.Height));
            if (twist > most)
                most = twist;
        }
        return most;
    }

    private static (double At, double Weight)[] Gauss(int order)
    {
        var rule = new GaussLegendreRule(0, 1, order);
        return [.. rule.Abscissas.Zip(rule.Weights)];
    }
}
