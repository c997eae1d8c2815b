using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// Steps a rocking statue: it stands, lifts when what its base carries would pull at an edge, swings about the other, lands. Between
/// these events mean acceleration (Newmark γ = ½, β = ¼) holds for turn and modes together, which share an arrowhead of a mass matrix;
/// the times of landing are found by bisection.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class RockingStatueMotion
{
    private const double Fallen = 0.5 * Math.PI, Patience = 200, Settled = 1e-9, Moment = 0.05;
    private const int MostSteps = 20_000_000, MostPoints = 10_000, Sparse = 16, Rounds = 30;
    private const int Stands = -1;

    private readonly RockingModes body;
    private readonly RockingGround ground;
    private readonly ShockLoads? loads;
    private readonly int n;
    private readonly double h, end, quiet, dense, spacing;
    private readonly double[][] patterns;
    private readonly double[][] onTurn;
    private readonly double[] firm, trial;

    private readonly State now, next;
    private readonly RockingLooks looks;
    private readonly List<RockingPoint> history = [];

    private int landings, step;
    private bool lifts, fallen;
    private double recorded = double.NegativeInfinity, peak, peakOfBalance, peakTendon, input, damped, lost, greatestInput, error, firstLift = double.NaN;
    private (double Value, double Time) rocking, inputPeak;

    public RockingStatueMotion(RockingModes body, ShockLoads? loads, RockingGround ground)
    {
        (this.body, this.loads, this.ground, n) = (body, loads, ground, body.Count);
        (now, next) = (new State(n), new State(n));
        double f = body.Omega[^1] / (2 * Math.PI), slowest = Math.Min(body.FrequencyParameter(0), body.FrequencyParameter(1));
        h = Math.Min(Math.Min(1 / (20 * f), (loads?.Shortest ?? double.PositiveInfinity) / 40), 0.0005 / slowest);
        if (ground.Breaks > 0 && ground != RockingGround.Still)
            h = Math.Min(h, 0.5 * ground.Start(1));
        quiet = Math.Max(loads?.End ?? 0, ground == RockingGround.Still ? 0 : ground.Start(ground.Breaks));
        dense = quiet + 4 * 2 * Math.PI / body.Omega[0];
        end = quiet + Patience / slowest;
        spacing = end / MostPoints;
        patterns = [.. (loads?.Patterns ?? []).Select(p => Enumerable.Range(0, n).Select(i => body.Modes.ModalForce(i, p.Nodal)).ToArray())];
        onTurn = [.. (loads?.Patterns ?? []).Select(p => new[] { body.OnTurn(0, p.Resultant), body.OnTurn(1, p.Resultant) })];
        (firm, trial) = (new double[n], new double[n]);
        looks = new RockingLooks(body);
    }

    public RockingStatueResult Run()
    {
        Start();
        Look(0);
        for (step = 0; step < MostSteps && now.t < end && !fallen && !IsOver(); step++)
        {
            if (now.Side == Stands)
                Stand();
            else
                Swing();
            Look(now.t);
        }
        Record(true);
        return Result();
    }

    private void Start()
    {
        for (int i = 0; i < n && loads is not null; i++)
        {
            now.v[i] = loads.HasImpulse ? body.Modes.ModalForce(i, loads.Impulse) : 0;
            now.q[i] = loads.HasPull ? body.Modes.ModalForce(i, loads.Pull) / (body.Omega[i] * body.Omega[i]) : 0;
        }
        now.Side = Stands;
        input = Kinetic(now) + Strain(now);
        Accelerate(now, Stands);
        peakTendon = body.TendonForce(0);
        Record(true);
    }

    /// <summary>A step on the base, until it lifts.</summary>
    private void Stand()
    {
        Step(h, Stands);
        int side = Lifting(next);
        if (side == Stands)
        {
            Take(h);
            return;
        }
        double before = 0, after = h;
        for (int i = 0; i < Rounds; i++)
        {
            double middle = 0.5 * (before + after);
            Step(middle, Stands);
            int found = Lifting(next);
            (before, after, side) = found == Stands ? (middle, after, side) : (before, middle, found);
        }
        Step(after, Stands);
        Take(after);
        (now.Side, now.phi, now.rate) = (side, 0, 0);
        firstLift = lifts ? firstLift : now.t;
        lifts = true;
        Accelerate(now, side);
    }

    /// <summary>The side onto which what the base carries lifts it, or −1.</summary>
    private int Lifting(State state) => Pull(state, 0) > 0 ? 0 : Pull(state, 1) > 0 ? 1 : Stands;

    private void Swing()
    {
        int side = now.Side;
        Step(h, side);
        if (next.phi > 0)
        {
            Take(h);
            fallen = now.phi >= Fallen || (now.t > quiet && now.phi > 1.2 * body.Slenderness(side) && now.rate > 0 && now.turn > 0);
            return;
        }
        if (now.phi == 0)
        {
            // It comes down within the step in which it lifted: it stands a moment.
            (now.Side, now.rate) = (Stands, 0);
            Accelerate(now, Stands);
            Step(Moment * h, Stands);
            Take(Moment * h);
            return;
        }
        double before = 0, after = h;
        for (int i = 0; i < Rounds; i++)
        {
            double middle = 0.5 * (before + after);
            Step(middle, side);
            if (next.phi > 0)
                before = middle;
            else
                after = middle;
        }
        Step(after, side);
        Take(after);
        Land(side);
    }

    /// <summary>The base comes down: momentum about the new edge and in every mode is kept, as the new edge alone pushes.</summary>
    private void Land(int side)
    {
        landings++;
        int other = 1 - side;
        double[] from = body.Shared[side], to = body.Shared[other];
        double rate = now.rate, left = body.Inertia(other) - DenseVector.Dot(to, to), before = Kinetic(now);
        double kept = left > Settled * body.Inertia(other) ? rate * (body.Cross - DenseVector.Dot(to, from)) / left : 0;
        bool goesOn = kept > 1e-7 * body.FrequencyParameter(other) * body.Slenderness(other);
        kept = goesOn ? kept : 0;
        for (int i = 0; i < n; i++)
            now.v[i] += from[i] * rate - to[i] * kept;
        (now.Side, now.phi, now.rate) = (goesOn ? other : Stands, 0, kept);
        lost += before - Kinetic(now);
        Accelerate(now, now.Side);
        Record(true);
    }

    /// <summary>True when nothing acts any more, and what still swings can not lift the base again.</summary>
    private bool IsOver()
    {
        if (now.t <= quiet || now.Side != Stands)
            return false;
        double front = body.OnTurn(0, 0, 0, 0), back = body.OnTurn(1, 0, 0, 0), least = -Math.Max(front, back), most = 0;
        for (int i = 0; i < n; i++)
        {
            double w = body.Omega[i], size = Math.Sqrt(now.v[i] * now.v[i] / (w * w) + now.q[i] * now.q[i]), shared = Math.Max(Math.Abs(body.Shared[0][i]), Math.Abs(body.Shared[1][i]));
            most += size * (shared * w * w + SelfWeight.Gravity * Math.Abs(body.Along[i]));
        }
        return most < least;
    }

    /// <summary>From now to the next state a time later, on one side or standing.</summary>
    private void Step(double dt, int side)
    {
        bool turns = side != Stands;
        int s = Math.Max(side, 0);
        double t = now.t + dt, q4 = 0.25 * dt * dt, half = 0.5 * dt;
        Span<double> p = stackalloc double[n];
        double pushed = Push(t, s, p);
        (double ahead, double up) = ground.At(t);
        double turn = turns ? now.turn : 0, phi = 0, rate = 0;
        for (int round = 0; round < (turns ? 4 : 1); round++)
        {
            (phi, rate) = turns ? (now.phi + dt * now.rate + q4 * (now.turn + turn), now.rate + half * (now.turn + turn)) : (0, 0);
            double schur = body.Inertia(s), right = 0;
            for (int i = 0; i < n; i++)
            {
                double w = body.Omega[i], drag = 2 * body.Damping[i] * w, d = firm[i] = 1 + half * drag + q4 * w * w;
                double qTrial = now.q[i] + dt * now.v[i] + q4 * now.a[i], vTrial = now.v[i] + half * now.a[i];
                double r = p[i] + body.OnMode(i, s, phi, ahead, up) - drag * vTrial - w * w * qTrial;
                next.a[i] = r / d;
                next.q[i] = qTrial;
                next.v[i] = vTrial;
                double shared = body.Shared[s][i];
                schur -= shared * shared / d;
                right -= shared * r / d;
            }
            if (turns)
            {
                for (int i = 0; i < n; i++)
                    trial[i] = next.q[i] + q4 * (next.a[i] - body.Shared[s][i] * turn / firm[i]);
                turn = (pushed + body.OnTurn(s, phi, ahead, up) + body.OnTurn(s, phi, trial, up) + right) / schur;
            }
        }
        for (int i = 0; i < n; i++)
        {
            next.a[i] -= turns ? body.Shared[s][i] * turn / firm[i] : 0;
            next.q[i] += q4 * next.a[i];
            next.v[i] += half * next.a[i];
        }
        (next.phi, next.rate, next.turn, next.t, next.Side) = turns ? (now.phi + dt * now.rate + q4 * (now.turn + turn), now.rate + half * (now.turn + turn), turn, t, side) : (0, 0, 0, t, side);
    }

    /// <summary>Takes over the next state, with the work that was done on the way.</summary>
    private void Take(double dt)
    {
        bool turns = now.Side != Stands;
        int s = Math.Max(now.Side, 0);
        Span<double> p0 = stackalloc double[n], p1 = stackalloc double[n];
        double m0 = Push(now.t, s, p0), m1 = Push(next.t, s, p1);
        (double ahead0, double up0) = ground.At(now.t);
        (double ahead1, double up1) = ground.At(next.t);
        for (int i = 0; i < n; i++)
        {
            double moved = next.q[i] - now.q[i];
            input += moved * 0.5 * (p0[i] + p1[i] + ByGround(i, now.phi, ahead0, up0) + ByGround(i, next.phi, ahead1, up1));
            damped += dt > 0 ? 2 * body.Damping[i] * body.Omega[i] * moved * moved / dt : 0;
        }
        if (turns)
            input += (next.phi - now.phi) * 0.5 * (m0 + m1 + OfGround(now.phi, ahead0, up0) + OfGround(next.phi, ahead1, up1));
        now.CopyFrom(next);
        if (!turns)
            return;
        peak = Math.Max(peak, now.phi);
        peakOfBalance = Math.Max(peakOfBalance, now.phi / body.Slenderness(s));
        peakTendon = Math.Max(peakTendon, body.TendonForce(now.phi));

        double ByGround(int mode, double phi, double ahead, double up) => body.OnMode(mode, s, phi, ahead, up) - body.OnMode(mode, s, phi, 0, 0);

        double OfGround(double phi, double ahead, double up) => body.OnTurn(s, phi, ahead, up) - body.OnTurn(s, phi, 0, 0);
    }

    /// <summary>The accelerations that go with a state's positions and velocities.</summary>
    private void Accelerate(State state, int side)
    {
        bool turns = side != Stands;
        int s = Math.Max(side, 0);
        Span<double> p = stackalloc double[n];
        double pushed = Push(state.t, s, p), left = body.Inertia(s);
        (double ahead, double up) = ground.At(state.t);
        double right = turns ? pushed + body.OnTurn(s, state.phi, ahead, up) + body.OnTurn(s, state.phi, state.q, up) : 0;
        for (int i = 0; i < n; i++)
        {
            double w = body.Omega[i];
            state.a[i] = p[i] + body.OnMode(i, s, state.phi, ahead, up) - 2 * body.Damping[i] * w * state.v[i] - w * w * state.q[i];
            right -= body.Shared[s][i] * state.a[i];
            left -= body.Shared[s][i] * body.Shared[s][i];
        }
        state.turn = turns ? right / Math.Max(left, Settled * body.Inertia(s)) : 0;
        for (int i = 0; i < n && turns; i++)
            state.a[i] -= body.Shared[s][i] * state.turn;
    }

    /// <summary>The moment about an edge that the base would have to pull with to stay, N·m; below zero it presses.</summary>
    private double Pull(State state, int side)
    {
        Span<double> p = stackalloc double[n];
        (double ahead, double up) = ground.At(state.t);
        double moment = Push(state.t, side, p) + body.OnTurn(side, 0, ahead, up) + body.OnTurn(side, 0, state.q, up);
        return moment - DenseVector.Dot(body.Shared[side], state.a);
    }

    /// <summary>What the shock pushes modes with, and the turn on a side.</summary>
    private double Push(double t, int side, Span<double> onModes)
    {
        onModes.Clear();
        double turn = 0;
        for (int k = 0; k < patterns.Length; k++)
        {
            double size = loads!.Patterns[k].At(t);
            if (size == 0)
                continue;
            DenseVector.AddScaled(onModes, size, patterns[k]);
            turn += size * onTurn[k][side];
        }
        return turn;
    }

    private double Kinetic(State s)
    {
        double sum = 0.5 * DenseVector.Dot(s.v, s.v);
        return s.Side == Stands ? sum : sum + 0.5 * body.Inertia(s.Side) * s.rate * s.rate + s.rate * DenseVector.Dot(body.Shared[s.Side], s.v);
    }

    /// <summary>The kinetic energy of a rigid body with the same moment of momentum about the edge.</summary>
    private double TurnOfAll(State s)
    {
        double momentum = body.Inertia(s.Side) * s.rate + DenseVector.Dot(body.Shared[s.Side], s.v);
        return momentum * momentum / (2 * body.Inertia(s.Side));
    }

    private double Strain(State s)
    {
        double sum = 0;
        for (int i = 0; i < n; i++)
            sum += 0.5 * body.Omega[i] * body.Omega[i] * s.q[i] * s.q[i];
        return sum;
    }

    private void Look(double t)
    {
        double potential = now.Side == Stands ? 0 : body.Potential(now.Side, now.phi, now.q), strain = Strain(now), kinetic = Kinetic(now);
        RockingLooks.Greater(ref inputPeak, input, t);
        greatestInput = Math.Max(greatestInput, Math.Abs(input));
        error = Math.Max(error, Math.Abs(input - kinetic - strain - potential - damped - lost));
        if (now.Side != Stands)
            RockingLooks.Greater(ref rocking, potential + TurnOfAll(now), t);
        Record(false);
        if (t <= dense || step % Sparse == 0)
            looks.Look(t, now.q, now.v, strain, now.Side == Stands ? null : (now.Side, now.rate));
    }

    private void Record(bool always)
    {
        if (!always && now.t < recorded + spacing)
            return;
        recorded = now.t;
        double sign = now.Side == Stands ? 0 : RockingModes.Sign(now.Side);
        history.Add(new RockingPoint(Duration.FromSeconds(now.t), Angle.FromRadians(sign * now.phi), RotationalSpeed.FromRadiansPerSecond(sign * now.rate)));
    }

    private RockingStatueResult Result()
    {
        return new RockingStatueResult
        {
            Lifts = lifts,
            FirstLift = lifts ? Duration.FromSeconds(firstLift) : null,
            Topples = fallen,
            IsSettled = fallen || IsOver(),
            PeakRotation = Angle.FromRadians(fallen ? Fallen : peak),
            PeakOverBalance = peakOfBalance,
            Landings = landings,
            PeakTendonForce = Force.FromNewtons(peakTendon),
            Rocking = InTime(rocking),
            BarStrain = InTime(looks.BarStrain),
            TowerStrain = InTime(looks.TowerStrain),
            SkinMotion = InTime(looks.Skin),
            Input = InTime(inputPeak),
            Damped = Energy.FromJoules(damped),
            LostInLandings = Energy.FromJoules(lost),
            BalanceError = greatestInput > 0 ? error / greatestInput : 0,
            ModeCount = n,
            Assumptions = body.Assumptions,
            WorstBar = looks.WorstBar(),
            History = history.ToValueList(),
        };

        static PeakInTime<Energy> InTime((double Value, double Time) peak) => new(Energy.FromJoules(peak.Value), Duration.FromSeconds(peak.Time));
    }

    /// <summary>Where everything is at one time.</summary>
    private sealed class State(int n)
    {
        public double t, phi, rate, turn;

        public int Side = Stands;

        public readonly double[] q = new double[n], v = new double[n], a = new double[n];

        public void CopyFrom(State other)
        {
            (t, phi, rate, turn, Side) = (other.t, other.phi, other.rate, other.turn, other.Side);
            other.q.CopyTo(q, 0);
            other.v.CopyTo(v, 0);
            other.a.CopyTo(a, 0);
        }
    }
}
