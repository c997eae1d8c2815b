using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Shape;

namespace StatueFrame.Works;

/// <summary>
/// Lays a sheet flat with the least distortion: the plane figure whose triangles differ least, in the mean square of their
/// stretches weighted by area, from triangles that were only turned; then brought to the true area.
/// </summary>
/// <remarks>
/// Source: Liu, Zhang, Xu, Gotsman and Gortler, A local/global approach to mesh parameterization, Computer Graphics Forum 27
/// (2008), sections 3 and 4 (from memory): turns of single triangles and positions of vertices are found in turn; the matrix of the
/// second step is the same throughout.
/// </remarks>
internal sealed class Flattening
{
    private const int MostSteps = 400;

    /// <summary>The greatest movement of a vertex in a step, over the sheet's size, at which the steps end.</summary>
    private const double Settled = 1e-8;

    private readonly Mesh mesh;
    private readonly (double X1, double X2, double Y2)[] flat;

    public Flattening(Mesh mesh, IReadOnlyList<Vector3D> start)
    {
        this.mesh = mesh;
        int n = mesh.VertexCount;
        (X, Y) = ([.. start.Select(p => p.X)], [.. start.Select(p => p.Y)]);
        flat = new (double, double, double)[mesh.TriangleCount];
        Area = 0;
        for (int t = 0; t < flat.Length; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            Vector3D along = b - a, other = c - a;
            double length = along.Length, project = length > 0 ? other.Dot(along) / length : 0;
            flat[t] = (length, project, length > 0 ? along.Cross(other).Length / length : 0);
            Area += 0.5 * flat[t].X1 * flat[t].Y2;
        }
        LdlFactorization matrix = Matrix();
        double size = start.Max(p => Math.Abs(p.X)) + start.Max(p => Math.Abs(p.Y)), moved = double.PositiveInfinity;
        var right = new double[2 * n];
        for (Steps = 0; Steps < MostSteps && moved > Settled * size; Steps++)
        {
            Array.Clear(right);
            for (int t = 0; t < flat.Length; t++)
                AddTurned(t, right);
            matrix.Solve(right.AsSpan(0, n));
            matrix.Solve(right.AsSpan(n, n));
            moved = 0;
            for (int i = 0; i < n; i++)
            {
                moved = Math.Max(moved, Math.Max(Math.Abs(right[i] - X[i]), Math.Abs(right[n + i] - Y[i])));
                (X[i], Y[i]) = (right[i], right[n + i]);
            }
        }
        double scale = Math.Sqrt(Area / FlatArea()), x = X.Average(), y = Y.Average();
        for (int i = 0; i < n; i++)
            (X[i], Y[i]) = (scale * (X[i] - x), scale * (Y[i] - y));
    }

    public double[] X { get; }

    public double[] Y { get; }

    /// <summary>Area of the sheet, m².</summary>
    public double Area { get; }

    public int Steps { get; }

    /// <summary>Area of a triangle of the sheet, m².</summary>
    public double AreaOf(int t) => 0.5 * flat[t].X1 * flat[t].Y2;

    /// <summary>The principal stretches from the blank to the sheet, the greater first; 1 and 1 for a triangle without area.</summary>
    public (double Greater, double Lesser) Stretches(int t)
    {
        if (!Gradient(t, out double a, out double b, out double c, out double d))
            return (1, 1);
        // Of the way back, from sheet to blank: the inverse has the inverse stretches.
        double sum = Math.Sqrt((a + d) * (a + d) + (b - c) * (b - c)), difference = Math.Sqrt((a - d) * (a - d) + (b + c) * (b + c));
        double least = 0.5 * Math.Abs(sum - difference), most = 0.5 * (sum + difference);
        return (1 / Math.Max(least, 1e-6), 1 / most);
    }

    /// <summary>Whether a triangle lies on its face in the blank, which no sheet can.</summary>
    public bool IsTurnedOver(int t) => Gradient(t, out double a, out double b, out double c, out double d) && a * d - b * c <= 0;

    private double FlatArea()
    {
        double sum = 0;
        for (int t = 0; t < flat.Length; t++)
        {
            (int i, int j, int k) = Corners(t);
            sum += 0.5 * ((X[j] - X[i]) * (Y[k] - Y[i]) - (X[k] - X[i]) * (Y[j] - Y[i]));
        }
        return Math.Abs(sum);
    }

