using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The fatigue strength of a detail by EN 1993-1-9: the range Δσ_C that it bears two million times. For normal stress
/// the curve falls with slope 3 to five million cycles, with slope 5 to a hundred million, and ranges below that do no
/// harm; for shear it falls with slope 5 all the way.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The standard is for structural and stainless steels in normal air with
/// good corrosion protection; sea water, pitting and temperatures above 150 °C are outside it.
/// </remarks>
/// <param name="Name">As in "90, flat with holes".</param>
/// <param name="Strength">Δσ_C or Δτ_C at two million cycles.</param>
/// <param name="IsShear">True for a curve in shear.</param>
/// <param name="Source">Where the value comes from.</param>
/// <param name="IsAssumed">True when no code gives the value, so that a check rests on an assumption.</param>
public sealed record DetailCategory(string Name, Pressure Strength, bool IsShear, Source Source, bool IsAssumed = false)
{
    private static readonly Source curve = new("EN 1993-1-9:2005", "7.1, Figures 7.1 and 7.2");

    /// <summary>Where the stress is taken: on the gross section, unless said otherwise.</summary>
    public FatigueSection On { get; init; }

    /// <summary>160: rolled flats with their edges as rolled, free of notches.</summary>
    public static DetailCategory RolledFlat { get; } = Steel("160, rolled flat", 160, "Table 8.1, detail 1");

    /// <summary>125: flats cut by machine with shallow drag lines, edges dressed.</summary>
    public static DetailCategory CutFlat { get; } = Steel("125, cut flat", 125, "Table 8.1, detail 5");

    /// <summary>90: flats with holes under axial force and bending, stress on the net section.</summary>
    public static DetailCategory FlatWithHoles { get; } = Steel("90, flat with holes", 90, "Table 8.1, detail 11") with { On = FatigueSection.Net };

    /// <summary>50: laps with bolts in clearance holes without preload and without reversal of load, stress on the net section.</summary>
    public static DetailCategory ClearanceBolts { get; } = Steel("50, bolts in clearance holes", 50, "Table 8.1, detail 13") with { On = FatigueSection.Net };

    /// <summary>80: laps with fitted bolts on one side, stress on the net section.</summary>
    public static DetailCategory FittedBolts { get; } = Steel("80, fitted bolts", 80, "Table 8.1, detail 12") with { On = FatigueSection.Net };

    /// <summary>90: joints with fitted bolts and plates on both sides, stress on the net section.</summary>
    public static DetailCategory FittedBoltsBothSides { get; } = Steel("90, fitted bolts, plates on both sides", 90, "Table 8.1, detail 9") with { On = FatigueSection.Net };

    /// <summary>71: laps of steel with rivets, stress on the net section: what assessments take for old riveted steel.</summary>
    public static DetailCategory Riveted { get; } = Steel("71, rivets", 71, "no detail; JRC report EUR 23252, Assessment of existing steel structures") with { On = FatigueSection.Net };

    /// <summary>50: bolts and bars with rolled or cut threads in tension, stress on the area in the thread.</summary>
    public static DetailCategory Thread { get; } = Steel("50, threads in tension", 50, "Table 8.1, detail 14");

    /// <summary>100 in shear: bolts in single or double shear, threads out of the plane of shear.</summary>
    public static DetailCategory BoltShear { get; } = Steel("100 shear, bolts", 100, "Table 8.1, detail 15", true);

    /// <summary>71: a tube with a butt weld of full penetration round its end, checked.</summary>
    public static DetailCategory ButtWeldedTube { get; } = Steel("71, butt weld round a tube", 71, "Table 8.5, detail 11");

    /// <summary>40: a tube with a fillet weld round its end, stress in the tube.</summary>
    public static DetailCategory FilletWeldedTube { get; } = Steel("40, fillet weld round a tube", 40, "Table 8.5, detail 12");

