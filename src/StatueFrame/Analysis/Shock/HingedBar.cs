using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// One elastic–perfectly plastic bar with a hinge at each end, of N, M_weak and M_strong. With e the six forces over
/// their capacities, C the elastic flexibility of the bar to the hinges' slips in the same scale, and γ the two slips
/// (zero or more), a step from the trial forces e₀ solves (I + CΓ) e = e₀ with |e at a hinge| ≤ 1 where γ ≥ 0.
/// </summary>
/// <remarks>
/// For one thread. The slips follow the normal of the yield surface, so that a step is the nearest point in energy, and
/// unique (closest-point projection; Simo and Hughes, Computational Inelasticity, chapters 2 and 5).
/// </remarks>
internal sealed class HingedBar
{
    private const int Size = 6, Per = 3, End = FrameElement.Size;

    private readonly double yieldStress, momentFactor;
    private readonly double[] fromRing = new double[Size * Size];
    /// <summary>Forces at the two hinges over their capacities, by the motion of the ring.</summary>
    private readonly double[] hinge = new double[Size * Size];

    /// <summary>The hinges' forces that a unit slip of each of them relieves: C.</summary>
    private readonly double[] give = new double[Size * Size];

    /// <summary>Forces at the skin end relieved by a unit slip: K Bᵀ, column a slip.</summary>
    private readonly double[] relieved = new double[Size * Size];

    private readonly double[] d = new double[Size], whole = new double[Size], trialFull = new double[Size], slip = new double[Size], accepted = new double[Size], trial = new double[Size];
    private readonly double[] before = new double[Size], e = new double[Size], slipNow = new double[Size], motionNow = new double[Size], still = new double[Size];

    public HingedBar(BarModel model, BarYielding yielding)
    {
        Model = model;
        Standoff standoff = model.Bar.Place.Standoff;
        var section = new FlatRectangle(standoff.Section.Width.Meters, standoff.Section.Thickness.Meters);
        double fy = yielding.StrengthFactor * standoff.Material.YieldStrength.Pascals, plastic = yielding.FullyPlastic ? 1.5 : 1;
        (yieldStress, momentFactor) = (fy, plastic);
        double[] capacities = [section.A * fy, plastic * section.WeakW * fy, plastic * section.StrongW * fy];
        Span<double> unit = stackalloc double[Size], moved = stackalloc double[Size], forces = stackalloc double[End];
        Span<double> k = stackalloc double[Size * Size];
        model.Bar.Stiffness.CopyTo(k);
        for (int j = 0; j < Size; j++)
        {
            unit.Clear();
            unit[j] = 1;
            model.Bar.Motion(still, unit, moved);
            model.Bar.Stiffness.Forces(moved, forces);
            for (int i = 0; i < Size; i++)
                fromRing[Size * i + j] = moved[i];
            (hinge[j], hinge[Size + j], hinge[2 * Size + j]) = (forces[6] / capacities[0], forces[5] / capacities[1], forces[4] / capacities[2]);
            (hinge[3 * Size + j], hinge[4 * Size + j], hinge[5 * Size + j]) = (forces[6] / capacities[0], forces[11] / capacities[1], forces[10] / capacities[2]);
        }
        // The hinges' forces are T s with the forces s at the skin end: T by equilibrium, so that relieved = K Tᵀ and C = T K Tᵀ.
        double L = model.Bar.Stiffness.Length;
        Span<double> t = stackalloc double[Size * Size];
        t.Clear();
        t[0] = t[3 * Size] = 1 / capacities[0];
        (t[Size + 5], t[Size + 1]) = (-1 / capacities[1], -L / capacities[1]);
        (t[2 * Size + 4], t[2 * Size + 2]) = (-1 / capacities[2], L / capacities[2]);
        t[4 * Size + 5] = 1 / capacities[1];
        t[5 * Size + 4] = 1 / capacities[2];
        for (int i = 0; i < Size; i++)
        {
            for (int j = 0; j < Size; j++)
            {
                for (int m = 0; m < Size; m++)
                    relieved[Size * i + j] += k[Size * i + m] * t[Size * j + m];
            }
        }
        for (int i = 0; i < Size; i++)
        {
            for (int j = 0; j < Size; j++)
            {
                for (int m = 0; m < Size; m++)
                    give[Size * i + j] += t[Size * i + m] * relieved[Size * m + j];
            }
        }
    }

    public BarModel Model { get; }

    /// <summary>Elastic energy of the accepted state less that without slips, from rest, J.</summary>
    public double StrainCorrection { get; private set; }

    public double PlasticWork { get; private set; }

    /// <summary>How far the skin end has moved against the tower from rest, in the accepted state, m.</summary>
    public double Movement
    {
        get
        {
            double squares = 0;
            for (int i = 0; i < 3; i++)
            {
                double moved = 0;
                for (int j = 0; j < Size; j++)
                    moved += fromRing[Size * i + j] * motionNow[j];
                squares += moved * moved;
            }
            return Math.Sqrt(squares);
        }
    }

