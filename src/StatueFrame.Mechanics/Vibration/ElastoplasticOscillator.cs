namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// A mass on a spring that yields, under forces that run straight within each step: ü + 2ζω u̇ + f(u) = p(t), all per mass.
/// The spring is bilinear with kinematic hardening: slope ω² up to the yield force, αω² beyond it, and ω² again after each
/// turn. Between yielding and turning the motion is exact; the moments of both are found to rounding (event to event).
/// </summary>
/// <remarks>For one thread. An infinite yield force makes it a linear oscillator whose peaks are found exactly.</remarks>
public sealed class ElastoplasticOscillator
{
    /// <summary>A short part of a step has a few events at most; more are rounding.</summary>
    private const int MostEvents = 16;

    private readonly double square, drag, yieldForce, soft, longest;
    private double plastic;
    private int flow;
    private (double Length, bool Flows, LinearStep Step) cached;

    /// <summary>Prepares an oscillator at rest.</summary>
    /// <param name="omega">Undamped circular frequency ω before yielding, rad/s; positive.</param>
    /// <param name="damping">Damping ratio ζ before yielding, zero or more; the damping force stays 2ζω u̇ while it yields.</param>
    /// <param name="yieldForce">Yield force per mass, N/kg; positive, infinite for a linear spring.</param>
    /// <param name="hardening">Slope after yielding over slope before, α; 0 ≤ α &lt; 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public ElastoplasticOscillator(double omega, double damping, double yieldForce = double.PositiveInfinity, double hardening = 0)
    {
        if (!(omega > 0 && double.IsFinite(omega)))
            throw new ArgumentOutOfRangeException(nameof(omega));
        if (!(damping >= 0 && double.IsFinite(damping)))
            throw new ArgumentOutOfRangeException(nameof(damping));
        if (!(yieldForce > 0))
            throw new ArgumentOutOfRangeException(nameof(yieldForce));
        if (hardening is not (>= 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(hardening));
        (square, drag, this.yieldForce, soft) = (omega * omega, 2 * damping * omega, yieldForce, hardening);
        longest = LinearStep.Longest(square, drag);
    }

    /// <summary>Time since the start, s.</summary>
    public double Time { get; private set; }

    /// <summary>Displacement, m.</summary>
    public double Displacement { get; private set; }

    /// <summary>Velocity, m/s.</summary>
    public double Velocity { get; private set; }

    /// <summary>The spring's force per mass, N/kg.</summary>
    public double SpringForce => soft * square * Displacement + (1 - soft) * square * (Displacement - plastic);

    /// <summary>Displacement at which the spring first yields, m.</summary>
    public double YieldDisplacement => yieldForce / square;

    /// <summary>Greatest displacement so far, without sign, m.</summary>
    public double Peak { get; private set; }

    /// <summary>When it was reached, s.</summary>
    public double PeakTime { get; private set; }

    /// <summary>How often the motion has turned so far.</summary>
    public int Turns { get; private set; }

    /// <summary>Peak over yield displacement: the ductility that is asked of the spring; below one when it has not yielded.</summary>
    public double Ductility => Peak / YieldDisplacement;

    /// <summary>Energy per mass that yielding has turned into heat so far, J/kg.</summary>
    public double PlasticWork { get; private set; }

    /// <summary>Gives the mass a sudden change of velocity, as a blow does.</summary>
    public void Strike(double velocityChange)
    {
        Velocity += velocityChange;
        if (flow != 0 && flow * Velocity < 0)
            flow = 0;
    }

    /// <summary>Goes ahead by some time under a force that runs straight.</summary>
    /// <param name="before">Force per mass at the start, N/kg.</param>
    /// <param name="after">Force per mass at the end, N/kg.</param>
    /// <param name="duration">How far to go, s; positive.</param>
    public void Advance(double before, double after, double duration)
    {
        if (!(duration > 0 && double.IsFinite(duration)))
            throw new ArgumentOutOfRangeException(nameof(duration));
        int parts = (int)Math.Ceiling(duration / longest);
        double h = duration / parts;
        for (int i = 0; i < parts; i++)
        {
            double start = before + (after - before) * i / parts, slope = (after - before) / duration, left = h;
            for (int events = 0; left > 0; events++)
            {
                double done = ToNextEvent(start, slope, left, events < MostEvents);
                start += slope * done;
                left -= done;
            }
        }
    }

    /// <summary>Goes on until the mass turns, the spring yields, or the time is over; returns how far it went.</summary>
    private double ToNextEvent(double force, double slope, double time, bool mayStop)
    {
        double end = time;
        (double u, double v) = After(force, slope, time);
        bool turns = mayStop && Velocity != 0 && v * Velocity < 0;
        if (turns)
        {
            end = Find(force, slope, time, (_, velocity) => velocity * Math.Sign(Velocity) < 0);
            (u, v) = (After(force, slope, end).u, 0);
        }
        bool yields = mayStop && flow == 0 && Math.Abs(square * (u - plastic)) > yieldForce * (1 + 1e-12);
        if (yields)
        {
            double sign = Math.Sign(u - plastic);
            end = Find(force, slope, end, (at, _) => sign * square * (at - plastic) > yieldForce);
            (u, v) = After(force, slope, end);
            turns = false;
        }
        if (flow != 0)
        {
            PlasticWork += (1 - soft) * yieldForce * Math.Abs(u - Displacement);
            plastic = u - flow * yieldForce / square;
        }
        (Displacement, Velocity) = (u, v);
        Time += end;
        flow = yields ? Math.Sign(u - plastic) : turns ? 0 : flow;
        Turns += turns ? 1 : 0;
        if (Math.Abs(u) > Peak)
            (Peak, PeakTime) = (Math.Abs(u), Time);
        return end;
    }

    private (double u, double v) After(double force, double slope, double time)
    {
        bool flows = flow != 0;
        if (cached.Length != time || cached.Flows != flows)
            cached = (time, flows, StepOf(flows, time));
        return Go(cached.Step, force, slope, time);
    }

    private (double u, double v) Go(LinearStep step, double force, double slope, double time)
    {
        double held = flow != 0 ? -(1 - soft) * flow * yieldForce : (1 - soft) * square * plastic;
        return step.From(Displacement, Velocity, force + held, force + held + slope * time);
    }

    private LinearStep StepOf(bool flows, double time) => new(flows ? soft * square : square, drag, time);

    /// <summary>The moment at which something begins to hold, which holds at the end; the later side of it, to rounding.</summary>
    private double Find(double force, double slope, double time, Func<double, double, bool> holds)
    {
        double low = 0, high = time;
        for (int i = 0; i < 60 && high - low > 1e-16 * time; i++)
        {
            double middle = 0.5 * (low + high);
            (double u, double v) = Go(StepOf(flow != 0, middle), force, slope, middle);
            (low, high) = holds(u, v) ? (low, middle) : (middle, high);
        }
        return high;
    }
}
