namespace StatueFrame;

/// <summary>
/// Something that acts on the statue: its weight, wind, people. Multiply it by its partial or combination factor to put
/// it in a <see cref="Situation"/>: <c>Actions = [1.35 * new SelfWeight(), 1.5 * wind]</c>.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record StatueAction
{
    /// <summary>What the sheet calls it.</summary>
    public abstract string Title { get; }

    internal abstract void Validate(Validator v);

    /// <summary>The action multiplied by a factor.</summary>
    public static FactoredAction operator *(double factor, StatueAction action) => new(factor, action);
}
