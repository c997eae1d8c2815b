using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Mechanics.Elements;

/// <summary>The geometric stiffness of a straight member: its axial force times a matrix of its own.</summary>
/// <remarks>Immutable and safe to share between threads; the arrays must not be written to.</remarks>
/// <param name="Force">The axial force, tension positive, for a unit of each of twelve displacements; N/m, N.</param>
/// <param name="Matrix">The 12×12 geometric stiffness of a unit force; 1/m, 1, m.</param>
internal sealed record AxialStiffening(double[] Force, double[] Matrix)
{
    /// <summary>That of an element between two nodes of a frame; null when it has none of this kind.</summary>
    public static AxialStiffening? Of(FrameElement element)
    {
        const int Size = FrameElement.Size;
        var force = new double[Size];
        Span<double> u = stackalloc double[Size];
        for (int j = 0; j < Size; j++)
        {
            u.Clear();
            u[j] = 1;
            if (element.AxialForceOf(u) is not { } N)
                return null;
            force[j] = N;
        }
        double size = DenseVector.Dot(force, force);
        if (size == 0)
            return null;
        for (int j = 0; j < Size; j++)
            u[j] = force[j] / size;
        var matrix = new double[Size * Size];
        element.AddGeometricStiffness(u, matrix);
        DenseVector.Scale(matrix, 1 / element.AxialForceOf(u)!.Value);
        return new AxialStiffening(force, matrix);
    }
}
