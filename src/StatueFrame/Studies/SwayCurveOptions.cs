using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>What a <see cref="SwayCurve"/> is drawn for.</summary>
/// <remarks>Immutable and safe to share between threads, if <see cref="Dynamics"/> is.</remarks>
public sealed record SwayCurveOptions
{
    /// <summary>Height of the anemometer above the ground that the wind profile is given for, 1 to 500 m.</summary>
    public required Length AnemometerHeight { get; init; }

    /// <summary>
    /// Mean speeds at the anemometer for the lines of the table, ascending, from zero to the design speed; null takes
    /// round numbers of m/s and the design speed.
    /// </summary>
    public ValueList<Speed>? MeanSpeeds { get; init; }

    /// <summary>The heading to draw for; null takes, for each quantity and speed, the worst heading of the wind action.</summary>
    public Angle? Heading { get; init; }

    /// <summary>
    /// The limits of sway and of the bars' stress whose speeds are looked for. The curve is without load factors: give a
    /// stress fraction that holds for them, not 1/γ_M.
    /// </summary>
    public Criteria Limits { get; init; } = new();

    /// <summary>Limits of acceleration; their speeds are known only with <see cref="Dynamics"/>.</summary>
    public ValueList<AccelerationLimit> AccelerationLimits { get; init; } = [];

    /// <summary>What acts in calm and at all speeds: the weight, unless it is said. Not wind.</summary>
    public ValueList<FactoredAction> Calm { get; init; } = [new SelfWeight()];

    /// <summary>The method for vibration in gusts; null leaves the wind action's gust factor, and accelerations unknown.</summary>
    public ISwayDynamics? Dynamics { get; init; }

    internal void Validate(Validator v, Statue statue, double designSpeed)
    {
        v.Positive(AnemometerHeight, AnemometerHeight.Meters, 1, 500);
        if (Heading is { } heading)
            v.Within(heading, heading.Degrees, -360, 720, nameof(Heading));
        Limits.Validate(v.At(nameof(Limits)), new StatueNames(statue));
        for (int i = 0; i < AccelerationLimits.Count; i++)
        {
            Validator at = v.At(nameof(AccelerationLimits), i);
            (string point, Acceleration limit) = AccelerationLimits[i];
            at.Positive(limit, limit.MetersPerSecondSquared, 1e-4, 20, nameof(AccelerationLimit.Limit));
            if (statue.Points.All(p => p.Name != point))
                at.Add(nameof(AccelerationLimit.Point), $"the statue has no point \"{point}\"", NearNames.Closest(point, statue.Points.Select(p => p.Name)));
        }
        if (Calm.Any(a => a.Action is WindAction))
            v.Add(nameof(Calm), "has wind", "Wind comes with the speeds of the curve.");
        if (MeanSpeeds is { Count: 0 })
            v.Add(nameof(MeanSpeeds), "must not be empty", "Leave them out for round numbers.");
        for (int i = 0; i < (MeanSpeeds?.Count ?? 0); i++)
        {
            Speed speed = MeanSpeeds![i];
            if (!(speed.MetersPerSecond >= 0 && speed.MetersPerSecond <= designSpeed * (1 + 1e-9)))
                v.At(nameof(MeanSpeeds), i).Add("", FormattableString.Invariant($"must be from 0 to the design speed of {designSpeed:0.00} m/s, is {speed.MetersPerSecond:0.00} m/s"), "Nothing was verified above the design speed.");
            if (i > 0 && !(speed.MetersPerSecond > MeanSpeeds[i - 1].MetersPerSecond))
                v.At(nameof(MeanSpeeds), i).Add("", "must be above the speed before it", "List the speeds from the lowest up.");
        }
    }
}
