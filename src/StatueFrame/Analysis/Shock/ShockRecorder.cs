using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>Keeps the peaks of a response in time while it is stepped.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class ShockRecorder
{
    private readonly StatueModel model;
    private readonly ShockProbes probes;
    private readonly double step;
    private readonly Greatest[] sway, travel;
    private readonly List<double> reactions = [];
    private readonly double[] total = new double[Frame.NodeSize];
    private Greatest force, input, skinMotion, towerMotion, barStrain, towerStrain;
    private double error;
    private (double Damped, double Plastic) lost;

    public ShockRecorder(StatueModel model, ShockProbes probes, double step, int samples, Resultant atRest, bool keeps)
    {
        (this.model, this.probes, this.step) = (model, probes, step);
        (sway, travel) = (new Greatest[probes.PointCount], new Greatest[probes.PointCount]);
        Tower = new TowerPeaks(model);
        AtRest = [atRest.Force.X, atRest.Force.Y, atRest.Force.Z, atRest.Moment.X, atRest.Moment.Y, atRest.Moment.Z];
        History = keeps ? new ShockHistory([.. model.Statue.Points.Select(p => p.Name)], samples) : null;
    }

    private struct Greatest
    {
        public double Value;
        public int Sample;

        public void Look(double value, int sample)
        {
            if (value > Value)
                (Value, Sample) = (value, sample);
        }
    }

    public ShockHistory? History { get; }

    public double[] AtRest { get; }

    /// <summary>The greatest forces in tower and limbs, from rest.</summary>
    public TowerPeaks Tower { get; }

    /// <summary>Forces and moments on the base in every step, weight included, six a step.</summary>
    public double[] Reactions => [.. reactions];

    /// <summary>Looks at a step.</summary>
    /// <param name="sample">Its number.</param>
    /// <param name="values">What <see cref="ShockProbes.Look"/> says.</param>
    /// <param name="onBase">Forces and moments on the base without those at rest.</param>
    /// <param name="energy">The energies, J; strain of bars by itself.</param>
    public void Look(int sample, ReadOnlySpan<double> values, ReadOnlySpan<double> onBase, in StepEnergy energy)
    {
        for (int i = 0; i < probes.PointCount; i++)
        {
            int at = probes.PointStart + 3 * i;
            double level = values[at] * values[at] + values[at + 1] * values[at + 1];
            sway[i].Look(level, sample);
            travel[i].Look(level + values[at + 2] * values[at + 2], sample);
        }
        Tower.Look(values.Slice(probes.SegmentStart), sample);
        int f = probes.ForceStart;
        force.Look(values[f] * values[f] + values[f + 1] * values[f + 1], sample);
        for (int i = 0; i < total.Length; i++)
            reactions.Add(total[i] = onBase[i] + AtRest[i]);
        input.Look(energy.Input, sample);
        skinMotion.Look(energy.SkinKinetic, sample);
        towerMotion.Look(energy.Kinetic - energy.SkinKinetic, sample);
        barStrain.Look(energy.BarStrain, sample);
        towerStrain.Look(energy.Strain - energy.BarStrain, sample);
        error = Math.Max(error, Math.Abs(energy.Input - energy.Kinetic - energy.Strain - energy.Damped - energy.Plastic));
        lost = (energy.Damped, energy.Plastic);
        History?.Put(sample, sample * step, values.Slice(probes.PointStart, 3 * probes.PointCount), total, (energy.Input, energy.Kinetic, energy.Strain, energy.Damped + energy.Plastic));
    }

    public ValueList<ShockMovement> Points() => model.Statue.Points.Select((p, i) => new ShockMovement(
        p.Name, Root(sway[i], Length.FromMeters), Root(travel[i], Length.FromMeters))).ToValueList();

    /// <summary>Greatest horizontal force of all standoffs together on the tower.</summary>
    public PeakInTime<Force> BarForce() => Root(force, Force.FromNewtons);

    public ShockEnergy Energy() => new()
    {
        Input = Of(input),
        SkinMotion = Of(skinMotion),
        TowerMotion = Of(towerMotion),
        BarStrain = Of(barStrain),
        TowerStrain = Of(towerStrain),
        Damped = UnitsNet.Energy.FromJoules(lost.Damped),
        Plastic = UnitsNet.Energy.FromJoules(lost.Plastic),
        BalanceError = input.Value > 0 ? error / input.Value : 0,
    };

    private PeakInTime<Energy> Of(Greatest g) => new(UnitsNet.Energy.FromJoules(g.Value), Duration.FromSeconds(g.Sample * step));

    private PeakInTime<T> Root<T>(Greatest g, Func<QuantityValue, T> make) => new(make(Math.Sqrt(g.Value)), Duration.FromSeconds(g.Sample * step));
}
