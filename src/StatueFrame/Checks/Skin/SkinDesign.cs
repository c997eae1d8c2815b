using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame;

/// <summary>What is enough for sheet, armature and seams.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SkinDesign
{
    /// <summary>Allowable stress of sheet and armature over proof strength; null takes 1/1.5, which the sheet lists as assumed.</summary>
    public double? StressFraction { get; init; }

    /// <summary>The code that seams of steel are checked by; other metals by allowable stress.</summary>
    public DesignCode SeamCode { get; init; } = DesignCode.En1993;

    /// <summary>True when the panels' edges cannot draw in; false, the default, lets them.</summary>
    public bool PanelsHeldInPlane { get; init; }

    /// <summary>A load of maintenance on one panel, as 1.5 kN of a person; null leaves denting unchecked.</summary>
    public Force? MaintenanceLoad { get; init; }

    /// <summary>Radius of what presses.</summary>
    public Length MaintenancePatch { get; init; } = Length.FromMillimeters(50);

    /// <summary>The dent that is tolerated.</summary>
    public Length AllowedDent { get; init; } = Length.FromMillimeters(3);

    /// <summary>Least frequency of a panel, against humming in the wind; null leaves it unchecked.</summary>
    public Frequency? LeastPanelFrequency { get; init; }

    /// <summary>Greatest sag of a level panel over its shorter side.</summary>
    public double SagLimit { get; init; } = 1.0 / 100;

    /// <summary>Safety of sheet against buckling under its own weight.</summary>
    public double BucklingSafety { get; init; } = 2;

    internal void Validate(Validator v)
    {
        if (StressFraction is { } fraction)
            v.InRange(fraction, 0.05, 1, "It is allowable stress over proof strength.", nameof(StressFraction));
        v.Defined(SeamCode);
        if (MaintenanceLoad is { } load)
            v.NotNegative(load, load.Newtons, 1e5, nameof(MaintenanceLoad));
        v.Within(MaintenancePatch, MaintenancePatch.Meters, 0.005, 0.5);
        v.Positive(AllowedDent, AllowedDent.Meters, 1e-5, 0.2);
        if (LeastPanelFrequency is { } least)
            v.Positive(least, least.Hertz, 0.01, 1e4, nameof(LeastPanelFrequency));
        v.InRange(SagLimit, 1e-4, 0.5, "It is sag over the shorter side.");
        v.InRange(BucklingSafety, 1, 10, "2 is usual.");
    }
}
