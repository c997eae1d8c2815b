using UnitsNet;

namespace StatueFrame;

/// <summary>Two equal fillet welds along the width of a flat, one on each face, that fasten its end square to a plate.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record WeldedFixing : StandoffFixing
{
    /// <summary>Throat a of each weld, 3 to 30 mm.</summary>
    public required Length Throat { get; init; }

    /// <summary>Effective length of each weld; null takes the width less two throats.</summary>
    public Length? WeldLength { get; init; }

    /// <summary>β_w of EN 1993-1-8, Table 4.1: 0.8 for S235, 0.85 for S275, 0.9 for S355, 1.0 for S420, S460 and stainless steel.</summary>
    public double CorrelationFactor { get; init; } = 1.0;

    /// <summary>
    /// Tensile strength of the electrode, 200 to 1000 MPa: F_EXX of AISC; by EN 1993-1-8, 4.2 (2), no less than that of what is
    /// welded, or it counts in its place. Null is 70 ksi under AISC, which the sheet lists as assumed, and as strong as what is
    /// welded under EN.
    /// </summary>
    public Pressure? ElectrodeStrength { get; init; }

    /// <summary>True for the simplified method of EN 1993-1-8, 4.5.3.3, which does not look at the direction of the force.</summary>
    public bool Simplified { get; init; }

    /// <summary>
    /// The metal that the flat is welded to: the weaker of the two counts. Null takes that of the tower segments at the tower
    /// end, and the flat's own at the skin end, which the sheet lists as assumed.
    /// </summary>
    public Material? JoinedTo { get; init; }

    internal double Run(double width) => WeldLength?.Meters ?? width - 2 * Throat.Meters;

    internal override void Validate(Validator v, double width)
    {
        v.Positive(Throat, Throat.Meters, 0.003, 0.03);
        v.InRange(CorrelationFactor, 0.8, 1, "See EN 1993-1-8, Table 4.1.");
        if (ElectrodeStrength is { } electrode)
            v.Positive(electrode, electrode.Pascals, 2e8, 1e9, nameof(ElectrodeStrength));
        JoinedTo?.Validate(v.At(nameof(JoinedTo)));
        double least = Math.Max(0.03, 6 * Throat.Meters);
        if (!(Run(width) >= least * (1 - 1e-9)))
            v.Add(nameof(WeldLength), "is too short to carry load (EN 1993-1-8, 4.5.1 (2))", "At least 30 mm and six throats; the default takes one throat off each end.");
        else if (Run(width) > width)
            v.Add(nameof(WeldLength), "is longer than the flat is wide", "The fillets lie along the flat's sides; check the lap.");
    }
}
