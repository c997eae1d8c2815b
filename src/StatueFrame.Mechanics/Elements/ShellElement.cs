using StatueFrame.Mechanics.Statics;
using static System.FormattableString;

namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// A flat triangle of thin sheet between three nodes: a membrane with drilling rotations, and a plate that bends without shear
/// strain. Many of them make a curved shell.
/// </summary>
/// <remarks>
/// <para>Local x runs from the first node to the second, z is the normal about which the nodes run anticlockwise. Membrane and
/// bending are those of Felippa (2003) and of Batoz, Bathe and Ho (1980); constant membrane stress and constant curvature are
/// held exactly, deflections converge with the square of the mesh.</para>
/// <para>Mass is that of a field linear over the triangle, with the rotary inertia of the thickness. The geometric stiffness is
/// that of the membrane forces on the same field.</para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
public sealed class ShellElement : FiniteElement
{
    private const int CornerCount = 3, All = CornerCount * Frame.NodeSize;
    private const double LeastShape = 1e-6;

    /// <summary>Where the membrane's and the plate's freedoms stand among the six of a node.</summary>
    private static readonly int[] inPlane = [0, 1, 5], outOfPlane = [2, 3, 4];

    private readonly double x2, x3, y3;

    /// <summary>Lays a triangle between three nodes.</summary>
    /// <param name="nodes">Indices of its nodes.</param>
    /// <param name="positions">Their positions, m, global axes.</param>
    /// <param name="section">What it is made of.</param>
    /// <exception cref="ArgumentException">Not three nodes, no area, or a value that is not finite or out of range.</exception>
    public ShellElement(ReadOnlySpan<int> nodes, ReadOnlySpan<Vector3D> positions, ShellSection section) : base(nodes)
    {
        if (nodes.Length != CornerCount || positions.Length != CornerCount)
            throw new ArgumentException(Invariant($"A shell element needs three nodes and their positions, not {nodes.Length} and {positions.Length}."), nameof(nodes));
        section.Check();
        Section = section;
        Vector3D side = positions[1] - positions[0], other = positions[2] - positions[0], normal = side.Cross(other);
        if (!(normal.Length > LeastShape * Math.Max(side.Dot(side), other.Dot(other))) || !normal.IsFinite)
            throw new ArgumentException(Invariant($"The triangle of nodes {nodes[0]}, {nodes[1]} and {nodes[2]} has no area to speak of."), nameof(positions));
        Vector3D x = side.Normalized(), z = normal.Normalized();
        Axes = new Axes3D(x, z.Cross(x), z);
        (x2, x3, y3) = (side.Length, other.Dot(Axes.X), other.Dot(Axes.Y));
        Center = (1.0 / 3) * (positions[0] + positions[1] + positions[2]);
    }

    /// <summary>What it is made of.</summary>
    public ShellSection Section { get; }

    /// <summary>Local x along the first side, z the normal, in global components.</summary>
    public Axes3D Axes { get; }

    /// <summary>The middle of the triangle, m.</summary>
    public Vector3D Center { get; }

    /// <summary>The place of one of its nodes, m.</summary>
    /// <param name="number">0, 1 or 2.</param>
    public Vector3D Corner(int number)
    {
        (double x, double y) = number switch { 0 => (0.0, 0.0), 1 => (x2, 0.0), 2 => (x3, y3), _ => throw new ArgumentOutOfRangeException(nameof(number), number, "A triangle has corners 0, 1 and 2.") };
        return Center + (x - (x2 + x3) / 3) * Axes.X + (y - y3 / 3) * Axes.Y;
    }

    /// <summary>Its area, m².</summary>
    public double Area => 0.5 * x2 * y3;

    private double Rigidity => Section.PlaneModulus * Math.Pow(Section.Thickness, 3) / 12;

    private MembraneTriangle Membrane => new(0, 0, x2, 0, x3, y3);

    private PlateTriangle Plate => new(0, 0, x2, 0, x3, y3);

    /// <inheritdoc/>
    public override void AddStiffness(Span<double> k)
    {
        Span<double> local = stackalloc double[All * All], nine = stackalloc double[MembraneTriangle.Size * MembraneTriangle.Size];
        local.Clear();
        nine.Clear();
        Membrane.AddStiffness(Section.PlaneModulus * Section.Thickness, Section.Nu, nine);
        Spread(nine, inPlane, local);
        nine.Clear();
        Plate.AddStiffness(Rigidity, Section.Nu, nine);
        Spread(nine, outOfPlane, local);
        SmallMatrix.ToGlobal(local, All, Axes);
        SmallMatrix.AddSymmetric(local, k, All);
    }

    /// <inheritdoc/>
    public override void AddMass(Span<double> m)
    {
        double own = Section.Mass * Area / 6, rotary = own * Section.Thickness * Section.Thickness / 12;
        for (int i = 0; i < CornerCount; i++)
        {
            for (int j = 0; j < CornerCount; j++)
            {
                double share = i == j ? 1 : 0.5;
                for (int d = 0; d < Frame.NodeSize; d++)
                    m[(Frame.NodeSize * i + d) * All + Frame.NodeSize * j + d] += share * (d < 3 ? own : rotary);
            }
        }
    }

    /// <inheritdoc/>
    public override void AddGeometricStiffness(ReadOnlySpan<double> u, Span<double> kg)
    {
        ShellStress stress = StressFrom(u);
        ReadOnlySpan<double> byX = [-y3, y3, 0], byY = [x3 - x2, -x3, x2];
        double s = 1 / (4 * Area);
        for (int i = 0; i < CornerCount; i++)
        {
            for (int j = 0; j < CornerCount; j++)
            {
                double g = s * (byX[i] * (stress.Nx * byX[j] + stress.Nxy * byY[j]) + byY[i] * (stress.Nxy * byX[j] + stress.Ny * byY[j]));
                for (int d = 0; d < 3; d++)
                    kg[(Frame.NodeSize * i + d) * All + Frame.NodeSize * j + d] += g;
            }
        }
    }

