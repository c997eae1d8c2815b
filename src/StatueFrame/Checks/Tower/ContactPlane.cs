namespace StatueFrame.Checks;

/// <summary>
/// A rigid plane on a bed of springs that only push, held by bars that only pull, under a force and two moments: a cracked
/// section, a base plate with its anchors, a footing that lifts. It sinks by w = a + b x + c y; the bed pushes with k w
/// where w is positive.
/// </summary>
/// <remarks>
/// The sinking is where the potential energy ½k∫w₊² + Σ½k_i(s_i − w_i)₊² − (N a + m_x b + m_y c) is least. The energy is
/// convex, so there is one answer, and Newton's method with a line search finds it from anywhere. No answer means that no
/// bed and bars can balance the load. Immutable and safe to share between threads. SI units.
/// </remarks>
internal sealed class ContactPlane
{
    private const int MostSteps = 400;
    private const double Balanced = 1e-11;

    private readonly PlanArea area;
    private readonly double k;
    private readonly double length;
    private readonly ContactSpring[] springs;

    private ContactPlane(PlanArea area, double k, ContactSpring[] springs)
    {
        (this.area, this.k, this.springs) = (area, k, springs);
        length = area.Size;
        foreach (ContactSpring spring in springs)
            length = Math.Max(length, Math.Max(Math.Abs(spring.X), Math.Abs(spring.Y)));
    }

    /// <summary>Sinking at the origin, m.</summary>
    public double a { get; private set; }

    /// <summary>Slope of the sinking along x.</summary>
    public double b { get; private set; }

    /// <summary>Slope of the sinking along y.</summary>
    public double c { get; private set; }

    /// <summary>Solves for the sinking.</summary>
    /// <param name="area">The bed.</param>
    /// <param name="k">Its stiffness per area, Pa/m; positive.</param>
    /// <param name="springs">The bars.</param>
    /// <param name="N">Force that presses the plane down, N; negative lifts.</param>
    /// <param name="mx">N times its distance along x, N·m: the moment about +y.</param>
    /// <param name="my">N times its distance along y, N·m: the moment about −x.</param>
    /// <returns>Null when there is no balance.</returns>
    public static ContactPlane? Solve(PlanArea area, double k, ContactSpring[] springs, double N, double mx, double my)
    {
        var plane = new ContactPlane(area, k, springs);
        return plane.Find(N, mx, my) ? plane : null;
    }

    /// <summary>Pressure of the bed at a point, Pa.</summary>
    public double PressureAt(double x, double y) => k * Math.Max(0, Sinking(x, y));

    public double Sinking(double x, double y) => a + b * x + c * y;

    /// <summary>Greatest pressure, Pa.</summary>
    public double GreatestPressure => k * Math.Max(0, a + area.Reach(b, c));

    /// <summary>Least sinking times stiffness, Pa: negative where the bed gapes.</summary>
    public double LeastPressure => k * (a - area.Reach(-b, -c));

    /// <summary>Where the pressure is greatest.</summary>
    public (double X, double Y) Toe => area.Farthest(b, c);

    /// <summary>The part of the bed that is pressed.</summary>
    public PlanMoments Pressed => area.Where(a, b, c);

    /// <summary>The sum of the bed's pressures, N.</summary>
    public double BedForce => Bed.N;

    /// <summary>The bed's pressures together: N, and N times its places along x and y.</summary>
    public (double N, double mx, double my) Bed
    {
        get
        {
            PlanMoments m = Pressed;
            return (k * (a * m.A + b * m.X + c * m.Y), k * (a * m.X + b * m.XX + c * m.XY), k * (a * m.Y + b * m.XY + c * m.YY));
        }
    }

    /// <summary>The force of a bar, N.</summary>
    public double ForceOf(int spring) =>
        springs[spring].Stiffness * Math.Max(0, springs[spring].Stretch - Sinking(springs[spring].X, springs[spring].Y));

