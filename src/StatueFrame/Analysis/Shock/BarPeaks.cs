using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// The greatest stress of every elastic standoff on its rigid ring, the least and greatest of each of its end forces, and the
/// greatest movement of its skin end, over all steps. Four bars of a ring go through the arithmetic together.
/// </summary>
/// <remarks>For one thread.</remarks>
internal sealed class BarPeaks
{
    private const int Lanes = 4, Motions = Frame.NodeSize, Functions = 11, Forces = 8;

    private readonly StatueModel model;
    private readonly LoadCase still;
    private readonly RingElement[] rings;
    private readonly int[] firstGroup;

    /// <summary>
    /// For every four bars of a ring: eleven functions of the ring's motion, four of each coefficient. Five stresses, N/A
    /// and the bending at both ends about both axes; the shears along thickness and width, and torsion; three movements of the
    /// skin end.
    /// </summary>
    private readonly double[] coefficients, rest, stress, movement, stressAt, movementAt, motionAt, least, greatest;

    /// <summary>The six motions of a ring, each ready to multiply four bars.</summary>
    private readonly struct RingMotion(ReadOnlySpan<double> motion)
    {
        private readonly Vector256<double> x0 = Vector256.Create(motion[0]), x1 = Vector256.Create(motion[1]), x2 = Vector256.Create(motion[2]);
        private readonly Vector256<double> x3 = Vector256.Create(motion[3]), x4 = Vector256.Create(motion[4]), x5 = Vector256.Create(motion[5]);

        public Vector256<double> Sum(ReadOnlySpan<Vector256<double>> k) => k[0] * x0 + k[1] * x1 + k[2] * x2 + (k[3] * x3 + k[4] * x4 + k[5] * x5);
    }

    /// <param name="model">The model.</param>
    /// <param name="still">The statue at rest, with its heat.</param>
    public BarPeaks(StatueModel model, LoadCase still)
    {
        (this.model, this.still) = (model, still);
        rings = [.. model.Rings.Select(r => r.Ring)];
        firstGroup = new int[rings.Length + 1];
        for (int i = 0; i < rings.Length; i++)
            firstGroup[i + 1] = firstGroup[i] + (rings[i].Bars.Length + Lanes - 1) / Lanes;
        int groups = firstGroup[^1];
        coefficients = new double[groups * Functions * Motions * Lanes];
        rest = new double[groups * Functions * Lanes];
        (stress, movement, stressAt, movementAt) = (new double[groups * Lanes], new double[groups * Lanes], new double[groups * Lanes], new double[groups * Lanes]);
        motionAt = new double[groups * Lanes * Motions];
        (least, greatest) = (new double[groups * Forces * Lanes], new double[groups * Forces * Lanes]);
        for (int i = 0; i < rings.Length; i++)
            Fill(i);
    }

    /// <summary>Looks at one step.</summary>
    /// <param name="values">What <see cref="ShockProbes.Look"/> says of the movement from rest.</param>
    /// <param name="sample">The number of the step.</param>
    public void Look(ReadOnlySpan<double> values, int sample)
    {
        ReadOnlySpan<Vector256<double>> c = MemoryMarshal.Cast<double, Vector256<double>>(coefficients);
        ReadOnlySpan<Vector256<double>> r0 = MemoryMarshal.Cast<double, Vector256<double>>(rest);
        Span<Vector256<double>> s = MemoryMarshal.Cast<double, Vector256<double>>(stress.AsSpan()), m = MemoryMarshal.Cast<double, Vector256<double>>(movement.AsSpan());
        Span<Vector256<double>> sAt = MemoryMarshal.Cast<double, Vector256<double>>(stressAt.AsSpan()), mAt = MemoryMarshal.Cast<double, Vector256<double>>(movementAt.AsSpan());
        Span<Vector256<double>> low = MemoryMarshal.Cast<double, Vector256<double>>(least.AsSpan()), high = MemoryMarshal.Cast<double, Vector256<double>>(greatest.AsSpan());
        var now = Vector256.Create((double)sample);
        for (int ring = 0; ring < rings.Length; ring++)
        {
            ReadOnlySpan<double> motion = values.Slice(ring * Motions, Motions);
            var by = new RingMotion(motion);
            for (int g = firstGroup[ring]; g < firstGroup[ring + 1]; g++)
            {
                ReadOnlySpan<Vector256<double>> k = c.Slice(g * Functions * Motions, Functions * Motions), o = r0.Slice(g * Functions, Functions);
                Span<Vector256<double>> below = low.Slice(g * Forces, Forces), above = high.Slice(g * Forces, Forces);
                Vector256<double> axial = Vector256.Abs(Force(by, k, below, above, 0) + o[0]);
                Vector256<double> tower = Vector256.Abs(Force(by, k, below, above, 1) + o[1]) + Vector256.Abs(Force(by, k, below, above, 2) + o[2]);
                Vector256<double> skin = Vector256.Abs(Force(by, k, below, above, 3) + o[3]) + Vector256.Abs(Force(by, k, below, above, 4) + o[4]);
                for (int force = 5; force < Forces; force++)
                    Force(by, k, below, above, force);
                Vector256<double> x = by.Sum(k[(Forces * Motions)..]), y = by.Sum(k[((Forces + 1) * Motions)..]), z = by.Sum(k[((Forces + 2) * Motions)..]);
                Vector256<double> size = axial + Vector256.Max(tower, skin), moved = x * x + y * y + z * z;
                Vector256<double> more = Vector256.GreaterThan(size, s[g]), farther = Vector256.GreaterThan(moved, m[g]);
                m[g] = Vector256.Max(m[g], moved);
                mAt[g] = Vector256.ConditionalSelect(farther, now, mAt[g]);
                if (more.AsInt64() == Vector256<long>.Zero)
                    continue;
                s[g] = Vector256.Max(s[g], size);
                sAt[g] = Vector256.ConditionalSelect(more, now, sAt[g]);
                for (int lane = 0; lane < Lanes; lane++)
                {
                    if (stressAt[g * Lanes + lane] == sample)
                        motion.CopyTo(motionAt.AsSpan((g * Lanes + lane) * Motions, Motions));
                }
            }
        }
    }

