using System.Globalization;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics;

/// <summary>
/// Collects nodes, restraints, elements, masses and ground springs, and builds a <see cref="Frame"/> of them. Nothing is
/// checked until <see cref="Build()"/>, which then lists every problem at once.
/// </summary>
/// <remarks>For one thread. It may go on being used after <see cref="Build()"/>; frames already built do not change.</remarks>
public sealed class FrameBuilder
{
    private const int NodeEntries = 36;

    private readonly List<FrameNode> nodes = [];
    private readonly List<FiniteElement> elements = [];
    private readonly SortedDictionary<int, double[]> stiffnesses = [];
    private readonly SortedDictionary<int, double[]> masses = [];
    private readonly List<FrameProblem> unknownNodes = [];

    /// <summary>Number of nodes so far; the index that the next node gets.</summary>
    public int NodeCount => nodes.Count;

    /// <summary>Number of elements so far; the index that the next element gets.</summary>
    public int ElementCount => elements.Count;

    /// <summary>Adds a node and returns its index.</summary>
    /// <param name="position">Where it stands, m.</param>
    /// <param name="name">What messages shall call it.</param>
    public int AddNode(Vector3D position, string? name = null)
    {
        nodes.Add(new FrameNode(nodes.Count, position, name, Freedoms.None));
        return nodes.Count - 1;
    }

    /// <summary>Holds some freedoms of a node at zero, besides those that are held already.</summary>
    public FrameBuilder Restrain(int node, Freedoms freedoms)
    {
        if (Knows(node, "A restraint"))
            nodes[node] = nodes[node] with { Restrained = nodes[node].Restrained | freedoms };
        return this;
    }

    /// <summary>Adds an element between nodes.</summary>
    public FrameBuilder Add(FiniteElement element)
    {
        ArgumentNullException.ThrowIfNull(element);
        elements.Add(element);
        return this;
    }

    /// <summary>Adds a spring to the ground at a node.</summary>
    /// <param name="node">Index of the node.</param>
    /// <param name="stiffness">6×6, row-major, symmetric, global axes; N/m, N, N·m.</param>
    public FrameBuilder AddStiffness(int node, ReadOnlySpan<double> stiffness) =>
        AddTo(stiffnesses, node, stiffness, "A ground spring");

    /// <summary>Adds a mass at a node.</summary>
    /// <param name="node">Index of the node.</param>
    /// <param name="mass">6×6, row-major, symmetric, global axes about the node; kg, kg·m, kg·m².</param>
    public FrameBuilder AddMass(int node, ReadOnlySpan<double> mass) => AddTo(masses, node, mass, "A mass");

    /// <summary>Adds a spring to the ground and a mass at a node; either may be empty.</summary>
    public FrameBuilder AddAtNode(int node, ReadOnlySpan<double> stiffness, ReadOnlySpan<double> mass)
    {
        if (!stiffness.IsEmpty)
            AddStiffness(node, stiffness);
        if (!mass.IsEmpty)
            AddMass(node, mass);
        return this;
    }

    /// <summary>Builds the frame.</summary>
    /// <exception cref="FrameException">Lists everything that is wrong, naming nodes and freedoms.</exception>
    public Frame Build() => Build(null);

    /// <summary>
    /// Builds the frame and takes equation numbers, sparsity pattern and symbolic factorization from
    /// <paramref name="like"/> when nodes, restraints and connections are the same; otherwise finds them anew.
    /// </summary>
    /// <exception cref="FrameException">Lists everything that is wrong, naming nodes and freedoms.</exception>
    public Frame Build(Frame? like)
    {
        var problems = new List<FrameProblem>(unknownNodes);
        FindStructuralProblems(problems);
        FrameTopology? topology = problems.Count == 0 ? FrameTopology.Of(nodes, elements, like?.Topology) : null;
        SymmetricMatrix? stiffness = topology is null ? null : new(topology.Pattern);
        SymmetricMatrix? mass = topology is null ? null : new(topology.Pattern);
        AddElements(topology, stiffness, mass, problems);
        AddNodes(stiffnesses, topology, stiffness, "ground spring", problems);
        AddNodes(masses, topology, mass, "mass", problems);
        if (topology is not null && problems.Count == 0)
            FindLooseFreedoms(topology, stiffness!, problems);
        if (problems.Count > 0)
            throw new FrameException(problems);
        return new Frame([.. nodes], [.. elements], new SortedDictionary<int, double[]>(stiffnesses), topology!, stiffness!, mass!);
    }

    private FrameBuilder AddTo(SortedDictionary<int, double[]> matrices, int node, ReadOnlySpan<double> added, string what)
    {
        if (added.Length != NodeEntries)
            throw new ArgumentException($"{what} needs {NodeEntries} values, row by row, not {added.Length}.");
        if (!Knows(node, what))
            return this;
        double[] sum = added.ToArray();
        if (matrices.TryGetValue(node, out double[]? present))
        {
            for (int i = 0; i < NodeEntries; i++)
                sum[i] += present[i];
        }
        matrices[node] = sum;
        return this;
    }

