namespace StatueFrame.Studies;

/// <summary>What a method for gusts finds at one speed and heading.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SwayDynamics
{
    /// <summary>
    /// The factor on the peak pressures that stands for gusts and resonance together: G (ASCE 7) or c_s c_d (EN 1991-1-4),
    /// above 0 to 10; null leaves that of the wind action.
    /// </summary>
    public double? GustFactor { get; init; }

    /// <summary>Accelerations of named points; those left out are not known.</summary>
    public ValueList<PointAcceleration> Points { get; init; } = [];

    /// <summary>Every value that the method took for the user; the curve lists those of the design speed.</summary>
    public ValueList<Assumption> Assumptions { get; init; } = [];
}
