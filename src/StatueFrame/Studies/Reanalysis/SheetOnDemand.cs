namespace StatueFrame.Studies;

/// <summary>The catalogue's numbers of a variant, found when they are first asked for; that they are found is no part of what a variant says, so all are equal.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed record SheetOnDemand
{
    private readonly Lazy<SheetNumbers> numbers;

    public SheetOnDemand(Statue variant, Criteria criteria, Situation[] situations) =>
        numbers = new Lazy<SheetNumbers>(() => new SheetNumbers(variant, criteria, situations));

    public SheetNumbers Value => numbers.Value;

    public bool Equals(SheetOnDemand? other) => other is not null;

    public override int GetHashCode() => 0;
}
