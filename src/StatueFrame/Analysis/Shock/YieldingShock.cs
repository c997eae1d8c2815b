using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>The response in time with bars that yield, by direct integration with the mean acceleration.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class YieldingShock(
    StatueModel model, ShockLoads loads, ShockProbes probes, YieldingBars bars, (double Mass, double Stiffness) damping, double step)
{
    private readonly double[] u = new double[model.Frame.FreedomCount], v = new double[model.Frame.FreedomCount];
    private readonly double[] force = new double[model.Frame.FreedomCount], values = new double[probes.Count];
    private readonly double[] bandValues = new double[Frame.NodeSize * probes.BandCount], onBase = new double[Frame.NodeSize];
    private readonly DirectIntegration integration = new(model.Frame, damping.Mass, damping.Stiffness, step, bars);
    private double start;

    public void Run(int samples, ShockRecorder recorder)
    {
        Resultant resultant = Load(0);
        integration.Start(loads.HasPull ? model.Statics.Solve(loads.Pull) : [], StartVelocity(), force);
        start = integration.Kinetic + integration.Strain + bars.PlasticWork;
        Look(0, resultant, recorder);
        for (int i = 1; i < samples; i++)
        {
            resultant = Load(i);
            integration.Step(force);
            Look(i, resultant, recorder);
        }
    }

    private double[] StartVelocity()
    {
        if (!loads.HasImpulse)
            return [];
        const double TraceFrequency = 2 * Math.PI * 1e5;
        var reduced = new double[model.Frame.EquationCount];
        model.Frame.Reduce(loads.Impulse, reduced);
        Pivots.FactorPositive(model.Frame, Mechanics.Sparse.SymmetricMatrix.Combine(1, model.Frame.Mass, 1 / (TraceFrequency * TraceFrequency), model.Frame.Stiffness)).Solve(reduced);
        model.Frame.Expand(reduced, v);
        return v;
    }

    /// <summary>The forces at a step: the mean over half a step on both sides, so that no impulse is lost.</summary>
    private Resultant Load(int sample)
    {
        force.AsSpan().Clear();
        Resultant sum = default;
        double from = Math.Max(0, (sample - 0.5) * step), to = (sample + 0.5) * step;
        foreach (ShockLoads.Pattern pattern in loads.Patterns)
        {
            (double before, double after) = pattern.Line(from, to);
            double size = 0.5 * (before + after);
            if (size == 0)
                continue;
            DenseVector.AddScaled(force, size, pattern.Nodal);
            sum += new Resultant(size * pattern.Resultant.Force, size * pattern.Resultant.Moment);
        }
        return sum;
    }

    private void Look(int sample, Resultant acting, ShockRecorder recorder)
    {
        integration.CopyTo(u);
        probes.Look(u, values);
        integration.CopyTo(v, Motion.Velocity);
        probes.LookAtBands(v, bandValues);
        integration.CopyTo(u, Motion.Acceleration);
        DenseVector.AddScaled(u, damping.Mass, v);
        (onBase[0], onBase[1], onBase[2]) = (acting.Force.X, acting.Force.Y, acting.Force.Z);
        (onBase[3], onBase[4], onBase[5]) = (acting.Moment.X, acting.Moment.Y, acting.Moment.Z);
        for (int d = 0; d < onBase.Length; d++)
            onBase[d] -= DenseVector.Dot(model.RigidInertia[d], u);
        bars.AddTrueForce(values.AsSpan(probes.ForceStart, 3));
        bars.Look(sample);
        double barStrain = probes.BarStrain(values) + bars.StrainCorrection;
        recorder.Look(sample, values, onBase, new StepEnergy(
            start + integration.Work, integration.Kinetic, DenseVector.Dot(bandValues, bandValues), integration.Strain, barStrain, integration.Damped, bars.PlasticWork));
    }
}
