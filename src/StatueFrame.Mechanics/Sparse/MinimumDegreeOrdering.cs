namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// Fill-reducing order of elimination: always take a variable with the fewest equations around it. The partly
/// eliminated matrix is kept as a quotient graph, in which an eliminated variable lives on as an element (the clique of
/// the variables around it), so that it never needs more room than the graph at the start.
/// </summary>
/// <remarks>
/// Degrees are the upper bounds of Amestoy, Davis and Duff, "An approximate minimum degree ordering algorithm", SIAM J.
/// Matrix Anal. Appl. 17 (1996): elements counted without regard for how they overlap outside the newest one. Before
/// all others go the variables with at most one variable or element beside them: they cause no fill, whatever their
/// degree, and a tree is eliminated from its leaves inward.
/// </remarks>
internal sealed class MinimumDegreeOrdering
{
    private readonly int count;

    // The list of a variable: first the elements, then the variables beside it. The list of an element: its variables.
    private readonly int[] start, length, elementCount;
    private int[] space, spare = [];
    private int free;

    // Equations of a living variable (negative while it is marked as part of the newest element), 0 for all others.
    private readonly int[] weight;

    // Equations of a living element, 0 for all others; and how many of them lie outside the newest element.
    private readonly int[] elementWeight;
    private readonly long[] outside;
    private long stamp;

    private readonly int[] degree;
    private readonly DegreeBuckets queue;

    // Variables that became one with a variable, or were eliminated along with it.
    private readonly int[] nextMember, lastMember;

    // Scratch for finding variables that became indistinguishable.
    private readonly int[] hashHead, hashNext, hashOf, seen;
    private int seenStamp;

    private int remaining;

    private MinimumDegreeOrdering(CompressedGraph graph)
    {
        count = graph.Count;
        remaining = graph.Order;
        start = new int[count];
        length = new int[count];
        elementCount = new int[count];
        space = new int[2 * graph.NeighborCount + count];
        weight = new int[count];
        elementWeight = new int[count];
        outside = new long[count];
        degree = new int[count];
        queue = new DegreeBuckets(count, graph.Order);
        nextMember = new int[count];
        lastMember = new int[count];
        hashHead = new int[count];
        hashNext = new int[count];
        hashOf = new int[count];
        seen = new int[count];
        Array.Fill(nextMember, -1);
        Array.Fill(hashHead, -1);
        for (int v = 0; v < count; v++)
        {
            ReadOnlySpan<int> neighbors = graph.Neighbors(v);
            neighbors.CopyTo(space.AsSpan(free));
            start[v] = free;
            length[v] = neighbors.Length;
            free += neighbors.Length;
            weight[v] = graph.Weight(v);
            lastMember[v] = v;
            foreach (int other in neighbors)
                degree[v] += graph.Weight(other);
        }
        for (int v = count - 1; v >= 0; v--)
            queue.Add(v, Priority(v));
    }

    /// <summary>The vertices of <paramref name="graph"/> in the order of elimination.</summary>
    public static int[] Order(CompressedGraph graph) => new MinimumDegreeOrdering(graph).Eliminate();

    private int[] Eliminate()
    {
        var order = new int[count];
        int ordered = 0;
        while (ordered < count)
        {
            int pivot = queue.TakeLeast();
            FormElement(pivot);
            MeasureOverlaps(pivot);
            UpdateNeighborhoods(pivot);
            UniteIndistinguishable(pivot);
            FinishElement(pivot);
            for (int member = pivot; member >= 0; member = nextMember[member])
                order[ordered++] = member;
        }
        return order;
    }

    private Span<int> List(int id) => space.AsSpan(start[id], length[id]);

    private Span<int> Elements(int variable) => space.AsSpan(start[variable], elementCount[variable]);

    private int Priority(int variable) => length[variable] <= 1 ? 0 : degree[variable];

    /// <summary>Turns the pivot into an element made of the variables beside it and in its elements, which it absorbs.</summary>
    private void FormElement(int pivot)
    {
        MakeRoom(pivot);
        remaining -= weight[pivot];
        weight[pivot] = 0;
        int begin = free;
        Gather(List(pivot)[elementCount[pivot]..], pivot);
        foreach (int element in Elements(pivot))
        {
            if (elementWeight[element] > 0)
                Gather(List(element), pivot);
            elementWeight[element] = 0;
        }
        start[pivot] = begin;
        length[pivot] = free - begin;
        elementCount[pivot] = 0;
    }

    private void Gather(ReadOnlySpan<int> variables, int pivot)
    {
        int added = 0;
        foreach (int variable in variables)
        {
            if (weight[variable] <= 0)
                continue;
            added += weight[variable];
            weight[variable] = -weight[variable];
            queue.Remove(variable);
            space[free++] = variable;
        }
        elementWeight[pivot] += added;
    }

