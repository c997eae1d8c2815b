namespace StatueFrame.Shape;

/// <summary>A stream read forward, which tells how much of it is read and stops when asked to.</summary>
/// <remarks>Not safe to share between threads.</remarks>
internal sealed class WatchedStream(Stream stream, MeshReading reading) : Stream
{
    private readonly long length = stream.CanSeek ? Math.Max(1, stream.Length - stream.Position) : 0;
    private long read;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        reading.Cancellation.ThrowIfCancellationRequested();
        int count = stream.Read(buffer);
        read += count;
        if (length > 0)
            reading.Progress?.Report(Math.Min(1, (double)read / length));
        return count;
    }

    public override void Flush() => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
