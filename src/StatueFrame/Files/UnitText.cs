using System.Globalization;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The units of one quantity as they stand in a file: by a short sign that no other unit of the quantity has; a unit
/// without one stands by its name.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class UnitText
{
    /// <summary>Signs that are hard to type, each with a plain one that is read as well.</summary>
    private static readonly (string Sign, string Plain)[] plain = [("²", "^2"), ("³", "^3"), ("⁴", "^4"), ("\u00B5", "\u03BC"), ("\u2206", "\u0394"), ("·", "*")];

    private static readonly string[] usual =
    [
        "mm", "m", "in", "ft", "MPa", "GPa", "kPa", "ksi", "kN", "N", "kip", "kg", "t", "lb", "°", "rad", "kg/m³", "kg/m²", "kg/m",
        "m/s", "km/h", "mph", "kN·m/rad", "N·m/rad", "N/m", "kN/m", "mm²", "m²", "mm³", "Hz", "s", "°C", "∆K", "ppm/K", "m/s²", "yr",
    ];

    /// <summary>Gives the signs of the units it is asked for; one with all units would take a second to start.</summary>
    private readonly UnitAbbreviationsCache signs = UnitAbbreviationsCache.CreateEmpty();

    private readonly Dictionary<string, Enum> units = [];
    private readonly Dictionary<Enum, string> texts = [];

    public UnitText(QuantityInfo quantity)
    {
        Name = quantity.Name;
        var shared = new HashSet<string>();
        foreach (UnitInfo unit in quantity.UnitInfos)
        {
            foreach (string sign in SignsOf(unit))
            {
                if (!units.TryAdd(sign, unit.Value) && !units[sign].Equals(unit.Value))
                    shared.Add(sign);
            }
        }
        foreach (string sign in shared)
            units.Remove(sign);
        foreach (UnitInfo unit in quantity.UnitInfos)
        {
            string text = SignsOf(unit).FirstOrDefault(sign => units.TryGetValue(sign, out Enum? owner) && owner.Equals(unit.Value)) ?? unit.Name;
            texts[unit.Value] = text;
            units[text] = unit.Value;
        }
        Base = quantity.BaseUnitInfo.Value;
    }

    /// <summary>The name of the quantity, as in "Length".</summary>
    public string Name { get; }

    /// <summary>The unit of a value that was never given one.</summary>
    public Enum Base { get; }

    /// <summary>All that is read as a unit.</summary>
    public IEnumerable<string> All => units.Keys.Order(StringComparer.Ordinal);

    public string this[Enum unit] => texts[unit];

    public Enum? Find(string text) => units.GetValueOrDefault(Signed(text));

    /// <summary>A unit with the signs that are hard to type in place of the plain ones.</summary>
    public static string Signed(string unit) => plain.Aggregate(unit, (text, pair) => text.Replace(pair.Plain, pair.Sign, StringComparison.Ordinal));

    /// <summary>A regular expression of a unit, written in either way.</summary>
    public static string Pattern(string unit) =>
        plain.Aggregate(Escape(unit), (text, pair) => text.Replace(pair.Sign, $"({pair.Sign}|{Escape(pair.Plain)})", StringComparison.Ordinal));

    /// <summary>A few units, for a hint.</summary>
    public string Examples => string.Join(", ", texts.OrderBy(t => Array.IndexOf(usual, t.Value) is var i and >= 0 ? i : int.MaxValue).Select(t => t.Value).Take(6));

    private static string Escape(string unit) => string.Concat(unit.Select(c => @"^$\.*+?()[]{}|/".Contains(c, StringComparison.Ordinal) ? $"\\{c}" : $"{c}"));

    private IReadOnlyList<string> SignsOf(UnitInfo unit) => signs.GetAbbreviations(unit, CultureInfo.InvariantCulture);
}
