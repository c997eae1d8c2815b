using System.Buffers;
using System.Runtime.InteropServices;

namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// The numeric step: A = L D Lᵀ with the rows and columns in the order of the symbolic step, a unit lower triangle L and
/// a diagonal D of pivots. A need not be definite: the signs of the pivots are those of the eigenvalues (Sylvester's law
/// of inertia).
/// </summary>
/// <remarks>
/// There is no pivoting for size. That is right for definite matrices and for shifted ones away from an eigenvalue of a
/// leading block; a pivot that vanishes against its diagonal is reported. <see cref="Solve"/> may be called from many
/// threads at once; <see cref="Factor"/> is for one thread, while nobody else uses the object.
/// </remarks>
public sealed class LdlFactorization
{
    /// <summary>A pivot up to this share of its original diagonal entry counts as zero.</summary>
    public const double SingularPivotRatio = 1e-13;

    private const int GroupsAtOnce = 8;

    private readonly double[] values;
    private readonly double[] pivots;
    private readonly double[] scratch = new double[PanelKernel.ScratchLength];
    private readonly int[] rowInPanel;
    private readonly int[] map;
    private readonly int[] identity;
    private readonly List<int> singularEquations = [];
    private bool factored;

    /// <summary>Prepares for matrices of an analyzed pattern; <see cref="Factor"/> then needs no memory.</summary>
    public LdlFactorization(SymbolicFactorization symbolic)
    {
        Symbolic = symbolic;
        values = new double[symbolic.PanelValueCount + PanelKernel.Overrun];
        pivots = new double[symbolic.Order];
        rowInPanel = new int[symbolic.Order];
        map = new int[symbolic.LargestPanel];
        identity = new int[symbolic.LargestPanel];
        for (int i = 0; i < identity.Length; i++)
            identity[i] = i;
    }

    /// <summary>Factors <paramref name="matrix"/>.</summary>
    /// <exception cref="ArgumentException">The matrix is not on the pattern that was analyzed.</exception>
    public LdlFactorization(SymbolicFactorization symbolic, SymmetricMatrix matrix)
        : this(symbolic) => Factor(matrix);

    /// <summary>The symbolic step that this factorization follows.</summary>
    public SymbolicFactorization Symbolic { get; }

    /// <summary>Number of equations.</summary>
    public int Order => pivots.Length;

    /// <summary>Number of negative pivots, which is the number of negative eigenvalues (Sylvester's law of inertia).</summary>
    public int NegativePivots { get; private set; }

    /// <summary>Whether a pivot vanished, so that the matrix has no inverse to working precision.</summary>
    public bool IsSingular => singularEquations.Count > 0;

    /// <summary>
    /// The first equation (original numbering, in the order of elimination) whose pivot vanished against its diagonal or
    /// was not a finite number, or −1.
    /// </summary>
    public int SingularEquation => IsSingular ? singularEquations[0] : -1;

    /// <summary>
    /// All equations (original numbering, in the order of elimination) whose pivot vanished. Each one is held in place
    /// when it is found so that the next can be found.
    /// </summary>
    public ReadOnlySpan<int> SingularEquations => CollectionsMarshal.AsSpan(singularEquations);

    /// <summary>Factors another matrix on the same pattern in place of the last one.</summary>
    /// <returns>Whether all pivots differ from zero, so that <see cref="Solve"/> can be called.</returns>
    /// <exception cref="ArgumentException">The matrix is not on the pattern that was analyzed.</exception>
    public bool Factor(SymmetricMatrix matrix)
    {
        if (matrix.Pattern != Symbolic.Pattern)
            throw new ArgumentException("The matrix must be on the pattern that was analyzed.", nameof(matrix));
        factored = false;
        NegativePivots = 0;
        singularEquations.Clear();
        Assemble(matrix);
        for (int s = 0; s < Symbolic.Supernodes.Count; s++)
        {
            TakeInEarlierPanels(s);
            FactorBlock(s, 0, Symbolic.Supernodes.Width(s), matrix);
        }
        factored = true;
        return !IsSingular;
    }

    /// <summary>
    /// Solves A x = b in place for one or more right-hand sides, each of <see cref="Order"/> values, one after the other.
    /// Each one gives the same bits alone and among others.
    /// </summary>
    /// <exception cref="ArgumentException">The length is not a multiple of <see cref="Order"/>.</exception>
    /// <exception cref="InvalidOperationException">Nothing has been factored, or the matrix is singular.</exception>
    public void Solve(Span<double> rightHandSides)
    {
        if (!factored)
            throw new InvalidOperationException("There is nothing to solve with before a matrix has been factored.");
        if (IsSingular)
            throw new InvalidOperationException($"The matrix is singular: the pivot of equation {SingularEquation} vanished.");
        if (rightHandSides.IsEmpty)
            return;
        if (Order == 0 || rightHandSides.Length % Order != 0)
            throw new ArgumentException($"Each right-hand side must have {Order} values.", nameof(rightHandSides));
        int groupLength = PanelSolve.Lanes * Order;
        int groups = Math.Min((rightHandSides.Length + groupLength - 1) / groupLength, GroupsAtOnce);
        int blockLength = groups * groupLength;
        double[] workspace = ArrayPool<double>.Shared.Rent(blockLength);
        try
        {
            for (int at = 0; at < rightHandSides.Length; at += blockLength)
                SolveBlock(rightHandSides[at..Math.Min(at + blockLength, rightHandSides.Length)], workspace);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(workspace);
        }
    }

    private void Assemble(SymmetricMatrix matrix)
    {
        Array.Clear(values);
        ReadOnlySpan<double> entries = matrix.Values;
        ReadOnlySpan<int> places = Symbolic.PlaceOfEntry;
        for (int k = 0; k < entries.Length; k++)
            values[places[k]] = entries[k];
    }

