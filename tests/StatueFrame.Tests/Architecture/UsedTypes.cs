using System.Reflection;
using System.Reflection.Emit;

namespace StatueFrame.Tests.Architecture;

/// <summary>The types that a compiled type uses: in its signatures and in the bodies of its methods, those of what is nested in it included.</summary>
internal static class UsedTypes
{
    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Dictionary<short, OpCode> codes = typeof(OpCodes).GetFields().Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => code.Value);

    /// <summary>The outermost type that a type is nested in: what has a file of its own.</summary>
    public static Type Outermost(Type type) => type.DeclaringType is { } outer ? Outermost(outer) : type;

    public static IEnumerable<Type> Of(Type type) =>
        Direct(type).SelectMany(Parts).Select(Outermost).Concat(type.GetNestedTypes(All).SelectMany(Of)).Distinct();

    private static IEnumerable<Type> Direct(Type type)
    {
        if (type.BaseType is { } parent)
            yield return parent;
        foreach (Type contract in type.GetInterfaces())
            yield return contract;
        foreach (FieldInfo field in type.GetFields(All))
            yield return field.FieldType;
        foreach (MethodBase method in type.GetMethods(All).Concat<MethodBase>(type.GetConstructors(All)))
        {
            if (method is MethodInfo { ReturnType: { } result })
                yield return result;
            foreach (ParameterInfo parameter in method.GetParameters())
                yield return parameter.ParameterType;
            foreach (Type used in Body(method))
                yield return used;
        }
    }

    private static IEnumerable<Type> Body(MethodBase method)
    {
        if (method.GetMethodBody() is not { } body)
            yield break;
        foreach (LocalVariableInfo local in body.LocalVariables)
            yield return local.LocalType;
        byte[] il = body.GetILAsByteArray()!;
        for (int at = 0; at < il.Length;)
        {
            OpCode code = il[at] == 0xFE ? codes[(short)(0xFE00 | il[at + 1])] : codes[il[at]];
            at += code.Size;
            if (code.OperandType is OperandType.InlineMethod or OperandType.InlineField or OperandType.InlineType or OperandType.InlineTok)
            {
                foreach (Type used in Resolve(method, BitConverter.ToInt32(il, at)))
                    yield return used;
            }
            at += code.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + 4 * BitConverter.ToInt32(il, at),
                _ => 4,
            };
        }
    }

    private static IEnumerable<Type> Resolve(MethodBase method, int token)
    {
        MemberInfo? member = method.Module.ResolveMember(
            token, method.DeclaringType?.GetGenericArguments(), method is MethodInfo { IsGenericMethod: true } generic ? generic.GetGenericArguments() : null);
        Type[] arguments = member is MethodInfo { IsGenericMethod: true } called ? called.GetGenericArguments() : [];
        return member switch
        {
            Type type => [type],
            { DeclaringType: { } owner } => [owner, .. arguments],
            _ => arguments,
        };
    }

    /// <summary>What a constructed type is made of.</summary>
    private static IEnumerable<Type> Parts(Type type)
    {
        if (type.IsGenericParameter)
            return [];
        if (type.HasElementType)
            return Parts(type.GetElementType()!);
        return type.IsConstructedGenericType ? type.GetGenericArguments().SelectMany(Parts).Append(type.GetGenericTypeDefinition()) : [type];
    }
}
