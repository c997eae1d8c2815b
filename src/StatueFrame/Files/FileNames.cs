using System.Reflection;

namespace StatueFrame;

/// <summary>The values that the library brings, by name: "StructuralSteel.S355", "EndFixity.Rigid", "Source.User".</summary>
internal static class FileNames
{
    private static readonly Lazy<ILookup<Type, PropertyInfo>> all = new(() =>
        typeof(Statue).Assembly.GetExportedTypes()
            .Where(t => !t.ContainsGenericParameters)
            .SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(p => p is { CanRead: true, CanWrite: false })
            .OrderBy(NameOf, StringComparer.Ordinal)
            .ToLookup(p => p.PropertyType));

    /// <summary>The values of a type, or of its kinds, by name and in order of the names.</summary>
    public static (string Name, object Value)[] Of(Type type) =>
        [.. all.Value.Where(group => type.IsAssignableFrom(group.Key)).SelectMany(group => group)
            .Select(p => (Name: NameOf(p), Value: p.GetValue(null)!)).OrderBy(p => p.Name, StringComparer.Ordinal)];

    /// <summary>How to write a value of a type.</summary>
    public static string Hint(Type type) => all.Value.FirstOrDefault(group => type.IsAssignableFrom(group.Key)) is { } named
        ? $"Write {{ … }}, or a name, as in \"{NameOf(named.First())}\"."
        : "Write { … } with its members.";

    private static string NameOf(PropertyInfo property) => $"{property.DeclaringType!.Name}.{property.Name}";
}
