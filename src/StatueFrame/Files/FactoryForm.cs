using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>
/// A part that only its own static methods can make, written as the call that makes an equal one: the method as its kind,
/// and the arguments. An argument is found as the property, public or internal, of the parameter's name.
/// </summary>
internal sealed class FactoryForm : FileForm
{
    private readonly Type type;
    private readonly (MethodInfo Method, FileMember[] Members)[] factories;

    public FactoryForm(Type type)
    {
        this.type = type;
        factories = [.. type.GetMethods(BindingFlags.Public | BindingFlags.Static)
            .Where(m => m.ReturnType == type && !m.IsSpecialName && m.GetParameters().All(p => PropertyOf(p) is not null))
            .OrderBy(m => m.MetadataToken)
            .Select(m => (m, m.GetParameters().Select(Member).ToArray()))];
    }

    /// <summary>Whether a type can be made in this way.</summary>
    public static bool Fits(Type type) => new FactoryForm(type).factories.Length > 0;

    public override void Write(Utf8JsonWriter writer, object value, string path)
    {
        foreach ((MethodInfo method, FileMember[] members) in factories)
        {
            object?[] arguments = [.. members.Select(m => m.Get(value))];
            if (members.Zip(arguments).Any(pair => pair.Second is null && !pair.First.IsNullable) || !value.Equals(Make(method, arguments)))
                continue;
            writer.WriteStartObject();
            writer.WriteString(MemberReading.Kind, method.Name);
            foreach (FileMember member in members)
                member.Write(writer, value, path);
            writer.WriteEndObject();
            return;
        }
        throw CannotWrite(path, $"this {type.Name} ({value}) cannot be written", $"Make it by {string.Join(" or ", factories.Select(f => $"{type.Name}.{f.Method.Name}"))}.");
    }

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        string at = FileForms.Join(path, MemberReading.Kind);
        IEnumerable<string> words = factories.Select(f => f.Method.Name);
        if (node.Kind != JsonTokenType.StartObject)
            problems.WrongKind(node, path, $"an object in braces for {type.Name}", FileNames.Hint(type));
        else if (node.Member(MemberReading.Kind) is not { Kind: JsonTokenType.String } kind)
            problems.Add(node, at, "is missing", $"Say how {type.Name} makes it: {string.Join(", ", words)}.");
        else if (factories.FirstOrDefault(f => f.Method.Name == kind.Text) is not { Method: { } method, Members: var members })
            problems.Add(kind, at, $"is no kind of {type.Name}: \"{FileNode.Short(kind.Text)}\"", NearNames.Closest(FileNode.Short(kind.Text), words));
        else if (MemberReading.Read(node, path, problems, members, type.Name, hasKind: true) is { } values)
        {
            try
            {
                return method.Invoke(null, [.. members.Select(m => values.TryGetValue(m.CodeName, out object? v) ? v : m.Default)]);
            }
            catch (TargetInvocationException e) when (e.InnerException is ArgumentException refused)
            {
                problems.Add(node, path, "is refused", refused.Message.ReplaceLineEndings(" "));
            }
        }
        return null;
    }

    public override JsonObject Schema(FileSchema schema) => schema.Define(type.Name, () => FileSchema.ByKind(factories.Select(f =>
        (f.Method.Name, MemberReading.Schema(schema, f.Members, f.Method.Name)))));

    private static object? Make(MethodInfo method, object?[] arguments)
    {
        try
        {
            return method.Invoke(null, arguments);
        }
        catch (TargetInvocationException e) when (e.InnerException is ArgumentException)
        {
            return null;
        }
    }

    private FileMember Member(ParameterInfo parameter) => new()
    {
        Type = parameter.ParameterType,
        CodeName = parameter.Name!,
        Get = PropertyOf(parameter)!.GetValue,
        IsRequired = !parameter.HasDefaultValue,
        IsNullable = Nullable.GetUnderlyingType(parameter.ParameterType) is not null,
        Default = parameter.HasDefaultValue ? parameter.DefaultValue : null,
    };

    private PropertyInfo? PropertyOf(ParameterInfo parameter) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance).FirstOrDefault(p =>
            p.Name.Equals(parameter.Name, StringComparison.OrdinalIgnoreCase)
            && (Nullable.GetUnderlyingType(p.PropertyType) ?? p.PropertyType) == (Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType));
}
