using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// Integrates the motion of a rocking block from event to event: lift, swing on one edge, impact, swing on the other, rest
/// or fall. Between events the motion is smooth and is stepped by the Runge–Kutta pair of Dormand and Prince with error
/// control; an impact is found to the last digits by bisection of the step that passes it.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class RockingMotion
{
    private const double Tolerance = 1e-11, Still = 1e-7, Fallen = 0.5 * Math.PI;
    private const int MostPoints = 10_000, MostSteps = 20_000_000;

    /// <summary>How long a block may rock on after the ground is still, in units of 1/p.</summary>
    private const double Patience = 200;

    private readonly RockingBody body;
    private readonly RockingGround ground;
    private readonly List<RockingPoint> history = [];
    private readonly double slowest, spacing, end, groundEnd;

    private double t, phi, velocity, step, recorded = double.NegativeInfinity;
    private double peak, peakOfBalance, peakTendon;
    private int part, side, impacts;
    private bool rests, lifts, fallen;

    private RockingMotion(RockingBody body, RockingGround ground, double rotation, double? duration)
    {
        (this.body, this.ground) = (body, ground);
        slowest = Math.Min(body.FrequencyParameter(0), body.FrequencyParameter(1));
        groundEnd = ground.Start(ground.Breaks);
        end = duration ?? groundEnd + Patience / slowest;
        spacing = end / MostPoints;
        (side, phi, rests) = (rotation < 0 ? 1 : 0, Math.Abs(rotation), rotation == 0);
        lifts = phi > 0;
        step = 1e-3 / slowest;
        peakTendon = body.TendonForce(phi);
        Record(true);
        Note();
    }

    /// <summary>Runs a block from rest, or from a rotation in radians.</summary>
    /// <param name="body">The block.</param>
    /// <param name="ground">The motion of the ground.</param>
    /// <param name="rotation">Rotation at the start.</param>
    /// <param name="duration">When to stop, s; null to go on until the block rests or falls.</param>
    public static RockingResult Run(RockingBody body, RockingGround ground, double rotation, double? duration)
    {
        var motion = new RockingMotion(body, ground, rotation, duration);
        motion.Go();
        return motion.Result();
    }

    private void Go()
    {
        for (int steps = 0; steps < MostSteps && t < end && !fallen; steps++)
        {
            if (rests && part >= ground.Breaks)
                break;
            double until = part < ground.Breaks ? Math.Min(ground.Start(part + 1), end) : end;
            if (rests)
                WaitForLift(until);
            else
                Swing(until);
            Record(false);
            if (t >= until)
                part++;
        }
        Record(true);
    }

    /// <summary>Looks for the first time in a smooth part at which an edge lifts.</summary>
    private void WaitForLift(double until)
    {
        int lifted = Lifting(t);
        if (lifted < 0)
        {
            lifted = Lifting(until);
            if (lifted < 0)
            {
                t = until;
                return;
            }
            double before = t, after = until;
            for (int i = 0; i < 100; i++)
            {
                double middle = 0.5 * (before + after);
                if (middle <= before || middle >= after)
                    break;
                if (Lifting(middle) < 0)
                    before = middle;
                else
                    after = middle;
            }
            t = after;
            lifted = Lifting(t);
        }
        (side, phi, velocity, rests, lifts) = (lifted, 0, 0, false, true);
        step = Math.Min(step, 1e-3 / slowest);
    }

    /// <summary>The side onto which the ground would lift the block from rest, or −1.</summary>
    private int Lifting(double at)
    {
        (double ahead, double up) = ground.At(part, at);
        return -ahead > body.Uplift(0, up) ? 0 : ahead > body.Uplift(1, up) ? 1 : -1;
    }

    private void Swing(double until)
    {
        double h = Math.Min(step, until - t), limit = 0.05 / slowest;
        if (h <= 1e-15 * Math.Max(1, t))
        {
            t = until;
            return;
        }
        (double phiAfter, double velocityAfter, double error) = Step(h);
        if (error > 1 && h > 1e-12 / slowest)
        {
            step = h * Math.Clamp(0.9 * Math.Pow(error, -0.2), 0.2, 0.9);
            return;
        }
        bool cut = h < step;
        if (phiAfter <= 0 && (velocityAfter < 0 || phiAfter < 0))
        {
            Impact(h);
            return;
        }
        (t, phi, velocity) = (t + h >= until ? until : t + h, phiAfter, velocityAfter);
        double next = Math.Min(limit, h * Math.Clamp(0.9 * Math.Pow(Math.Max(error, 1e-10), -0.2), 0.2, 5));
        step = cut ? Math.Max(step, next) : next;
        Note();
        fallen = phi >= Fallen;
    }

    /// <summary>Finds when within a step the block comes down, and passes it on to the other edge.</summary>
    private void Impact(double h)
    {
        double before = 0, after = h;
        for (int i = 0; i < 100; i++)
        {
            double middle = 0.5 * (before + after);
            if (middle <= before || middle >= after)
                break;
            if (Step(middle).Phi > 0)
                before = middle;
            else
                after = middle;
        }
        double speed = Math.Max(0, -Step(after).Velocity);
        t += after;
        (phi, velocity) = (0, -speed);
        impacts++;
        Record(true);
        double left = body.Restitution(side) * speed;
        side = 1 - side;
        (phi, velocity) = (0, left);
        Record(true);
        if (left <= Still * slowest * body.Slenderness(side))
            (rests, velocity) = (true, 0);
        step = Math.Clamp(after, 1e-9 / slowest, step);
    }

    private void Note()
    {
        peak = Math.Max(peak, phi);
        peakOfBalance = Math.Max(peakOfBalance, phi / body.Slenderness(side));
        peakTendon = Math.Max(peakTendon, body.TendonForce(phi));
    }

    private void Record(bool always)
    {
        if (!always && t < recorded + spacing)
            return;
        recorded = t;
        double sign = side == 0 ? 1 : -1;
        history.Add(new RockingPoint(Duration.FromSeconds(t), Angle.FromRadians(sign * phi), RotationalSpeed.FromRadiansPerSecond(sign * velocity)));
    }

    /// <summary>One step of the Dormand–Prince pair from the present state; the error is in units of the tolerance.</summary>
    private (double Phi, double Velocity, double Error) Step(double h)
    {
        double y = phi, v = velocity;
        double a1 = A(0, y);
        double v2 = v + h * a1 / 5, a2 = A(h / 5, y + h * v / 5);
        double v3 = v + h * (3 * a1 + 9 * a2) / 40, a3 = A(0.3 * h, y + h * (3 * v + 9 * v2) / 40);
        double v4 = v + h * (44 * a1 / 45 - 56 * a2 / 15 + 32 * a3 / 9);
        double a4 = A(0.8 * h, y + h * (44 * v / 45 - 56 * v2 / 15 + 32 * v3 / 9));
        double v5 = v + h * (19372 * a1 / 6561 - 25360 * a2 / 2187 + 64448 * a3 / 6561 - 212 * a4 / 729);
        double a5 = A(8 * h / 9, y + h * (19372 * v / 6561 - 25360 * v2 / 2187 + 64448 * v3 / 6561 - 212 * v4 / 729));
        double v6 = v + h * (9017 * a1 / 3168 - 355 * a2 / 33 + 46732 * a3 / 5247 + 49 * a4 / 176 - 5103 * a5 / 18656);
        double a6 = A(h, y + h * (9017 * v / 3168 - 355 * v2 / 33 + 46732 * v3 / 5247 + 49 * v4 / 176 - 5103 * v5 / 18656));
        double velocityAfter = v + h * (35 * a1 / 384 + 500 * a3 / 1113 + 125 * a4 / 192 - 2187 * a5 / 6784 + 11 * a6 / 84);
        double phiAfter = y + h * (35 * v / 384 + 500 * v3 / 1113 + 125 * v4 / 192 - 2187 * v5 / 6784 + 11 * v6 / 84);
        double a7 = A(h, phiAfter);
        double ePhi = h * (71 * v / 57600 - 71 * v3 / 16695 + 71 * v4 / 1920 - 17253 * v5 / 339200 + 22 * v6 / 525 - velocityAfter / 40);
        double eVelocity = h * (71 * a1 / 57600 - 71 * a3 / 16695 + 71 * a4 / 1920 - 17253 * a5 / 339200 + 22 * a6 / 525 - a7 / 40);
        double scale = Tolerance * body.Slenderness(side);
        return (phiAfter, velocityAfter, Math.Max(Math.Abs(ePhi) / scale, Math.Abs(eVelocity) / (scale * slowest)));

        double A(double after, double rotation)
        {
            (double ahead, double up) = ground.At(part, t + after);
            return body.Acceleration(side, rotation, ahead, up);
        }
    }

    private RockingResult Result()
    {
        bool leansFarther = !rests && t >= groundEnd && phi > 0 && velocity >= 0 && body.Acceleration(side, phi, 0, 0) > 0;
        bool topples = fallen || leansFarther;
        return new RockingResult
        {
            Lifts = lifts,
            Topples = topples,
            PeakRotation = Angle.FromRadians(topples ? Fallen : peak),
            PeakOverBalance = peakOfBalance,
            Impacts = impacts,
            PeakTendonForce = Force.FromNewtons(peakTendon),
            History = history.ToValueList(),
        };
    }
}
