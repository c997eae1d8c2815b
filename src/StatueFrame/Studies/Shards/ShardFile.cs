using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace StatueFrame.Studies;

/// <summary>
/// The file of a shard: a head, then one line a finished piece, in the order in which they were finished. Every line ends
/// with a sum over the head and itself, so that a line that was torn, or comes from elsewhere, is known.
/// </summary>
/// <remarks>Lines are handed to the system one by one: the end of the process loses none that is finished.</remarks>
internal static class ShardFile
{
    private const int SumLength = 16;
    private static readonly UTF8Encoding utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private static readonly TimeSpan toDisk = TimeSpan.FromSeconds(1);

    /// <summary>What a file holds.</summary>
    /// <param name="Head">Its head; null when the first line is none.</param>
    /// <param name="Records">The finished pieces.</param>
    /// <param name="Sound">The bytes from the start that are sound lines.</param>
    public sealed record Content(ShardHead? Head, Dictionary<int, string> Records, int Sound);

    /// <summary>Reads what is sound, up to the first line that is not.</summary>
    public static Content Read(ReadOnlySpan<byte> bytes)
    {
        var records = new Dictionary<int, string>();
        int at = 0;
        if (NextLine(bytes, ref at, "") is not { } first || ShardHead.Parse(first) is not { } head)
            return new Content(null, records, 0);
        int sound = at;
        while (NextLine(bytes, ref at, first) is { } line)
        {
            int tab = line.IndexOf('\t', StringComparison.Ordinal);
            if (tab < 0 || !int.TryParse(line.AsSpan(0, tab), NumberStyles.None, CultureInfo.InvariantCulture, out int item) || item >= head.Items || !head.Shard.Holds(item))
                break;
            records.TryAdd(item, line[(tab + 1)..]);
            sound = at;
        }
        return new Content(head, records, sound);
    }

    /// <summary>Finishes a shard: keeps what is sound, cuts off what is not, and adds what is missing.</summary>
    /// <exception cref="ShardException">The file is of another study or no shard's file; it is left as it is.</exception>
    public static (int Found, int Done, bool WasTorn) Finish(Stream stream, ShardHead head, Func<int, string> work, StudyOptions options)
    {
        var bytes = new byte[stream.Length];
        stream.Position = 0;
        stream.ReadExactly(bytes);
        Content content = Read(bytes);
        byte[] first = Line(head.Text, "");
        if (content.Head is { } other ? other != head : !first.AsSpan().StartsWith(bytes))
            throw new ShardException($"It is not the file of {head.Shard}: {(content.Head is { } o ? head.Reject(o) ?? $"it is {o.Shard}" : "it has no head of a shard")}. It was left as it is.");
        bool torn = content.Sound < bytes.Length;
        stream.SetLength(content.Sound);
        stream.Position = content.Sound;
        if (content.Head is null)
            stream.Write(first);
        int[] open = [.. head.Shard.ItemsOf(head.Items).Where(item => !content.Records.ContainsKey(item))];
        var gate = new Lock();
        long flushed = Stopwatch.GetTimestamp();
        try
        {
            options.For(open.Length, i =>
            {
                byte[] line = Line(string.Create(CultureInfo.InvariantCulture, $"{open[i]}\t{work(open[i])}"), head.Text);
                lock (gate)
                {
                    stream.Write(line);
                    stream.Flush();
                    if (Stopwatch.GetElapsedTime(flushed) < toDisk)
                        return;
                    ToDisk(stream);
                    flushed = Stopwatch.GetTimestamp();
                }
            });
        }
        finally
        {
            ToDisk(stream);
        }
        return (content.Records.Count, open.Length, torn);
    }

    /// <summary>A line with its sum and its end.</summary>
    internal static byte[] Line(string text, string head) => utf8.GetBytes($"{text}\t{Sum(text, head)}\n");

    private static string? NextLine(ReadOnlySpan<byte> bytes, ref int at, string head)
    {
        int length = bytes[at..].IndexOf((byte)'\n');
        if (length < SumLength + 1)
            return null;
        string line;
        try
        {
            line = utf8.GetString(bytes.Slice(at, length));
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
        int split = line.Length - SumLength - 1;
        if (split < 0 || line[split] != '\t' || line[(split + 1)..] != Sum(line[..split], head))
            return null;
        at += length + 1;
        return line[..split];
    }

    private static string Sum(string text, string head) => Convert.ToHexString(SHA256.HashData(utf8.GetBytes($"{head}\n{text}")).AsSpan(0, SumLength / 2));

    private static void ToDisk(Stream stream)
    {
        if (stream is FileStream file)
            file.Flush(flushToDisk: true);
        else
            stream.Flush();
    }
}
