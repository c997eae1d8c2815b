using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>
/// The elastic response in time: modes stepped exactly, and what the other modes would add as if it followed statically.
/// Whatever is looked at is a linear function of the modes' coordinates and of the pulses, so no full vector is formed.
/// </summary>
/// <remarks>For one thread.</remarks>
internal sealed class ModalShock
{
    private const int Block = 128;

    private readonly StatueModel model;
    private readonly ShockLoads loads;
    private readonly ModeSet modes;
    private readonly int count;
    private readonly double step;
    private readonly ShockProbes probes;
    private readonly ModalStepper stepper;
    private readonly double[] omega, damping;

    /// <summary>Modal forces of the patterns, a row a pattern.</summary>
    private readonly double[][] modalForces;

    private readonly PackedRows looks, byPulse, bands, baseByDisplacement, baseByVelocity, baseByPulse;

    /// <summary>2·elastic energy that the static rest of two patterns has together, and of the bars' share.</summary>
    private readonly double[] restStrain;

    /// <summary>How each fitting moves in each mode.</summary>
    private readonly Vector3D[] fittingShapes;

    /// <summary>What the pull's static rest says, and puts on the base, until it is let go.</summary>
    private readonly double[] restOfPull, baseOfPull = new double[Frame.NodeSize];

    public ModalShock(StatueModel model, ShockLoads loads, ShockProbes probes, ModeSet modes, int count, double[] damping, double step)
    {
        (this.model, this.loads, this.probes, this.modes, this.damping, this.step) = (model, loads, probes, modes, damping, step);
        this.count = count;
        int n = count, patterns = loads.Patterns.Count;
        omega = [.. Enumerable.Range(0, n).Select(modes.CircularFrequency)];
        stepper = new ModalStepper(omega, damping, step);
        modalForces = new double[patterns][];
        looks = new PackedRows(probes.Count, n);
        bands = new PackedRows(Frame.NodeSize * probes.BandCount, n);
        byPulse = new PackedRows(probes.Count, patterns);
        (baseByDisplacement, baseByVelocity, baseByPulse) = (new PackedRows(Frame.NodeSize, n), new PackedRows(Frame.NodeSize, n), new PackedRows(Frame.NodeSize, patterns));
        restStrain = new double[patterns * patterns];
        restOfPull = new double[looks.Stride];
        ValueList<Fitting> fittings = model.Statue.Fittings;
        Fittings = new (double, double)[fittings.Count];
        fittingShapes = [.. fittings.SelectMany(fitting =>
        {
            Place place = model.PlaceOf(fitting.On);
            Vector3D at = fitting.At?.Meters ?? place.Center;
            return Enumerable.Range(0, count).Select(m => model.Motion(modes.Shape(m), place, at).Displacement);
        })];
        double[] participation = PrepareModes();
        PreparePatterns(participation);
    }

    /// <summary>The greatest accelerations of each fitting, sideways and up and down, m/s², with what pushes a mode and without, as it may be the ground.</summary>
    public (double Across, double Up)[] Fittings { get; }

    /// <summary>Looks at the accelerations of fittings in a step.</summary>
    private void LookAtFittings(ReadOnlySpan<double> q, ReadOnlySpan<double> dq, ReadOnlySpan<double> pushed)
    {
        for (int f = 0; f < Fittings.Length; f++)
        {
            Vector3D own = Vector3D.Zero, free = Vector3D.Zero;
            for (int m = 0; m < count; m++)
            {
                double a = -2 * damping[m] * omega[m] * dq[m] - omega[m] * omega[m] * q[m];
                free += a * fittingShapes[f * count + m];
                own += (a + (pushed.IsEmpty ? 0 : pushed[m])) * fittingShapes[f * count + m];
            }
            (double across, double up) = Fittings[f];
            Fittings[f] = (
                Math.Max(across, Math.Max(double.Hypot(own.X, own.Y), double.Hypot(free.X, free.Y))), Math.Max(up, Math.Max(Math.Abs(own.Z), Math.Abs(free.Z))));
        }
    }

