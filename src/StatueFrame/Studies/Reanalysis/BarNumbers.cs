using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Studies;

/// <summary>The standoffs of a variant in one situation: the worst states, and the checks of the worst bar of every ring. SI units.</summary>
/// <remarks>For one thread. As <see cref="BarEnvelope"/> and the bar checks of a sheet, without their texts.</remarks>
internal sealed class BarNumbers
{
    private const int Node = Frame.NodeSize;

    private readonly ReanalysisBasis basis;
    private readonly VariantParts parts;
    private readonly LoadTable loads;
    private readonly UtilizationTally tally;
    private readonly double[] motions, ringStress, ringDeflection, limpStress, limpDeflection;
    private readonly double fraction;
    private readonly StrutMemo struts = new();
    private Material? designed;
    private BarDesign? design;

    public BarNumbers(ReanalysisBasis basis, VariantParts parts, LoadTable loads, UtilizationTally tally)
    {
        (this.basis, this.parts, this.loads, this.tally) = (basis, parts, loads, tally);
        motions = new double[Node * loads.Stride];
        (ringStress, ringDeflection) = (new double[loads.Stride], new double[loads.Stride]);
        (limpStress, limpDeflection) = (new double[loads.Stride], new double[loads.Stride]);
        fraction = basis.Criteria.BarStressFraction ?? SituationSheet.DefaultBarStressFraction;
    }

    public double GreatestStress { get; private set; }

    public double GreatestDeflection { get; private set; }

    /// <summary>One bar at its worst: the load case, and whether limp skin is worse than the rigid ring.</summary>
    private readonly record struct Worst(int Bar, int Case, bool IsLimp, double Stress, double OfYield);

    public void Find(double[] displacements)
    {
        (GreatestStress, GreatestDeflection) = (0, 0);
        bool isFirst = true;
        for (int r = 0; r < parts.Rings.Length; r++)
        {
            RingState ring = parts.Rings[r];
            GatherMotions(ring.Part, displacements);
            Worst worst = WorstOf(ring, r, ref isFirst);
            if (loads.Situation.LimitState == LimitState.Strength)
                AddChecks(ring, r, worst);
        }
        foreach (RingState ring in parts.Rings)
            AddLocal(ring);
    }

    /// <summary>The motion of the band's node relative to where the level would carry it, per direction and load case.</summary>
    private void GatherMotions(RingPart part, double[] displacements)
    {
        int full = basis.Model.Frame.FreedomCount, stride = loads.Stride;
        for (int i = 0; i < loads.Cases; i++)
        {
            ReadOnlySpan<double> level = displacements.AsSpan(i * full + part.Ring.Start * Node, Node), band = displacements.AsSpan(i * full + part.Ring.End * Node, Node);
            var levelTurn = new Vector3D(level[3], level[4], level[5]);
            Vector3D move = new Vector3D(band[0] - level[0], band[1] - level[1], band[2] - level[2]) - levelTurn.Cross(part.Link);
            (motions[i], motions[stride + i], motions[2 * stride + i]) = (move.X, move.Y, move.Z);
            for (int d = 3; d < Node; d++)
                motions[d * stride + i] = band[d] - level[d];
        }
    }

    private Worst WorstOf(RingState ring, int r, ref bool isFirst)
    {
        Worst worst = default;
        int stride = loads.Stride;
        double bandMass = BandMass(ring);
        for (int bar = 0; bar < ring.Standoffs.Length; bar++)
        {
            Standoff standoff = ring.Standoffs[bar];
            (double b, double t) = (standoff.Section.Width.Meters, standoff.Section.Thickness.Meters);
            BarSweep.OnRing(ring.Rows.AsSpan(bar * BarSweep.RowsLength, BarSweep.RowsLength), b, t, motions, ringStress, ringDeflection);
            BarSweep.Alone(ring.Alone[bar], b, t, loads.OnStrips[r].AsSpan(bar * 3 * stride, 3 * stride), StripWeight(ring, bar, bandMass), limpStress, limpDeflection);
            int at = 0;
            double stress = Worse(ringStress[0], limpStress[0]), deflection = Worse(ringDeflection[0], limpDeflection[0]);
            for (int i = 1; i < loads.Cases; i++)
            {
                double own = Worse(ringStress[i], limpStress[i]), moved = Worse(ringDeflection[i], limpDeflection[i]);
                if (Extremes.Exceeds(own, stress))
                    (at, stress) = (i, own);
                if (Extremes.Exceeds(moved, deflection))
                    deflection = moved;
            }
            if (isFirst || Extremes.Exceeds(stress, GreatestStress))
                GreatestStress = stress;
            if (isFirst || Extremes.Exceeds(deflection, GreatestDeflection))
                GreatestDeflection = deflection;
            isFirst = false;
            double ofYield = stress / standoff.Material.YieldStrength.Pascals;
            if (bar == 0 || Extremes.Exceeds(ofYield, worst.OfYield))
                worst = new Worst(bar, at, Extremes.Exceeds(limpStress[at], ringStress[at]), stress, ofYield);
        }
        return worst;

        static double Worse(double onRing, double limp) => limp > onRing ? limp : onRing;
    }

