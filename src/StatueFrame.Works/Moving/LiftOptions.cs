using UnitsNet;

namespace StatueFrame.Works;

/// <summary>How a piece is lifted level on two slings.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record LiftOptions
{
    /// <summary>Angle of the slings above the horizontal, 30° to 90°; 60° by default. 90° is a lifting beam.</summary>
    public Angle SlingAngle { get; init; } = Angle.FromDegrees(60);

    /// <summary>The crane's hoisting class; HC2 by default.</summary>
    public HoistingClass Crane { get; init; } = HoistingClass.HC2;

    /// <summary>Steady hoisting speed, 0 to 2 m/s; 0.15 m/s by default.</summary>
    public Speed HoistingSpeed { get; init; } = Speed.FromMetersPerSecond(0.15);

    /// <summary>Partial factor on the weight, 1 to 2; 1.35 by default (EN 1990, Table A1.2(B)).</summary>
    public double WeightFactor { get; init; } = 1.35;

    /// <summary>Uncertainty of mass and center of gravity as a factor on the sling force, 1 to 1.5; 1.1 by default (common practice, no source).</summary>
    public double Uncertainty { get; init; } = 1.1;

    /// <summary>
    /// φ₂ = φ₂,min + β₂ v_h. Source: EN 1991-3:2006, Tables 2.4 and 2.5 (from memory): β₂ 0.17, 0.34, 0.51, 0.68 and φ₂,min 1.05, 1.10,
    /// 1.15, 1.20 for HC1 to HC4.
    /// </summary>
    public double DynamicFactor => PhiMin + Beta * HoistingSpeed.MetersPerSecond;

    /// <summary>The options on one line.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"slings at {SlingAngle.Degrees:0.#}°, {Crane} at {HoistingSpeed.MetersPerSecond:0.##} m/s (φ₂ {DynamicFactor:0.00}), weight times {WeightFactor:0.##}, uncertainty {Uncertainty:0.##}");

    internal double Beta => 0.17 * ((int)Crane + 1);

    internal double PhiMin => 1.05 + 0.05 * (int)Crane;

    internal void Validate(Validator v)
    {
        v.Within(SlingAngle, SlingAngle.Degrees, 30, 90);
        v.Defined(Crane);
        v.NotNegative(HoistingSpeed, HoistingSpeed.MetersPerSecond, 2);
        v.InRange(WeightFactor, 1, 2, "It is the partial factor on the weight, 1.35 by EN 1990.");
        v.InRange(Uncertainty, 1, 1.5, "It is 1.1 where masses are computed, 1.05 where they are weighed.");
    }
}
