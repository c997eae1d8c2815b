using System.Collections.Concurrent;
using UnitsNet;

namespace StatueFrame;

/// <summary>The form of every type that can stand in a file, found from the type itself.</summary>
/// <remarks>Safe to share between threads; each form is made once and then only read.</remarks>
internal static class FileForms
{
    private static readonly ConcurrentDictionary<Type, FileForm> forms = new()
    {
        [typeof(double)] = new NumberForm(),
        [typeof(int)] = new IntegerForm(),
        [typeof(bool)] = new TruthForm(),
        [typeof(string)] = new TextForm(),
        [typeof(Rigidity)] = new RigidityForm(),
    };

    public static FileForm Of(Type type) => forms.GetOrAdd(type, Make);

    /// <summary>The path of a member.</summary>
    public static string Join(string path, string member) => path.Length == 0 ? member : $"{path}.{member}";

    private static FileForm Make(Type type)
    {
        if (type.IsEnum)
            return new WordForm(type);
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ValueList<>))
            return new ListForm(type.GetGenericArguments()[0]);
        if (typeof(IQuantity).IsAssignableFrom(type) && type.IsValueType)
            return new QuantityForm(type);
        if (type.Assembly != typeof(Statue).Assembly || typeof(Delegate).IsAssignableFrom(type))
            return new UnwritableForm(type);
        FileForm inFull = type.IsAbstract ? new KindsForm(type)
            : RecordForm.Fits(type) ? new RecordForm(type)
            : FactoryForm.Fits(type) ? new FactoryForm(type)
            : new UnwritableForm(type);
        return FileNames.Of(type) is { Length: > 0 } named ? new NamedForm(type, inFull, named) : inFull;
    }
}
