using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>A record, written as an object of its members: the parameters of its constructor and all that can be set in an initializer.</summary>
internal sealed class RecordForm : FileForm
{
    private readonly Type type;
    private readonly ConstructorInfo constructor;
    private readonly Lazy<FileMember[]> members;
    private readonly Dictionary<string, PropertyInfo> properties;

    public RecordForm(Type type)
    {
        this.type = type;
        properties = PropertiesOf(type).ToDictionary(p => p.Name);
        constructor = ConstructorOf(type, properties)!;
        members = new(FindMembers);
    }

    public IReadOnlyList<FileMember> Members => members.Value;

    /// <summary>Whether a type can be made from its members.</summary>
    public static bool Fits(Type type) => !type.IsAbstract && ConstructorOf(type, PropertiesOf(type).ToDictionary(p => p.Name)) is not null;

    public override void Write(Utf8JsonWriter writer, object value, string path) => Write(writer, value, path, null);

    /// <summary>Writes the object with the word for its kind.</summary>
    public void Write(Utf8JsonWriter writer, object value, string path, string? kind)
    {
        if (writer.CurrentDepth >= FileNode.MostDepth)
            throw CannotWrite(path, "is nested too deeply", $"A file nests at most {FileNode.MostDepth} deep.");
        writer.WriteStartObject();
        if (kind is not null)
            writer.WriteString(MemberReading.Kind, kind);
        foreach (FileMember member in Members)
            member.Write(writer, value, path);
        writer.WriteEndObject();
    }

    public override object? Read(FileNode node, string path, FileProblems problems) => Read(node, path, problems, hasKind: false);

    public object? Read(FileNode node, string path, FileProblems problems, bool hasKind)
    {
        if (node.Kind != JsonTokenType.StartObject)
        {
            problems.WrongKind(node, path, $"an object in braces for {type.Name}", FileNames.Hint(type));
            return null;
        }
        if (MemberReading.Read(node, path, problems, Members, type.Name, hasKind) is not { } values)
            return null;
        try
        {
            object made = constructor.Invoke([.. constructor.GetParameters().Select(p => values.TryGetValue(p.Name!, out object? v) ? v : p.HasDefaultValue ? DefaultOf(p) : null)]);
            foreach ((string name, object? value) in values)
            {
                if (constructor.GetParameters().All(p => p.Name != name))
                    properties[name].SetValue(made, value);
            }
            return made;
        }
        catch (TargetInvocationException e) when (e.InnerException is ArgumentException refused)
        {
            problems.Add(node, path, "is refused", refused.Message.ReplaceLineEndings(" "));
            return null;
        }
    }

    public override IReadOnlyList<FileMember>? MembersOf(JsonObject value) => Members;

    public override JsonObject Schema(FileSchema schema) => schema.Define(type.Name, () => MemberReading.Schema(schema, Members, null));

    private static object? DefaultOf(ParameterInfo parameter) =>
        parameter.DefaultValue ?? (parameter.ParameterType.IsValueType ? Activator.CreateInstance(parameter.ParameterType) : null);

    private FileMember[] FindMembers()
    {
        ParameterInfo[] parameters = constructor.GetParameters();
        object blank = constructor.Invoke([.. parameters.Select(DefaultOfMissing)]);
        return [.. properties.Values.Select(Member)];

        FileMember Member(PropertyInfo property)
        {
            ParameterInfo? parameter = parameters.FirstOrDefault(p => p.Name == property.Name);
            return new FileMember
            {
                Type = property.PropertyType,
                CodeName = property.Name,
                Get = property.GetValue,
                IsRequired = parameter is { HasDefaultValue: false } || property.CustomAttributes.Any(a => a.AttributeType.Name == "RequiredMemberAttribute"),
                IsNullable = property.PropertyType.IsValueType
                    ? Nullable.GetUnderlyingType(property.PropertyType) is not null
                    : FileMember.IsNullableReference(new NullabilityInfoContext().Create(property)),
                Default = property.GetValue(blank),
            };
        }
    }

    private static object? DefaultOfMissing(ParameterInfo parameter) => parameter.HasDefaultValue ? DefaultOf(parameter)
        : parameter.ParameterType.IsValueType ? Activator.CreateInstance(parameter.ParameterType) : null;

    /// <summary>All that an initializer or a constructor can set, those of the base types first, each type in the order of its code.</summary>
    private static IEnumerable<PropertyInfo> PropertiesOf(Type type) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p is { CanRead: true, CanWrite: true } && p.GetIndexParameters().Length == 0)
            .OrderBy(p => Depth(p.DeclaringType!)).ThenBy(p => p.MetadataToken);

    private static int Depth(Type type) => type.BaseType is { } parent ? 1 + Depth(parent) : 0;

    /// <summary>The constructor whose parameters are all members; the one without parameters before others, then the longest.</summary>
    private static ConstructorInfo? ConstructorOf(Type type, Dictionary<string, PropertyInfo> properties) =>
        type.GetConstructors()
            .Where(c => c.GetParameters().All(p => properties.TryGetValue(p.Name!, out PropertyInfo? property) && property.PropertyType == p.ParameterType))
            .OrderBy(c => c.GetParameters().Length == 0 ? 0 : 1).ThenByDescending(c => c.GetParameters().Length)
            .FirstOrDefault();
}
