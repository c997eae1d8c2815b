namespace StatueFrame;

/// <summary>
/// Files that are written whole or not at all: under another name beside the old one, flushed to the disk, and then put in its
/// place. A full disk or a kill leaves the old file as it was.
/// </summary>
internal static class WholeFile
{
    /// <summary>Writes a file.</summary>
    /// <param name="path">The file; one that is there is replaced.</param>
    /// <param name="write">Writes its content.</param>
    /// <exception cref="IOException">The file cannot be written; the one that was there is as before.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        string full = Path.GetFullPath(path);
        string beside = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.{Guid.NewGuid():N}.tmp");
        try
        {
            using (var file = new FileStream(beside, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1 << 16))
            {
                write(file);
                file.Flush(flushToDisk: true);
            }
            File.Move(beside, full, overwrite: true);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
    }

    public static void Write(string path, byte[] bytes) => Write(path, file => file.Write(bytes));

    /// <summary>Writes a text in UTF-8.</summary>
    public static void Write(string path, string text) => Write(path, new System.Text.UTF8Encoding(false, throwOnInvalidBytes: true).GetBytes(text));
}
