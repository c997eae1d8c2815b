using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>
/// What a statue does when its base moves, as coordinates: the modes that were taken, each with the displacements φ and the
/// accelerations ω²φ that go with them, and after them three remainders, one an axis. A remainder is the part
/// r = ι − Σ φΓ of the rigid motion that no mode holds; it follows the ground at once, with the displacements K⁻¹M r
/// for a unit acceleration. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads; its arrays must not be written to.</remarks>
internal sealed class BaseMotionModes : MotionShapes
{
    private const int Axes = 3, FewModes = 24, ManyModes = 192;
    private const double EnoughMass = 0.9;

    private readonly double[] remainderShapes, remainderAccelerations;
    private readonly double[] accelerations, participation, remainderLoads;
    private readonly int size;

    /// <summary>Takes the modes of a set below a frequency, Hz.</summary>
    public BaseMotionModes(StatueModel model, ModeSet set, double below = double.PositiveInfinity) : base(model)
    {
        (Set, size) = (set, model.Frame.FreedomCount);
        int count = 0;
        while (count < set.Count && set.Frequency(count) < below)
            count++;
        ModeCount = count;
        accelerations = new double[count * size];
        remainderShapes = new double[Axes * size];
        remainderAccelerations = new double[Axes * size];
        for (int i = 0; i < count; i++)
            DenseVector.AddScaled(accelerations.AsSpan(i * size, size), set.CircularFrequency(i) * set.CircularFrequency(i), set.Shape(i));
        participation = new double[count * Axes];
        remainderLoads = new double[Axes * size];
        var inertia = new double[size];
        for (int axis = 0; axis < Axes; axis++)
        {
            Span<double> rest = remainderAccelerations.AsSpan(axis * size, size), loads = remainderLoads.AsSpan(axis * size, size);
            model.Frame.RigidMotion(axis).CopyTo(rest);
            model.RigidInertia[axis].CopyTo(loads);
            for (int i = 0; i < count; i++)
            {
                double gamma = participation[i * Axes + axis] = model.Participation(set.Shape(i), axis);
                DenseVector.AddScaled(rest, -gamma, set.Shape(i));
                model.Frame.InertiaForces(set.Shape(i), inertia);
                DenseVector.AddScaled(loads, -gamma, inertia);
            }
        }
        model.Statics.Solve(remainderLoads, remainderShapes);
    }

    /// <summary>The participation of a mode along an axis.</summary>
    public double Participation(int mode, int axis) => participation[mode * Axes + axis];

    /// <summary>The inertia forces that go with a coordinate, a full vector.</summary>
    public ReadOnlySpan<double> Inertia(int coordinate) => coordinate < ModeCount
        ? Model.Frame.InertiaForces(Accelerations(coordinate))
        : remainderLoads.AsSpan((coordinate - ModeCount) * size, size);

    public ModeSet Set { get; }

    public int ModeCount { get; }

    /// <summary>The modes, and three more.</summary>
    public override int Count => ModeCount + Axes;

    /// <summary>Modes that hold at least nine tenths of the mass in all three directions, if so many can be had.</summary>
    public static ModalResponse Enough(StatueModel model)
    {
        for (int count = FewModes; ; count *= 2)
        {
            ModalResponse modes = model.Modes(count);
            if (count >= ManyModes || modes.Modes.Count < count)
                return modes;
            double x = 0, y = 0, z = 0;
            foreach (ModeResult mode in modes.Modes)
                (x, y, z) = (x + mode.MassFractionX, y + mode.MassFractionY, z + mode.MassFractionZ);
            if (Math.Min(x, Math.Min(y, z)) >= EnoughMass)
                return modes;
        }
    }

    /// <summary>The displacements of a coordinate, a full vector.</summary>
    public override ReadOnlySpan<double> Displacements(int coordinate) => coordinate < ModeCount
        ? Set.Shape(coordinate)
        : remainderShapes.AsSpan((coordinate - ModeCount) * size, size);

    /// <summary>The accelerations of a coordinate, a full vector.</summary>
    public override ReadOnlySpan<double> Accelerations(int coordinate) => coordinate < ModeCount
        ? accelerations.AsSpan(coordinate * size, size)
        : remainderAccelerations.AsSpan((coordinate - ModeCount) * size, size);

    /// <summary>The participation of a mode in a motion of the base along a direction.</summary>
    public double Participation(int mode, Vector3D direction) => direction.X * Participation(mode, 0)
        + direction.Y * Participation(mode, 1) + direction.Z * Participation(mode, 2);

    /// <summary>What each coordinate puts on the base: forces, and moments about the base's center.</summary>
    public override Resultant[] Base()
    {
        var all = new Resultant[Count];
        var sums = new Resultant[Axes];
        for (int i = 0; i < ModeCount; i++)
        {
            all[i] = OfMode(Set.Shape(i), Set.CircularFrequency(i));
            double w2 = Set.CircularFrequency(i) * Set.CircularFrequency(i);
            for (int axis = 0; axis < Axes; axis++)
            {
                double gamma = Participation(i, axis);
                sums[axis] += new Resultant(gamma / w2 * all[i].Force, gamma / w2 * all[i].Moment);
            }
        }
        double mass = Model.Masses.TotalKilograms;
        Vector3D arm = Model.Masses.CenterMeters - Model.BaseCenter;
        for (int axis = 0; axis < Axes; axis++)
        {
            Vector3D force = mass * (axis switch { 0 => Vector3D.UnitX, 1 => Vector3D.UnitY, _ => Vector3D.UnitZ });
            Resultant whole = Resultant.Of(force, arm);
            all[ModeCount + axis] = new Resultant(whole.Force - sums[axis].Force, whole.Moment - sums[axis].Moment);
        }
        return all;
    }
}
