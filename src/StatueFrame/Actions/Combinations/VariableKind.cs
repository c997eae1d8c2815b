namespace StatueFrame;

/// <summary>The kind of a variable action, which its combination factors follow from.</summary>
public enum VariableKind
{
    /// <summary>Wind.</summary>
    Wind,

    /// <summary>People where they gather: platforms, stairs, galleries (EN 1990, category C).</summary>
    People,

    /// <summary>Snow at sites up to 1000 m above sea.</summary>
    Snow,

    /// <summary>Ice on skin and members.</summary>
    Ice,

    /// <summary>Temperature.</summary>
    Temperature,
}
