using System.Globalization;

namespace StatueFrame.Studies;

/// <summary>
/// One of the numbered parts that a study is split into. Which pieces belong to it is a pure function of seed, index and
/// count: of every run of <see cref="Count"/> neighboring pieces each shard has exactly one, dealt by the seed, so that a
/// regular grid of variants does not load one shard more than another.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Shard
{
    /// <summary>The most shards of a study.</summary>
    public const int Most = 100_000;

    /// <summary>The variables in which batch engines give a task its number: Kubernetes indexed jobs, Slurm arrays.</summary>
    private static readonly string[] variables = ["JOB_COMPLETION_INDEX", "SLURM_ARRAY_TASK_ID"];

    /// <summary>A shard by its number.</summary>
    /// <param name="index">Its number, from 0.</param>
    /// <param name="count">How many shards there are, 1 to 100 000.</param>
    /// <param name="seed">How pieces are dealt; the same for all shards of a study.</param>
    /// <exception cref="ArgumentOutOfRangeException">The count is out of range, or the index is not below it.</exception>
    public Shard(int index, int count, ulong seed = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, Most);
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, count);
        (Index, Count, Seed) = (index, count, seed);
    }

    /// <summary>Its number, from 0.</summary>
    public int Index { get; }

    /// <summary>How many shards there are.</summary>
    public int Count { get; }

    /// <summary>How pieces are dealt.</summary>
    public ulong Seed { get; }

    /// <summary>The name of its file.</summary>
    public string FileName => string.Create(CultureInfo.InvariantCulture, $"shard-{Index:00000}-of-{Count:00000}.txt");

    /// <summary>
    /// The shard of this process, by the number that a batch engine gave it: <c>JOB_COMPLETION_INDEX</c> of a Kubernetes
    /// indexed job, or <c>SLURM_ARRAY_TASK_ID</c> of a Slurm array that starts at 0.
    /// </summary>
    /// <param name="count">
    /// How many shards there are. It is asked for, since engines do not tell it when only some tasks are run again.
    /// </param>
    /// <param name="seed">How pieces are dealt.</param>
    /// <exception cref="InvalidOperationException">Neither variable is set, or it holds no number from 0 to less than the count.</exception>
    public static Shard FromEnvironment(int count, ulong seed = 0) => FromVariables(Environment.GetEnvironmentVariable, count, seed);

    /// <summary>True when a piece of the study belongs to this shard.</summary>
    /// <param name="item">The piece's number, from 0.</param>
    public bool Holds(int item) => item >= 0 && item == ItemOfRun(item / Count);

    /// <summary>The pieces of this shard, ascending.</summary>
    /// <param name="items">How many pieces the study has.</param>
    public IEnumerable<int> ItemsOf(int items)
    {
        for (long run = 0; run * Count < items; run++)
        {
            long item = ItemOfRun(run);
            if (item < items)
                yield return (int)item;
        }
    }

    /// <summary>The shard on one line, as in "shard 3 of 8".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"shard {Index} of {Count}");

    internal static Shard FromVariables(Func<string, string?> variable, int count, ulong seed)
    {
        string name = variables.FirstOrDefault(v => variable(v) is { Length: > 0 })
            ?? throw new InvalidOperationException($"None of {string.Join(", ", variables)} is set; give the shard's index yourself.");
        return int.TryParse(variable(name), NumberStyles.None, CultureInfo.InvariantCulture, out int index) && index < count
            ? new Shard(index, count, seed)
            : throw new InvalidOperationException($"{name} is \"{variable(name)}\"; it must be 0 to {count - 1} for {count} shards.");
    }

    private long ItemOfRun(long run) => run * Count + (long)(((ulong)Index + RandomStream.Hash(Seed, run)) % (ulong)Count);
}
