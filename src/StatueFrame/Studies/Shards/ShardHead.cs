using System.Globalization;

namespace StatueFrame.Studies;

/// <summary>The first line of a shard's file: which study, which shard.</summary>
internal sealed record ShardHead(string Kind, string Key, int Items, Shard Shard)
{
    private const string Mark = "StatueFrame shard", Format = "1";

    /// <summary>The line without its sum.</summary>
    public string Text => string.Create(
        CultureInfo.InvariantCulture, $"{Mark}\t{Format}\t{Kind}\t{Key}\titems {Items}\tshard {Shard.Index}\tof {Shard.Count}\tseed {Shard.Seed}");

    /// <summary>The head that a line without its sum says; null when it is none.</summary>
    public static ShardHead? Parse(string text)
    {
        string[] f = text.Split('\t');
        return f.Length == 8 && f[0] == Mark && f[1] == Format
            && Number(f[4], "items ", out ulong items) && Number(f[5], "shard ", out ulong index) && Number(f[6], "of ", out ulong count) && Number(f[7], "seed ", out ulong seed)
            && items <= int.MaxValue && count is >= 1 and <= Shard.Most && index < count
            ? new ShardHead(f[2], f[3], (int)items, new Shard((int)index, (int)count, seed))
            : null;
    }

    /// <summary>Why a file with another head does not belong to this study; null when only the index is another one.</summary>
    public string? Reject(ShardHead other) =>
        other.Kind != Kind ? $"it is of a {other.Kind} study"
        : other.Items != Items ? $"its study has {other.Items} pieces, not {Items}"
        : other.Key != Key ? "its study has other inputs, another label or another version of the library"
        : other.Shard.Count != Shard.Count ? $"its study is split into {other.Shard.Count}, not {Shard.Count}"
        : other.Shard.Seed != Shard.Seed ? $"its study is split by seed {other.Shard.Seed}, not {Shard.Seed}"
        : null;

    private static bool Number(string field, string name, out ulong value)
    {
        value = 0;
        return field.StartsWith(name, StringComparison.Ordinal) && ulong.TryParse(field.AsSpan(name.Length), NumberStyles.None, CultureInfo.InvariantCulture, out value);
    }
}
