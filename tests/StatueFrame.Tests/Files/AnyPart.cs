using System.Reflection;
using UnitsNet;

namespace StatueFrame.Tests.Files;

/// <summary>Makes parts of any type with random members, as the reflection finds them: every kind, every unit, every name.</summary>
internal sealed class AnyPart(Random random)
{
    private const int Deepest = 10;

    public object? Of(Type type, int depth = 0)
    {
        if (type == typeof(double))
            return Number();
        if (type == typeof(int))
            return random.Next(5) == 0 ? random.Next(int.MinValue, int.MaxValue) : random.Next(20);
        if (type == typeof(bool))
            return random.Next(2) == 0;
        if (type == typeof(string))
            return random.Next(4) == 0 ? "\"é\\\n\t∆ 🪶 </script>" : $"name {random.Next(9)}";
        if (type == typeof(Rigidity))
            return Rigidity.FromNewtonSquareMeters(Number());
        if (type.IsEnum)
            return Pick([.. Enum.GetValues(type).Cast<object>()]);
        if (typeof(IQuantity).IsAssignableFrom(type))
            return AnyQuantity(Quantity.Infos.Single(i => i.ValueType == type));
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ValueList<>))
            return List(type.GetGenericArguments()[0], depth);
        if (FileNames.Of(type) is { Length: > 0 } named && random.Next(4) == 0)
            return Pick(named).Value;
        if (type.IsAbstract)
            return Kind(type, depth);
        return RecordForm.Fits(type) ? Record(type, depth) : Made(type, depth);
    }

    /// <summary>Any number in any unit that can be converted: what cannot is refused by the reader.</summary>
    private IQuantity AnyQuantity(QuantityInfo info)
    {
        while (true)
        {
            IQuantity quantity = Quantity.From(Number(), Pick([.. info.UnitInfos]).Value);
            try
            {
                if (double.IsFinite((double)quantity.ToUnit(info.BaseUnitInfo.Value).Value))
                    return quantity;
            }
            catch (ArgumentException)
            {
            }
        }
    }

    private object? Kind(Type type, int depth)
    {
        Type[] kinds = [.. type.Assembly.GetExportedTypes().Where(t => type.IsAssignableFrom(t) && RecordForm.Fits(t))];
        return depth > Deepest ? Of(kinds.First(k => k.GetProperties().All(p => p.PropertyType != type)), depth + 1) : Of(Pick(kinds), depth + 1);
    }

    private object Record(Type type, int depth)
    {
        var form = new RecordForm(type);
        ConstructorInfo constructor = type.GetConstructors().OrderBy(c => c.GetParameters().Length == 0 ? 0 : 1).ThenByDescending(c => c.GetParameters().Length).First();
        object made = constructor.Invoke([.. constructor.GetParameters().Select(p => Nullable(p.ParameterType, false, depth))]);
        foreach (FileMember member in form.Members.Where(m => m.IsRequired || random.Next(3) > 0))
            type.GetProperty(member.CodeName)!.SetValue(made, Nullable(member.Type, member.IsNullable, depth));
        return made;
    }

    private object? Nullable(Type type, bool isNullable, int depth) =>
        isNullable && (depth > Deepest || random.Next(3) == 0) ? null : Of(System.Nullable.GetUnderlyingType(type) ?? type, depth + 1);

    /// <summary>A part that only its own methods make.</summary>
    private object Made(Type type, int depth)
    {
        MethodInfo[] methods = [.. type.GetMethods(BindingFlags.Public | BindingFlags.Static).Where(m => m.ReturnType == type && !m.IsSpecialName)];
        for (int i = 0; i < 1000; i++)
        {
            MethodInfo method = Pick(methods);
            try
            {
                return method.Invoke(null, [.. method.GetParameters().Select(p => Nullable(p.ParameterType, p.HasDefaultValue, depth))])!;
            }
            catch (TargetInvocationException e) when (e.InnerException is ArgumentException)
            {
                // Out of its range: try again.
            }
        }
        return Pick(FileNames.Of(type)).Value;
    }

    private object List(Type item, int depth)
    {
        object?[] items = [.. Enumerable.Range(0, depth > Deepest ? 0 : random.Next(3)).Select(_ => Of(item, depth + 1))];
        var typed = Array.CreateInstance(item, items.Length);
        items.CopyTo(typed, 0);
        return typeof(ValueList).GetMethod(nameof(ValueList.ToValueList))!.MakeGenericMethod(item).Invoke(null, [typed])!;
    }

    private double Number() => random.Next(5) switch
    {
        0 => random.Next(-5, 50),
        1 => random.NextDouble(),
        2 => BitConverter.Int64BitsToDouble(random.NextInt64()) is var any && double.IsFinite(any) ? any : -0.0,
        _ => random.Next(1, 400) / 10.0,
    };

    private T Pick<T>(IReadOnlyList<T> list) => list[random.Next(list.Count)];
}