    /// <summary>Finds for each element that touches the newest one how many equations of it lie outside.</summary>
    private void MeasureOverlaps(int pivot)
    {
        stamp += queue.Limit + 1;
        foreach (int variable in List(pivot))
        {
            foreach (int element in Elements(variable))
            {
                if (outside[element] < stamp)
                    outside[element] = stamp + elementWeight[element];
                outside[element] += weight[variable];
            }
        }
    }

    private void UpdateNeighborhoods(int pivot)
    {
        bool alone = length[pivot] == 1;
        foreach (int variable in List(pivot))
        {
            int kept = start[variable], outer = 0;
            uint hash = 0;
            foreach (int element in Elements(variable))
            {
                if (elementWeight[element] == 0)
                    continue;
                int beyond = (int)(outside[element] - stamp);
                if (beyond == 0)
                {
                    elementWeight[element] = 0;
                    continue;
                }
                outer += beyond;
                hash += (uint)element;
                space[kept++] = element;
            }
            int next = start[variable] + elementCount[variable], end = start[variable] + length[variable];
            if (!alone)
            {
                if (kept == next)
                {
                    // No element has left a place free, so the pivot itself stands among the variables.
                    int at = next + space.AsSpan(next, end - next).IndexOf(pivot);
                    space[at] = space[next++];
                }
                space[kept++] = pivot;
            }
            elementCount[variable] = kept - start[variable];
            for (; next < end; next++)
            {
                int other = space[next];
                if (weight[other] <= 0)
                    continue;
                outer += weight[other];
                hash += (uint)other;
                space[kept++] = other;
            }
            length[variable] = kept - start[variable];
            degree[variable] = Math.Min(degree[variable], outer);
            hashOf[variable] = (int)(hash % (uint)count);
            if (outer == 0)
                EliminateAlong(variable, pivot);
        }
    }

    /// <summary>A variable with nothing beside it but the newest element follows the pivot at once, without any fill.</summary>
    private void EliminateAlong(int variable, int pivot)
    {
        remaining += weight[variable];
        elementWeight[pivot] += weight[variable];
        Join(pivot, variable);
    }

    /// <summary>Unites the variables of the newest element that have become indistinguishable: they move as one from now on.</summary>
    private void UniteIndistinguishable(int pivot)
    {
        foreach (int variable in List(pivot))
        {
            if (weight[variable] == 0)
                continue;
            ref int head = ref hashHead[hashOf[variable]];
            hashNext[variable] = head;
            head = variable;
        }
        foreach (int variable in List(pivot))
        {
            int candidate = hashHead[hashOf[variable]];
            hashHead[hashOf[variable]] = -1;
            for (; candidate >= 0; candidate = hashNext[candidate])
            {
                if (weight[candidate] != 0 && hashNext[candidate] >= 0)
                    UniteWithFollowers(candidate);
            }
        }
    }

    private void UniteWithFollowers(int variable)
    {
        seenStamp++;
        foreach (int id in List(variable))
            seen[id] = seenStamp;
        for (int other = hashNext[variable]; other >= 0; other = hashNext[other])
        {
            if (weight[other] == 0 || length[other] != length[variable] || elementCount[other] != elementCount[variable])
                continue;
            bool same = true;
            foreach (int id in List(other))
                same &= seen[id] == seenStamp;
            if (!same)
                continue;
            weight[variable] += weight[other];
            Join(variable, other);
        }
    }

    private void Join(int variable, int joining)
    {
        weight[joining] = 0;
        nextMember[lastMember[variable]] = joining;
        lastMember[variable] = lastMember[joining];
    }

    /// <summary>Drops from the newest element what has gone, and gives its variables their new degrees.</summary>
    private void FinishElement(int pivot)
    {
        int kept = start[pivot];
        foreach (int variable in List(pivot))
        {
            if (weight[variable] == 0)
                continue;
            int own = weight[variable] = -weight[variable];
            degree[variable] = Math.Min(degree[variable] + elementWeight[pivot], remaining) - own;
            queue.Add(variable, Priority(variable));
            space[kept++] = variable;
        }
        if (length[pivot] == 1)
            elementWeight[pivot] = 0;
        length[pivot] = kept - start[pivot];
        free = kept;
    }

    /// <summary>Sees to it that the pivot's element fits in, if need be by closing the gaps between the living lists.</summary>
    private void MakeRoom(int pivot)
    {
        int need = length[pivot];
        foreach (int element in Elements(pivot))
            need += length[element];
        if (free + need <= space.Length)
            return;
        if (spare.Length == 0)
            spare = new int[space.Length];
        int at = 0;
        for (int id = 0; id < count; id++)
        {
            if (weight[id] == 0 && elementWeight[id] == 0)
                continue;
            List(id).CopyTo(spare.AsSpan(at));
            start[id] = at;
            at += length[id];
        }
        (space, spare) = (spare, space);
        free = at;
    }
}