    public void Run(int samples, ShockRecorder recorder, BarPeaks bars)
    {
        int n = stepper.Stride, patterns = loads.Patterns.Count;
        double[] u = new double[(Block + 1) * n], v = new double[(Block + 1) * n], before = new double[Block * n], after = new double[Block * n];
        double[] at = new double[looks.Stride], bandAt = new double[bands.Stride], onBase = new double[baseByPulse.Stride], sizes = new double[Math.Max(patterns, 1)];
        double input = Start(u, v), damped = 0;
        Look(0);
        LookAtFittings(u, v, default);
        for (int first = 0; first < samples - 1; first += Block)
        {
            int steps = Math.Min(Block, samples - 1 - first);
            bool driven = first * step < loads.End && Drive(first, steps, before, after);
            stepper.Run(steps, driven ? before.AsSpan(0, steps * n) : default, driven ? after.AsSpan(0, steps * n) : default, u, v);
            for (int i = 1; i <= steps; i++)
            {
                Account(i, driven);
                Look(first + i, i);
                LookAtFittings(u.AsSpan(i * n, n), v.AsSpan(i * n, n), driven ? after.AsSpan((i - 1) * n, n) : default);
            }
            u.AsSpan(steps * n, n).CopyTo(u);
            v.AsSpan(steps * n, n).CopyTo(v);
        }

        // The work of the pulses on the modes, exact for the lines they are stepped with; the loss by a rule of sixth order.
        void Account(int i, bool driven)
        {
            for (int m = 0; m < count; m++)
            {
                int k = (i - 1) * n + m;
                double w2 = omega[m] * omega[m], drag = 2 * damping[m] * omega[m], h = step;
                double u0 = u[k], u1 = u[k + n], v0 = v[k], v1 = v[k + n], p0 = 0, p1 = 0;
                if (driven)
                {
                    (p0, p1) = (before[k], after[k]);
                    double area = (0.5 * h * (p0 + p1) - (v1 - v0) - drag * (u1 - u0)) / w2;
                    input += p1 * u1 - p0 * u0 - (p1 - p0) / h * area;
                }
                if (drag == 0)
                    continue;
                double a0 = p0 - drag * v0 - w2 * u0, a1 = p1 - drag * v1 - w2 * u1;
                double j0 = (p1 - p0) / h - drag * a0 - w2 * v0, j1 = (p1 - p0) / h - drag * a1 - w2 * v1;
                damped += drag * (0.5 * h * (v0 * v0 + v1 * v1) + h * h / 5 * (v0 * a0 - v1 * a1) + h * h * h / 60 * (a0 * a0 + v0 * j0 + a1 * a1 + v1 * j1));
            }
        }

        void Look(int sample, int row = 0)
        {
            ReadOnlySpan<double> q = u.AsSpan(row * n, n), dq = v.AsSpan(row * n, n);
            at.AsSpan().Clear();
            bandAt.AsSpan().Clear();
            onBase.AsSpan().Clear();
            looks.AddProduct(q, at);
            bands.AddProduct(dq, bandAt);
            baseByDisplacement.AddProduct(q, onBase);
            baseByVelocity.AddProduct(dq, onBase);
            if (sample == 0)
            {
                DenseVector.AddScaled(at, 1, restOfPull);
                DenseVector.AddScaled(onBase.AsSpan(0, Frame.NodeSize), 1, baseOfPull);
            }
            double rest = 0, time = sample * step;
            if (time <= loads.End)
            {
                for (int p = 0; p < patterns; p++)
                    sizes[p] = loads.Patterns[p].At(time);
                byPulse.AddProduct(sizes, at);
                baseByPulse.AddProduct(sizes, onBase);
                for (int i = 0; i < patterns; i++)
                {
                    for (int j = 0; j < patterns; j++)
                        rest += 0.5 * restStrain[i * patterns + j] * sizes[i] * sizes[j];
                }
            }
            double kinetic = 0.5 * DenseVector.Dot(dq, dq), strain = rest;
            for (int m = 0; m < count; m++)
                strain += 0.5 * omega[m] * omega[m] * q[m] * q[m];
            var energy = new StepEnergy(input + rest, kinetic, DenseVector.Dot(bandAt, bandAt), strain, probes.BarStrain(at), damped, 0);
            recorder.Look(sample, at, onBase, energy);
            bars.Look(at, sample);
        }
    }

    /// <summary>The state at the start and the energy in it.</summary>
    private double Start(double[] u, double[] v)
    {
        double energy = 0;
        for (int m = 0; m < count; m++)
        {
            v[m] = loads.HasImpulse ? modes.ModalForce(m, loads.Impulse) : 0;
            u[m] = loads.HasPull ? modes.ModalForce(m, loads.Pull) / (omega[m] * omega[m]) : 0;
            energy += 0.5 * (v[m] * v[m] + omega[m] * omega[m] * u[m] * u[m]);
        }
        return energy;
    }

