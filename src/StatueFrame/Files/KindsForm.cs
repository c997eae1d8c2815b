using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>A part of which there are several kinds, written as the object of its kind with the word for it.</summary>
internal sealed class KindsForm : FileForm
{
    private readonly Type type;
    private readonly Dictionary<string, RecordForm> kinds;

    public KindsForm(Type type)
    {
        this.type = type;
        kinds = type.Assembly.GetExportedTypes().Where(t => type.IsAssignableFrom(t) && RecordForm.Fits(t))
            .OrderBy(t => t.Name, StringComparer.Ordinal).ToDictionary(t => t.Name, t => new RecordForm(t));
    }

    public override void Write(Utf8JsonWriter writer, object value, string path)
    {
        if (!kinds.TryGetValue(value.GetType().Name, out RecordForm? form) || value.GetType().Assembly != type.Assembly)
            throw CannotWrite(path, $"{value.GetType().Name} cannot be written", $"Kinds of {type.Name} that can are {string.Join(", ", kinds.Keys)}.");
        form.Write(writer, value, path, value.GetType().Name);
    }

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        if (node.Kind != JsonTokenType.StartObject)
            problems.WrongKind(node, path, $"an object in braces for {type.Name}", FileNames.Hint(type));
        else if (node.Member(MemberReading.Kind) is not { } kind)
            problems.Add(node, FileForms.Join(path, MemberReading.Kind), "is missing", $"Say which {type.Name} it is: {string.Join(", ", kinds.Keys)}.");
        else if (kind.Kind != JsonTokenType.String)
            problems.WrongKind(kind, FileForms.Join(path, MemberReading.Kind), "a word in quotes", $"There are {string.Join(", ", kinds.Keys)}.");
        else if (!kinds.TryGetValue(kind.Text, out RecordForm? form))
            problems.Add(kind, FileForms.Join(path, MemberReading.Kind), $"is no kind of {type.Name}: \"{FileNode.Short(kind.Text)}\"", NearNames.Closest(FileNode.Short(kind.Text), kinds.Keys));
        else
            return form.Read(node, path, problems, hasKind: true);
        return null;
    }

    public override IReadOnlyList<FileMember>? MembersOf(JsonObject value) =>
        (string?)value[MemberReading.Kind] is { } kind ? kinds.GetValueOrDefault(kind)?.Members : null;

    public override JsonObject Schema(FileSchema schema) => schema.Define(type.Name, () => FileSchema.ByKind(kinds.Select(k =>
        (k.Key, schema.Define($"{type.Name}.{k.Key}", () => MemberReading.Schema(schema, k.Value.Members, k.Key))))));
}