    private bool Knows(int node, string what)
    {
        bool known = node >= 0 && node < nodes.Count;
        if (!known)
            unknownNodes.Add(new($"{what} is given for node {node}, which does not exist.", node));
        return known;
    }

    private void FindStructuralProblems(List<FrameProblem> problems)
    {
        if (nodes.Count == 0)
            problems.Add(new("The frame has no nodes."));
        var attached = new bool[nodes.Count];
        foreach (int node in stiffnesses.Keys)
            attached[node] = true;
        for (int i = 0; i < elements.Count; i++)
        {
            ReadOnlySpan<int> joined = elements[i].Nodes;
            foreach (int node in joined)
            {
                if (node >= 0 && node < nodes.Count)
                    attached[node] = true;
                else
                    problems.Add(new($"Element {i} ends at node {node}, which does not exist.", node));
            }
            for (int j = 1; j < joined.Length; j++)
            {
                if (joined[..j].Contains(joined[j]))
                    problems.Add(new($"Element {i} joins node {joined[j]} to itself.", joined[j]));
            }
        }
        bool anyFree = false;
        foreach (FrameNode node in nodes)
        {
            anyFree |= node.Restrained != Freedoms.All;
            if (!node.Position.IsFinite)
            {
                problems.Add(new(string.Create(CultureInfo.InvariantCulture,
                    $"The position of {node} is not finite: ({node.Position.X}, {node.Position.Y}, {node.Position.Z})."), node.Index));
            }
            if (!attached[node.Index] && node.Restrained != Freedoms.All)
            {
                problems.Add(new($"Nothing is attached to {node}; it is free to move in {Freedoms.All & ~node.Restrained}.",
                    node.Index, Freedoms.All & ~node.Restrained));
            }
        }
        if (nodes.Count > 0 && !anyFree)
            problems.Add(new("Every freedom of the frame is restrained; there is nothing to solve."));
    }

    private void AddElements(
        FrameTopology? topology, SymmetricMatrix? stiffness, SymmetricMatrix? mass, List<FrameProblem> problems)
    {
        int most = elements.Count == 0 ? 0 : elements.Max(element => element.FreedomCount);
        Span<double> room = stackalloc double[most * most];
        for (int i = 0; i < elements.Count; i++)
        {
            Span<double> matrix = room[..(elements[i].FreedomCount * elements[i].FreedomCount)];
            matrix.Clear();
            elements[i].AddStiffness(matrix);
            AddElement(i, "stiffness", matrix, topology, stiffness, problems);
            matrix.Clear();
            elements[i].AddMass(matrix);
            AddElement(i, "mass", matrix, topology, mass, problems);
        }
    }

    private void AddElement(
        int i, string what, ReadOnlySpan<double> matrix, FrameTopology? topology, SymmetricMatrix? sum, List<FrameProblem> problems)
    {
        FiniteElement element = elements[i];
        if (DefectOf(matrix, element.FreedomCount) is string defect)
        {
            problems.Add(new(
                $"The {what} matrix of element {i} from {Label(element.Nodes[0])} to {Label(element.Nodes[^1])} {defect}.", element.Nodes[0]));
        }
        else
            topology?.ScatterElement(i, matrix, sum!.Values);
    }

    private void AddNodes(
        SortedDictionary<int, double[]> matrices, FrameTopology? topology, SymmetricMatrix? sum, string what, List<FrameProblem> problems)
    {
        foreach ((int node, double[] matrix) in matrices)
        {
            if (DefectOf(matrix, Frame.NodeSize) is string defect)
                problems.Add(new($"The {what} at {nodes[node]} {defect}.", node));
            else
                topology?.ScatterNode(node, matrix, sum!.Values);
        }
    }

    private string Label(int node) => node >= 0 && node < nodes.Count ? nodes[node].ToString() : $"node {node}";

    private static string? DefectOf(ReadOnlySpan<double> matrix, int size)
    {
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double lower = matrix[size * i + j], upper = matrix[size * j + i];
                if (!double.IsFinite(lower) || !double.IsFinite(upper))
                    return $"is not finite at row {i}, column {j}";
                double scale = Math.Sqrt(Math.Abs(matrix[size * i + i] * matrix[size * j + j]));
                if (Math.Abs(lower - upper) > 1e-6 * scale)
                    return $"is not symmetric at row {i}, column {j}";
            }
        }
        return null;
    }

    private void FindLooseFreedoms(FrameTopology topology, SymmetricMatrix stiffness, List<FrameProblem> problems)
    {
        ReadOnlySpan<int> starts = stiffness.Pattern.ColumnStarts;
        var loose = new SortedDictionary<int, Freedoms>();
        for (int equation = 0; equation < stiffness.Order; equation++)
        {
            if (stiffness.Values[starts[equation]] != 0)
                continue;
            int freedom = topology.FreedomOfEquation[equation];
            loose[freedom / 6] = loose.GetValueOrDefault(freedom / 6) | (Freedoms)(1 << freedom % 6);
        }
        foreach ((int node, Freedoms freedoms) in loose)
            problems.Add(new($"Nothing resists {freedoms} of {nodes[node]}; restrain it or attach something stiff.", node, freedoms));
    }
}
