namespace StatueFrame.Checks;

/// <summary>An entry of the catalogue given by its formula, which makes nothing but numbers until a check is asked for.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <typeparam name="T">What is demanded of a part.</typeparam>
internal sealed class FormulaEntry<T>(string id, string title, Nature nature, string parts, string demand, string capacity, string needs)
    : CheckEntry<T>(id, title, nature, parts, demand, capacity, needs)
{
    /// <summary>Gives demand and capacity, SI units, telling its steps to a listener.</summary>
    public delegate (double Demand, double Capacity) Calculation(Working? w, in T demand);

    /// <summary>Says something of a demand.</summary>
    public delegate TValue Of<TValue>(in T demand);

    /// <summary>Demand and capacity.</summary>
    public required Calculation Run { get; init; }

    /// <summary>What demand and capacity measure.</summary>
    public Dimension Dimension { get; init; } = Dimension.Number;

    /// <summary>The rule, with edition and clause.</summary>
    public required Of<Source> Rule { get; init; }

    /// <summary>Why it cannot be done; null when it can.</summary>
    public Of<string?> Lacks { get; init; } = (in T _) => null;

    /// <summary>The part, as in "band 3, bar 2".</summary>
    public required Of<string> Where { get; init; }

    /// <summary>Demand over capacity; infinite without capacity, null when it cannot be done.</summary>
    public override double? Utilization(in T demand)
    {
        if (Lacks(demand) is not null)
            return null;
        (double asked, double given) = Run(null, demand);
        return Check.UtilizationOf(asked, given);
    }

    public override string NameOf(T demand) => Where(demand);

    /// <summary>The same with everything that a sheet says of it.</summary>
    public override Check With(T demand, string situation)
    {
        CheckSubject subject = Subject(Where(demand), situation);
        Source rule = Rule(demand);
        return Lacks(demand) is { } reason
            ? Check.NotChecked(subject, reason, rule)
            : Check.Of(subject, Dimension, rule, w => Run(w, demand));
    }
}
