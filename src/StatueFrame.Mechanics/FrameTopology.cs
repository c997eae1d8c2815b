using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics;

/// <summary>
/// What a frame's matrices owe to its connections alone: equation numbers, sparsity pattern, symbolic factorization, and
/// for every entry of an element or node matrix the place where it is added. Frames that differ only in stiffness, mass
/// or position share one.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class FrameTopology
{
    private const int NodeSize = 6;
    private const int NodeEntries = NodeSize * (NodeSize + 1) / 2;

    private readonly Freedoms[] restrained;
    private readonly int[] joints;
    private readonly int[] jointStarts;
    private readonly int[] placeStarts;
    private readonly int[] equations;
    private readonly int[] freedoms;
    private readonly int[] elementPlaces;
    private readonly int[] nodePlaces;

    private FrameTopology(Freedoms[] restrained, int[] joints, int[] jointStarts)
    {
        (this.restrained, this.joints, this.jointStarts) = (restrained, joints, jointStarts);
        (equations, freedoms) = Number(restrained);
        Pattern = FindPattern();
        Symbolic = SymbolicFactorization.Analyze(Pattern);

        placeStarts = new int[jointStarts.Length];
        for (int element = 0; element + 1 < jointStarts.Length; element++)
        {
            int size = NodeSize * JointsOf(element).Length;
            MostFreedoms = Math.Max(MostFreedoms, size);
            placeStarts[element + 1] = placeStarts[element] + size * (size + 1) / 2;
        }
        elementPlaces = new int[placeStarts[^1]];
        Span<int> numbers = stackalloc int[MostFreedoms];
        for (int element = 0; element + 1 < jointStarts.Length; element++)
        {
            ReadOnlySpan<int> own = JointsOf(element);
            for (int i = 0; i < own.Length; i++)
                EquationsOfNode(own[i]).CopyTo(numbers[(NodeSize * i)..]);
            FindPlaces(numbers[..(NodeSize * own.Length)], elementPlaces.AsSpan(placeStarts[element]));
        }
        nodePlaces = new int[restrained.Length * NodeEntries];
        for (int node = 0; node < restrained.Length; node++)
            FindPlaces(EquationsOfNode(node), nodePlaces.AsSpan(node * NodeEntries, NodeEntries));
    }

    public SparsityPattern Pattern { get; }

    public SymbolicFactorization Symbolic { get; }

    /// <summary>The greatest number of freedoms of an element.</summary>
    public int MostFreedoms { get; }

    /// <summary>The equation of each of the 6N freedoms, −1 where the ground holds it.</summary>
    public ReadOnlySpan<int> Equations => equations;

    /// <summary>The freedom, 0 to 6N − 1, of each equation.</summary>
    public ReadOnlySpan<int> FreedomOfEquation => freedoms;

    /// <summary>The topology of a frame; <paramref name="like"/> itself when the connections are the same.</summary>
    public static FrameTopology Of(List<FrameNode> nodes, List<FiniteElement> elements, FrameTopology? like)
    {
        if (like is not null && like.Fits(nodes, elements))
            return like;
        var restrained = new Freedoms[nodes.Count];
        for (int node = 0; node < restrained.Length; node++)
            restrained[node] = nodes[node].Restrained;
        var starts = new int[elements.Count + 1];
        for (int element = 0; element < elements.Count; element++)
            starts[element + 1] = starts[element] + elements[element].Nodes.Length;
        var joints = new int[starts[^1]];
        for (int element = 0; element < elements.Count; element++)
            elements[element].Nodes.CopyTo(joints.AsSpan(starts[element]));
        return new FrameTopology(restrained, joints, starts);
    }

    /// <summary>Adds the lower triangle of an element matrix to the values of a matrix on <see cref="Pattern"/>.</summary>
    public void ScatterElement(int element, ReadOnlySpan<double> matrix, Span<double> values) =>
        Scatter(matrix, NodeSize * JointsOf(element).Length, elementPlaces.AsSpan(placeStarts[element]), values);

    /// <summary>Adds the lower triangle of a 6×6 node matrix to the values of a matrix on <see cref="Pattern"/>.</summary>
    public void ScatterNode(int node, ReadOnlySpan<double> matrix, Span<double> values) =>
        Scatter(matrix, NodeSize, nodePlaces.AsSpan(node * NodeEntries, NodeEntries), values);

    private bool Fits(List<FrameNode> nodes, List<FiniteElement> elements)
    {
        if (nodes.Count != restrained.Length || elements.Count + 1 != jointStarts.Length)
            return false;
        for (int node = 0; node < restrained.Length; node++)
        {
            if (nodes[node].Restrained != restrained[node])
                return false;
        }
        for (int element = 0; element < elements.Count; element++)
        {
            if (!elements[element].Nodes.SequenceEqual(JointsOf(element)))
                return false;
        }
        return true;
    }

    private static (int[] Equations, int[] Freedoms) Number(Freedoms[] restrained)
    {
        var equations = new int[NodeSize * restrained.Length];
        var freedoms = new int[equations.Length];
        int order = 0;
        for (int freedom = 0; freedom < equations.Length; freedom++)
        {
            bool held = ((int)restrained[freedom / NodeSize] >> (freedom % NodeSize) & 1) != 0;
            equations[freedom] = held ? -1 : order;
            if (!held)
                freedoms[order++] = freedom;
        }
        return (equations, freedoms[..order]);
    }

    private SparsityPattern FindPattern()
    {
        int elementCount = jointStarts.Length - 1;
        var groups = new int[NodeSize * joints.Length + equations.Length];
        var starts = new int[elementCount + restrained.Length + 1];
        for (int joint = 0; joint < joints.Length; joint++)
            EquationsOfNode(joints[joint]).CopyTo(groups.AsSpan(NodeSize * joint));
        equations.CopyTo(groups, NodeSize * joints.Length);
        for (int group = 1; group < starts.Length; group++)
            starts[group] = starts[group - 1] + NodeSize * (group <= elementCount ? JointsOf(group - 1).Length : 1);
        return SparsityPattern.FromGroups(freedoms.Length, groups, starts);
    }

    private ReadOnlySpan<int> JointsOf(int element) => joints.AsSpan(jointStarts[element]..jointStarts[element + 1]);

    private ReadOnlySpan<int> EquationsOfNode(int node) => equations.AsSpan(NodeSize * node, NodeSize);

    private void FindPlaces(ReadOnlySpan<int> numbers, Span<int> places)
    {
        int at = 0;
        for (int i = 0; i < numbers.Length; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                int a = numbers[i], b = numbers[j];
                places[at++] = a < 0 || b < 0 ? -1 : Pattern.IndexOf(Math.Max(a, b), Math.Min(a, b));
            }
        }
    }

    private static void Scatter(ReadOnlySpan<double> matrix, int size, ReadOnlySpan<int> places, Span<double> values)
    {
        int at = 0;
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                int place = places[at++];
                if (place >= 0)
                    values[place] += matrix[size * i + j];
            }
        }
    }
}
