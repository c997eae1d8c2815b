using static System.FormattableString;

namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// A straight bar that carries axial force only: a ball joint at each end, rigid offsets from node to end if wanted.
/// </summary>
/// <remarks>
/// The mass is the consistent one of a straight line between the ends, without rotary inertia. The geometric stiffness is
/// that of a string, N/L across the bar, with the second-order motion of the offsets. A bar does not resist the spin of a
/// node about it. Immutable and safe to share between threads.
/// </remarks>
public sealed class BarElement : FrameElement
{
    private readonly MemberLine line;
    private readonly double EA, mass;

    /// <summary>Lays a bar between two nodes.</summary>
    /// <param name="start">Index of the start node.</param>
    /// <param name="startPosition">Position of the start node, m, global axes.</param>
    /// <param name="end">Index of the end node.</param>
    /// <param name="endPosition">Position of the end node, m, global axes.</param>
    /// <param name="EA">Axial rigidity E·A, N; positive.</param>
    /// <param name="massPerLength">Mass per length, kg/m; zero or more.</param>
    /// <param name="startOffset">Rigid arm from the start node to the start of the bar, m, global axes.</param>
    /// <param name="endOffset">Rigid arm from the end node to the end of the bar, m, global axes.</param>
    /// <exception cref="ArgumentException">No length, a value that is not finite, a rigidity that is not positive, a negative mass.</exception>
    public BarElement(
        int start, Vector3D startPosition, int end, Vector3D endPosition, double EA, double massPerLength = 0,
        Vector3D startOffset = default, Vector3D endOffset = default) : base(start, end)
    {
        line = MemberLine.Between(start, startPosition, startOffset, end, endPosition, endOffset, Vector3D.UnitZ);
        if (!(EA > 0 && double.IsFinite(EA)))
            throw new ArgumentException(Invariant($"{MemberLine.Name(start, end)} needs a positive, finite axial rigidity, not {EA}."), nameof(EA));
        if (!(massPerLength >= 0 && double.IsFinite(massPerLength)))
            throw new ArgumentException(Invariant($"{MemberLine.Name(start, end)} needs a finite mass of 0 or more, not {massPerLength}."), nameof(massPerLength));
        this.EA = EA;
        mass = massPerLength * line.Length;
    }

    /// <summary>The local axes of the bar, in global components; x runs from start to end.</summary>
    public Axes3D Axes => line.Axes;

    /// <summary>The length between the bar's ends, offsets taken off, m.</summary>
    public double Length => line.Length;

    /// <inheritdoc/>
    public override void AddStiffness(Span<double> k)
    {
        Span<double> stretch = stackalloc double[Size];
        Stretch(stretch);
        for (int i = 0; i < Size; i++)
            for (int j = 0; j < Size; j++)
                k[Size * i + j] += EA / Length * stretch[i] * stretch[j];
    }

    /// <inheritdoc/>
    public override void AddMass(Span<double> m)
    {
        Span<double> ends = stackalloc double[Size * Size];
        AddEnds(mass / 3, mass / 6, 0, ends);
        line.ToNodes(ends);
        SmallMatrix.AddSymmetric(ends, m, Size);
    }

    /// <inheritdoc/>
    public override void AddGeometricStiffness(ReadOnlySpan<double> u, Span<double> kg)
    {
        double N = AxialForce(u);
        Span<double> ends = stackalloc double[Size * Size];
        AddEnds(N / Length, -N / Length, 1, ends);
        line.ToNodes(ends);
        line.AddArmGeometricStiffness(N, ends);
        SmallMatrix.AddSymmetric(ends, kg, Size);
    }

    internal override double? AxialForceOf(ReadOnlySpan<double> u) => AxialForce(u);

    /// <summary>The axial force that the displacements of the two nodes (12 values, global axes) cause, N, tension positive.</summary>
    public double AxialForce(ReadOnlySpan<double> u)
    {
        Span<double> stretch = stackalloc double[Size];
        Stretch(stretch);
        double sum = 0;
        for (int i = 0; i < Size; i++)
            sum += stretch[i] * u[i];
        return EA / Length * sum;
    }

    /// <summary>The lengthening of the bar for a unit value of each freedom.</summary>
    private void Stretch(Span<double> stretch)
    {
        Vector3D x = line.Axes.X, near = x.Cross(line.StartArm), far = line.EndArm.Cross(x);
        (stretch[0], stretch[1], stretch[2]) = (-x.X, -x.Y, -x.Z);
        (stretch[3], stretch[4], stretch[5]) = (near.X, near.Y, near.Z);
        (stretch[6], stretch[7], stretch[8]) = (x.X, x.Y, x.Z);
        (stretch[9], stretch[10], stretch[11]) = (far.X, far.Y, far.Z);
    }

    /// <summary>
    /// Adds a value for each pair of ends to the displacements there, in global axes: for all directions alike, less a
    /// share of it along the bar.
    /// </summary>
    private void AddEnds(double own, double other, double shareAlong, Span<double> m)
    {
        Vector3D x = Axes.X;
        ReadOnlySpan<double> along = [x.X, x.Y, x.Z];
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
            {
                double part = (i == j ? 1 : 0) - shareAlong * along[i] * along[j];
                m[Size * i + j] += own * part;
                m[Size * (i + 6) + j + 6] += own * part;
                m[Size * i + j + 6] += other * part;
                m[Size * (i + 6) + j] += other * part;
            }
        }
    }
}
