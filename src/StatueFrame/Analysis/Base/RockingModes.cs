using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>
/// A rocking statue as numbers: its modes on a held base, its inertia about both edges, and what the two share. Side 0 leans to the
/// front, side 1 to the back; φ is the rotation on that side, zero or more. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class RockingModes
{
    private const double g = SelfWeight.Gravity;
    private const double Enough = 0.95;
    private const int First = 8, Most = 64;

    private readonly double mass, pretension, stiffness, arm;
    private readonly double[] R = new double[2], alpha = new double[2], I = new double[2];
    private readonly double[][] share = new double[2][];
    private readonly Vector3D[] lever = new Vector3D[2];
    private readonly Vector3D axis;

    public RockingModes(RockingStatue statue, ShockLoads? loads)
    {
        StatueModel model = Model = statue.Model;
        Vector3D ahead = Ahead = statue.Ahead;
        axis = Vector3D.UnitZ.Cross(ahead);
        double front = statue.Front.Meters, back = (statue.Back ?? statue.Front).Meters, H = statue.PlinthHeight.Meters, plinth = statue.PlinthMass.Kilograms;
        (pretension, stiffness) = (statue.Tendon?.Pretension.Newtons ?? 0, statue.Tendon?.Stiffness.NewtonsPerMeter ?? 0);
        arm = 0.5 * (front + back);
        double own = model.Masses.TotalKilograms;
        mass = own + plinth;
        Vector3D center = model.Masses.CenterMeters - model.BaseCenter;
        double middle = 0.5 * (front - back);
        (double x, double z) = ((own * center.Dot(ahead) + plinth * middle) / mass, (own * (center.Z + H) + plinth * 0.5 * H) / mass);
        for (int side = 0; side < 2; side++)
        {
            double edge = side == 0 ? front : -back, b = Math.Abs(edge - x);
            (R[side], alpha[side]) = (Math.Sqrt(b * b + z * z), Math.Atan2(b, z));
            Vector3D at = model.BaseCenter + edge * ahead - H * Vector3D.UnitZ;
            lever[side] = axis.Cross(model.BaseCenter - at);
            I[side] = RigidInertia.Of(model, axis, at) + plinth * ((H * H + (front + back) * (front + back)) / 12 + 0.25 * H * H + (edge - middle) * (edge - middle));
        }
        // Of turns about the two edges: both are one turn about the front edge with a rise and fall beside it.
        Cross = -(I[0] - mass * (front + back) * Math.Abs(front - x));
        (Modes, Count) = Choose(statue, loads);
        Shared = share;
        for (int side = 0; side < 2; side++)
            share[side] = Participation(side, Count);
        (Along, Up) = (new double[Count], new double[Count]);
        for (int i = 0; i < Count; i++)
        {
            (Along[i], Up[i]) = (ahead.X * model.Participation(Modes.Shape(i), 0) + ahead.Y * model.Participation(Modes.Shape(i), 1), model.Participation(Modes.Shape(i), 2));
        }
        DampingModel damping = statue.DampingInUse;
        Assumptions = statue.Assumptions().ToValueList();
        Omega = [.. Enumerable.Range(0, Count).Select(Modes.CircularFrequency)];
        Damping = [.. Enumerable.Range(0, Count).Select(i => DampingModel.RatioOf(damping.DecrementAt(Modes.Frequency(i), Modes.Frequency(0))))];
    }

    public StatueModel Model { get; }

    public ValueList<Assumption> Assumptions { get; }

    public Vector3D Ahead { get; }

    public ModeSet Modes { get; }

    public int Count { get; }

    public double[] Omega { get; }

    public double[] Damping { get; }

    /// <summary>Λ: momentum that a unit turn on each side and a mode share.</summary>
    public double[][] Shared { get; }

    /// <summary>Participation of each mode to the front, and up.</summary>
    public double[] Along { get; }

    public double[] Up { get; }

    /// <summary>Momentum that unit turns on the two sides share; below zero, as they turn opposite ways.</summary>
    public double Cross { get; }

    public double Inertia(int side) => I[side];

    /// <summary>The rotation at which the weight alone is in balance, rad.</summary>
    public double Slenderness(int side) => alpha[side];

    /// <summary>p = √(mgR/I), rad/s.</summary>
    public double FrequencyParameter(int side) => Math.Sqrt(mass * g * R[side] / I[side]);

    public static double Sign(int side) => side == 0 ? 1 : -1;

    /// <summary>The work of nodal forces on a unit turn on a side, by their resultant about the base's center.</summary>
    public double OnTurn(int side, in Resultant forces) => Sign(side) * (lever[side].Dot(forces.Force) + axis.Dot(forces.Moment));

    /// <summary>A unit turn on a side as a motion of the base's center: three displacements and three rotations.</summary>
    public (Vector3D Move, Vector3D Turn) Motion(int side) => (Sign(side) * lever[side], Sign(side) * axis);

    /// <summary>What the rigid body's weight, ground and tendon do on a turn, N·m.</summary>
    public double OnTurn(int side, double phi, double ahead, double up)
    {
        (double sin, double cos) = Math.SinCos(alpha[side] - phi);
        return mass * R[side] * (-Sign(side) * ahead * cos - (g + up) * sin) - TendonForce(phi) * arm * Math.Cos(0.5 * phi);
    }

    /// <summary>What the weight does on a turn as the statue is bent, N·m.</summary>
    public double OnTurn(int side, double phi, ReadOnlySpan<double> q, double up)
    {
        (double sin, double cos) = Math.SinCos(phi);
        return (g + up) * (Sign(side) * cos * DenseVector.Dot(Along, q) + sin * DenseVector.Dot(Up, q));
    }

    /// <summary>What the weight and the ground push a mode with.</summary>
    public double OnMode(int mode, int side, double phi, double ahead, double up)
    {
        (double sin, double cos) = Math.SinCos(phi);
        return Along[mode] * ((g + up) * Sign(side) * sin - ahead) + Up[mode] * ((g + up) * (1 - cos) - up);
    }

    /// <summary>The energy of weight and tendon above rest, J.</summary>
    public double Potential(int side, double phi, ReadOnlySpan<double> q)
    {
        double stretch = Stretch(phi);
        return 2 * mass * g * R[side] * Math.Sin(alpha[side] - 0.5 * phi) * Math.Sin(0.5 * phi) + pretension * stretch + 0.5 * stiffness * stretch * stretch
            - g * (Sign(side) * Math.Sin(phi) * DenseVector.Dot(Along, q) + (1 - Math.Cos(phi)) * DenseVector.Dot(Up, q));
    }

    public double TendonForce(double phi) => pretension + stiffness * Stretch(phi);

    private double Stretch(double phi) => 2 * arm * Math.Sin(0.5 * phi);

    private (ModeSet Modes, int Count) Choose(RockingStatue statue, ShockLoads? loads)
    {
        if (statue.Modes is { } given)
        {
            ModeSet some = Mechanics.Vibration.Modes.Solve(Model.Statics, Math.Min(given, Model.Frame.EquationCount));
            return (some, some.Count);
        }
        int shocked = loads is null ? 0 : ShockModes.Of(Model, loads, null).Count;
        for (int n = Math.Max(First, shocked); ; n *= 2)
        {
            ModeSet modes = Mechanics.Vibration.Modes.Solve(Model.Statics, Math.Min(n, Model.Frame.EquationCount));
            double held = 0;
            for (int i = 0; i < modes.Count; i++)
            {
                double one = Participation(0, modes.Shape(i));
                held += one * one;
                if (held >= Enough * I[0] && i + 1 >= shocked)
                    return (modes, i + 1);
            }
            if (modes.Count < n || n >= Math.Max(Most, shocked))
                return (modes, modes.Count);
        }
    }

    private double[] Participation(int side, int count) => [.. Enumerable.Range(0, count).Select(i => Participation(side, Modes.Shape(i)))];

    /// <summary>φᵀM r of a mode and a unit turn r on a side.</summary>
    private double Participation(int side, ReadOnlySpan<double> shape)
    {
        double sum = axis.X * Model.Participation(shape, 3) + axis.Y * Model.Participation(shape, 4);
        sum += lever[side].X * Model.Participation(shape, 0) + lever[side].Y * Model.Participation(shape, 1) + lever[side].Z * Model.Participation(shape, 2);
        return Sign(side) * sum;
    }
}
