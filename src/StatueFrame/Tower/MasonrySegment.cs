namespace StatueFrame;

/// <summary>A core of masonry, without tension.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record MasonrySegment : BlockSegment
{
    /// <summary>What it is built of.</summary>
    public required Masonry Material { get; init; }

    internal override BlockMaterial Stuff => Material;

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.Required(Material)?.Validate(v.At(nameof(Material)));
    }
}
