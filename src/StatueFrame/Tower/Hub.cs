using UnitsNet;

namespace StatueFrame;

/// <summary>
/// What hands the six forces of a tube that stands on a lattice, or of a limb that starts at its level, to the legs: an arm from a stiff
/// middle to every leg, all alike, fixed at the middle and taken as hinged at the legs.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Hub
{
    /// <summary>Section of the arms; its strong axis takes vertical loads.</summary>
    public required Section Arms { get; init; }

    /// <summary>The metal of the arms.</summary>
    public required Material Material { get; init; }

    /// <summary>Throat of a fillet weld all round both ends of every arm, 1 to 40 mm; null leaves the welds unchecked.</summary>
    public Length? Throat { get; init; }

    /// <summary>The hub on one line, as in "arms rectangular tube 200×200×12 mm, steel S355, welds 8 mm".</summary>
    public override string ToString() => FormattableString.Invariant(
        $"arms {Arms}, {Material?.Name}, {(Throat is { } throat ? $"welds {throat.Millimeters:0.##} mm" : "welds not described")}");

    internal void Validate(Validator v)
    {
        v.Required(Arms)?.Validate(v.At(nameof(Arms)));
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        if (Throat is { } throat)
            v.Positive(throat, throat.Meters, 1e-3, 0.04, nameof(Throat));
    }
}
