namespace StatueFrame;

/// <summary>Writes a result for a notebook in one way; the members are called by name.</summary>
internal sealed class NotebookFormatter(string mimeType, Func<object, string?> text)
{
    public string MimeType { get; } = mimeType;

    /// <summary>Writes the result; false when it is not of the kind that was meant.</summary>
    public bool Format(object instance, TextWriter writer)
    {
        if (text(instance) is not { } written)
            return false;
        writer.Write(written);
        return true;
    }
}
