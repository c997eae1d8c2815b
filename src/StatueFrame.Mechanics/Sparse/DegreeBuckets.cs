namespace StatueFrame.Mechanics.Sparse;

/// <summary>Variables sorted into buckets by priority; the last one put into a bucket is the first one taken out.</summary>
internal sealed class DegreeBuckets
{
    private readonly int[] head, next, previous, bucketOf;
    private int least;

    public DegreeBuckets(int count, int limit)
    {
        head = new int[limit + 1];
        next = new int[count];
        previous = new int[count];
        bucketOf = new int[count];
        Array.Fill(head, -1);
        Limit = limit;
    }

    /// <summary>The greatest priority.</summary>
    public int Limit { get; }

    public void Add(int variable, int priority)
    {
        int follower = head[priority];
        if (follower >= 0)
            previous[follower] = variable;
        next[variable] = follower;
        previous[variable] = -1;
        head[priority] = variable;
        bucketOf[variable] = priority;
        least = Math.Min(least, priority);
    }

    public void Remove(int variable)
    {
        if (previous[variable] >= 0)
            next[previous[variable]] = next[variable];
        else
            head[bucketOf[variable]] = next[variable];
        if (next[variable] >= 0)
            previous[next[variable]] = previous[variable];
    }

    /// <summary>Removes a variable of the least priority.</summary>
    public int TakeLeast()
    {
        while (head[least] < 0)
            least++;
        int variable = head[least];
        Remove(variable);
        return variable;
    }
}
