namespace StatueFrame;

/// <summary>
/// Tells a C# notebook how a type shows itself. Notebooks find the attribute by its name, and call the source and the
/// formatters that it makes by the names of their members, so that the library needs no package of theirs.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class TypeFormatterSourceAttribute(Type formatterSourceType) : Attribute
{
    public Type FormatterSourceType { get; } = formatterSourceType;

    public string[] PreferredMimeTypes { get; set; } = ["text/html"];
}