    private (int I, int J, int K) Corners(int t) => (mesh.Corners[3 * t], mesh.Corners[3 * t + 1], mesh.Corners[3 * t + 2]);

    /// <summary>How the blank's positions grow over the triangle's own plane: [a b; c d].</summary>
    private bool Gradient(int t, out double a, out double b, out double c, out double d)
    {
        (double x1, double x2, double y2) = flat[t];
        (a, b, c, d) = (1, 0, 0, 1);
        if (!HasShape(t))
            return false;
        (int i, int j, int k) = Corners(t);
        (double u1, double v1, double u2, double v2) = (X[j] - X[i], Y[j] - Y[i], X[k] - X[i], Y[k] - Y[i]);
        (a, c) = (u1 / x1, v1 / x1);
        (b, d) = ((u2 - a * x2) / y2, (v2 - c * x2) / y2);
        return true;
    }

    private bool HasShape(int t) => flat[t].Y2 > 1e-9 * flat[t].X1 && flat[t].X1 > 0;

    /// <summary>Cotangents of the angles at the three corners.</summary>
    private (double AtI, double AtJ, double AtK) Cotangents(int t)
    {
        (double x1, double x2, double y2) = flat[t];
        return (x2 / y2, (x1 - x2) / y2, (y2 * y2 - x2 * (x1 - x2)) / (x1 * y2));
    }

    private LdlFactorization Matrix()
    {
        int n = mesh.VertexCount;
        int[] corners = mesh.Corners.ToArray();
        var pattern = SparsityPattern.FromGroups(n, corners, [.. Enumerable.Range(0, flat.Length + 1).Select(t => 3 * t)]);
        var matrix = new SymmetricMatrix(pattern);
        Span<double> values = matrix.Values;
        double greatest = 0;
        for (int t = 0; t < flat.Length; t++)
        {
            if (!HasShape(t))
                continue;
            (int i, int j, int k) = Corners(t);
            (double ci, double cj, double ck) = Cotangents(t);
            Couple(values, i, j, ck);
            Couple(values, j, k, ci);
            Couple(values, k, i, cj);
        }
        for (int i = 0; i < n; i++)
            greatest = Math.Max(greatest, values[pattern.IndexOf(i, i)]);
        // Loads sum to zero, so that this holds vertex 0 at the origin and nothing else; a vertex of no triangle with area is held too.
        values[pattern.IndexOf(0, 0)] += greatest;
        for (int i = 1; i < n; i++)
        {
            if (values[pattern.IndexOf(i, i)] == 0)
                values[pattern.IndexOf(i, i)] = greatest;
        }
        return new LdlFactorization(SymbolicFactorization.Analyze(pattern), matrix);

        void Couple(Span<double> at, int p, int q, double weight)
        {
            at[pattern.IndexOf(p, p)] += weight;
            at[pattern.IndexOf(q, q)] += weight;
            at[pattern.IndexOf(Math.Max(p, q), Math.Min(p, q))] -= weight;
        }
    }

    /// <summary>Adds what a triangle asks for that keeps its shape and is only turned as the blank turns it now.</summary>
    private void AddTurned(int t, double[] right)
    {
        if (!Gradient(t, out double a, out double b, out double c, out double d))
            return;
        double length = Math.Sqrt((a + d) * (a + d) + (c - b) * (c - b));
        (double cos, double sin) = length > 0 ? ((a + d) / length, (c - b) / length) : (1, 0);
        (double x1, double x2, double y2) = flat[t];
        (int i, int j, int k) = Corners(t);
        (double ci, double cj, double ck) = Cotangents(t);
        Edge(i, j, ck, -x1, 0);
        Edge(j, k, ci, x1 - x2, -y2);
        Edge(k, i, cj, x2, y2);

        void Edge(int p, int q, double weight, double x, double y)
        {
            (double u, double v) = (weight * (cos * x - sin * y), weight * (sin * x + cos * y));
            right[p] += u;
            right[q] -= u;
            right[mesh.VertexCount + p] += v;
            right[mesh.VertexCount + q] -= v;
        }
    }
}
