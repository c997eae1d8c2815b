using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// The lowest natural modes of a frame, in ascending frequency. Shapes are mass-normalized, φᵀMφ = 1, and their largest
/// component is positive.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class ModeSet
{
    private readonly double[] omega;
    private readonly double[] shapes;
    private readonly double[] participation;
    private readonly double[] movingMass = new double[Frame.NodeSize];

    internal ModeSet(Frame frame, Vector3D point, double[] omega, double[] shapes, int counted, bool missedNone, double error)
    {
        Frame = frame;
        Point = point;
        this.omega = omega;
        this.shapes = shapes;
        CountedByPivots = counted;
        MissedNone = missedNone;
        Error = error;
        participation = new double[Frame.NodeSize * omega.Length];
        var inertia = new double[frame.FreedomCount];
        for (int direction = 0; direction < Frame.NodeSize; direction++)
        {
            double[] motion = frame.RigidMotion(direction, point);
            frame.InertiaForces(motion, inertia);
            movingMass[direction] = DenseVector.Dot(motion, inertia);
            for (int mode = 0; mode < Count; mode++)
                participation[Frame.NodeSize * mode + direction] = DenseVector.Dot(Shape(mode), inertia);
        }
    }

    /// <summary>The frame.</summary>
    public Frame Frame { get; }

    /// <summary>The point about which base rotations turn, m.</summary>
    public Vector3D Point { get; }

    /// <summary>Number of modes found.</summary>
    public int Count => omega.Length;

    /// <summary>
    /// True when the number of negative pivots of K − μM, with μ just above the highest mode found (and its repetitions),
    /// equals the number of modes found below μ: then no mode was missed.
    /// </summary>
    public bool MissedNone { get; }

    /// <summary>
    /// A bound of the relative error of 1/(ω² + shift) of every mode, from the residual (K + sM) φ − (ω² + s) M φ of each, formed
    /// anew when all were found; no unit.
    /// </summary>
    /// <remarks>Source: Parlett, The Symmetric Eigenvalue Problem, 4.5 and 15.9.</remarks>
    public double Error { get; }

    /// <summary>
    /// That number of negative pivots. Larger than <see cref="Count"/> when a repeated frequency was cut by the count that
    /// was asked for.
    /// </summary>
    public int CountedByPivots { get; }

    /// <summary>The natural frequency of a mode, Hz.</summary>
    public double Frequency(int mode) => omega[mode] / (2 * Math.PI);

    /// <summary>The circular frequency of a mode, rad/s.</summary>
    public double CircularFrequency(int mode) => omega[mode];

    /// <summary>The shape of a mode as a full vector; 1/√kg at displacements, 1/(m·√kg) at rotations.</summary>
    public ReadOnlySpan<double> Shape(int mode) => shapes.AsSpan(mode * Frame.FreedomCount, Frame.FreedomCount);

    /// <summary>
    /// The participation factor φᵀMι of a mode in a rigid motion ι of the base; √kg for displacements, m·√kg for rotations.
    /// </summary>
    /// <param name="mode">The mode, from 0.</param>
    /// <param name="direction">0, 1, 2: displacement along x, y, z; 3, 4, 5: rotation about x, y, z through the point.</param>
    public double Participation(int mode, int direction) => participation[Frame.NodeSize * mode + direction];

    /// <summary>
    /// The effective modal mass (φᵀMι)²; kg for displacements, kg·m² for rotations. Over all modes of a frame it adds up to
    /// <see cref="MovingMass"/>.
    /// </summary>
    public double EffectiveMass(int mode, int direction) =>
        Participation(mode, direction) * Participation(mode, direction);

    /// <summary>
    /// The mass ιᵀMι that a rigid motion of the base sets in motion relative to it: the whole mass without what rests on
    /// restrained freedoms; kg for displacements, kg·m² for rotations.
    /// </summary>
    public double MovingMass(int direction) => movingMass[direction];

    /// <summary>The modal force φᵀf.</summary>
    /// <param name="mode">The mode, from 0.</param>
    /// <param name="loads">A full vector; N, N·m. Loads at restrained freedoms move nothing.</param>
    public double ModalForce(int mode, ReadOnlySpan<double> loads) => DenseVector.Dot(Shape(mode), loads);
}
