namespace StatueFrame.Checks;

/// <summary>What kind of question a check answers.</summary>
public enum Nature
{
    /// <summary>Whether a part is strong, stable and durable enough.</summary>
    Strength,

    /// <summary>Whether movement, comfort and looks are as asked.</summary>
    Service,

    /// <summary>Whether a method may be used: it says nothing of strength, and never governs it.</summary>
    Range,
}
