using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Heat or cold: how much warmer skin and tower are than when they were fitted together. The skin's change is
/// T = SkinChange + ByHeight(z) + SunRise · max(0, n·s), with the skin's outward normal n across its body's axis and the
/// direction s to the sun: round an upright body a cosine over the lit half. A band grows from its
/// center by its mean strain and bends as a thin ring with a warm side does; along the axis each side grows by its own
/// strain. Standoffs have the mean of their two ends. The loads that follow are in balance among themselves.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Helpers for temperatures: <see cref="En1991Temperatures"/>. Source of
/// the parts: EN 1991-1-5:2003, 4 (uniform part, linearly varying part).
/// </remarks>
public sealed record TemperatureAction : StatueAction
{
    /// <summary>Expansion of a core that does not tell its material, 1/K: steel.</summary>
    internal const double CoreExpansion = 12e-6;

    private const double Most = 150;

    /// <summary>Short name, as in "summer noon".</summary>
    public string Name { get; init; } = "heat";

    /// <summary>How much warmer all skin is than when it was fitted; negative when colder. −150 K to 150 K.</summary>
    public required TemperatureDelta SkinChange { get; init; }

    /// <summary>How much warmer the tower is, and the inner structure of limbs, than when the skin was fitted. −150 K to 150 K.</summary>
    public TemperatureDelta TowerChange { get; init; }

    /// <summary>What is added to the skin's change at heights, ascending, linear between them and constant beyond.</summary>
    public ValueList<HeatAtHeight> ByHeight { get; init; } = [];

    /// <summary>How much warmer a skin is that faces the sun squarely, 0 to 100 K.</summary>
    public TemperatureDelta SunRise { get; init; }

    /// <summary>The plan angle of the side that faces the sun, anticlockwise from +x, −360° to 720°; needed with a sun.</summary>
    public Angle? SunSide { get; init; }

    /// <summary>The sun's height above the horizon, 0 to 90°; zero by default, which lights upright skin the most.</summary>
    public Angle SunElevation { get; init; }

    /// <summary>How much warmer the lit side of tower and limbs' inner structure is than their far side, linear between: it bends them away from the sun. 0 to 100 K.</summary>
    public TemperatureDelta TowerSunRise { get; init; }

    /// <summary>Expansion of the tower; null takes that of each segment's material, and 12 ppm/K for a core without one.</summary>
    public CoefficientOfThermalExpansion? TowerExpansion { get; init; }

    /// <inheritdoc/>
    public override string Title => Name;

    /// <summary>Towards the sun.</summary>
    internal Vector3D Sun
    {
        get
        {
            (double sin, double cos) = Math.SinCos(SunSide?.Radians ?? 0);
            (double up, double level) = Math.SinCos(SunElevation.Radians);
            return new Vector3D(level * cos, level * sin, up);
        }
    }

    /// <summary>The skin's change at a height, K.</summary>
    /// <param name="z">Height above the tower's base, m.</param>
    /// <param name="outward">Outward unit normal of the skin, in the statue's axes.</param>
    internal double SkinAt(double z, Vector3D outward) =>
        SkinChange.Kelvins + Added(z) + SunRise.Kelvins * Math.Max(0, outward.Dot(Sun));

    private double Added(double z)
    {
        if (ByHeight.Count == 0)
            return 0;
        int i = 0;
        while (i < ByHeight.Count && ByHeight[i].Elevation.Meters < z)
            i++;
        if (i == 0 || i == ByHeight.Count)
            return ByHeight[Math.Min(i, ByHeight.Count - 1)].Change.Kelvins;
        (HeatAtHeight below, HeatAtHeight above) = (ByHeight[i - 1], ByHeight[i]);
        double t = (z - below.Elevation.Meters) / (above.Elevation.Meters - below.Elevation.Meters);
        return (1 - t) * below.Change.Kelvins + t * above.Change.Kelvins;
    }

    internal override void Validate(Validator v)
    {
        v.Named(Name);
        v.Within(SkinChange, SkinChange.Kelvins, -Most, Most);
        v.Within(TowerChange, TowerChange.Kelvins, -Most, Most);
        v.Within(SunRise, SunRise.Kelvins, 0, 100);
        v.Within(TowerSunRise, TowerSunRise.Kelvins, 0, 100);
        v.Within(SunElevation, SunElevation.Degrees, 0, 90);
        if (SunSide is { } side)
            v.Within(side, side.Degrees, -360, 720, nameof(SunSide));
        else if (SunRise.Kelvins > 0 || TowerSunRise.Kelvins > 0)
            v.Add(nameof(SunSide), "is missing (null)", "Say which side the sun shines on, as in SunSide = 270.Degrees.");
        if (TowerExpansion is { } expansion)
            v.Within(expansion, expansion.PerKelvin, 0, 1e-4, nameof(TowerExpansion));
        double below = double.NegativeInfinity;
        foreach ((_, HeatAtHeight item, Validator at) in v.Items(ByHeight, StatueSize.Stations))
        {
            at.Within(item.Elevation, item.Elevation.Meters, -1000, 1000, nameof(HeatAtHeight.Elevation));
            at.Within(item.Change, item.Change.Kelvins, -Most, Most, nameof(HeatAtHeight.Change));
            if (item.Elevation.Meters < below + 0.001)
                at.Add(nameof(HeatAtHeight.Elevation), "must be at least 1 mm above the one before it", "List the heights from the lowest up.");
            below = item.Elevation.Meters;
        }
    }
}
