namespace StatueFrame.Checks;

/// <summary>What the catalogue says of one kind of check: the same in every situation, study and document.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="id">Family and name, as in "bars.bending"; the same in every release.</param>
/// <param name="title">The check in words.</param>
/// <param name="nature">What kind of question it answers.</param>
/// <param name="parts">What it looks at, as in "every bar, under every bound on the skin".</param>
/// <param name="demand">What is demanded, in words.</param>
/// <param name="capacity">What it is compared with, in words.</param>
/// <param name="needs">What it needs, said as the reason when that lacks.</param>
internal class CheckEntry(string id, string title, Nature nature, string parts, string demand, string capacity, string needs)
{
    public string Id { get; } = id;

    public string Title { get; } = title;

    public Nature Nature { get; } = nature;

    public string Parts { get; } = parts;

    public string Demand { get; } = demand;

    public string Capacity { get; } = capacity;

    public string Needs { get; } = needs;

    public string Family => Id[..Id.IndexOf('.')];

    public CheckSubject Subject(string where = "", string situation = "") => new(Id, Title, where, situation);

    /// <summary>The check, not done.</summary>
    public Check NotChecked(string reason, string where = "", string situation = "") =>
        Check.NotChecked(Subject(where, situation), reason, Source.Assumed("checks"));
}

/// <summary>A check that runs on one kind of demand: for a number alone, or for a <see cref="Check"/> with its working.</summary>
/// <remarks>Both come from one function, so that a study and a sheet can not differ.</remarks>
/// <typeparam name="T">What is demanded of a part.</typeparam>
internal abstract class CheckEntry<T>(string id, string title, Nature nature, string parts, string demand, string capacity, string needs)
    : CheckEntry(id, title, nature, parts, demand, capacity, needs)
{
    /// <summary>Demand over capacity; infinite without capacity, null when it cannot be done.</summary>
    public abstract double? Utilization(in T demand);

    /// <summary>The name of the part; empty when the entry can not say it without its check.</summary>
    public virtual string NameOf(T demand) => "";

    /// <summary>The same with everything that a sheet says of it.</summary>
    public abstract Check With(T demand, string situation);
}
