using System.Text;

namespace StatueFrame.Reporting;

/// <summary>
/// Writes HTML whose elements always close and whose text is always escaped: nothing that a user names can become markup.
/// </summary>
/// <remarks>For one thread.</remarks>
internal sealed class HtmlText
{
    private readonly StringBuilder text = new();

    /// <summary>Opens an element, to be closed by disposing of what is returned.</summary>
    /// <param name="name">Name of the element.</param>
    /// <param name="attributes">Names and values; an attribute without a value is left out.</param>
    public Open Element(string name, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Begin(name, attributes);
        return new Open(this, name);
    }

    /// <summary>An element that holds only text.</summary>
    public HtmlText Element(string name, string content, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Begin(name, attributes);
        Text(content);
        text.Append("</").Append(name).Append('>');
        return this;
    }

    /// <summary>An element that has no content and no end, as br.</summary>
    public HtmlText Void(string name, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Begin(name, attributes);
        return this;
    }

    /// <summary>Plain text.</summary>
    public HtmlText Text(string content)
    {
        Escape(content);
        return this;
    }

    /// <summary>A new line between elements, for those who read the file.</summary>
    public HtmlText Line()
    {
        text.Append('\n');
        return this;
    }

    /// <summary>Markup of this library's own: a style sheet or a drawing.</summary>
    public HtmlText Trusted(string markup)
    {
        text.Append(markup);
        return this;
    }

    /// <summary>What has been written.</summary>
    public override string ToString() => text.ToString();

    private void Begin(string name, ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        text.Append('<').Append(name);
        foreach ((string attribute, string? value) in attributes)
        {
            if (value is null)
                continue;
            text.Append(' ').Append(attribute).Append("=\"");
            Escape(value);
            text.Append('"');
        }
        text.Append('>');
    }

    private void Escape(string content)
    {
        foreach (char c in content)
        {
            switch (c)
            {
                case '&': text.Append("&amp;"); break;
                case '<': text.Append("&lt;"); break;
                case '>': text.Append("&gt;"); break;
                case '"': text.Append("&quot;"); break;
                case '\'': text.Append("&#39;"); break;
                case '\t' or '\n' or '\r': text.Append(c); break;
                // Characters that HTML does not allow, or that would turn or hide what stands beside them.
                case '\ufffe' or '\uffff': text.Append('\ufffd'); break;
                default: text.Append(Validator.IsHidden(c) ? '\ufffd' : c); break;
            }
        }
    }

    /// <summary>An element that is open until disposed of.</summary>
    public readonly ref struct Open(HtmlText html, string name)
    {
        /// <summary>Closes the element.</summary>
        public void Dispose() => html.text.Append("</").Append(name).Append('>');
    }
}
