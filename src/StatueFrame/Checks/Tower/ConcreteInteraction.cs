using MathNet.Numerics.Integration;

namespace StatueFrame.Checks;

/// <summary>
/// Axial force and moments that a reinforced concrete section resists, EN 1992-1-1, 6.1: plane sections, no tension in the
/// concrete, parabola–rectangle (3.1.7), bars elastic and then yielding (3.2.7, horizontal branch), limit strains of
/// Figure 6.1.
/// </summary>
/// <remarks>Immutable and safe to share between threads. SI units; compression positive; concrete under bars is not taken out.</remarks>
internal sealed class ConcreteInteraction
{
    private const double TensionLimit = 0.05;
    private static readonly GaussLegendreRule gauss = new(0, 1, 24);

    private readonly PlanArea plan;
    private readonly (double X, double Y, double A)[] bars;
    private readonly double f_cd, f_yd, E_s, n, eps_c2, eps_cu;

    public ConcreteInteraction(PlanArea plan, Concrete concrete, Reinforcement steel)
    {
        this.plan = plan;
        bars = [.. steel.Bars.Select(bar => (bar.X.Meters, bar.Y.Meters, Math.PI / 4 * bar.Diameter.Meters * bar.Diameter.Meters))];
        f_cd = concrete.f_k / concrete.PartialFactor;
        f_yd = steel.YieldStrength.Pascals / steel.PartialFactor;
        E_s = steel.YoungsModulus.Pascals;
        double f_ck = 1e-6 * concrete.f_k, above = Math.Max(0, f_ck - 50), below = Math.Max(0, 90 - f_ck) / 100;
        // Table 3.1: constant up to C50, then as tabulated.
        n = f_ck <= 50 ? 2 : 1.4 + 23.4 * Math.Pow(below, 4);
        eps_c2 = f_ck <= 50 ? 0.002 : 0.002 + 0.085e-3 * Math.Pow(above, 0.53);
        eps_cu = f_ck <= 50 ? 0.0035 : 0.0026 + 0.035 * Math.Pow(below, 4);
    }

    /// <summary>The greatest and the least axial force.</summary>
    public (double Compression, double Tension) AxialRange
    {
        get
        {
            (double most, _, _) = Forces(eps_c2, 0, 0);
            return (most, -bars.Sum(bar => bar.A * f_yd));
        }
    }

    /// <summary>The moment that the section resists in the direction of (mx, my) with the axial force N; both as force times place.</summary>
    /// <returns>Zero when the axial force alone is too much.</returns>
    public double MomentAt(double N, double mx, double my)
    {
        (double compression, double tension) = AxialRange;
        if (N >= compression || N <= tension)
            return 0;
        double at = Math.Atan2(my, mx), scale = (compression - tension) * plan.Reach(1, 0);
        (double sin, double cos) = Math.SinCos(at);
        // With N fixed the resisted moments bound a convex figure whose normal turns with the direction of bending.
        (double X, double Y) m = default;
        Crossing(at - Math.PI / 2, at + Math.PI / 2, 1e-12 * scale, angle =>
        {
            m = Resisted(N, angle);
            return m.Y * cos - m.X * sin;
        });
        return m.X * cos + m.Y * sin;
    }

    /// <summary>The moments at the limit strains when the section bends towards an angle, with the axial force N.</summary>
    private (double X, double Y) Resisted(double N, double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        double top = plan.Reach(cos, sin), bottom = -plan.Reach(-cos, -sin);
        (double N, double X, double Y) found = default;
        Crossing(0, 3, 1e-13 * (Math.Abs(N) + f_cd * plan.Whole.A), s =>
        {
            (double over, double under) = LimitStrains(s);
            double slope = (over - under) / (top - bottom);
            found = Forces(under - slope * bottom, slope * cos, slope * sin);
            return found.N - N;
        });
        return (found.X, found.Y);
    }

    /// <summary>Comes to where a function that rises crosses zero, and leaves it evaluated there: false position, halved as Illinois does, every third step in the middle.</summary>
    private static void Crossing(double low, double high, double near, Func<double, double> f)
    {
        double below = f(low), above = f(high);
        int side = 0;
        for (int i = 0; i < 200 && high - low > 1e-15 * (Math.Abs(low) + Math.Abs(high)); i++)
        {
            double x = i % 3 == 2 || !(below < 0 && above > 0) ? 0.5 * (low + high) : (low * above - high * below) / (above - below);
            double value = f(x);
            if (Math.Abs(value) <= near)
                return;
            if (value > 0)
                (high, above, below, side) = (x, value, side > 0 ? below / 2 : below, 1);
            else
                (low, below, above, side) = (x, value, side < 0 ? above / 2 : above, -1);
        }
    }

    /// <summary>Strains of the far edges from pure tension (0) by pivots A (to 1), B (to 2) and C (to 3, even compression).</summary>
    private (double Top, double Bottom) LimitStrains(double s) => s switch
    {
        < 1 => (-TensionLimit + s * (eps_cu + TensionLimit), -TensionLimit),
        < 2 => (eps_cu, -TensionLimit * (2 - s)),
        _ => (eps_cu + (s - 2) * (eps_c2 - eps_cu), (s - 2) * eps_c2),
    };

    /// <summary>Axial force and its first moments for the strain e0 + ex x + ey y.</summary>
    private (double N, double X, double Y) Forces(double e0, double ex, double ey)
    {
        double N = 0, X = 0, Y = 0;
        foreach ((double x, double y, double A) in bars)
        {
            double F = A * Math.Clamp(E_s * (e0 + ex * x + ey * y), -f_yd, f_yd);
            (N, X, Y) = (N + F, X + F * x, Y + F * y);
        }
        // ∫σ(ε) dA = ∫ σ′(e) A(ε > e) de from 0 to ε_c2, where the stress stops rising; the same for the first moments.
        double most = Math.Min(eps_c2, e0 + plan.Reach(ex, ey)), least = Math.Max(0, e0 - plan.Reach(-ex, -ey));
        if (most <= 0)
            return (N, X, Y);
        if (least > 0)
            Add(1, plan.Whole, Stress(Math.Min(least, eps_c2)));
        for (int piece = 0; piece < 4 && most > least; piece++)
        {
            double from = least + (most - least) * piece / 4, width = (most - least) / 4;
            for (int i = 0; i < gauss.Order; i++)
            {
                double e = from + width * gauss.GetAbscissa(i);
                Add(width * gauss.GetWeight(i), plan.Where(e0 - e, ex, ey), f_cd * n / eps_c2 * Math.Pow(1 - e / eps_c2, n - 1));
            }
        }
        return (N, X, Y);

        void Add(double weight, in PlanMoments part, double stress)
        {
            N += weight * stress * part.A;
            X += weight * stress * part.X;
            Y += weight * stress * part.Y;
        }
    }

    private double Stress(double strain) => f_cd * (1 - Math.Pow(1 - strain / eps_c2, n));
}
