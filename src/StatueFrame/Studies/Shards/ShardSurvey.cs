using System.Globalization;

namespace StatueFrame.Studies;

/// <summary>Whether the shards of a study are all there: the completeness check before they are merged.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ShardSurvey
{
    internal ShardSurvey()
    {
    }

    /// <summary>Pieces of the study.</summary>
    public required int Items { get; init; }

    /// <summary>Pieces that are done.</summary>
    public required int Done { get; init; }

    /// <summary>Numbers of the shards that have no file.</summary>
    public required ValueList<int> Missing { get; init; }

    /// <summary>Shards that are not finished, with the pieces they still lack.</summary>
    public required ValueList<(int Index, int Lacking)> Unfinished { get; init; }

    /// <summary>Names of files that hold a shard which another file holds already.</summary>
    public required ValueList<string> Duplicate { get; init; }

    /// <summary>Names of files that do not belong here, each with the reason.</summary>
    public required ValueList<(string File, string Reason)> Foreign { get; init; }

    /// <summary>True when every shard is there once, finished, and nothing else is.</summary>
    public bool IsComplete => Missing.Count == 0 && Unfinished.Count == 0 && Duplicate.Count == 0 && Foreign.Count == 0;

    /// <summary>What there is and what is wrong, on a few lines.</summary>
    public override string ToString()
    {
        List<string> lines = [string.Create(CultureInfo.InvariantCulture, $"{Done} of {Items} pieces are done")];
        if (Missing.Count > 0)
            lines.Add($"missing: {(Missing.Count == 1 ? "shard" : "shards")} {string.Join(", ", Missing)}");
        if (Unfinished.Count > 0)
            lines.Add($"unfinished: {string.Join(", ", Unfinished.Select(u => $"shard {u.Index} lacks {u.Lacking}"))}");
        if (Duplicate.Count > 0)
            lines.Add($"duplicate: {string.Join(", ", Duplicate)}");
        lines.AddRange(Foreign.Select(f => $"foreign: {f.File}, {f.Reason}"));
        return string.Join('\n', lines);
    }
}
