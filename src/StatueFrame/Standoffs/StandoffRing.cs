using System.Globalization;

namespace StatueFrame;

/// <summary>
/// The standoffs that carry one band of skin from one level of the tower: evenly spaced (<see cref="EvenRing"/>) or
/// each placed by hand (<see cref="ExplicitRing"/>).
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record StandoffRing
{
    internal const int MostBars = 400;

    private protected StandoffRing()
    {
    }

    /// <summary>The name of the level that the bars stand on.</summary>
    public required string Level { get; init; }

    /// <summary>The band that the bars carry, counted from 1 as in its name; null takes the band at the height of the ring's skin ends.</summary>
    public int? Band { get; init; }

    /// <summary>
    /// Numbers of the bars that are gone, from 1; none by default. They carry and weigh nothing, their neighbors take over
    /// their strips of skin, and the other bars keep their numbers.
    /// </summary>
    public ValueList<int> Missing { get; init; } = [];

    /// <summary>
    /// Numbers of the bars whose saddles have let go, from 1; none by default. They hang from the tower with their mass and
    /// hold no skin.
    /// </summary>
    public ValueList<int> Loose { get; init; } = [];

    /// <summary>
    /// What carries tower ends that lie off the tower, from the nearest leg or horizontal at the level; null takes brackets that
    /// do not give and weigh nothing, which the sheet lists as open.
    /// </summary>
    public Bracket? Bracket { get; init; }

    /// <summary>The height (along the body's axis, m) of the ring's skin ends; their mean when they differ.</summary>
    /// <param name="levelElevation">The height of the ring's level, m.</param>
    internal abstract double SkinElevation(double levelElevation);

    /// <summary>
    /// Lays the bars out. Needs a valid ring; what the geometry forbids is added to <paramref name="v"/>, the validator
    /// of this ring, and then no bars are returned.
    /// </summary>
    internal abstract BarPlacement[] Place(in RingSite site, Validator v);

    /// <summary>Bars that end off the tower are joined to their level by brackets that do not give.</summary>
    private protected static readonly Assumption RigidBrackets = new(
        "tower ends of standoffs that lie off the tower", "joined to the level by rigid brackets", Source.Assumed("standoffs"));

    /// <summary>Number of bars; may be asked of a ring that is not valid.</summary>
    internal abstract int BarCount { get; }

    /// <summary>Whether a bar, by its number from 1, holds the skin: it is neither missing nor loose.</summary>
    internal bool Holds(int bar) => !Missing.Contains(bar) && !Loose.Contains(bar);

    /// <summary>Looks at the ring beside the level that it stands on.</summary>
    internal virtual void ValidateAt(TowerLevel level, Validator v)
    {
    }

    /// <summary>What the ring's model takes for the user.</summary>
    internal abstract IEnumerable<Assumption> Assumptions();

    internal virtual void Validate(Validator v)
    {
        v.Named(Level);
        if (Band < 1)
            v.Add(nameof(Band), $"must be 1 or more, is {Band}", "Bands are counted from 1, the lowest; null lets the height decide.");
        Bracket?.Validate(v.At(nameof(Bracket)));
        ValidateNumbers(v, Missing, nameof(Missing));
        ValidateNumbers(v, Loose, nameof(Loose));
        if (BarCount is >= 1 and <= MostBars && Missing is not null && Loose is not null && Enumerable.Range(1, BarCount).All(bar => !Holds(bar)))
            v.Add(nameof(Missing), "and Loose leave no bar that holds the skin", "Take the whole ring out of Standoffs.");
    }

    private void ValidateNumbers(Validator v, ValueList<int>? numbers, string member)
    {
        if (v.Required(numbers, member) is null || !v.AtMost(numbers!.Count, MostBars, member))
            return;
        for (int i = 0; i < numbers.Count; i++)
        {
            if (numbers[i] < 1 || numbers[i] > BarCount)
                v.At(member, i).Add("", string.Create(CultureInfo.InvariantCulture, $"there is no bar {numbers[i]}; the ring has bars 1 to {BarCount}"), "Bars are counted from 1, as on the check sheet.");
        }
    }
}
