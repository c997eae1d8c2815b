namespace StatueFrame;

/// <summary>Partial factors on actions; the recommended ones by default, which a national annex may change.</summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1990:2002+A1:2005, Tables A1.2(A), A1.2(B), B3.</remarks>
public sealed record En1990Factors
{
    private const string Hint = "See EN 1990, Tables A1.2(A) and A1.2(B), and the National Annex.";

    /// <summary>The recommended factors.</summary>
    public static En1990Factors Recommended { get; } = new();

    /// <summary>γ_G,sup on unfavorable permanent actions, set B.</summary>
    public double PermanentUnfavorable { get; init; } = 1.35;

    /// <summary>γ_G,inf on favorable permanent actions, set B.</summary>
    public double PermanentFavorable { get; init; } = 1.0;

    /// <summary>γ_Q on unfavorable variable actions, sets A and B.</summary>
    public double Variable { get; init; } = 1.5;

    /// <summary>ξ on unfavorable permanent actions in (6.10b).</summary>
    public double Reduction { get; init; } = 0.85;

    /// <summary>γ_G,sup on permanent actions that tip the statue, set A.</summary>
    public double PermanentDestabilizing { get; init; } = 1.1;

    /// <summary>γ_G,inf on permanent actions that hold it, set A.</summary>
    public double PermanentStabilizing { get; init; } = 0.9;

    /// <summary>K_FI on unfavorable actions for the reliability class: 0.9 (RC1), 1.0 (RC2), 1.1 (RC3).</summary>
    public double ConsequenceFactor { get; init; } = 1.0;

    internal void Validate()
    {
        var v = new Validator();
        Validator at = v.At(nameof(En1990Factors));
        at.InRange(PermanentUnfavorable, 1, 2, Hint);
        at.InRange(PermanentFavorable, 0.5, 1, Hint);
        at.InRange(Variable, 1, 2, Hint);
        at.InRange(Reduction, 0.5, 1, Hint);
        at.InRange(PermanentDestabilizing, 1, 2, Hint);
        at.InRange(PermanentStabilizing, 0.5, 1, Hint);
        at.InRange(ConsequenceFactor, 0.8, 1.2, Hint);
        v.ThrowIfAny();
    }
}
