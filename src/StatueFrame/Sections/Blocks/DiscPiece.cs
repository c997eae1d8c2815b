namespace StatueFrame;

/// <summary>A circle.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class DiscPiece : PlanPiece
{
    /// <summary>Below this half angle, rad, the closed forms lose digits and their series are better.</summary>
    private const double SmallAngle = 0.05;

    public required double Radius { get; init; }

    /// <summary>
    /// The segment beyond a chord at the distance h = R cos θ: A = R²(θ − sin θ cos θ), ∫u = 2/3 R³ sin³θ,
    /// ∫u² = R⁴/4 (θ − sin 4θ/4), ∫v² = 2/3 R⁴ (3θ/8 − sin 2θ/4 + sin 4θ/32), u across the chord and v along it.
    /// </summary>
    public override PlanMoments Where(double a, double b, double c)
    {
        double g = Math.Sqrt(b * b + c * c), R = Radius;
        if (g == 0 || Math.Abs(a) >= g * R)
            return a > 0 ? new PlanMoments(Math.PI * R * R, 0, 0, Math.PI * R * R * R * R / 4, Math.PI * R * R * R * R / 4, 0) : default;
        double cos = -a / (g * R), theta = Math.Acos(cos), sin = Math.Sqrt((1 - cos) * (1 + cos));
        (double area, double vv) = theta < SmallAngle ? Small(sin) :
            (theta - sin * cos, 2.0 / 3 * (3 * theta / 8 - Math.Sin(2 * theta) / 4 + Math.Sin(4 * theta) / 32));
        double A = R * R * area, U = 2.0 / 3 * R * R * R * sin * sin * sin, VV = R * R * R * R * vv;
        // ∫u² = ∫r² − ∫v²; for a cap, ∫u² = R²A − 3∫v² follows from ∫(R² − u²) dA = 3 ∫v² dA.
        double UU = R * R * A - 3 * VV;
        double nx = b / g, ny = c / g;
        return new PlanMoments(A, nx * U, ny * U, nx * nx * UU + ny * ny * VV, ny * ny * UU + nx * nx * VV, nx * ny * (UU - VV));
    }

    /// <summary>The same for a thin cap, as series in s = sin θ: A/R² = ∫2 s² dθ and ∫v²/R⁴ = ∫2/3 s⁴ dθ with dθ = ds/√(1 − s²).</summary>
    private static (double Area, double VV) Small(double s)
    {
        double q = s * s, area = 0, vv = 0, term = 1;
        for (int n = 0; n < 8; n++)
        {
            area += 2 * term * s * q / (2 * n + 3);
            vv += 2.0 / 3 * term * s * q * q / (2 * n + 5);
            term *= q * (2 * n + 1) / (2 * n + 2);
        }
        return (area, vv);
    }

    public override (double X, double Y) Farthest(double ux, double uy)
    {
        double u = Math.Sqrt(ux * ux + uy * uy);
        return u == 0 ? (Radius, 0) : (Radius * ux / u, Radius * uy / u);
    }

    public override double Gauge(double x, double y) => Math.Sqrt(x * x + y * y) / Radius;
}
