using System.Runtime.Intrinsics;
using StatueFrame.Mechanics;

namespace StatueFrame;

/// <summary>
/// The strips of a slab's lateral surface, laid out so that one point (u, v) of all of them is summed at once, four
/// strips at a time.
/// </summary>
/// <remarks>For one thread.</remarks>
internal readonly struct ShellWall
{
    private const int Width = 4;

    private readonly double[] room;
    private readonly int strips;
    private readonly double height;

    /// <summary>Lays out the strips of a slab.</summary>
    /// <param name="slab">The slab.</param>
    /// <param name="reference">The point from which coordinates are measured.</param>
    /// <param name="room">Room for the layout; made larger when needed.</param>
    public ShellWall(SkinSlab slab, Vector3D reference, ref double[] room)
    {
        height = slab.Height;
        strips = (slab.Lower.Curve.Count + Width - 1) / Width * Width;
        if (room.Length < 4 * (strips + 1))
            room = new double[4 * (strips + 1)];
        this.room = room;
        Lay(slab.Lower.Curve.X, reference.X, Row(0));
        Lay(slab.Lower.Curve.Y, reference.Y, Row(1));
        Lay(slab.Upper.Curve.X, reference.X, Row(2));
        Lay(slab.Upper.Curve.Y, reference.Y, Row(3));

        // Beyond the last vertex the first is repeated: strips without width.
        static void Lay(ReadOnlySpan<double> from, double origin, Span<double> to)
        {
            for (int i = 0; i < to.Length; i++)
                to[i] = from[i < from.Length ? i : 0] - origin;
        }
    }

    /// <summary>The sums, over all strips, of the area element |∂r/∂u × ∂r/∂v| at one point times powers of the coordinates there.</summary>
    public PlanSums At(double u, double v)
    {
        Vector256<double> one = default, x = default, y = default, xx = default, yy = default, xy = default;
        Span<double> lowerX = Row(0), lowerY = Row(1), upperX = Row(2), upperY = Row(3);
        for (int i = 0; i < strips; i += Width)
        {
            Vector256<double> ax = Load(lowerX, i), ay = Load(lowerY, i), bx = Load(lowerX, i + 1), by = Load(lowerY, i + 1);
            Vector256<double> upAx = Load(upperX, i) - ax, upAy = Load(upperY, i) - ay;
            Vector256<double> upBx = Load(upperX, i + 1) - bx, upBy = Load(upperY, i + 1) - by;
            Vector256<double> px = ax + v * upAx, py = ay + v * upAy;
            Vector256<double> alongX = bx + v * upBx - px, alongY = by + v * upBy - py;
            Vector256<double> upX = upAx + u * (upBx - upAx), upY = upAy + u * (upBy - upAy);
            Vector256<double> flat = alongX * upY - alongY * upX;
            Vector256<double> area = Vector256.Sqrt(height * height * (alongX * alongX + alongY * alongY) + flat * flat);
            px += u * alongX;
            py += u * alongY;
            Vector256<double> areaX = area * px, areaY = area * py;
            one += area;
            x += areaX;
            y += areaY;
            xx += areaX * px;
            yy += areaY * py;
            xy += areaX * py;
        }
        return new PlanSums(Vector256.Sum(one), Vector256.Sum(x), Vector256.Sum(y), Vector256.Sum(xx), Vector256.Sum(yy), Vector256.Sum(xy));

        static Vector256<double> Load(Span<double> row, int i) => Vector256.Create<double>(row.Slice(i, Width));
    }

    private Span<double> Row(int i) => room.AsSpan(i * (strips + 1), strips + 1);
}
