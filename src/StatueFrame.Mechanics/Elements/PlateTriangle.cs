namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// A flat triangle that bends without shear strain, as thin plates do: nine freedoms, w, θ_x = ∂w/∂y and θ_y = −∂w/∂x of each
/// corner in turn. Normals stay square to the middle surface at corners and along sides (discrete Kirchhoff triangle).
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Source: Batoz, Bathe and Ho, "A study of three-node triangular plate bending
/// elements", Int. J. Numer. Methods Engrg. 15 (1980) 1771–1812; from memory, held by its patch tests and by plates.
/// </remarks>
internal readonly struct PlateTriangle
{
    public const int Size = 9;

    private readonly double x12, x31, y12, y31, area;
    private readonly Side p, q, r, t;

    /// <summary>A value for each of the sides 2–3, 3–1 and 1–2.</summary>
    private readonly record struct Side(double Of23, double Of31, double Of12);

    public PlateTriangle(double x1, double y1, double x2, double y2, double x3, double y3)
    {
        (x12, x31, y12, y31) = (x1 - x2, x3 - x1, y1 - y2, y3 - y1);
        (double x23, double y23) = (x2 - x3, y2 - y3);
        area = 0.5 * (x31 * y12 - x12 * y31);
        double l12 = x12 * x12 + y12 * y12, l23 = x23 * x23 + y23 * y23, l31 = x31 * x31 + y31 * y31;
        p = new Side(-6 * x23 / l23, -6 * x31 / l31, -6 * x12 / l12);
        q = new Side(3 * x23 * y23 / l23, 3 * x31 * y31 / l31, 3 * x12 * y12 / l12);
        r = new Side(3 * y23 * y23 / l23, 3 * y31 * y31 / l31, 3 * y12 * y12 / l12);
        t = new Side(-6 * y23 / l23, -6 * y31 / l31, -6 * y12 / l12);
    }

    /// <summary>Fills in the three rows that turn the freedoms into curvatures −∂²w/∂x², −∂²w/∂y², −2 ∂²w/∂x∂y, 1/m.</summary>
    /// <param name="xi">Area coordinate of the second corner.</param>
    /// <param name="eta">Area coordinate of the third corner.</param>
    /// <param name="b27">Receives three rows of nine.</param>
    public void Curvatures(double xi, double eta, Span<double> b27)
    {
        double a = 1 - 2 * xi, b = 1 - 2 * eta;
        ReadOnlySpan<double> xByXi =
        [
            p.Of12 * a + (p.Of31 - p.Of12) * eta, q.Of12 * a - (q.Of31 + q.Of12) * eta, -4 + 6 * (xi + eta) + r.Of12 * a - eta * (r.Of31 + r.Of12),
            -p.Of12 * a + eta * (p.Of23 + p.Of12), q.Of12 * a - eta * (q.Of12 - q.Of23), -2 + 6 * xi + r.Of12 * a + eta * (r.Of23 - r.Of12),
            -eta * (p.Of31 + p.Of23), eta * (q.Of23 - q.Of31), -eta * (r.Of31 - r.Of23),
        ];
        ReadOnlySpan<double> yByXi =
        [
            t.Of12 * a + eta * (t.Of31 - t.Of12), 1 + r.Of12 * a - eta * (r.Of31 + r.Of12), -q.Of12 * a + eta * (q.Of31 + q.Of12),
            -t.Of12 * a + eta * (t.Of23 + t.Of12), -1 + r.Of12 * a + eta * (r.Of23 - r.Of12), -q.Of12 * a - eta * (q.Of23 - q.Of12),
            -eta * (t.Of23 + t.Of31), eta * (r.Of23 - r.Of31), -eta * (q.Of23 - q.Of31),
        ];
        ReadOnlySpan<double> xByEta =
        [
            -p.Of31 * b - xi * (p.Of12 - p.Of31), q.Of31 * b - xi * (q.Of31 + q.Of12), -4 + 6 * (xi + eta) + r.Of31 * b - xi * (r.Of31 + r.Of12),
            xi * (p.Of23 + p.Of12), xi * (q.Of23 - q.Of12), -xi * (r.Of12 - r.Of23),
            p.Of31 * b - xi * (p.Of23 + p.Of31), q.Of31 * b + xi * (q.Of23 - q.Of31), -2 + 6 * eta + r.Of31 * b + xi * (r.Of23 - r.Of31),
        ];
        ReadOnlySpan<double> yByEta =
        [
            -t.Of31 * b - xi * (t.Of12 - t.Of31), 1 + r.Of31 * b - xi * (r.Of31 + r.Of12), -q.Of31 * b + xi * (q.Of31 + q.Of12),
            xi * (t.Of23 + t.Of12), xi * (r.Of23 - r.Of12), -xi * (q.Of23 - q.Of12),
            t.Of31 * b - xi * (t.Of23 + t.Of31), -1 + r.Of31 * b + xi * (r.Of23 - r.Of31), -q.Of31 * b - xi * (q.Of23 - q.Of31),
        ];
        double s = 1 / (2 * area);
        for (int i = 0; i < Size; i++)
        {
            b27[i] = s * (y31 * xByXi[i] + y12 * xByEta[i]);
            b27[Size + i] = s * (-x31 * yByXi[i] - x12 * yByEta[i]);
            b27[2 * Size + i] = s * (-x31 * xByXi[i] - x12 * xByEta[i] + y31 * yByXi[i] + y12 * yByEta[i]);
        }
    }

    /// <summary>Adds the bending stiffness: exact by the middles of the three sides.</summary>
    /// <param name="D">Plate rigidity E t³/(12 (1 − ν²)), N·m.</param>
    /// <param name="nu">Poisson's ratio.</param>
    /// <param name="k81">Receives the sum.</param>
    public void AddStiffness(double D, double nu, Span<double> k81)
    {
        Span<double> B = stackalloc double[3 * Size];
        foreach ((double xi, double eta) in (ReadOnlySpan<(double, double)>)[(0.5, 0), (0.5, 0.5), (0, 0.5)])
        {
            Curvatures(xi, eta, B);
            for (int i = 0; i < Size; i++)
            {
                double x = B[i] + nu * B[Size + i], y = nu * B[i] + B[Size + i], xy = 0.5 * (1 - nu) * B[2 * Size + i];
                for (int j = 0; j < Size; j++)
                    k81[Size * i + j] += area / 3 * D * (x * B[j] + y * B[Size + j] + xy * B[2 * Size + j]);
            }
        }
    }
}