    private static Vector256<double> Force(in RingMotion by, ReadOnlySpan<Vector256<double>> k, Span<Vector256<double>> below, Span<Vector256<double>> above, int force)
    {
        Vector256<double> value = by.Sum(k[(force * Motions)..]);
        below[force] = Vector256.Min(below[force], value);
        above[force] = Vector256.Max(above[force], value);
        return value;
    }

    /// <summary>
    /// The end forces of a bar from rest with each force at its peak: each the one way it goes farther, once pulled and once
    /// pressed. Taking the peaks at one time is on the safe side.
    /// </summary>
    public (BarEnds Pressed, BarEnds Pulled) PeaksOf(int ring, BarModel bar)
    {
        int first = (firstGroup[ring] + bar.Index / Lanes) * Forces * Lanes + bar.Index % Lanes;
        FlatRectangle section = bar.Standoff.Rectangle;
        (double V_t, double V_b, double T) = (Farther(5), Farther(6), Farther(7));
        var tower = new FlatForces(0, Farther(1) * section.WeakW, Farther(2) * section.StrongW, T, V_t, V_b);
        var skin = new FlatForces(0, Farther(3) * section.WeakW, Farther(4) * section.StrongW, T, V_t, V_b);
        return (With(least[first] * section.A), With(greatest[first] * section.A));

        double Farther(int force) => greatest[first + force * Lanes] >= -least[first + force * Lanes] ? greatest[first + force * Lanes] : least[first + force * Lanes];

        BarEnds With(double N) => new(tower with { N = N }, skin with { N = N });
    }

    /// <summary>The peaks of all bars, ring by ring.</summary>
    /// <param name="time">The time of a step, s.</param>
    public ShockBar[] Results(Func<int, double> time)
    {
        var all = new List<ShockBar>();
        Span<double> d = stackalloc double[Motions], forces = stackalloc double[FrameElement.Size], rest = stackalloc double[FrameElement.Size];
        Span<double> none = stackalloc double[Motions];
        for (int ring = 0; ring < rings.Length; ring++)
        {
            for (int i = 0; i < rings[ring].Bars.Length; i++)
            {
                int at = firstGroup[ring] * Lanes + i;
                BarModel bar = rings[ring].Bars[i];
                bar.Bar.Motion(none, motionAt.AsSpan(at * Motions, Motions), d);
                bar.Bar.Stiffness.Forces(d, forces);
                still.ForcesOf(rings[ring], bar, model.Rings[ring].BandInStatue, SkinAssumption.RigidRing, rest);
                for (int k = 0; k < forces.Length; k++)
                    forces[k] += rest[k];
                all.Add(Result(rings[ring], i, stress[at], time((int)stressAt[at]), forces, Math.Sqrt(movement[at]), time((int)movementAt[at]), false));
            }
        }
        return [.. all];
    }

    public static ShockBar Result(
        RingElement ring, int bar, double stress, double stressTime, ReadOnlySpan<double> forces, double movement, double movementTime, bool hasYielded) => new()
        {
            Level = ring.Level,
            Band = ring.BandName,
            Number = ring.Bars[bar].Number,
            Standoff = ring.Bars[bar].Bar.Place.Standoff,
            Stress = new(UnitsNet.Pressure.FromPascals(stress), UnitsNet.Duration.FromSeconds(stressTime)),
            Forces = new BarForces(BarEnds.Of(forces)),
            Movement = new(UnitsNet.Length.FromMeters(movement), UnitsNet.Duration.FromSeconds(movementTime)),
            HasYielded = hasYielded,
        };

    private void Fill(int ring)
    {
        Span<double> unit = stackalloc double[Motions], d = stackalloc double[Motions], none = stackalloc double[Motions], f = stackalloc double[Functions];
        Span<double> forces = stackalloc double[FrameElement.Size];
        foreach (BarModel bar in rings[ring].Bars)
        {
            int group = firstGroup[ring] + bar.Index / Lanes, lane = bar.Index % Lanes;
            for (int k = 0; k < Motions; k++)
            {
                unit.Clear();
                unit[k] = 1;
                bar.Bar.Motion(none, unit, d);
                bar.Bar.Stiffness.Forces(d, forces);
                Of(bar, forces, d, f);
                for (int function = 0; function < Functions; function++)
                    coefficients[((group * Functions + function) * Motions + k) * Lanes + lane] = f[function];
            }
            still.ForcesOf(rings[ring], bar, model.Rings[ring].BandInStatue, SkinAssumption.RigidRing, forces);
            Of(bar, forces, none, f);
            for (int function = 0; function < Functions; function++)
                rest[(group * Functions + function) * Lanes + lane] = f[function];
        }
    }

    private static void Of(BarModel bar, ReadOnlySpan<double> forces, ReadOnlySpan<double> d, Span<double> functions)
    {
        FlatRectangle section = bar.Standoff.Rectangle;
        functions[0] = forces[6] / section.A;
        (functions[1], functions[2]) = (forces[5] / section.WeakW, forces[4] / section.StrongW);
        (functions[3], functions[4]) = (forces[11] / section.WeakW, forces[10] / section.StrongW);
        (functions[5], functions[6], functions[7]) = (forces[7], forces[8], forces[9]);
        (functions[8], functions[9], functions[10]) = (d[0], d[1], d[2]);
    }
}
