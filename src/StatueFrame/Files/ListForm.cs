using System.Collections;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>A <see cref="ValueList{T}"/>, written as a list in brackets.</summary>
internal sealed class ListForm(Type item) : FileForm
{
    private static readonly MethodInfo make = typeof(ListForm).GetMethod(nameof(Make), BindingFlags.Static | BindingFlags.NonPublic)!;

    private readonly Func<IReadOnlyList<object>, object> maker =
        make.MakeGenericMethod(item).CreateDelegate<Func<IReadOnlyList<object>, object>>();

    private FileForm Items => FileForms.Of(item);

    public override void Write(Utf8JsonWriter writer, object value, string path)
    {
        writer.WriteStartArray();
        int i = 0;
        foreach (object? element in (IEnumerable)value)
        {
            string at = $"{path}[{i++}]";
            Items.Write(writer, element ?? throw CannotWrite(at, "is missing (null)", "Take it out of the list."), at);
        }
        writer.WriteEndArray();
    }

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        if (node.Kind != JsonTokenType.StartArray)
        {
            problems.WrongKind(node, path, "a list in brackets", "Put the items in brackets, parted by commas; the empty list is [].");
            return null;
        }
        var read = new List<object>(node.Items.Count);
        for (int i = 0; i < node.Items.Count; i++)
        {
            if (Items.Read(node.Items[i], $"{path}[{i}]", problems) is { } element)
                read.Add(element);
        }
        return read.Count == node.Items.Count ? maker(read) : null;
    }

    public override JsonObject Schema(FileSchema schema) => new() { ["type"] = "array", ["items"] = Items.Schema(schema) };

    private static object Make<T>(IReadOnlyList<object> items)
    {
        var typed = new T[items.Count];
        for (int i = 0; i < typed.Length; i++)
            typed[i] = (T)items[i];
        return ValueList.Create<T>(typed);
    }
}
