using CsCheck;

namespace StatueFrame.Tests.Checks.Metals;

/// <summary>Picks one of a few values.</summary>
internal static class AnyOf
{
    public static Gen<T> Any<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);
}
