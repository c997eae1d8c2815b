namespace StatueFrame;

/// <summary>Partial factors on actions; the recommended ones by default, which a national annex may change.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Weights that help count 1.0 in checks of strength and 0.9 in overturning and
/// sliding, whatever these are. Source: EN 1990:2002+A1:2005, Table A1.2(B).
/// </remarks>
public sealed record En1990Factors
{
    private const string Hint = "See EN 1990, Table A1.2(B), and the National Annex.";

    /// <summary>The recommended factors.</summary>
    public static En1990Factors Recommended { get; } = new();

    /// <summary>γ_G,sup on unfavorable permanent actions, set B, 1 to 2.</summary>
    public double PermanentUnfavorable { get; init; } = 1.35;

    /// <summary>γ_Q on unfavorable variable actions, 1 to 2.</summary>
    public double Variable { get; init; } = 1.5;

    /// <summary>ξ on unfavorable permanent actions in (6.10b), 0.5 to 1.</summary>
    public double Reduction { get; init; } = 0.85;

    internal void Validate(Validator v)
    {
        v.InRange(PermanentUnfavorable, 1, 2, Hint);
        v.InRange(Variable, 1, 2, Hint);
        v.InRange(Reduction, 0.5, 1, Hint);
    }
}
