using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;

namespace StatueFrame.Testing;

/// <summary>The public types and members of an assembly as a sorted text, one a line. What compilers add by themselves is left out.</summary>
public static class PublicApi
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly NullabilityInfoContext nullability = new();

    public static string Of(Assembly assembly)
    {
        var text = new StringBuilder();
        foreach (Type type in assembly.GetExportedTypes().Where(t => !t.FullName!.Contains('<')).OrderBy(t => t.FullName, StringComparer.Ordinal))
        {
            text.Append(Header(type)).Append('\n');
            foreach (string member in Members(type).Distinct().Order(StringComparer.Ordinal))
                text.Append("    ").Append(member).Append('\n');
        }
        return text.ToString();
    }

    private static string Header(Type type)
    {
        string kind = type.IsEnum ? "enum" : type.IsInterface ? "interface" : typeof(Delegate).IsAssignableFrom(type) ? "delegate"
            : type.IsValueType ? (IsRecord(type) ? "record struct" : "struct")
            : $"{(type.IsAbstract ? type.IsSealed ? "static " : "abstract " : type.IsSealed ? "sealed " : "")}{(IsRecord(type) ? "record" : "class")}";
        string[] bases = [.. new[] { type.BaseType }.Concat(type.GetInterfaces()).OfType<Type>().Where(t => IsTold(t, type)).Select(Name).Order(StringComparer.Ordinal)];
        return $"{type.Namespace}: {kind} {Name(type)}{(bases.Length > 0 ? " : " + string.Join(", ", bases) : "")}";
    }

    private static bool IsTold(Type based, Type type) => !type.IsEnum && based != typeof(object) && based != typeof(ValueType)
        && !(based.IsGenericType && based.GetGenericTypeDefinition() == typeof(IEquatable<>)) && based.IsVisible;

    private static bool IsRecord(Type type) => type.GetMethods(Declared).Any(m => m.Name == "PrintMembers");

    private static IEnumerable<string> Members(Type type)
    {
        if (type.IsEnum)
            return Enum.GetNames(type).Select(name => $"{name} = {Convert.ToInt64(Enum.Parse(type, name), CultureInfo.InvariantCulture)}");
        return type.GetMembers(Declared).Where(m => m is not Type && !m.IsDefined(typeof(CompilerGeneratedAttribute)) && !m.Name.Contains('<')).Select(Line).OfType<string>();
    }

    private static string? Line(MemberInfo member) => member switch
    {
        ConstructorInfo c when IsVisible(c) => $"{Access(c)}new({Parameters(c)})",
        PropertyInfo p => Property(p),
        FieldInfo f when f.IsPublic || f.IsFamily => $"{(f.IsLiteral ? "const " : f.IsStatic ? "static " : "")}{Name(f.FieldType)} {f.Name}{(f.IsLiteral ? $" = {Convert.ToString(f.GetRawConstantValue(), CultureInfo.InvariantCulture)}" : "")}",
        EventInfo e when e.AddMethod is { } add && IsVisible(add) => $"event {Name(e.EventHandlerType!)} {e.Name}",
        MethodInfo m when IsVisible(m) && !IsAccessor(m) => Method(m),
        _ => null,
    };

    private static string? Property(PropertyInfo property)
    {
        MethodInfo? get = property.GetMethod is { } g && IsVisible(g) ? g : null;
        MethodInfo? set = property.SetMethod is { } s && IsVisible(s) ? s : null;
        if (get is null && set is null)
            return null;
        bool isInit = set?.ReturnParameter.GetRequiredCustomModifiers().Any(m => m.Name == "IsExternalInit") == true;
        string required = property.CustomAttributes.Any(a => a.AttributeType.Name == "RequiredMemberAttribute") ? "required " : "";
        string index = property.GetIndexParameters() is { Length: > 0 } parameters ? $"[{string.Join(", ", parameters.Select(Parameter))}]" : "";
        return $"{Access((get ?? set)!)}{required}{Name(property.PropertyType)}{Mark(property.PropertyType, nullability.Create(property))} {property.Name}{index} {{{(get is null ? "" : " get;")}{(set is null ? "" : isInit ? " init;" : " set;")} }}";
    }

    private static string Method(MethodInfo method) =>
        $"{Access(method)}{Name(method.ReturnType)}{Mark(method.ReturnType, nullability.Create(method.ReturnParameter))} {method.Name}{Generics(method)}({Parameters(method)})";

    private static string Generics(MethodInfo method) => method.IsGenericMethod ? $"<{string.Join(", ", method.GetGenericArguments().Select(Name))}>" : "";

    private static string Parameters(MethodBase method) =>
        (method.IsDefined(typeof(ExtensionAttribute)) ? "this " : "") + string.Join(", ", method.GetParameters().Select(Parameter));

    private static string Parameter(ParameterInfo p)
    {
        string way = p.IsOut ? "out " : p.ParameterType.IsByRef ? p.IsIn ? "in " : "ref " : "";
        string standard = !p.HasDefaultValue ? "" : $" = {(p.RawDefaultValue is null ? "default" : Convert.ToString(p.RawDefaultValue, CultureInfo.InvariantCulture))}";
        return $"{way}{Name(p.ParameterType)}{Mark(p.ParameterType, nullability.Create(p))} {p.Name}{standard}";
    }

    private static string Mark(Type type, NullabilityInfo info) => !type.IsValueType && info.ReadState == NullabilityState.Nullable ? "?" : "";

    private static string Access(MethodBase m) =>
        (m.IsPublic ? "" : "protected ") + (m.IsStatic ? "static " : m.IsAbstract && !m.DeclaringType!.IsInterface ? "abstract " : "");

    private static bool IsVisible(MethodBase m) => m.IsPublic || m.IsFamily || m.IsFamilyOrAssembly;

    private static bool IsAccessor(MethodInfo m) =>
        m.IsSpecialName && !m.Name.StartsWith("op_", StringComparison.Ordinal)
        && m.DeclaringType!.GetProperties(Declared).SelectMany(p => p.GetAccessors(nonPublic: true)).Contains(m);

    private static string Name(Type type)
    {
        if (type.IsByRef)
            return Name(type.GetElementType()!);
        if (type.IsArray)
            return $"{Name(type.GetElementType()!)}[{new string(',', type.GetArrayRank() - 1)}]";
        if (Nullable.GetUnderlyingType(type) is { } value)
            return Name(value) + "?";
        if (type.IsGenericParameter)
            return type.Name;
        string outer = type.IsNested ? Name(type.DeclaringType!) + "." : "";
        string plain = type.Name.Split('`')[0];
        return outer + (type.IsGenericType ? $"{plain}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>" : Keyword(type) ?? plain);
    }

    private static string? Keyword(Type type) => type.FullName switch
    {
        "System.Double" => "double",
        "System.Int32" => "int",
        "System.Int64" => "long",
        "System.Boolean" => "bool",
        "System.String" => "string",
        "System.Object" => "object",
        "System.Void" => "void",
        "System.Byte" => "byte",
        _ => null,
    };
}
