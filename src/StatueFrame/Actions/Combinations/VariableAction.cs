namespace StatueFrame;

/// <summary>An action that comes and goes, and its kind.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Action">What acts.</param>
/// <param name="Kind">What kind it is of, for its combination factors.</param>
public sealed record VariableAction(StatueAction Action, VariableKind Kind)
{
    /// <summary>Factors of the user's own, as of a national annex; null takes those of the kind.</summary>
    public PsiFactors? Psi { get; init; }

    /// <summary>A wind, whose kind is plain.</summary>
    public static implicit operator VariableAction(WindAction wind) => new(wind, VariableKind.Wind);

    /// <summary>A coat of ice, whose kind is plain.</summary>
    public static implicit operator VariableAction(IceAction ice) => new(ice, VariableKind.Ice);

    /// <summary>Heat or cold, whose kind is plain.</summary>
    public static implicit operator VariableAction(TemperatureAction heat) => new(heat, VariableKind.Temperature);

    /// <summary>People on a platform: an imposed load of category C. Say another kind by the constructor.</summary>
    public static implicit operator VariableAction(ImposedLoad load) => new(load, VariableKind.People);

    internal PsiFactors PsiInUse => Psi ?? PsiFactors.Of(Kind);
}
