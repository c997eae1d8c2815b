using System.Collections;
using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Text;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// A description as a text that tells it from every other one, whether it is valid or not: types, members and the bits of all
/// numbers. Of this library's records it takes what can be given; of a user's own types, their fields.
/// </summary>
/// <remarks>Safe to use from many threads. Functions count by their method alone.</remarks>
internal static class DescriptionBits
{
    private const int MostDepth = 64;

    private static readonly ConcurrentDictionary<Type, Func<object, object?>[]> members = [];

    public static string Of(params ReadOnlySpan<object?> parts)
    {
        var text = new StringBuilder();
        foreach (object? part in parts)
            Append(text, part, 0);
        return text.ToString();
    }

    private static void Append(StringBuilder text, object? value, int depth)
    {
        if (depth > MostDepth)
            throw new InvalidOperationException("A description holds itself.");
        switch (value)
        {
            case null:
                text.Append("null;");
                break;
            case string s:
                text.Append(s.Length).Append('"').Append(s).Append(';');
                break;
            case double number:
                text.Append(BitConverter.DoubleToInt64Bits(number).ToString("x", CultureInfo.InvariantCulture)).Append(';');
                break;
            case IQuantity quantity:
                text.Append(BitConverter.DoubleToInt64Bits((double)quantity.Value).ToString("x", CultureInfo.InvariantCulture)).Append(' ').Append(quantity.Unit).Append(';');
                break;
            case Delegate function:
                text.Append(function.Method.DeclaringType?.FullName).Append('.').Append(function.Method.Name).Append(';');
                break;
            case IFormattable plain when value.GetType().IsPrimitive || value is Enum or decimal or DateTime or DateTimeOffset or TimeSpan or Guid:
                text.Append(plain.ToString(null, CultureInfo.InvariantCulture)).Append(';');
                break;
            case bool truth:
                text.Append(truth ? "true;" : "false;");
                break;
            case IEnumerable list:
                text.Append('[');
                foreach (object? item in list)
                    Append(text, item, depth + 1);
                text.Append("];");
                break;
            default:
                text.Append(value.GetType().FullName).Append('{');
                foreach (Func<object, object?> member in members.GetOrAdd(value.GetType(), MembersOf))
                    Append(text, member(value), depth + 1);
                text.Append("};");
                break;
        }
    }

    private static Func<object, object?>[] MembersOf(Type type)
    {
        if (type.Assembly == typeof(Statue).Assembly)
        {
            PropertyInfo[] given = [.. type.GetProperties(BindingFlags.Instance | BindingFlags.Public)
                .Where(property => property.GetIndexParameters().Length == 0 && property.CanRead && property.SetMethod is not null).OrderBy(property => property.Name, StringComparer.Ordinal)];
            if (given.Length > 0)
                return Array.ConvertAll(given, property => (Func<object, object?>)property.GetValue);
        }
        var fields = new List<Func<object, object?>>();
        for (Type? part = type; part is not null && part != typeof(object); part = part.BaseType)
        {
            foreach (FieldInfo field in part.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly).OrderBy(field => field.Name, StringComparer.Ordinal))
                fields.Add(field.GetValue);
        }
        return [.. fields];
    }
}