    private double BandMass(RingState ring)
    {
        BandPart band = basis.Bands[ring.Part.Band];
        return band.Mass(parts.Skins[Array.IndexOf(basis.Model.Bodies, band.Body)]);
    }

    private Vector3D StripWeight(RingState ring, int bar, double bandMass) =>
        loads.WeightFactor * SelfWeight.Gravity * bandMass * ring.Part.MassShare[bar] * ring.Part.Down[bar];

    /// <summary>The end forces that go with the worst stress of a ring.</summary>
    private void ForcesOf(RingState ring, int r, in Worst worst, Span<double> forces)
    {
        int stride = loads.Stride, bar = worst.Bar;
        if (worst.IsLimp)
        {
            ReadOnlySpan<double> strip = loads.OnStrips[r].AsSpan(bar * 3 * stride, 3 * stride);
            Vector3D weight = StripWeight(ring, bar, BandMass(ring));
            Span<double> tip = stackalloc double[Node];
            ring.Stiffness[bar].Cantilever(
                weight + new Vector3D(strip[worst.Case], strip[stride + worst.Case], strip[2 * stride + worst.Case]), forces, tip);
            return;
        }
        Span<double> u = stackalloc double[Node], motion = stackalloc double[Node];
        for (int d = 0; d < Node; d++)
            u[d] = motions[d * stride + worst.Case];
        Frame.Multiply(ring.Part.Motions.AsSpan(bar * Node * Node, Node * Node), u, motion);
        ring.Stiffness[bar].Forces(motion, forces);
    }

    private void AddChecks(RingState ring, int r, in Worst worst)
    {
        Standoff standoff = ring.Standoffs[worst.Bar];
        Span<double> f = stackalloc double[FrameElement.Size];
        ForcesOf(ring, r, worst, f);
        (double b, double t, double f_y) = (standoff.Section.Width.Meters, standoff.Section.Thickness.Meters, standoff.Material.YieldStrength.Pascals);
        (double stress, double allowable) = BarChecks.Bending(
            null, f[6], (Math.Abs(f[5]), Math.Abs(f[4])), (Math.Abs(f[11]), Math.Abs(f[10])), b, t, f_y, fraction);
        tally.Add("bars.bending", stress, allowable);
        BarDesign rules = DesignFor(standoff.Material);
        LoadedBar loaded = struts.Loaded(standoff, ring.Stiffness[worst.Bar].Length, worst.IsLimp, f);
        struts.Take(loaded);
        double tower = struts.Equivalent(new FlatForces(f[6], f[5], f[4], f[9], f[7], f[8])), skin = struts.Equivalent(new FlatForces(f[6], f[11], f[10], f[9], f[7], f[8]));
        bool covered = rules.Uncovered is null;
        tally.Add("bars.shear", covered ? Math.Max(tower, skin) : null, BarSectionChecks.Allowed(null, f_y, rules, Source.CommonPractice));
        (StrutAxis weak, StrutAxis strong) = struts.Axes(f);
        double N = BarBucklingChecks.Compression(loaded);
        bool stands = double.IsFinite(weak.EffectiveLength) && double.IsFinite(strong.EffectiveLength);
        tally.Add("bars.strut", covered && stands ? N : null, stands ? BarBucklingChecks.Resistance(null, weak, strong, loaded.E, f_y, rules) : null);
        if (!stands)
        {
            tally.Add("bars.second-order", null);
            return;
        }
        (double demand, double capacity) = BarBucklingChecks.SecondOrderStress(null, loaded, N, weak, strong, rules);
        tally.Add("bars.second-order", demand, capacity);
    }

    private BarDesign DesignFor(Material material)
    {
        if (!ReferenceEquals(material, designed))
            (designed, design) = (material, BarDesign.For(material, basis.Criteria.BarCode) with { AllowableFraction = fraction });
        return design!;
    }

    /// <summary>Each bar of a ring of the trunk alone under the greatest local pressure on its strip; the worst of the ring.</summary>
    private void AddLocal(RingState ring)
    {
        if (loads.LocalPressures.Length == 0)
            return;
        (BodyModel body, _) = basis.Model.BandAt(ring.Part.Band);
        if (body != basis.Model.Bodies[0])
        {
            tally.Add("bars.local", null);
            return;
        }
        Span<double> forces = stackalloc double[FrameElement.Size], tip = stackalloc double[Node];
        double pressure = loads.LocalPressures[ring.Part.Ring.Band], greatest = 0;
        for (int bar = 0; bar < ring.Standoffs.Length; bar++)
        {
            if (!ring.Stiffness[bar].Cantilever(pressure * ring.Part.StripArea[bar] * ring.Part.Outward[bar], forces, tip))
            {
                tally.Add("bars.local", null);
                return;
            }
            double ofYield = ring.Stiffness[bar].NormalStress(forces) / ring.Standoffs[bar].Material.YieldStrength.Pascals;
            if (bar == 0 || Extremes.Exceeds(ofYield, greatest))
                greatest = ofYield;
        }
        tally.Add("bars.local", greatest, fraction);
    }
}
