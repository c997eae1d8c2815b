namespace StatueFrame;

/// <summary>A core of concrete: plain, or with the bars that are described.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ConcreteSegment : BlockSegment
{
    /// <summary>What it is cast of.</summary>
    public required Concrete Material { get; init; }

    /// <summary>Its vertical bars; null for plain concrete.</summary>
    public Reinforcement? Reinforcement { get; init; }

    internal override BlockMaterial Stuff => Material;

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        Reinforcement?.Validate(v.At(nameof(Reinforcement)));
    }
}
