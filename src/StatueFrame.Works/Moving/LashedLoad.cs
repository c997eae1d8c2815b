using UnitsNet;

namespace StatueFrame.Works;

/// <summary>A crate or piece tied down by straps over its top.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record LashedLoad
{
    /// <summary>Name, as in "crate 3".</summary>
    public required string Name { get; init; }

    /// <summary>Mass with packing, 1 kg to 500 t.</summary>
    public required Mass Mass { get; init; }

    /// <summary>Length along the vehicle, 0.1 to 60 m.</summary>
    public required Length Length { get; init; }

    /// <summary>Width across the vehicle, 0.1 to 20 m.</summary>
    public required Length Width { get; init; }

    /// <summary>Height of the center of gravity above the bed, 0.01 to 10 m.</summary>
    public required Length CenterHeight { get; init; }

    /// <summary>Straps over the load, 0 to 100.</summary>
    public required int Straps { get; init; }

    /// <summary>Tension that the ratchet leaves in a strap, S_TF, 100 N to 50 kN; on its tag.</summary>
    public required Force StrapTension { get; init; }

    /// <summary>Angle of the straps above the bed, 10° to 90°.</summary>
    public required Angle StrapAngle { get; init; }

    /// <summary>Friction factor μ of load on bed, 0.1 to 0.7: 0.6 on anti-slip mats (EN 12195-1, Annex B, from memory), by test otherwise.</summary>
    public required double Friction { get; init; }

    internal void Validate(Validator v)
    {
        v.Named(Name);
        v.Positive(Mass, Mass.Kilograms, 1, 5e5);
        v.Positive(Length, Length.Meters, 0.1, 60);
        v.Positive(Width, Width.Meters, 0.1, 20);
        v.Positive(CenterHeight, CenterHeight.Meters, 0.01, 10);
        v.InRange(Straps, 0, 100, "It is the number of straps over the load.");
        v.Positive(StrapTension, StrapTension.Newtons, 100, 5e4);
        v.Within(StrapAngle, StrapAngle.Degrees, 10, 90);
        v.InRange(Friction, 0.1, 0.7, "It is 0.6 on anti-slip mats, 0.3 of steel on wood.");
    }
}
