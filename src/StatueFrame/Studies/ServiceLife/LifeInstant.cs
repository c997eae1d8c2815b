namespace StatueFrame.Studies;

/// <summary>A moment of a statue's life: the years from the age described, and how many renewals were made by then.</summary>
internal readonly record struct LifeInstant(double Years, int Renewals) : IComparable<LifeInstant>
{
    public int CompareTo(LifeInstant other) => Years != other.Years ? Years.CompareTo(other.Years) : Renewals.CompareTo(other.Renewals);

    /// <summary>The moment in the middle of two with the same renewals.</summary>
    public LifeInstant Middle(LifeInstant other) => this with { Years = (Years + other.Years) / 2 };
}
