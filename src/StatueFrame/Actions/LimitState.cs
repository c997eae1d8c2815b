namespace StatueFrame;

/// <summary>Which kind of limit a situation is checked against.</summary>
public enum LimitState
{
    /// <summary>Strength and stability: factored actions against resistance.</summary>
    Strength,

    /// <summary>Use and appearance: sway, deflection, comfort.</summary>
    Service,
}