    private void TakeInEarlierPanels(int s)
    {
        SupernodePartition supernodes = Symbolic.Supernodes;
        ReadOnlySpan<int> rows = supernodes.Rows(s);
        for (int i = 0; i < rows.Length; i++)
            rowInPanel[rows[i]] = i;
        foreach (PanelUpdate update in Symbolic.Updates(s))
        {
            ReadOnlySpan<int> changed = supernodes.Rows(update.Source)[update.Row..];
            Span<int> places = map.AsSpan(0, changed.Length);
            for (int i = 0; i < changed.Length; i++)
                places[i] = rowInPanel[changed[i]];
            PanelKernel.Subtract(
                ref values[Symbolic.PanelStart(update.Source) + update.Row], Symbolic.Stride(update.Source),
                PivotsOf(update.Source), update.Columns,
                places, ref values[Symbolic.PanelStart(s)], Symbolic.Stride(s), scratch);
        }
    }

    /// <summary>Factors columns of a panel that have taken in all columns before <paramref name="begin"/>.</summary>
    private void FactorBlock(int s, int begin, int end, SymmetricMatrix matrix)
    {
        if (end - begin <= PanelKernel.NarrowBlock)
        {
            FactorNarrowBlock(s, begin, end, matrix);
            return;
        }
        int middle = begin + (end - begin) / 2 / PanelKernel.TileColumns * PanelKernel.TileColumns;
        FactorBlock(s, begin, middle, matrix);
        int start = Symbolic.PanelStart(s), stride = Symbolic.Stride(s);
        PanelKernel.Subtract(
            ref values[start + begin * stride + middle], stride, PivotsOf(s)[begin..middle], end - middle,
            identity.AsSpan(middle..stride), ref values[start], stride, scratch);
        FactorBlock(s, middle, end, matrix);
    }

    private void FactorNarrowBlock(int s, int begin, int end, SymmetricMatrix matrix)
    {
        int start = Symbolic.PanelStart(s), stride = Symbolic.Stride(s), first = Symbolic.Supernodes.FirstColumn(s);
        ref double panel = ref values[start];
        Span<double> panelPivots = PivotsOf(s);
        Span<double> factors = stackalloc double[PanelKernel.NarrowBlock];
        for (int column = begin; column < end; column++)
        {
            double pivot = PanelKernel.Pivot(ref panel, stride, panelPivots, begin, column, factors);
            panelPivots[column] = pivot = Accept(pivot, Symbolic.Permutation[first + column], matrix);
            if (pivot == 0)
                values.AsSpan(start + column * stride, stride).Clear();
            else
                PanelKernel.FactorColumn(ref panel, stride, begin, column, pivot, factors);
        }
    }

    /// <summary>Counts a pivot, or notes its equation as singular and makes it zero.</summary>
    private double Accept(double pivot, int equation, SymmetricMatrix matrix)
    {
        double diagonal = matrix.Values[matrix.Pattern.ColumnStarts[equation]];
        if (!double.IsFinite(pivot) || Math.Abs(pivot) <= SingularPivotRatio * Math.Abs(diagonal))
        {
            singularEquations.Add(equation);
            return 0;
        }
        if (pivot < 0)
            NegativePivots++;
        return pivot;
    }

    private Span<double> PivotsOf(int s) =>
        pivots.AsSpan(Symbolic.Supernodes.FirstColumn(s), Symbolic.Supernodes.Width(s));

    /// <summary>Solves some groups of right-hand sides side by side, so that each panel is fetched once for all of them.</summary>
    private void SolveBlock(Span<double> block, Span<double> workspace)
    {
        int groupLength = PanelSolve.Lanes * Order;
        int end = (block.Length + groupLength - 1) / groupLength * groupLength;
        SupernodePartition supernodes = Symbolic.Supernodes;
        for (int at = 0; at < end; at += groupLength)
            Gather(block[at..Math.Min(at + groupLength, block.Length)], workspace.Slice(at, groupLength));
        for (int s = 0; s < supernodes.Count; s++)
        {
            ref double panel = ref values[Symbolic.PanelStart(s)];
            for (int at = 0; at < end; at += groupLength)
                PanelSolve.Forward(ref panel, Symbolic.Stride(s), supernodes.Width(s), supernodes.Rows(s), ref workspace[at]);
        }
        for (int s = supernodes.Count - 1; s >= 0; s--)
        {
            ref double panel = ref values[Symbolic.PanelStart(s)];
            for (int at = 0; at < end; at += groupLength)
                PanelSolve.Backward(ref panel, Symbolic.Stride(s), PivotsOf(s), supernodes.Rows(s), ref workspace[at]);
        }
        for (int at = 0; at < end; at += groupLength)
            Scatter(workspace.Slice(at, groupLength), block[at..Math.Min(at + groupLength, block.Length)]);
    }

    private void Gather(ReadOnlySpan<double> sides, Span<double> group)
    {
        group.Clear();
        ReadOnlySpan<int> permutation = Symbolic.Permutation;
        for (int side = 0; side * Order < sides.Length; side++)
        {
            ReadOnlySpan<double> b = sides.Slice(side * Order, Order);
            for (int k = 0; k < permutation.Length; k++)
                group[PanelSolve.Lanes * k + side] = b[permutation[k]];
        }
    }

    private void Scatter(ReadOnlySpan<double> group, Span<double> sides)
    {
        ReadOnlySpan<int> permutation = Symbolic.Permutation;
        for (int side = 0; side * Order < sides.Length; side++)
        {
            Span<double> x = sides.Slice(side * Order, Order);
            for (int k = 0; k < permutation.Length; k++)
                x[permutation[k]] = group[PanelSolve.Lanes * k + side];
        }
    }
}
