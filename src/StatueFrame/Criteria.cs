namespace StatueFrame;

/// <summary>What is enough: the limits that a check sheet compares the response with.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Criteria
{
    /// <summary>The greatest sway allowed at named points.</summary>
    public ValueList<SwayLimit> Sway { get; init; } = [];

    /// <summary>
    /// The fraction of the yield or proof strength that a standoff's stress may reach in a strength situation; null takes
    /// 1/1.5, which the sheet lists as assumed. With factored actions use 1/γ_M.
    /// </summary>
    public double? BarStressFraction { get; init; }

    /// <summary>The least buckling factor at which forces without second-order effects are good enough; 10 by default.</summary>
    public double LeastBucklingFactor { get; init; } = 10;

    /// <summary>How many modes the sheet lists, 1 to 100.</summary>
    public int Modes { get; init; } = 6;

    internal void Validate(Validator v, Statue statue)
    {
        for (int i = 0; i < Sway.Count; i++)
        {
            Validator at = v.At(nameof(Sway), i);
            at.Positive(Sway[i].Limit, Sway[i].Limit.Meters, 1e-6, 10);
            if (statue.Points.All(p => p.Name != Sway[i].Point))
                at.Add(nameof(SwayLimit.Point), $"the statue has no point \"{Sway[i].Point}\"", StatueNames.Closest(Sway[i].Point, statue.Points.Select(p => p.Name)));
        }
        if (BarStressFraction is { } fraction)
            v.InRange(fraction, 0.05, 1, "It is allowable stress over yield strength.", nameof(BarStressFraction));
        v.InRange(LeastBucklingFactor, 1, 100);
        v.InRange(Modes, 1, 100);
    }
}