    private bool Find(double N, double mx, double my)
    {
        Span<double> f = [N, mx / length, my / length], p = stackalloc double[3], g = stackalloc double[3];
        Span<double> step = stackalloc double[3], trial = stackalloc double[3], H = stackalloc double[9];
        double size = Math.Abs(f[0]) + Math.Abs(f[1]) + Math.Abs(f[2]);
        foreach (ContactSpring spring in springs)
            size += spring.Stiffness * Math.Abs(spring.Stretch);
        if (size == 0)
            return true;
        p[0] = size / (k * area.Whole.A);
        double energy = Evaluate(p, f, g, H);
        for (int i = 0; i < MostSteps; i++)
        {
            double off = Norm(g);
            if (off <= Balanced * size)
                break;
            Newton(H, g, H[0] > 0 ? 1e-15 * H[0] : 1e-13 * k * area.Whole.A, step);
            double slope = g[0] * step[0] + g[1] * step[1] + g[2] * step[2], t = 1;
            bool down = false;
            for (int half = 0; half < 60 && !down; half++, t *= 0.5)
            {
                for (int j = 0; j < 3; j++)
                    trial[j] = p[j] + t * step[j];
                double next = Evaluate(trial, f, g, H);
                // Near the answer, above all on a sliver, the energy is flat to within its own rounding: there the balance decides.
                down = next <= energy + 1e-4 * t * slope || (Math.Abs(next - energy) <= 1e-9 * Math.Abs(energy) && Norm(g) < off);
                if (down)
                {
                    energy = next;
                    trial.CopyTo(p);
                }
            }
            if (!down)
            {
                Evaluate(p, f, g, H);
                break;
            }
        }
        (a, b, c) = (p[0], p[1] / length, p[2] / length);
        return Norm(g) <= 1e-7 * size && double.IsFinite(a + b + c);
    }

    /// <summary>Energy, its gradient and its second derivatives at p, with b and c times the length.</summary>
    private double Evaluate(ReadOnlySpan<double> p, ReadOnlySpan<double> f, Span<double> g, Span<double> H)
    {
        PlanMoments m = area.Where(p[0], p[1] / length, p[2] / length);
        double s = 1 / length;
        (H[0], H[1], H[2], H[4], H[5], H[8]) = (k * m.A, k * m.X * s, k * m.Y * s, k * m.XX * s * s, k * m.XY * s * s, k * m.YY * s * s);
        (H[3], H[6], H[7]) = (H[1], H[2], H[5]);
        double energy = 0;
        for (int i = 0; i < 3; i++)
        {
            double pull = H[3 * i] * p[0] + H[3 * i + 1] * p[1] + H[3 * i + 2] * p[2];
            energy += 0.5 * p[i] * pull - f[i] * p[i];
            g[i] = pull - f[i];
        }
        foreach (ContactSpring spring in springs)
        {
            double x = spring.X * s, y = spring.Y * s;
            double stretch = spring.Stretch - (p[0] + p[1] * x + p[2] * y);
            if (stretch <= 0)
                continue;
            double q = spring.Stiffness, T = q * stretch;
            energy += 0.5 * T * stretch;
            (g[0], g[1], g[2]) = (g[0] - T, g[1] - T * x, g[2] - T * y);
            H[0] += q;
            H[1] += q * x;
            H[2] += q * y;
            H[4] += q * x * x;
            H[5] += q * x * y;
            H[8] += q * y * y;
            (H[3], H[6], H[7]) = (H[1], H[2], H[5]);
        }
        return energy;
    }

    /// <summary>Solves H step = −g by Cholesky's method, softly grounded.</summary>
    private static void Newton(ReadOnlySpan<double> H, ReadOnlySpan<double> g, double soft, Span<double> step)
    {
        double l00 = Math.Sqrt(H[0] + soft), l10 = H[1] / l00, l20 = H[2] / l00;
        double l11 = Math.Sqrt(Math.Max(H[4] + soft - l10 * l10, soft)), l21 = (H[5] - l20 * l10) / l11;
        double l22 = Math.Sqrt(Math.Max(H[8] + soft - l20 * l20 - l21 * l21, soft));
        double y0 = -g[0] / l00, y1 = (-g[1] - l10 * y0) / l11, y2 = (-g[2] - l20 * y0 - l21 * y1) / l22;
        step[2] = y2 / l22;
        step[1] = (y1 - l21 * step[2]) / l11;
        step[0] = (y0 - l10 * step[1] - l20 * step[2]) / l00;
    }

    private static double Norm(ReadOnlySpan<double> v) => Math.Abs(v[0]) + Math.Abs(v[1]) + Math.Abs(v[2]);
}
