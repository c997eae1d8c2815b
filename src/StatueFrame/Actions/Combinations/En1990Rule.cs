namespace StatueFrame;

/// <summary>Which of the alternatives of EN 1990, 6.4.3.2 the combinations follow; a national annex chooses.</summary>
public enum En1990Rule
{
    /// <summary>Expression (6.10).</summary>
    Single,

    /// <summary>The less favorable of expressions (6.10a) and (6.10b).</summary>
    Pair,
}
