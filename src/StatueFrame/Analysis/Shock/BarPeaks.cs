using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// The greatest stress of every elastic standoff and the greatest movement of its skin end, over all steps. Four bars of
/// a ring go through the arithmetic together.
/// </summary>
/// <remarks>For one thread.</remarks>
internal sealed class BarPeaks
{
    private const int Lanes = 4, Motions = Frame.NodeSize, Functions = 8;

    private readonly RingElement[] rings;
    private readonly int[] firstGroup;

    /// <summary>
    /// For every four bars of a ring: eight functions of the ring's motion, four of each coefficient. Five stresses, N/A
    /// and the bending at both ends about both axes; three movements of the skin end.
    /// </summary>
    private readonly double[] coefficients, rest, stress, movement, stressAt, movementAt, motionAt;

    /// <summary>The six motions of a ring, each ready to multiply four bars.</summary>
    private readonly struct RingMotion(ReadOnlySpan<double> motion)
    {
        private readonly Vector256<double> x0 = Vector256.Create(motion[0]), x1 = Vector256.Create(motion[1]), x2 = Vector256.Create(motion[2]);
        private readonly Vector256<double> x3 = Vector256.Create(motion[3]), x4 = Vector256.Create(motion[4]), x5 = Vector256.Create(motion[5]);

        public Vector256<double> Sum(ReadOnlySpan<Vector256<double>> k) => k[0] * x0 + k[1] * x1 + k[2] * x2 + (k[3] * x3 + k[4] * x4 + k[5] * x5);
    }

    /// <param name="model">The model.</param>
    /// <param name="atRest">What <see cref="ShockProbes.Look"/> says of the statue at rest.</param>
    public BarPeaks(StatueModel model, ReadOnlySpan<double> atRest)
    {
        rings = [.. model.Rings.Select(r => r.Ring)];
        firstGroup = new int[rings.Length + 1];
        for (int i = 0; i < rings.Length; i++)
            firstGroup[i + 1] = firstGroup[i] + (rings[i].Bars.Length + Lanes - 1) / Lanes;
        int groups = firstGroup[^1];
        coefficients = new double[groups * Functions * Motions * Lanes];
        rest = new double[groups * Functions * Lanes];
        (stress, movement, stressAt, movementAt) = (new double[groups * Lanes], new double[groups * Lanes], new double[groups * Lanes], new double[groups * Lanes]);
        motionAt = new double[groups * Lanes * Motions];
        for (int i = 0; i < rings.Length; i++)
            Fill(i, atRest.Slice(i * Motions, Motions));
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
        var now = Vector256.Create((double)sample);
        for (int ring = 0; ring < rings.Length; ring++)
        {
            ReadOnlySpan<double> motion = values.Slice(ring * Motions, Motions);
            var by = new RingMotion(motion);
            for (int g = firstGroup[ring]; g < firstGroup[ring + 1]; g++)
            {
                ReadOnlySpan<Vector256<double>> k = c.Slice(g * Functions * Motions, Functions * Motions), o = r0.Slice(g * Functions, Functions);
                Vector256<double> axial = Vector256.Abs(by.Sum(k) + o[0]);
                Vector256<double> tower = Vector256.Abs(by.Sum(k[6..]) + o[1]) + Vector256.Abs(by.Sum(k[12..]) + o[2]);
                Vector256<double> skin = Vector256.Abs(by.Sum(k[18..]) + o[3]) + Vector256.Abs(by.Sum(k[24..]) + o[4]);
                Vector256<double> x = by.Sum(k[30..]), y = by.Sum(k[36..]), z = by.Sum(k[42..]);
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

    /// <summary>The peaks of all bars, ring by ring.</summary>
    /// <param name="atRest">As in the constructor.</param>
    /// <param name="time">The time of a step, s.</param>
    public ShockBar[] Results(ReadOnlySpan<double> atRest, Func<int, double> time)
    {
        var all = new List<ShockBar>();
        Span<double> motion = stackalloc double[Motions], d = stackalloc double[Motions], forces = stackalloc double[FrameElement.Size];
        Span<double> still = stackalloc double[Motions];
        for (int ring = 0; ring < rings.Length; ring++)
        {
            for (int i = 0; i < rings[ring].Bars.Length; i++)
            {
                int at = firstGroup[ring] * Lanes + i;
                BarModel bar = rings[ring].Bars[i];
                for (int k = 0; k < Motions; k++)
                    motion[k] = motionAt[at * Motions + k] + atRest[ring * Motions + k];
                bar.Bar.Motion(still, motion, d);
                bar.Bar.Stiffness.Forces(d, forces);
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
            Number = bar + 1,
            Standoff = ring.Bars[bar].Bar.Place.Standoff,
            Stress = new(UnitsNet.Pressure.FromPascals(stress), UnitsNet.Duration.FromSeconds(stressTime)),
            Forces = new BarForces(forces),
            Movement = new(UnitsNet.Length.FromMeters(movement), UnitsNet.Duration.FromSeconds(movementTime)),
            HasYielded = hasYielded,
        };

    private void Fill(int ring, ReadOnlySpan<double> atRest)
    {
        Span<double> unit = stackalloc double[Motions], still = stackalloc double[Motions], f = stackalloc double[Functions];
        for (int i = 0; i < rings[ring].Bars.Length; i++)
        {
            BarModel bar = rings[ring].Bars[i];
            int group = firstGroup[ring] + i / Lanes, lane = i % Lanes;
            for (int k = 0; k < Motions; k++)
            {
                unit.Clear();
                unit[k] = 1;
                Of(bar, unit, still, f);
                for (int function = 0; function < Functions; function++)
                {
                    coefficients[((group * Functions + function) * Motions + k) * Lanes + lane] = f[function];
                    rest[(group * Functions + function) * Lanes + lane] += f[function] * atRest[k];
                }
            }
        }
    }

    private static void Of(BarModel bar, ReadOnlySpan<double> motion, ReadOnlySpan<double> still, Span<double> functions)
    {
        Span<double> d = stackalloc double[Motions], forces = stackalloc double[FrameElement.Size];
        var section = new FlatRectangle(bar.Bar.Place.Standoff.Section.Width.Meters, bar.Bar.Place.Standoff.Section.Thickness.Meters);
        bar.Bar.Motion(still, motion, d);
        bar.Bar.Stiffness.Forces(d, forces);
        functions[0] = forces[6] / section.A;
        (functions[1], functions[2]) = (forces[5] / section.WeakW, forces[4] / section.StrongW);
        (functions[3], functions[4]) = (forces[11] / section.WeakW, forces[10] / section.StrongW);
        (functions[5], functions[6], functions[7]) = (d[0], d[1], d[2]);
    }
}
