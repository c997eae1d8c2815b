namespace StatueFrame;

/// <summary>The operators of a <see cref="FormulaNode"/>.</summary>
public enum FormulaOperator
{
    /// <summary>a + b.</summary>
    Add,
    /// <summary>a − b.</summary>
    Subtract,
    /// <summary>a · b.</summary>
    Multiply,
    /// <summary>a / b.</summary>
    Divide,
    /// <summary>The remainder of a / b, with the sign of a.</summary>
    Remainder,
    /// <summary>a to the power b.</summary>
    Power,
    /// <summary>−a.</summary>
    Negate,
    /// <summary>not a.</summary>
    Not,
    /// <summary>a and b.</summary>
    And,
    /// <summary>a or b.</summary>
    Or,
    /// <summary>a = b.</summary>
    Equal,
    /// <summary>a ≠ b.</summary>
    NotEqual,
    /// <summary>a &lt; b.</summary>
    Less,
    /// <summary>a ≤ b.</summary>
    LessOrEqual,
    /// <summary>a &gt; b.</summary>
    Greater,
    /// <summary>a ≥ b.</summary>
    GreaterOrEqual,
}
