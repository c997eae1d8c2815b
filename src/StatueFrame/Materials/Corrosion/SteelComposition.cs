namespace StatueFrame;

/// <summary>What a low-alloy steel holds of the elements that change how its rust slows down, in percent by mass.</summary>
/// <remarks>Immutable and safe to share between threads. Source: ISO 9224:2012, clause 6 and its table, coefficients from memory.</remarks>
public sealed record SteelComposition
{
    /// <summary>Carbon, 0 to 5 %.</summary>
    public double Carbon { get; init; }

    /// <summary>Phosphorus, 0 to 5 %.</summary>
    public double Phosphorus { get; init; }

    /// <summary>Sulfur, 0 to 5 %.</summary>
    public double Sulfur { get; init; }

    /// <summary>Silicon, 0 to 5 %.</summary>
    public double Silicon { get; init; }

    /// <summary>Nickel, 0 to 5 %.</summary>
    public double Nickel { get; init; }

    /// <summary>Chromium, 0 to 5 %.</summary>
    public double Chromium { get; init; }

    /// <summary>Copper, 0 to 5 %.</summary>
    public double Copper { get; init; }

    /// <summary>The exponent b = 0.569 + Σ b_i w_i.</summary>
    /// <exception cref="InvalidStatueException">A content is out of range, or the sum leaves the steel no steel.</exception>
    public double Exponent
    {
        get
        {
            var v = new Validator();
            Validate(v);
            v.ThrowIfAny();
            return ExponentInUse;
        }
    }

    internal double ExponentInUse =>
        0.569 - 0.084 * Carbon - 0.490 * Phosphorus + 1.440 * Sulfur - 0.163 * Silicon - 0.066 * Nickel - 0.124 * Chromium - 0.069 * Copper;

    internal void Validate(Validator v)
    {
        const string Hint = "It is a percentage by mass; weathering steels hold below 1 % of most.";
        v.InRange(Carbon, 0, 5, Hint);
        v.InRange(Phosphorus, 0, 5, Hint);
        v.InRange(Sulfur, 0, 5, Hint);
        v.InRange(Silicon, 0, 5, Hint);
        v.InRange(Nickel, 0, 5, Hint);
        v.InRange(Chromium, 0, 5, Hint);
        v.InRange(Copper, 0, 5, Hint);
        if (double.IsFinite(ExponentInUse) && ExponentInUse is < 0.2 or > 1)
            v.Add("", "gives an exponent outside 0.2 to 1", "The formula holds for low-alloy steels.");
    }
}
