using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace StatueFrame.Studies;

/// <summary>
/// A study that is described but not run yet: it can be run here on all cores, or split into numbered shards that run
/// anywhere, each with a file that is taken up again after an end at any moment, and are merged to the same bits.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The code of functions cannot be compared between processes: run all shards
/// with one build, and change <see cref="Label"/> when a function changes.
/// </remarks>
/// <typeparam name="TResult">What the study gives.</typeparam>
public abstract class StudyPlan<TResult>
{
    private readonly Lazy<string> key;

    private protected StudyPlan() => key = new Lazy<string>(MakeKey);

    /// <summary>A name for the version of the study's functions; shards of another label are foreign.</summary>
    public string Label { get; init; } = "";

    /// <summary>How many pieces the study has: variants or samples.</summary>
    public abstract int Items { get; }

    private protected abstract string Kind { get; }

    /// <summary>Runs the whole study in this process.</summary>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <exception cref="OperationCanceledException">The study was stopped.</exception>
    public abstract TResult Run(StudyOptions? options = null);

    /// <summary>
    /// Runs one shard into its file, or what is missing of it there. The process may be ended at any moment: what was finished
    /// stays, a torn last line is known and done again. Two processes at one file exclude each other where the file system
    /// knows locks.
    /// </summary>
    /// <param name="shard">The shard.</param>
    /// <param name="folder">The folder of the files; made when it is not there.</param>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <exception cref="ShardException">The shard's file is of another study; it is left as it is.</exception>
    /// <exception cref="IOException">The file cannot be written, or another process runs the shard.</exception>
    /// <exception cref="OperationCanceledException">The study was stopped; what was finished stays.</exception>
    public ShardReport RunShard(Shard shard, string folder, StudyOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(shard);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        Directory.CreateDirectory(folder);
        string path = Path.Combine(folder, shard.FileName);
        using var stream = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        (int found, int done, bool torn) = ShardFile.Finish(stream, HeadOf(shard), Record, options ?? new StudyOptions());
        return new ShardReport(shard, path, found, done, torn);
    }

    /// <summary>Looks whether all shards are there.</summary>
    /// <param name="folder">The folder of the files; every text file in it is looked at.</param>
    /// <param name="shards">How many shards there are.</param>
    /// <param name="seed">How pieces were dealt.</param>
    /// <exception cref="IOException">A file cannot be read, or a process still writes it.</exception>
    public ShardSurvey Survey(string folder, int shards, ulong seed = 0) => Look(folder, shards, seed).Survey;

    /// <summary>The study from the files of all its shards: the same bits as <see cref="Run"/> gives.</summary>
    /// <param name="folder">The folder of the files.</param>
    /// <param name="shards">How many shards there are.</param>
    /// <param name="seed">How pieces were dealt.</param>
    /// <exception cref="ShardException">A shard is missing, unfinished, there twice, or a file does not belong here; all are named.</exception>
    /// <exception cref="IOException">A file cannot be read, or a process still writes it.</exception>
    public TResult Merge(string folder, int shards, ulong seed = 0)
    {
        (ShardSurvey survey, string?[] records) = Look(folder, shards, seed);
        return survey.IsComplete ? FromRecords(records!) : throw new ShardException(survey);
    }

    internal ShardHead HeadOf(Shard shard) => new(Kind, key.Value, Items, shard);

    /// <summary>One piece of the study on one line, to the last bit.</summary>
    internal abstract string Record(int item);

    private protected abstract TResult FromRecords(string[] records);

    /// <summary>What tells this study from another one.</summary>
    private protected abstract IEnumerable<string> Identity();

    private (ShardSurvey Survey, string?[] Records) Look(string folder, int shards, ulong seed)
    {
        var records = new string?[Items];
        var found = new SortedDictionary<int, int>();
        var duplicate = new List<string>();
        var foreign = new List<(string, string)>();
        ShardHead mine = HeadOf(new Shard(0, shards, seed));
        foreach (string path in Directory.EnumerateFiles(folder, "*.txt").Order(StringComparer.Ordinal))
        {
            string name = Path.GetFileName(path);
            ShardFile.Content content = ShardFile.Read(File.ReadAllBytes(path));
            if (content.Head is not { } head)
            {
                // A shard that was ended before its head was whole has done nothing: it counts as missing.
                if (!Enumerable.Range(0, shards).Any(i => new Shard(i, shards).FileName == name))
                    foreign.Add((name, "it has no head of a shard"));
            }
            else if (mine.Reject(head) is { } reason)
            {
                foreign.Add((name, reason));
            }
            else if (!found.TryAdd(head.Shard.Index, content.Records.Count))
            {
                duplicate.Add($"{name} ({head.Shard})");
            }
            else
            {
                foreach ((int item, string record) in content.Records)
                    records[item] = record;
            }
        }
        var survey = new ShardSurvey
        {
            Items = Items,
            Done = found.Values.Sum(),
            Missing = Enumerable.Range(0, shards).Where(i => !found.ContainsKey(i)).ToValueList(),
            Unfinished = found.Select(f => (f.Key, Lacking: new Shard(f.Key, shards, seed).ItemsOf(Items).Count() - f.Value)).Where(f => f.Lacking > 0).ToValueList(),
            Duplicate = duplicate.ToValueList(),
            Foreign = foreign.ToValueList(),
        };
        return (survey, records);
    }

    private string MakeKey()
    {
        string version = typeof(Shard).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";
        // Lengths keep parts apart whatever they hold.
        var text = new StringBuilder();
        foreach (string part in Identity().Prepend(Label).Prepend(version))
            text.Append(part.Length).Append('\n').Append(part).Append('\n');
        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())).AsSpan(0, 12));
    }
}
