using System.Globalization;

namespace StatueFrame.Shape;

/// <summary>Reads a file forward through one buffer, as bytes or as lines, within a limit of bytes.</summary>
/// <remarks>Not safe to share between threads.</remarks>
internal sealed class MeshInput(Stream stream, long maxBytes)
{
    /// <summary>The longest line accepted, bytes; also the size of the buffer.</summary>
    public const int LongestLine = 1 << 16;

    private readonly byte[] buffer = new byte[LongestLine];
    private int start, end;
    private long before;
    private bool ended;

    /// <summary>Bytes taken so far.</summary>
    public long Position => before + start;

    /// <summary>Lines taken so far.</summary>
    public int Line { get; private set; }

    public string AtLine => string.Create(CultureInfo.InvariantCulture, $"line {Line}");

    public string AtByte => string.Create(CultureInfo.InvariantCulture, $"byte {Position}");

    /// <summary>The bytes that come next without taking them: up to <paramref name="count"/>, fewer at the end of the file.</summary>
    public ReadOnlySpan<byte> Peek(int count)
    {
        Fill(count);
        return buffer.AsSpan(start, Math.Min(count, end - start));
    }

    /// <summary>Takes exactly <paramref name="count"/> bytes; valid until the next call.</summary>
    public ReadOnlySpan<byte> Take(int count)
    {
        Fill(count);
        if (end - start < count)
            throw new MeshFileException("the file ends too early", AtByte);
        start += count;
        return buffer.AsSpan(start - count, count);
    }

    public bool AtEnd => Peek(1).IsEmpty;

    /// <summary>Takes a line without its end; valid until the next call. False at the end of the file.</summary>
    public bool TryLine(out ReadOnlySpan<byte> line)
    {
        int searched = 0;
        while (true)
        {
            int found = buffer.AsSpan(start + searched, end - start - searched).IndexOf((byte)'\n');
            if (found >= 0)
            {
                line = buffer.AsSpan(start, searched + found).TrimEnd((byte)'\r');
                start += searched + found + 1;
                Line++;
                return true;
            }
            searched = end - start;
            if (searched == LongestLine)
                throw new MeshFileException($"a line is longer than {LongestLine} bytes", string.Create(CultureInfo.InvariantCulture, $"line {Line + 1}"));
            if (!Fill(searched + 1))
                break;
        }
        line = buffer.AsSpan(start, end - start).TrimEnd((byte)'\r');
        bool any = end > start;
        start = end;
        if (any)
            Line++;
        return any;
    }

    /// <summary>Brings at least <paramref name="count"/> bytes into the buffer; false when the file has fewer.</summary>
    private bool Fill(int count)
    {
        if (end - start >= count)
            return true;
        if (start > 0)
        {
            buffer.AsSpan(start, end - start).CopyTo(buffer);
            before += start;
            end -= start;
            start = 0;
        }
        while (end < count && !ended)
        {
            int read = stream.Read(buffer, end, buffer.Length - end);
            ended = read == 0;
            end += read;
            if (before + end > maxBytes)
                throw new MeshFileException($"the file is larger than the {maxBytes} bytes allowed", "");
        }
        return end >= count;
    }
}
