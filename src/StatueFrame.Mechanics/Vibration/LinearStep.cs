namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// A short step of ü + d u̇ + κ u = p(t) for any d and κ of zero or more, p straight in the step, by Taylor series. Exact to
/// rounding when d h and √κ h are at most one half.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal readonly struct LinearStep
{
    private readonly double uu, uv, up, us, vv, vs;
    private readonly double drag, square;

    public LinearStep(double square, double drag, double h)
    {
        (this.square, this.drag) = (square, drag);
        double g = 0, dg = 0, G = 0, GG = 0, before = 0, derivative = 1, power = 1;
        for (int k = 1; k <= 20; k++)
        {
            double term = derivative * power;
            dg += term;
            g += term * h / k;
            G += term * h * h / (k * (k + 1.0));
            GG += term * h * h * h / (k * (k + 1.0) * (k + 2.0));
            (before, derivative) = (derivative, -drag * derivative - square * before);
            power *= h / k;
        }
        (uu, uv, up, us) = (dg + drag * g, g, G, h > 0 ? GG / h : 0);
        (vv, vs) = (dg, h > 0 ? G / h : 0);
    }

    /// <summary>Displacement and velocity after the step.</summary>
    public (double u, double v) From(double u, double v, double before, double after)
    {
        double change = after - before;
        return (uu * u + uv * v + up * before + us * change, -square * uv * u + vv * v + uv * before + vs * change);
    }

    /// <summary>Whether the step is short enough for the series.</summary>
    public static double Longest(double square, double drag) => 0.4 / Math.Max(Math.Max(Math.Sqrt(square), drag), 1e-300);
}
