namespace StatueFrame.Checks;

/// <summary>An entry of the catalogue given by the function that makes its check.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <typeparam name="T">What is demanded of a part.</typeparam>
internal sealed class MadeEntry<T>(string id, string title, Nature nature, string parts, string demand, string capacity, string needs, Func<T, string, Check> make)
    : CheckEntry<T>(id, title, nature, parts, demand, capacity, needs)
{
    public override double? Utilization(in T demand) => make(demand, "").Utilization;

    public override Check With(T demand, string situation) => make(demand, situation);
}
