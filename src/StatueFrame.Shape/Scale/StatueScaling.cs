using System.Collections;
using System.Reflection;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>Scales whole descriptions.</summary>
/// <remarks>Safe to use from many threads at once.</remarks>
public static class StatueScaling
{
    /// <summary>
    /// The same statue of the same materials at another size: every quantity of the description is multiplied by the power
    /// of the factor that its dimension asks for. With equal densities and moduli a mass goes with s³ and a time with s, so
    /// a quantity of dimension LᵃMᵇTᶜ goes with s to the a + 3b + c: lengths s, forces s², masses, springs against rotation
    /// and moments s³, rigidities s⁴, densities, moduli and angles not at all.
    /// </summary>
    /// <param name="statue">The statue.</param>
    /// <param name="factor">New size over old, 0.001 to 1000.</param>
    /// <param name="sheet">What becomes of the sheet's thickness.</param>
    /// <returns>The scaled statue; it may be refused by its own checks when parts became thinner or wider than plausible.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The factor is out of range.</exception>
    public static Statue Scaled(this Statue statue, double factor, SheetRule sheet)
    {
        ArgumentNullException.ThrowIfNull(statue);
        if (!(factor is >= 1e-3 and <= 1e3))
            throw new ArgumentOutOfRangeException(nameof(factor), factor, "must be 0.001 to 1000");
        if (!Enum.IsDefined(sheet))
            throw new ArgumentOutOfRangeException(nameof(sheet), sheet, "is no rule");
        var scaled = (Statue)Scaled(statue, factor)!;
        if (sheet == SheetRule.Scaled)
            return scaled;
        return scaled with
        {
            Skin = Thickness(scaled.Skin, statue.Skin),
            Limbs = [.. scaled.Limbs.Select((l, i) => l with { Skin = Thickness(l.Skin, statue.Limbs[i].Skin) })],
        };
    }

    private static Skin? Thickness(Skin? scaled, Skin? old) => scaled is null || old is null ? scaled : scaled with
    {
        Thickness = old.Thickness,
        Stations = [.. scaled.Stations.Select((s, i) => s with { Thickness = old.Stations[i].Thickness })],
    };

    private static object? Scaled(object? value, double factor)
    {
        switch (value)
        {
            case null:
                return null;
            case IQuantity quantity:
                BaseDimensions d = quantity.QuantityInfo.BaseDimensions;
                int power = d.Length + 3 * d.Mass + d.Time;
                return power == 0 ? value : Quantity.From((double)quantity.Value * Math.Pow(factor, power), quantity.Unit);
            case Rigidity rigidity:
                return Rigidity.FromNewtonSquareMeters(rigidity.NewtonSquareMeters * Math.Pow(factor, 4));
        }
        Type type = value.GetType();
        if (type.Assembly != typeof(Statue).Assembly || type.IsEnum)
            return value;
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ValueList<>))
            return List((IEnumerable)value, type.GetGenericArguments()[0], factor);
        return Record(value, type, factor);
    }

    private static object List(IEnumerable list, Type item, double factor)
    {
        object?[] scaled = [.. list.Cast<object?>().Select(i => Scaled(i, factor))];
        Array items = Array.CreateInstance(item, scaled.Length);
        scaled.CopyTo(items, 0);
        MethodInfo make = typeof(ValueList).GetMethod(nameof(ValueList.ToValueList))!.MakeGenericMethod(item);
        return make.Invoke(null, [items])!;
    }

    /// <summary>A copy of a record, made as <c>with</c> makes it, with every member that can be set scaled.</summary>
    private static object Record(object value, Type type, double factor)
    {
        object copy = type.IsValueType ? value : type.GetMethod("<Clone>$")?.Invoke(value, null) ?? value;
        if (ReferenceEquals(copy, value) && !type.IsValueType)
            return value;
        foreach (PropertyInfo member in type.GetProperties(BindingFlags.Public | BindingFlags.Instance))
        {
            if (member.SetMethod?.IsPublic == true && member.GetIndexParameters().Length == 0)
                member.SetValue(copy, Scaled(member.GetValue(value), factor));
        }
        return copy;
    }
}
