using System.Numerics;

namespace StatueFrame;

/// <summary>
/// A closed plan curve as a polygon in SI units, vertices anticlockwise: the outline of a skin or of a tower in the
/// plane across its axis. The last vertex joins the first; it is not repeated.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class PlanCurve
{
    /// <summary>How far past its ends an edge still catches a ray, of its length: none may slip between two edges.</summary>
    private const double AtVertex = 1e-12;

    /// <summary>Edges that turn by less than this, rad, stand for a smooth curve.</summary>
    private const double Smooth = 20 * Math.PI / 180;

    private readonly double[] x;
    private readonly double[] y;

    /// <summary>Takes over the two arrays; the caller must not change them afterwards.</summary>
    public PlanCurve(double[] x, double[] y)
    {
        this.x = x;
        this.y = y;
        (Area, CentroidX, CentroidY) = MomentsBetween(this, this, 0);
        for (int i = 0; i < Count; i++)
        {
            int j = Next(i);
            Perimeter += Math.Sqrt(Square(x[j] - x[i]) + Square(y[j] - y[i]));
        }
    }

    public int Count => x.Length;

    public ReadOnlySpan<double> X => x;

    public ReadOnlySpan<double> Y => y;

    /// <summary>Enclosed area, m²; negative when the vertices run clockwise.</summary>
    public double Area { get; }

    public double CentroidX { get; }

    public double CentroidY { get; }

    public double Perimeter { get; }

    /// <summary>An ellipse of full widths a and b, turned by <paramref name="rotation"/>, as <paramref name="count"/> points on it.</summary>
    public static PlanCurve Ellipse(double widthX, double widthY, double centerX, double centerY, double rotation, int count)
    {
        var x = new double[count];
        var y = new double[count];
        (double sin, double cos) = Math.SinCos(rotation);
        for (int i = 0; i < count; i++)
        {
            (double s, double c) = Math.SinCos(2 * Math.PI * i / count);
            double u = 0.5 * widthX * c, v = 0.5 * widthY * s;
            x[i] = centerX + cos * u - sin * v;
            y[i] = centerY + sin * u + cos * v;
        }
        return new PlanCurve(x, y);
    }

    /// <summary>The same curve moved.</summary>
    public PlanCurve Shifted(double dx, double dy) => dx == 0 && dy == 0
        ? this
        : new PlanCurve(Array.ConvertAll(x, v => v + dx), Array.ConvertAll(y, v => v + dy));

    /// <summary>The curve a fraction <paramref name="t"/> of the way from one curve to another with as many vertices.</summary>
    public static PlanCurve Between(PlanCurve from, PlanCurve to, double t)
    {
        var x = new double[from.Count];
        var y = new double[from.Count];
        for (int i = 0; i < x.Length; i++)
        {
            x[i] = from.x[i] + t * (to.x[i] - from.x[i]);
            y[i] = from.y[i] + t * (to.y[i] - from.y[i]);
        }
        return new PlanCurve(x, y);
    }

    /// <summary>The enclosed area, m², and the centroid of the curve that <see cref="Between"/> would give.</summary>
    public static (double Area, double X, double Y) MomentsBetween(PlanCurve from, PlanCurve to, double t)
    {
        double area = 0, sx = 0, sy = 0;
        double x0 = X(0), y0 = Y(0), ax = X(1) - x0, ay = Y(1) - y0;
        for (int i = 2; i < from.Count; i++)
        {
            double bx = X(i) - x0, by = Y(i) - y0;
            double triangle = 0.5 * (ax * by - ay * bx);
            area += triangle;
            sx += triangle * (ax + bx) / 3;
            sy += triangle * (ay + by) / 3;
            (ax, ay) = (bx, by);
        }
        return area == 0 ? (0, x0, y0) : (area, x0 + sx / area, y0 + sy / area);

        double X(int i) => from.x[i] + t * (to.x[i] - from.x[i]);
        double Y(int i) => from.y[i] + t * (to.y[i] - from.y[i]);
    }

    /// <summary>The least and the greatest coordinate of the curve along a unit direction.</summary>
    public (double Least, double Greatest) Extent(double directionX, double directionY) => ExtentBetween(this, this, 0, directionX, directionY);

    /// <summary>The extent of the curve that <see cref="Between"/> would give.</summary>
    public static (double Least, double Greatest) ExtentBetween(PlanCurve from, PlanCurve to, double t, double directionX, double directionY)
    {
        Vector<double> low = new(double.PositiveInfinity), high = new(double.NegativeInfinity);
        int i = 0;
        for (; i <= from.Count - Vector<double>.Count; i += Vector<double>.Count)
        {
            Vector<double> fromX = new(from.x, i), fromY = new(from.y, i);
            Vector<double> s = (fromX + t * (new Vector<double>(to.x, i) - fromX)) * directionX + (fromY + t * (new Vector<double>(to.y, i) - fromY)) * directionY;
            low = Vector.Min(low, s);
            high = Vector.Max(high, s);
        }
        double least = double.PositiveInfinity, greatest = double.NegativeInfinity;
        for (int k = 0; k < Vector<double>.Count; k++)
        {
            least = Math.Min(least, low[k]);
            greatest = Math.Max(greatest, high[k]);
        }
        for (; i < from.Count; i++)
        {
            double s = (from.x[i] + t * (to.x[i] - from.x[i])) * directionX + (from.y[i] + t * (to.y[i] - from.y[i])) * directionY;
            least = Math.Min(least, s);
            greatest = Math.Max(greatest, s);
        }
        return (least, greatest);
    }

    /// <summary>The stretch of the curve between two perimeter positions; the end must not lie before the beginning.</summary>
    /// <param name="fractions">This curve's <see cref="Fractions"/>.</param>
    /// <param name="from">Begin, as a fraction of the perimeter, from 0; every turn adds 1.</param>
    /// <param name="to">End.</param>
    public static PlanStretch Stretch(ReadOnlySpan<double> fractions, double from, double to)
    {
        (int firstEdge, double firstPart) = EdgeAt(fractions, from);
        (int lastEdge, double lastPart) = EdgeAt(fractions, to);
        return new PlanStretch(firstEdge, firstPart, lastEdge, lastPart);
    }

    /// <summary>
    /// The width that a stretch of the curve shows to a wind: Σ max(0, −n·w) ds with the outward normal n, for a curve
    /// that runs anticlockwise. Edges on the lee side show none; an edge in the shadow of another counts in full.
    /// </summary>
    public double WindwardWidth(in PlanStretch stretch, double windX, double windY)
    {
        int i = stretch.FirstEdge % x.Length;
        double width = Width(i), sum = -stretch.FirstPart * width;
        for (int edge = stretch.FirstEdge; edge < stretch.LastEdge; edge++)
        {
            sum += width;
            i = Next(i);
            width = Width(i);
        }
        return sum + stretch.LastPart * width;

        double Width(int edge)
        {
            int next = Next(edge);
            double shown = (x[next] - x[edge]) * windY - (y[next] - y[edge]) * windX;
            return shown > 0 ? shown : 0;
        }
    }

    /// <summary>The distance of a point from the curve, m.</summary>
    public double DistanceTo(double px, double py) => Nearest(px, py).Distance;

    /// <summary>Whether a point lies inside the curve, by the crossings of a ray.</summary>
    public bool Contains(double px, double py)
    {
        bool inside = false;
        for (int i = 0; i < x.Length; i++)
        {
            int j = Next(i);
            if (y[i] > py != y[j] > py && px < x[i] + (py - y[i]) / (y[j] - y[i]) * (x[j] - x[i]))
                inside = !inside;
        }
        return inside;
    }

    /// <summary>The perimeter position, in metres anticlockwise from vertex 0, of the point of the curve nearest to (px, py).</summary>
    public double NearestPosition(double px, double py) => Nearest(px, py).Position;

    /// <summary>The point of the curve nearest to (px, py), m.</summary>
    public (double X, double Y) NearestPoint(double px, double py)
    {
        (_, _, double nx, double ny) = Nearest(px, py);
        return (nx, ny);
    }

    private (double Position, double Distance, double X, double Y) Nearest(double px, double py)
    {
        double nearest = double.PositiveInfinity, position = 0, start = 0, nx = 0, ny = 0;
        for (int i = 0; i < x.Length; i++)
        {
            int j = Next(i);
            double ex = x[j] - x[i], ey = y[j] - y[i], dx = px - x[i], dy = py - y[i];
            double square = ex * ex + ey * ey;
            double t = square > 0 ? Math.Clamp((dx * ex + dy * ey) / square, 0, 1) : 0;
            double distance = Square(dx - t * ex) + Square(dy - t * ey);
            double length = Math.Sqrt(square);
            if (distance < nearest)
                (nearest, position, nx, ny) = (distance, start + t * length, x[i] + t * ex, y[i] + t * ey);
            start += length;
        }
        return (position < Perimeter ? position : 0, Math.Sqrt(nearest), nx, ny);
    }

    /// <summary>Perimeter positions of the vertices as fractions of the perimeter: from 0 for vertex 0, ascending, below 1.</summary>
    public double[] Fractions()
    {
        var fractions = new double[x.Length];
        for (int i = 1; i < x.Length; i++)
            fractions[i] = fractions[i - 1] + Math.Sqrt(Square(x[i] - x[i - 1]) + Square(y[i] - y[i - 1])) / Perimeter;
        return fractions;
    }

    /// <summary>The curve through the points of this one at the given perimeter fractions: from 0, ascending, below 1.</summary>
    public PlanCurve AtFractions(ReadOnlySpan<double> fractions)
    {
        double[] own = Fractions();
        var px = new double[fractions.Length];
        var py = new double[fractions.Length];
        int i = 0;
        for (int k = 0; k < fractions.Length; k++)
        {
            while (i + 1 < own.Length && own[i + 1] <= fractions[k])
                i++;
            int j = Next(i);
            double length = (j == 0 ? 1 : own[j]) - own[i];
            double t = length > 0 ? Math.Min(1, (fractions[k] - own[i]) / length) : 0;
            px[k] = x[i] + t * (x[j] - x[i]);
            py[k] = y[i] + t * (y[j] - y[i]);
        }
        return new PlanCurve(px, py);
    }

    /// <summary>The same curve run anticlockwise from the same first vertex.</summary>
    public PlanCurve Anticlockwise()
    {
        if (Area >= 0)
            return this;
        double[] px = [.. x], py = [.. y];
        Array.Reverse(px, 1, px.Length - 1);
        Array.Reverse(py, 1, py.Length - 1);
        return new PlanCurve(px, py);
    }

    /// <summary>True when no two edges cross or touch, but for neighbors at the vertex they share.</summary>
    public bool IsSimple()
    {
        for (int i = 0; i < x.Length; i++)
        {
            int end = Next(i), after = Next(end);
            if (Turn(i, end, after) == 0 && (x[end] - x[i]) * (x[after] - x[end]) + (y[end] - y[i]) * (y[after] - y[end]) <= 0)
                return false;
            for (int j = i + 2; j < x.Length; j++)
            {
                if (Next(j) != i && Meet(i, end, j, Next(j)))
                    return false;
            }
        }
        return true;
    }

    private bool Meet(int a, int b, int c, int d) =>
        Turn(a, b, c) * Turn(a, b, d) <= 0 && Turn(c, d, a) * Turn(c, d, b) <= 0
        && Overlap(x[a], x[b], x[c], x[d]) && Overlap(y[a], y[b], y[c], y[d]);

    private double Turn(int a, int b, int c) => (x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]);

    private static bool Overlap(double a, double b, double c, double d) =>
        Math.Max(a, b) >= Math.Min(c, d) && Math.Max(c, d) >= Math.Min(a, b);

    /// <summary>
    /// Where a ray first meets the curve: the distance along the unit direction (NaN when it misses), the outward unit
    /// normal there, and the perimeter position, m.
    /// </summary>
    public (double Distance, double NormalX, double NormalY, double Position) Cast(double originX, double originY, double directionX, double directionY)
    {
        const double Clear = 1e-9;
        double distance = double.NaN, part = 0;
        int hit = -1;
        double side = Side(0);
        for (int i = 0; i < x.Length; i++)
        {
            int j = Next(i);
            double before = side;
            side = Side(j);
            if ((before > Clear && side > Clear) || (before < -Clear && side < -Clear))
                continue;
            double ex = x[j] - x[i], ey = y[j] - y[i];
            double cross = directionX * ey - directionY * ex;
            if (Math.Abs(cross) < 1e-300)
                continue;
            double t = ((x[i] - originX) * ey - (y[i] - originY) * ex) / cross, s = before / cross;
            if (t < 0 || s < -AtVertex || s > 1 + AtVertex || t >= distance)
                continue;
            (distance, part, hit) = (t, s, i);
        }
        if (hit < 0)
            return (double.NaN, 0, 0, double.NaN);
        double length = EdgeLength(hit), position = part * length;
        for (int i = 0; i < hit; i++)
            position += EdgeLength(i);
        (double normalX, double normalY) = Normal(hit, part);
        return (distance, normalX, normalY, position < Perimeter ? position : 0);

        // On which side of the ray's line a vertex lies, and how far off it.
        double Side(int i) => (x[i] - originX) * directionY - (y[i] - originY) * directionX;
    }

    /// <summary>
    /// The outward unit normal at a fraction <paramref name="s"/> of an edge. Next to a corner it is the edge's own; where
    /// the edges turn little, as in an ellipse, it runs on from edge to edge and does not jump at the vertices.
    /// </summary>
    private (double X, double Y) Normal(int edge, double s)
    {
        int before = edge == 0 ? x.Length - 1 : edge - 1, end = Next(edge);
        double ex = x[end] - x[edge], ey = y[end] - y[edge], length = Math.Sqrt(ex * ex + ey * ey);
        double atStart = -0.5 * SmoothTurn(before, edge), atEnd = 0.5 * SmoothTurn(edge, end);
        (double sin, double cos) = Math.SinCos(atStart + s * (atEnd - atStart));
        return ((cos * ey + sin * ex) / length, (sin * ey - cos * ex) / length);
    }

    /// <summary>The angle by which an edge turns from the one before it, rad; 0 at a corner.</summary>
    private double SmoothTurn(int first, int second)
    {
        int a = Next(first), b = Next(second);
        double ux = x[a] - x[first], uy = y[a] - y[first], vx = x[b] - x[second], vy = y[b] - y[second];
        double turn = Math.Atan2(ux * vy - uy * vx, ux * vx + uy * vy);
        return Math.Abs(turn) < Smooth ? turn : 0;
    }

    /// <summary>The edge, and the part of it run through, at a position; every turn adds all the edges.</summary>
    private static (int Edge, double Part) EdgeAt(ReadOnlySpan<double> fractions, double position)
    {
        int turns = (int)Math.Floor(position);
        double rest = position - turns;
        int found = fractions.BinarySearch(rest), edge = found >= 0 ? found : ~found - 1;
        double length = (edge + 1 < fractions.Length ? fractions[edge + 1] : 1) - fractions[edge];
        return (turns * fractions.Length + edge, length > 0 ? Math.Min(1, (rest - fractions[edge]) / length) : 0);
    }

    private double EdgeLength(int edge)
    {
        int next = Next(edge);
        return Math.Sqrt(Square(x[next] - x[edge]) + Square(y[next] - y[edge]));
    }

    private int Next(int i) => i + 1 == x.Length ? 0 : i + 1;

    private static double Square(double v) => v * v;
}
