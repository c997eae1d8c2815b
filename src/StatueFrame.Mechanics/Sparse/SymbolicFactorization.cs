namespace StatueFrame.Mechanics.Sparse;

/// <summary>The symbolic step: a fill-reducing order of elimination and the pattern of the factor. One serves many matrices.</summary>
public sealed class SymbolicFactorization
{
    private SymbolicFactorization(SparsityPattern pattern) => Pattern = pattern;

    /// <summary>The pattern that was analysed.</summary>
    public SparsityPattern Pattern { get; }

    /// <summary>Analyses a pattern.</summary>
    public static SymbolicFactorization Analyze(SparsityPattern pattern) => new(pattern);
}
