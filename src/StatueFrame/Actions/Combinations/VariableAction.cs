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

    /// <summary>Whether it only presses down, and so may hold what the wind tips.</summary>
    internal bool OnlyPressesDown => Action switch
    {
        IceAction => true,
        ImposedLoad load => load.Down.Newtons >= 0 && load.AlongX.Newtons == 0 && load.AlongY.Newtons == 0,
        _ => false,
    };

    internal void Validate(Validator v)
    {
        v.Defined(Kind);
        if (v.Required(Action) is not { } action)
            return;
        action.Validate(v.At(nameof(Action)));
        VariableKind? asked = action switch
        {
            WindAction => VariableKind.Wind,
            IceAction => VariableKind.Ice,
            TemperatureAction => VariableKind.Temperature,
            _ => null,
        };
        if (action is not (WindAction or IceAction or TemperatureAction or ImposedLoad))
            v.Add(nameof(Action), $"is no variable action: {action.Title}", "Weight is permanent; put shocks into Accidental and earthquakes into Seismic.");
        else if (asked is { } kind ? Kind != kind : Kind is not (VariableKind.People or VariableKind.Snow))
            v.Add(nameof(Kind), $"is {Kind}, which {action.Title} is not", asked is null ? "An imposed load is of people or snow." : $"Its kind is {asked}.");
        if (Psi is { } psi)
        {
            Validator at = v.At(nameof(Psi));
            const string hint = "See EN 1990, Table A1.1, and the National Annex.";
            at.InRange(psi.Combination, 0, 1, hint, nameof(PsiFactors.Combination));
            at.InRange(psi.Frequent, 0, 1, hint, nameof(PsiFactors.Frequent));
            at.InRange(psi.QuasiPermanent, 0, 1, hint, nameof(PsiFactors.QuasiPermanent));
            at.Required(psi.Source, nameof(PsiFactors.Source));
        }
    }
}
