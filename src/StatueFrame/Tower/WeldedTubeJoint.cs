using UnitsNet;

namespace StatueFrame;

/// <summary>A weld all round the end of a tube: a butt weld of full penetration, or a fillet of a given throat.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record WeldedTubeJoint : TubeJoint
{
    /// <summary>Throat of the fillet, 2 to 50 mm; null is a butt weld of full penetration, as strong as the tube.</summary>
    public Length? Throat { get; init; }

    /// <summary>β_w of EN 1993-1-8, Table 4.1: 0.8 for S235, 0.85 for S275, 0.9 for S355, 1.0 for S420, S460 and stainless steel.</summary>
    public double CorrelationFactor { get; init; } = 1.0;

    /// <summary>
    /// Tensile strength of the electrode, 200 to 1000 MPa: F_EXX of AISC; by EN 1993-1-8, 4.2 (2), no less than that of what is
    /// welded, or it counts in its place. Null is 70 ksi under AISC, which the sheet lists as assumed, and as strong as what is
    /// welded under EN.
    /// </summary>
    public Pressure? ElectrodeStrength { get; init; }

    internal static readonly Pressure UsualElectrode = Pressure.FromKilopoundsForcePerSquareInch(70);

    internal override void Validate(Validator v, Section? section)
    {
        if (Throat is { } throat)
            v.Positive(throat, throat.Meters, 0.002, 0.05, nameof(Throat));
        v.InRange(CorrelationFactor, 0.8, 1, "See EN 1993-1-8, Table 4.1.");
        if (ElectrodeStrength is { } electrode)
            v.Positive(electrode, electrode.Pascals, 2e8, 1e9, nameof(ElectrodeStrength));
    }
}
