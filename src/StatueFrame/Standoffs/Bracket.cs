using System.Globalization;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// What carries the tower ends of a ring of standoffs that lie off the tower: a straight member from the nearest point of the
/// tower's outline at the level, a leg or a horizontal, to the standoff. It bends, weighs, and is checked.
/// </summary>
/// <remarks>Immutable and safe to share between threads. A standoff that ends within 20 mm of the outline needs none and gets none.</remarks>
public sealed record Bracket
{
    /// <summary>Section; its strong axis takes vertical loads unless <see cref="Roll"/> turns it.</summary>
    public required Section Section { get; init; }

    /// <summary>The metal.</summary>
    public required Material Material { get; init; }

    /// <summary>How the end on the tower turns: rigid, or with rotational springs. It must not be a hinge, as the bracket would swing.</summary>
    public required EndFixity TowerFixity { get; init; }

    /// <summary>The throat of a fillet weld all round its end on the tower, 1 to 40 mm; null leaves the fixing unchecked.</summary>
    public Length? Throat { get; init; }

    /// <summary>Turn of the section about the bracket's axis, right-handed from the tower outward, −360° to 360°.</summary>
    public Angle Roll { get; init; }

    /// <summary>A standoff that ends nearer to the tower than this stands on the tower itself, m.</summary>
    internal const double LeastLength = 0.02;

    /// <summary>The bracket on one line, as in "rectangular tube 80×80×6 mm, steel S355, rigid on the tower, weld 6 mm".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Section}, {Material?.Name}, {TowerFixity} on the tower, {(Throat is { } throat ? $"weld {throat.Millimeters:0.##} mm" : "fixing not described")}{(Roll.Radians == 0 ? "" : $", turned {Roll.Degrees:0.##}°")}");

    internal void Validate(Validator v)
    {
        v.Required(Section)?.Validate(v.At(nameof(Section)));
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        v.Required(TowerFixity)?.Validate(v.At(nameof(TowerFixity)));
        if (TowerFixity is { Springs: { } k } && !(k.Weak > 0 && k.Strong > 0 && k.Twist > 0))
            v.Add(nameof(TowerFixity), "leaves the bracket free to swing", "Give it EndFixity.Rigid or a spring.");
        if (Throat is { } throat)
            v.Positive(throat, throat.Meters, 1e-3, 0.04, nameof(Throat));
        v.Within(Roll, Roll.Radians, -2 * Math.PI * (1 + 1e-9), 2 * Math.PI * (1 + 1e-9));
    }
}