    /// <summary>By how much the accepted slips lessen the force at the skin end, in the statue's axes, N.</summary>
    public Vector3D ReliefForce
    {
        get
        {
            if (PlasticWork == 0)
                return Vector3D.Zero;
            Span<double> force = stackalloc double[Size];
            Multiply(relieved, accepted, force);
            return Model.Bar.Place.Axes.ToGlobal(new Vector3D(force[0], force[1], force[2]));
        }
    }

    /// <summary>Adds the relief against the ring's motion; false when there is none.</summary>
    public bool AddRelief(ReadOnlySpan<double> ringMotion, ReadOnlySpan<double> rest, double share, Span<double> relief)
    {
        Solve(ringMotion, rest);
        if (!slip.AsSpan().ContainsAnyExcept(0))
            return false;
        Span<double> force = stackalloc double[Size];
        Multiply(relieved, slip, force);
        for (int i = 0; i < Size; i++)
        {
            for (int j = 0; j < Size; j++)
                relief[j] += share * fromRing[Size * i + j] * force[i];
        }
        return true;
    }

    public void Accept(ReadOnlySpan<double> ringMotion, ReadOnlySpan<double> rest)
    {
        Solve(ringMotion, rest);
        ringMotion.CopyTo(motionNow);
        if (!slip.AsSpan().ContainsAnyExcept(0))
        {
            e.CopyTo(before, 0);
            return;
        }
        for (int i = 0; i < Size; i++)
            PlasticWork += 0.5 * (before[i] + e[i]) * (slip[i] - accepted[i]);
        slip.CopyTo(accepted, 0);
        e.CopyTo(before, 0);
        // ½(d − Bs)ᵀK(d − Bs) − ½dᵀKd with the forces at rest besides: −dᵀKBs + ½sᵀCs, d counted from the unloaded state.
        double correction = 0;
        for (int i = 0; i < Size; i++)
        {
            double relief = 0;
            for (int j = 0; j < Size; j++)
                relief += give[Size * i + j] * slip[j];
            correction += slip[i] * (0.5 * relief - trialFull[i]);
        }
        StrainCorrection = correction;
    }

    /// <summary>Greatest normal stress in the accepted state, weight included, Pa.</summary>
    public double Stress(double share)
    {
        double tower = Math.Abs(Total(1)) + Math.Abs(Total(2)), skin = Math.Abs(Total(4)) + Math.Abs(Total(5));
        return yieldStress * (Math.Abs(Total(0)) + momentFactor * Math.Max(tower, skin));

        double Total(int i) => share * e[i] + (1 - share) * trialFull[i];
    }

    /// <summary>The forces on the bar's ends in the accepted state, weight included (12 values).</summary>
    public void Forces(double share, Span<double> forces)
    {
        Span<double> skin = stackalloc double[Size];
        Multiply(fromRing, whole, d);
        Model.Bar.Stiffness.Forces(d, forces);
        Multiply(relieved, accepted, skin);
        double L = Model.Bar.Stiffness.Length;
        for (int i = 0; i < Size; i++)
        {
            forces[Size + i] -= share * skin[i];
            forces[i] = -forces[Size + i];
        }
        forces[4] += L * forces[8];
        forces[5] -= L * forces[7];
    }

    /// <summary>Finds the slips for a motion of the ring from rest.</summary>
    private void Solve(ReadOnlySpan<double> ringMotion, ReadOnlySpan<double> rest)
    {
        for (int i = 0; i < Size; i++)
            whole[i] = ringMotion[i] + rest[i];
        Multiply(hinge, whole, trialFull);
        trialFull.CopyTo(trial, 0);
        if (PlasticWork > 0)
        {
            Multiply(give, accepted, trial);
            for (int i = 0; i < Size; i++)
                trial[i] = trialFull[i] - trial[i];
        }
        accepted.CopyTo(slip, 0);
        trial.CopyTo(e, 0);
        if (Norm(trial, 0) <= 1 && Norm(trial, Per) <= 1)
            return;
        HingeReturn.Solve(give, trial, e, slipNow);
        for (int i = 0; i < Size; i++)
            slip[i] = accepted[i] + slipNow[i];
    }

    private static double Norm(ReadOnlySpan<double> v, int from) => v[from] * v[from] + v[from + 1] * v[from + 1] + v[from + 2] * v[from + 2];

    private static void Multiply(ReadOnlySpan<double> a, ReadOnlySpan<double> x, Span<double> y)
    {
        for (int i = 0; i < Size; i++)
        {
            double sum = 0;
            for (int j = 0; j < Size; j++)
                sum += a[Size * i + j] * x[j];
            y[i] = sum;
        }
    }
}
