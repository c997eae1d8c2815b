using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// How far a point of the skin moves against the tower with heat, when nothing restrains it: by the difference of their
/// free strains times the distance from the point where both are fixed together. A uniform change of temperature moves
/// each point along its line from the fixed point, so the same holds for heights and for radii around the plan.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record HeatMovement
{
    /// <summary>Expansion of the skin, as 17 ppm/K for copper.</summary>
    public required CoefficientOfThermalExpansion Skin { get; init; }

    /// <summary>Expansion of the tower.</summary>
    public required CoefficientOfThermalExpansion Tower { get; init; }

    /// <summary>How much the skin is warmer than when it was fitted; negative when colder. −150 K to 150 K.</summary>
    public required TemperatureDelta SkinChange { get; init; }

    /// <summary>How much the tower is warmer than when it was built; negative when colder. −150 K to 150 K.</summary>
    public required TemperatureDelta TowerChange { get; init; }

    /// <summary>Distance from the point where skin and tower are fixed together, up or out; zero or more.</summary>
    public required Length Distance { get; init; }

    /// <summary>Free strain of the skin less that of the tower; positive when the skin grows more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public double Strain => Compute(null).Strain;

    /// <summary>Movement of the skin away from the fixed point, relative to the tower.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public Length Free => Length.FromMeters(Compute(null).Movement);

    internal (double Strain, double Movement) Compute(Working? w)
    {
        double alpha_s = CheckInput.Within(Skin.PerKelvin, 0, 1e-4, nameof(Skin)), alpha_t = CheckInput.Within(Tower.PerKelvin, 0, 1e-4, nameof(Tower));
        double dT_s = CheckInput.Within(SkinChange.Kelvins, -2000, 2000, nameof(SkinChange)), dT_t = CheckInput.Within(TowerChange.Kelvins, -2000, 2000, nameof(TowerChange));
        double L = CheckInput.NotNegative(Distance.Meters, nameof(Distance));
        w.Given(alpha_s, Dimension.Number, "expansion of the skin, 1/K");
        w.Given(alpha_t, Dimension.Number, "expansion of the tower, 1/K");
        w.Given(dT_s, Dimension.TemperatureDelta, "change of the skin");
        w.Given(dT_t, Dimension.TemperatureDelta, "change of the tower");
        w.Given(L, Dimension.Length, "distance from the fixed point");
        double strain = w.Let("strain", alpha_s * dT_s - alpha_t * dT_t, Dimension.Number, expansion, "skin less tower");
        return (strain, w.Let("delta", strain * L, Dimension.SmallLength, expansion, "free movement"));
    }

    private static readonly Source expansion = Source.Roark("section 16.6: thermal expansion");
}
