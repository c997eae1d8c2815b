using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// All plates and bars of a base together under a force and two moments: plates push on a bed of stiffness E/depth where
/// they are pressed, bars pull where they are stretched, the base stays plane. Pre-tension is that left after the losses.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class BaseGroup
{
    private readonly ContactPlane plane;
    private readonly double[] forces;

    private BaseGroup(ContactPlane plane, int bars)
    {
        this.plane = plane;
        forces = [.. Enumerable.Range(0, bars).Select(plane.ForceOf)];
    }

    /// <summary>Solves for the base.</summary>
    /// <param name="holdDown">Plates and bars.</param>
    /// <param name="block">What the plates stand on.</param>
    /// <param name="compression">Force on the base, positive downwards.</param>
    /// <param name="momentX">Moment on the base about x, right-handed.</param>
    /// <param name="momentY">Moment on the base about y, right-handed.</param>
    /// <param name="preTensioned">False leaves pre-tension out: then the bars feel the outer actions alone.</param>
    /// <returns>Null when plates and bars cannot balance the load.</returns>
    /// <exception cref="InvalidStatueException">The hold-down or the block has problems.</exception>
    public static BaseGroup? Solve(HoldDown holdDown, BlockMaterial block, Force compression, Torque momentX, Torque momentY, bool preTensioned = true)
    {
        ArgumentNullException.ThrowIfNull(holdDown);
        ArgumentNullException.ThrowIfNull(block);
        var v = new Validator();
        holdDown.Validate(v.At(nameof(HoldDown)));
        block.Validate(v.At("Block"));
        v.ThrowIfAny();
        return Solve(holdDown, holdDown.Plan, block, CheckInput.Finite(compression.Newtons, nameof(compression)),
            CheckInput.Finite(momentY.NewtonMeters, nameof(momentY)), -CheckInput.Finite(momentX.NewtonMeters, nameof(momentX)), preTensioned);
    }

    /// <summary>Force of each bar, in the order of the hold-down.</summary>
    public IReadOnlyList<Force> BarForces => Array.ConvertAll(forces, f => Force.FromNewtons(f));

    /// <summary>Greatest pressure under the plates.</summary>
    public Pressure GreatestPressure => Pressure.FromPascals(plane.GreatestPressure);

    /// <summary>Sum of the pressures under the plates.</summary>
    public Force BedForce => Force.FromNewtons(plane.BedForce);

    /// <summary>The part of the plates that is pressed, 0 to 1.</summary>
    public double PressedFraction { get; private init; }

    /// <summary>Pressure at a point under a plate; zero where the base gapes.</summary>
    /// <param name="x">The point's x.</param>
    /// <param name="y">The point's y.</param>
    public Pressure PressureAt(Length x, Length y) => Pressure.FromPascals(plane.PressureAt(x.Meters, y.Meters));

    internal ReadOnlySpan<double> Forces => forces;

    /// <summary>The pressures under the plates together: N, and N times its places along x and y.</summary>
    internal (double N, double mx, double my) Bed => plane.Bed;

    internal static BaseGroup? Solve(HoldDown holdDown, PlanArea plan, BlockMaterial block, double N, double mx, double my, bool preTensioned)
    {
        double k = block.E / holdDown.BedDepthInUse;
        AnchorBar[] bars = [.. holdDown.Bars];
        var springs = new ContactSpring[bars.Length];
        double[] P = preTensioned ? BarPreTension.Left(holdDown, block) : new double[bars.Length];
        ContactPlane? locked = null;
        if (P.Sum() > 0)
        {
            (double sum, double sx, double sy) = (0, 0, 0);
            for (int i = 0; i < bars.Length; i++)
                (sum, sx, sy) = (sum + P[i], sx + P[i] * bars[i].X.Meters, sy + P[i] * bars[i].Y.Meters);
            locked = ContactPlane.Solve(plan, k, [], sum, sx, sy);
            if (locked is null)
                return null;
        }
        for (int i = 0; i < bars.Length; i++)
        {
            double x = bars[i].X.Meters, y = bars[i].Y.Meters, stiffness = bars[i].Stiffness;
            springs[i] = new ContactSpring(x, y, stiffness, P[i] / stiffness + (locked?.Sinking(x, y) ?? 0));
        }
        ContactPlane? plane = bars.Length == 0
            ? N > 0 && plan.Gauge(mx / N, my / N) < 1 ? ContactPlane.Solve(plan, k, [], N, mx, my) : null
            : ContactPlane.Solve(plan, k, springs, N, mx, my);
        return plane is null ? null : new BaseGroup(plane, bars.Length) { PressedFraction = plane.Pressed.A / plan.Whole.A };
    }

    /// <summary>Pressure from pre-tension at the corner of the plates that first opens, and how much of it the actions take away; both with all plates in touch.</summary>
    internal static (double Taken, double Pressed) Opening(HoldDown holdDown, BlockMaterial block, double N, double mx, double my)
    {
        PlanArea plan = holdDown.Plan;
        double k = block.E / holdDown.BedDepthInUse;
        double[] P = BarPreTension.Left(holdDown, block);
        (double sum, double sx, double sy) = (0, 0, 0);
        PlanMoments bed = k * plan.Whole, all = bed;
        for (int i = 0; i < P.Length; i++)
        {
            double x = holdDown.Bars[i].X.Meters, y = holdDown.Bars[i].Y.Meters, q = holdDown.Bars[i].Stiffness;
            (sum, sx, sy) = (sum + P[i], sx + P[i] * x, sy + P[i] * y);
            all += q * new PlanMoments(1, x, y, x * x, y * y, x * y);
        }
        (double a0, double b0, double c0) = Sinking(bed, sum, sx, sy);
        (double a, double b, double c) = Sinking(all, N, mx, my);
        (double Taken, double Pressed) worst = (0, 1);
        double greatest = 0;
        foreach (BasePlate plate in holdDown.Plates)
        {
            for (int corner = 0; corner < 4; corner++)
            {
                double x = plate.X.Meters + (corner % 2 == 0 ? 0.5 : -0.5) * plate.WidthX.Meters, y = plate.Y.Meters + (corner < 2 ? 0.5 : -0.5) * plate.WidthY.Meters;
                double taken = -k * (a + b * x + c * y), pressed = k * (a0 + b0 * x + c0 * y);
                double use = taken <= 0 ? 0 : pressed <= 0 ? double.PositiveInfinity : taken / pressed;
                if (use > greatest)
                    (greatest, worst) = (use, (taken, Math.Max(0, pressed)));
            }
        }
        return worst;
    }

    private static (double a, double b, double c) Sinking(in PlanMoments m, double N, double mx, double my)
    {
        // Cramer's rule on the symmetric 3×3 system of a plane on linear springs.
        double det = m.A * (m.XX * m.YY - m.XY * m.XY) - m.X * (m.X * m.YY - m.XY * m.Y) + m.Y * (m.X * m.XY - m.XX * m.Y);
        double a = N * (m.XX * m.YY - m.XY * m.XY) - m.X * (mx * m.YY - m.XY * my) + m.Y * (mx * m.XY - m.XX * my);
        double b = m.A * (mx * m.YY - my * m.XY) - N * (m.X * m.YY - m.XY * m.Y) + m.Y * (m.X * my - mx * m.Y);
        double c = m.A * (m.XX * my - m.XY * mx) - m.X * (m.X * my - mx * m.Y) + N * (m.X * m.XY - m.XX * m.Y);
        return (a / det, b / det, c / det);
    }
}
