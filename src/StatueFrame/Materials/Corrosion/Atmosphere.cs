using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The air as metals feel it: a category of ISO 9223, or its temperature, humidity and pollution, from which the category
/// follows metal by metal; with losses measured on the spot where there are any.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Atmosphere
{
    /// <summary>The longest time in the air that is looked at, 1000 years, s.</summary>
    internal static double LongestExposure { get; } = Duration.FromYears365(1000).Seconds;

    /// <summary>The category; null when <see cref="Air"/> is given.</summary>
    public Corrosivity? Category { get; init; }

    /// <summary>Temperature, humidity and pollution; null when <see cref="Category"/> is given.</summary>
    public AirConditions? Air { get; init; }

    /// <summary>Which value of the category's range is taken; the middle by default.</summary>
    public CategoryValue Value { get; init; }

    /// <summary>Losses of the first year that are known better: measured, or of metals that the standard does not class.</summary>
    public ValueList<FirstYearLoss> Known { get; init; } = [];

    /// <summary>How contacts of metals fare in it; null takes C1 as controlled, C2 as normal, and C3 and above as harsh.</summary>
    public GalvanicEnvironment? Contacts { get; init; }

    /// <summary>Air of a category.</summary>
    /// <param name="category">The category.</param>
    /// <param name="value">Which value of its range is taken.</param>
    public static Atmosphere Of(Corrosivity category, CategoryValue value = CategoryValue.Average) => new() { Category = category, Value = value };

    /// <summary>Air of known temperature, humidity and pollution.</summary>
    /// <param name="air">The yearly means.</param>
    public static Atmosphere Of(AirConditions air) => new() { Air = air };

    /// <summary>
    /// What a face of a metal loses in the first year; null when nobody knows: stainless steel and lead unless
    /// <see cref="Known"/> has them, and aluminum in CX unless it is the lower limit that is taken.
    /// </summary>
    /// <param name="metal">The metal.</param>
    /// <exception cref="InvalidStatueException">The description has problems.</exception>
    public FirstYearLoss? FirstYear(MetalFamily metal)
    {
        if (Known.FirstOrDefault(known => known?.Metal == metal) is { } measured)
            return measured;
        if (Air is { } air)
            return DoseResponse.FirstYear(metal, air) is { } dose ? new FirstYearLoss(metal, dose, DoseResponse.Source) : null;
        return Category is { } category && CorrosivityTable.Limits(metal, category) is { } limits && Pick(limits.Lower, limits.Upper) is { } loss
            ? new FirstYearLoss(metal, loss, CorrosivityTable.Source)
            : null;
    }

    /// <summary>The category for a metal; null when it is not classed.</summary>
    /// <param name="metal">The metal.</param>
    /// <exception cref="InvalidStatueException">The description has problems.</exception>
    public Corrosivity? CategoryFor(MetalFamily metal) =>
        Category is { } category ? (CorrosivityTable.Standard(metal) is null ? null : category)
        : FirstYear(metal) is { } loss ? CorrosivityTable.CategoryOf(metal, loss.Loss) : null;

    /// <summary>The environment for contacts, and whether it was taken from the category.</summary>
    internal (GalvanicEnvironment Environment, bool IsAssumed) ForContacts()
    {
        if (Contacts is { } given)
            return (given, false);
        Corrosivity worst = Category ?? new[] { MetalFamily.CarbonSteel, MetalFamily.Zinc, MetalFamily.Copper, MetalFamily.Aluminum }
            .Max(metal => CorrosivityTable.CategoryOf(metal, DoseResponse.FirstYear(metal, Air!)!.Value)!.Value);
        return (worst switch { Corrosivity.C1 => GalvanicEnvironment.Controlled, Corrosivity.C2 => GalvanicEnvironment.Normal, _ => GalvanicEnvironment.Harsh }, true);
    }

    /// <summary>The air in a few words, as in "C5, middle of the range".</summary>
    public override string ToString() => Category is { } category
        ? $"{category}, {Value switch { CategoryValue.Lower => "lower limit", CategoryValue.Upper => "upper limit", _ => "middle of the range" }}"
        : Air is { } air ? FormattableString.Invariant($"air of {air.Celsius:0.#} °C, {air.Percent:0.#} % humidity, {air.Pd:0.#} mg/(m²·d) SO₂, {air.Sd:0.#} mg/(m²·d) chloride")
        : "air not described";

    internal void Validate(Validator v)
    {
        if (Category is null == Air is null)
            v.Add(nameof(Category), Category is null ? "and Air are both missing" : "and Air are both given", "Give one: a category of ISO 9223, or temperature, humidity and pollution.");
        if (Category is { } category)
            v.Defined(category, nameof(Category));
        Air?.Validate(v.At(nameof(Air)));
        v.Defined(Value);
        if (Contacts is { } contacts)
            v.Defined(contacts, nameof(Contacts));
        var seen = new HashSet<MetalFamily>();
        foreach ((_, FirstYearLoss known, Validator at) in v.Items(Known, 50))
        {
            at.Defined(known.Metal, nameof(FirstYearLoss.Metal));
            at.NotNegative(known.Loss, known.Loss.Meters, 5e-3, nameof(FirstYearLoss.Loss));
            at.Required(known.Source, nameof(FirstYearLoss.Source));
            if (!seen.Add(known.Metal))
                at.Add(nameof(FirstYearLoss.Metal), $"{known.Metal} is given twice", "Take one of them out.");
        }
    }

    private Length? Pick(Length lower, Length? upper) => Value switch
    {
        CategoryValue.Lower => lower,
        CategoryValue.Upper => upper,
        _ => upper is { } most ? (lower + most) / 2 : null,
    };
}
