using System.Collections;
using System.Reflection;
using System.Text.Json;

namespace StatueFrame;

/// <summary>A member of a part as it stands in a file.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class FileMember
{
    public required Type Type { get; init; }

    /// <summary>The name in code.</summary>
    public required string CodeName { get; init; }

    public required Func<object, object?> Get { get; init; }

    /// <summary>Whether a file must give it.</summary>
    public required bool IsRequired { get; init; }

    /// <summary>Whether it may be null.</summary>
    public required bool IsNullable { get; init; }

    /// <summary>The value of a part that does not set it.</summary>
    public object? Default { get; init; }

    /// <summary>The name in the file: the name in code with a small first letter.</summary>
    public string Name => JsonNamingPolicy.CamelCase.ConvertName(CodeName);

    public FileForm Form => FileForms.Of(Nullable.GetUnderlyingType(Type) ?? Type);

    /// <summary>
    /// Whether a value goes without saying: nothing, where nothing is what the member has anyhow. What the library chose
    /// for the user is always written, so that a file keeps its meaning.
    /// </summary>
    public bool GoesWithoutSaying(object? value) => !IsRequired && IsNothing(value) && Equals(value, Default);

    public void Write(Utf8JsonWriter writer, object owner, string path)
    {
        object? value = Get(owner);
        if (GoesWithoutSaying(value))
            return;
        string at = FileForms.Join(path, Name);
        writer.WritePropertyName(Name);
        if (value is not null)
            Form.Write(writer, value, at);
        else if (IsNullable)
            writer.WriteNullValue();
        else
            throw FileForm.CannotWrite(at, "is missing (null)", "Give it a value.");
    }

    public static bool IsNullableReference(NullabilityInfo info) => info.ReadState == NullabilityState.Nullable;

    private bool IsNothing(object? value) => value switch
    {
        null => true,
        IEnumerable list and not string => !list.GetEnumerator().MoveNext(),
        Enum => false,
        _ => Type.IsValueType && value.Equals(Activator.CreateInstance(Nullable.GetUnderlyingType(Type) ?? Type)) && Nullable.GetUnderlyingType(Type) is null,
    };
}