    /// <summary>The modal forces of a block of steps; false when nothing acts in it.</summary>
    private bool Drive(int first, int steps, double[] before, double[] after)
    {
        int n = stepper.Stride;
        bool any = false;
        before.AsSpan().Clear();
        after.AsSpan().Clear();
        for (int p = 0; p < modalForces.Length; p++)
        {
            for (int i = 0; i < steps; i++)
            {
                (double start, double end) = loads.Patterns[p].Line((first + i) * step, (first + i + 1) * step);
                if (start == 0 && end == 0)
                    continue;
                any = true;
                DenseVector.AddScaled(before.AsSpan(i * n, n), start, modalForces[p]);
                DenseVector.AddScaled(after.AsSpan(i * n, n), end, modalForces[p]);
            }
        }
        return any;
    }

    /// <summary>
    /// Fills in what each mode says. The base carries what springs and dampers pass on: Γ(ω²q + 2ζω q̇), with the
    /// participation Γ in each motion of the base, which is given back, six a mode.
    /// </summary>
    private double[] PrepareModes()
    {
        var participation = new double[Frame.NodeSize * count];
        double[] column = new double[probes.Count], band = new double[Frame.NodeSize * probes.BandCount];
        for (int m = 0; m < count; m++)
        {
            ReadOnlySpan<double> shape = modes.Shape(m);
            probes.Look(shape, column);
            looks.SetColumn(m, column);
            probes.LookAtBands(shape, band);
            bands.SetColumn(m, band);
            Span<double> gamma = participation.AsSpan(Frame.NodeSize * m, Frame.NodeSize);
            for (int d = 0; d < Frame.NodeSize; d++)
                gamma[d] = DenseVector.Dot(shape, model.RigidInertia[d]);
            baseByDisplacement.SetColumn(m, gamma, omega[m] * omega[m]);
            baseByVelocity.SetColumn(m, gamma, 2 * damping[m] * omega[m]);
        }
        return participation;
    }

    /// <summary>What each pattern says beyond the modes: the rest of it, f − Σ Mφ(φᵀf), resisted statically.</summary>
    private void PreparePatterns(double[] participation)
    {
        int patterns = loads.Patterns.Count;
        if (loads.HasPull)
        {
            probes.Look(Rest(loads.Pull), restOfPull);
            OnBase(loads.Pull, loads.PullResultant, participation, baseOfPull);
        }
        var rests = new double[patterns][];
        var column = new double[probes.Count];
        Span<double> onBase = stackalloc double[Frame.NodeSize];
        for (int p = 0; p < patterns; p++)
        {
            ShockLoads.Pattern pattern = loads.Patterns[p];
            modalForces[p] = new double[stepper.Stride];
            for (int m = 0; m < count; m++)
                modalForces[p][m] = modes.ModalForce(m, pattern.Nodal);
            rests[p] = Rest(pattern.Nodal);
            OnBase(pattern.Nodal, pattern.Resultant, participation, onBase);
            probes.Look(rests[p], column);
            byPulse.SetColumn(p, column);
            baseByPulse.SetColumn(p, onBase);
        }
        for (int i = 0; i < patterns; i++)
        {
            for (int j = 0; j < patterns; j++)
                restStrain[i * patterns + j] = 0.5 * (DenseVector.Dot(rests[i], loads.Patterns[j].Nodal) + DenseVector.Dot(rests[j], loads.Patterns[i].Nodal));
        }
    }

    /// <summary>What forces put on the base without the part of the modes.</summary>
    private void OnBase(ReadOnlySpan<double> nodal, Resultant whole, double[] participation, Span<double> onBase)
    {
        (onBase[0], onBase[1], onBase[2]) = (whole.Force.X, whole.Force.Y, whole.Force.Z);
        (onBase[3], onBase[4], onBase[5]) = (whole.Moment.X, whole.Moment.Y, whole.Moment.Z);
        for (int m = 0; m < count; m++)
            DenseVector.AddScaled(onBase, -modes.ModalForce(m, nodal), participation.AsSpan(Frame.NodeSize * m, Frame.NodeSize));
    }

    /// <summary>The static displacements under nodal forces without the part of the modes.</summary>
    private double[] Rest(double[] nodal)
    {
        double[] rest = model.Statics.Solve(nodal);
        for (int m = 0; m < count; m++)
            DenseVector.AddScaled(rest, -modes.ModalForce(m, nodal) / (omega[m] * omega[m]), modes.Shape(m));
        return rest;
    }
}
