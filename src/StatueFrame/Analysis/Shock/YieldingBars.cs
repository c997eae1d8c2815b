using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>
/// The standoffs as a part that yields: each bar with its own hinges. Hardening is an elastic bar of the share α beside
/// an elastic–perfectly plastic one of the share 1 − α.
/// </summary>
/// <remarks>For one thread. The state at rest, under weight, counts as elastic.</remarks>
internal sealed class YieldingBars : IYieldingPart
{
    private const int Motions = Frame.NodeSize, End = FrameElement.Size;

    private readonly RingElement[] rings;
    private readonly ShockProbes probes;
    private readonly HingedBar[] bars;
    private readonly double[] values, atRest, reliefs, movement, movementAt, stress, stressAt, forcesAt;
    private readonly double share;

    public YieldingBars(StatueModel model, ShockProbes probes, BarYielding yielding, double[] atRest)
    {
        (this.probes, this.atRest) = (probes, atRest);
        share = 1 - yielding.Hardening;
        rings = [.. model.Rings.Select(r => r.Ring)];
        bars = [.. rings.SelectMany(r => r.Bars).Select(b => new HingedBar(b, yielding))];
        values = new double[probes.Count];
        reliefs = new double[Motions];
        (movement, movementAt, stress, stressAt) = (new double[bars.Length], new double[bars.Length], new double[bars.Length], new double[bars.Length]);
        forcesAt = new double[bars.Length * End];
    }

    public double StrainCorrection { get; private set; }

    public double PlasticWork { get; private set; }

    public void AddRelief(ReadOnlySpan<double> displacements, Span<double> relief)
    {
        probes.Look(displacements, values);
        int index = 0;
        for (int ring = 0; ring < rings.Length; ring++)
        {
            reliefs.AsSpan().Clear();
            ReadOnlySpan<double> motion = values.AsSpan(ring * Motions, Motions), rest = atRest.AsSpan(ring * Motions, Motions);
            bool any = false;
            for (int i = 0; i < rings[ring].Bars.Length; i++)
                any |= bars[index++].AddRelief(motion, rest, share, reliefs);
            if (any)
                Spread(ring, reliefs, relief);
        }
    }

    public void Accept(ReadOnlySpan<double> displacements)
    {
        probes.Look(displacements, values);
        StrainCorrection = PlasticWork = 0;
        int index = 0;
        for (int ring = 0; ring < rings.Length; ring++)
        {
            ReadOnlySpan<double> motion = values.AsSpan(ring * Motions, Motions), rest = atRest.AsSpan(ring * Motions, Motions);
            for (int i = 0; i < rings[ring].Bars.Length; i++)
            {
                HingedBar bar = bars[index++];
                bar.Accept(motion, rest);
                StrainCorrection += share * bar.StrainCorrection;
                PlasticWork += share * bar.PlasticWork;
            }
        }
    }

    /// <summary>Looks at the accepted state.</summary>
    public void Look(int sample)
    {
        Span<double> forces = stackalloc double[End];
        for (int i = 0; i < bars.Length; i++)
        {
            double moved = bars[i].Movement;
            if (moved > movement[i])
                (movement[i], movementAt[i]) = (moved, sample);
            double size = bars[i].Stress(share);
            if (size <= stress[i])
                continue;
            bars[i].Forces(share, forces);
            (stress[i], stressAt[i]) = (size, sample);
            forces.CopyTo(forcesAt.AsSpan(i * End, End));
        }
    }

    /// <summary>Takes the relief of the accepted state out of the elastic force of all standoffs on the tower, along x, y, z.</summary>
    public void AddTrueForce(Span<double> total)
    {
        foreach (HingedBar bar in bars)
        {
            Vector3D relief = share * bar.ReliefForce;
            (total[0], total[1], total[2]) = (total[0] - relief.X, total[1] - relief.Y, total[2] - relief.Z);
        }
    }

    public ShockBar[] Results(double step)
    {
        var all = new ShockBar[bars.Length];
        int index = 0;
        foreach (RingElement ring in rings)
        {
            for (int i = 0; i < ring.Bars.Length; i++, index++)
                all[index] = BarPeaks.Result(ring, i, stress[index], stressAt[index] * step, forcesAt.AsSpan(index * End, End), movement[index], movementAt[index] * step, bars[index].PlasticWork > 0);
        }
        return all;
    }

    /// <summary>A force against a ring's relative motion as forces on its two nodes.</summary>
    private void Spread(int ring, ReadOnlySpan<double> f, Span<double> nodal)
    {
        Vector3D force = new(f[0], f[1], f[2]), moment = new(f[3], f[4], f[5]), atLevel = moment + probes.Arm(ring).Cross(force);
        Span<double> band = nodal.Slice(rings[ring].End * Motions, Motions), level = nodal.Slice(rings[ring].Start * Motions, Motions);
        for (int k = 0; k < Motions; k++)
            band[k] += f[k];
        (level[0], level[1], level[2]) = (level[0] - force.X, level[1] - force.Y, level[2] - force.Z);
        (level[3], level[4], level[5]) = (level[3] - atLevel.X, level[4] - atLevel.Y, level[5] - atLevel.Z);
    }
}