    /// <summary>Membrane forces, and moments at the middle of the triangle, under the displacements of its three nodes.</summary>
    /// <param name="u">18 values, global axes; m, rad.</param>
    /// <param name="strain">Free strain of the middle surface, as by heat.</param>
    /// <param name="curvature">Free curvature in every direction, 1/m, as by heat on the side against the normal.</param>
    public ShellStress StressFrom(ReadOnlySpan<double> u, double strain = 0, double curvature = 0)
    {
        Span<double> membrane = stackalloc double[MembraneTriangle.Size], plate = stackalloc double[PlateTriangle.Size];
        ToLocal(u, membrane, plate);
        Span<double> L = stackalloc double[3 * MembraneTriangle.Size], B = stackalloc double[3 * PlateTriangle.Size];
        Membrane.Lumping(L);
        Plate.Curvatures(1.0 / 3, 1.0 / 3, B);
        Span<double> e = stackalloc double[3], c = stackalloc double[3];
        e.Clear();
        for (int i = 0; i < MembraneTriangle.Size; i++)
        {
            for (int row = 0; row < 3; row++)
                e[row] += L[3 * i + row] * membrane[i] / Area;
        }
        for (int row = 0; row < 3; row++)
            c[row] = DenseVector.Dot(B.Slice(row * PlateTriangle.Size, PlateTriangle.Size), plate);
        (double nu, double E, double D) = (Section.Nu, Section.PlaneModulus * Section.Thickness, Rigidity);
        (e[0], e[1], c[0], c[1]) = (e[0] - strain, e[1] - strain, c[0] - curvature, c[1] - curvature);
        double half = 0.5 * (1 - nu);
        return new ShellStress(
            E * (e[0] + nu * e[1]), E * (nu * e[0] + e[1]), half * E * e[2],
            D * (c[0] + nu * c[1]), D * (nu * c[0] + c[1]), half * D * c[2]);
    }

    /// <summary>Adds the nodal loads (18 values, global axes) of a pressure along the normal, Pa, or of any force per area.</summary>
    /// <param name="force">Force per area, global axes, Pa.</param>
    /// <param name="loads">Receives the sum; N, N·m.</param>
    public void AddSurfaceLoad(Vector3D force, Span<double> loads)
    {
        Vector3D third = Area / 3 * force;
        for (int i = 0; i < CornerCount; i++)
        {
            loads[Frame.NodeSize * i] += third.X;
            loads[Frame.NodeSize * i + 1] += third.Y;
            loads[Frame.NodeSize * i + 2] += third.Z;
        }
    }

    /// <summary>Adds the nodal loads (18 values, global axes) by which a free strain and curvature, alike in every direction, drive the frame.</summary>
    /// <param name="strain">Free strain of the middle surface.</param>
    /// <param name="curvature">Free curvature, 1/m; positive when the face on the normal's side is the hotter one.</param>
    /// <param name="loads">Receives the sum; N, N·m.</param>
    public void AddStrainLoad(double strain, double curvature, Span<double> loads)
    {
        Span<double> L = stackalloc double[3 * MembraneTriangle.Size], B = stackalloc double[3 * PlateTriangle.Size], local = stackalloc double[All];
        local.Clear();
        Membrane.Lumping(L);
        double N = Section.PlaneModulus * Section.Thickness * (1 + Section.Nu) * strain, M = Rigidity * (1 + Section.Nu) * curvature;
        for (int i = 0; i < MembraneTriangle.Size; i++)
            local[Frame.NodeSize * (i / 3) + inPlane[i % 3]] += N * (L[3 * i] + L[3 * i + 1]);
        foreach ((double xi, double eta) in (ReadOnlySpan<(double, double)>)[(0.5, 0), (0.5, 0.5), (0, 0.5)])
        {
            Plate.Curvatures(xi, eta, B);
            for (int i = 0; i < PlateTriangle.Size; i++)
                local[Frame.NodeSize * (i / 3) + outOfPlane[i % 3]] += Area / 3 * M * (B[i] + B[PlateTriangle.Size + i]);
        }
        for (int at = 0; at < All; at += 3)
        {
            Vector3D global = Axes.ToGlobal(new Vector3D(local[at], local[at + 1], local[at + 2]));
            loads[at] += global.X;
            loads[at + 1] += global.Y;
            loads[at + 2] += global.Z;
        }
    }

    private void ToLocal(ReadOnlySpan<double> u, Span<double> membrane, Span<double> plate)
    {
        for (int i = 0; i < CornerCount; i++)
        {
            ReadOnlySpan<double> node = u.Slice(Frame.NodeSize * i, Frame.NodeSize);
            Vector3D move = Axes.ToLocal(new Vector3D(node[0], node[1], node[2])), turn = Axes.ToLocal(new Vector3D(node[3], node[4], node[5]));
            (membrane[3 * i], membrane[3 * i + 1], membrane[3 * i + 2]) = (move.X, move.Y, turn.Z);
            (plate[3 * i], plate[3 * i + 1], plate[3 * i + 2]) = (move.Z, turn.X, turn.Y);
        }
    }

    private static void Spread(ReadOnlySpan<double> nine, int[] places, Span<double> local)
    {
        for (int i = 0; i < 9; i++)
        {
            int row = Frame.NodeSize * (i / 3) + places[i % 3];
            for (int j = 0; j < 9; j++)
                local[row * All + Frame.NodeSize * (j / 3) + places[j % 3]] += nine[9 * i + j];
        }
    }
}