    /// <summary>71: a flat at the toe of a transverse load-carrying fillet weld, flat to 12 mm thick, attachment up to 50 mm.</summary>
    public static DetailCategory FilletToe { get; } = Steel("71, fillet weld toe", 71, "Table 8.5, detail 1");

    /// <summary>36: the throat of a fillet weld, normal stress on the throat.</summary>
    public static DetailCategory FilletRoot { get; } = Steel("36, fillet weld root", 36, "Table 8.5, detail 3") with { On = FatigueSection.Throat };

    /// <summary>100 in shear: parent metal.</summary>
    public static DetailCategory ParentShear { get; } = Steel("100 shear, parent metal", 100, "Table 8.1, detail 6", true);

    /// <summary>80 in shear: fillet welds, stress on the throat.</summary>
    public static DetailCategory FilletShear { get; } = Steel("80 shear, fillet weld", 80, "Table 8.5, detail 8", true) with { On = FatigueSection.Throat };

    /// <summary>
    /// Puddled iron with rivets or bolts, 63. No code gives it: it lies below the 71 that assessments take for old riveted
    /// steel, and iron scatters more and is weaker across its grain. Test the iron in hand.
    /// </summary>
    public static DetailCategory PuddledIron { get; } = new(
        "63, puddled iron with holes", 63.Megapascals, false, Source.Assumed("fatigue: puddled iron one category below riveted steel (71); no code, from memory"), true)
    { On = FatigueSection.Net };

    /// <summary>The number of cycles of a range to failure; +∞ below the cut-off.</summary>
    /// <param name="range">Stress range; zero or more.</param>
    /// <param name="gammaMf">Partial factor γ_Mf on the strength, 1 to 3.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public double CyclesToFailure(Pressure range, double gammaMf)
    {
        CheckInput.Positive(Strength.Pascals, nameof(Strength));
        return Cycles(CheckInput.NotNegative(range.Pascals, nameof(range)), CheckInput.Within(gammaMf, 1, 3, nameof(gammaMf)));
    }

    /// <summary>The range that is borne five million times for ever when all ranges are equal, 0.737 Δσ_C; for shear the cut-off.</summary>
    public Pressure ConstantAmplitudeLimit => IsShear ? CutOff : Strength * ofStrength;

    /// <summary>The range below which no cycle does harm, 0.549 of the constant amplitude limit; in shear 0.457 Δτ_C.</summary>
    public Pressure CutOff => IsShear ? Strength * ofShear : ConstantAmplitudeLimit * ofLimit;

    private static readonly double ofStrength = Math.Pow(2.0 / 5, 1.0 / 3), ofLimit = Math.Pow(5.0 / 100, 1.0 / 5), ofShear = Math.Pow(2.0 / 100, 1.0 / 5);

    internal static Source Curve => curve;

    /// <summary>Whether the value is one of EN 1993-1-9, which holds for structural and stainless steels only.</summary>
    internal bool IsOfSteel => Source.Document.StartsWith("EN 1993-1-9", StringComparison.Ordinal);

    internal void Validate(Validator v)
    {
        v.Named(Name);
        v.Positive(Strength, Strength.Pascals, 1e6, 5e8);
        v.Required(Source);
        v.Defined(On);
    }

    internal double Cycles(double range, double gammaMf)
    {
        double s = range * gammaMf;
        if (s < CutOff.Pascals || s <= 0)
            return double.PositiveInfinity;
        double limit = ConstantAmplitudeLimit.Pascals;
        return IsShear ? 2e6 * Math.Pow(Strength.Pascals / s, 5)
            : s >= limit ? 2e6 * Math.Pow(Strength.Pascals / s, 3)
            : 5e6 * Math.Pow(limit / s, 5);
    }

    private static DetailCategory Steel(string name, double strength, string place, bool isShear = false) =>
        new(name, strength.Megapascals, isShear, new Source("EN 1993-1-9:2005", place + ", from memory"));
}
