namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// A damped oscillator ü + 2ζω u̇ + ω² u = p(t) stepped exactly under a p that runs straight between samples (the method of
/// Nigam and Jennings, 1969). ω = 0 is a free mass.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. With g the response to a unit impulse, and G and GG its first and second
/// integrals at the end of a step h, the step is u₁ = (ġ + 2ζωg) u₀ + g v₀ + G p₀ + (GG/h)(p₁ − p₀), and its derivative.
/// </remarks>
public readonly struct PiecewiseLinearOscillator
{
    private readonly double uu, uv, up, us;
    private readonly double vu, vv, vp, vs;

    /// <summary>Prepares the step.</summary>
    /// <param name="omega">Undamped circular frequency ω, rad/s; zero or more.</param>
    /// <param name="damping">Damping ratio ζ; 0 ≤ ζ &lt; 1.</param>
    /// <param name="step">Time between samples h, s; positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public PiecewiseLinearOscillator(double omega, double damping, double step)
    {
        RequireRange(omega >= 0 && double.IsFinite(omega), nameof(omega));
        RequireRange(damping is >= 0 and < 1, nameof(damping));
        RequireRange(step > 0 && double.IsFinite(step), nameof(step));
        Omega = omega;
        Damping = damping;
        double h = step, drag = 2 * damping * omega;
        (double g, double dg, double G, double GG) = omega * h < 0.5
            ? ImpulseResponseBySeries(omega, drag, h)
            : ImpulseResponse(omega, damping, h);
        (uu, uv, up, us) = (dg + drag * g, g, G, GG / h);
        (vu, vv, vp, vs) = (-omega * omega * g, dg, g, G / h);
    }

    /// <summary>Undamped circular frequency ω, rad/s.</summary>
    public double Omega { get; }

    /// <summary>Damping ratio ζ.</summary>
    public double Damping { get; }

    /// <summary>Goes one step ahead.</summary>
    /// <param name="u">Displacement before, and after.</param>
    /// <param name="v">Velocity before, and after.</param>
    /// <param name="before">Force per mass p at the start of the step.</param>
    /// <param name="after">Force per mass p at the end of the step.</param>
    public void Step(ref double u, ref double v, double before, double after)
    {
        double change = after - before;
        (u, v) = (uu * u + uv * v + up * before + us * change, vu * u + vv * v + vp * before + vs * change);
    }

    /// <summary>The acceleration that goes with displacement, velocity and force per mass.</summary>
    public double Acceleration(double u, double v, double p) => p - 2 * Damping * Omega * v - Omega * Omega * u;

    /// <summary>The step's eight numbers: what u₀, v₀, p₀ and p₁ − p₀ give to u₁, then what they give to v₁.</summary>
    internal void CopyTo(Span<double> eight) =>
        (eight[0], eight[1], eight[2], eight[3], eight[4], eight[5], eight[6], eight[7]) = (uu, uv, up, us, vu, vv, vp, vs);

    private static (double g, double dg, double G, double GG) ImpulseResponse(double omega, double damping, double h)
    {
        double damped = omega * Math.Sqrt(1 - damping * damping), decay = Math.Exp(-damping * omega * h);
        (double sin, double cos) = Math.SinCos(damped * h);
        double drag = 2 * damping * omega, square = omega * omega;
        double g = decay * sin / damped;
        double dg = decay * cos - damping * omega * g;
        double G = (1 - dg - drag * g) / square;
        double GG = (h - g - drag * G) / square;
        return (g, dg, G, GG);
    }

    /// <summary>The same by Taylor series, for steps so short that the closed form loses digits.</summary>
    private static (double g, double dg, double G, double GG) ImpulseResponseBySeries(double omega, double drag, double h)
    {
        double square = omega * omega, g = 0, dg = 0, G = 0, GG = 0;
        double before = 0, derivative = 1, power = 1;
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
        return (g, dg, G, GG);
    }

    private static void RequireRange(bool holds, string name)
    {
        if (!holds)
            throw new ArgumentOutOfRangeException(name);
    }
}
