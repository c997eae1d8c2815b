namespace StatueFrame;

/// <summary>How two parts of the statue are kept apart where they touch, or that they are not.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record MetalContact
{
    /// <summary>The kind of joint.</summary>
    public required ContactJoint Joint { get; init; }

    /// <summary>What is between the metals, round the fasteners too.</summary>
    public required Isolation Isolation { get; init; }

    /// <summary>"trunk" or the name of a limb; null for all bodies. For <see cref="ContactJoint.Other"/> a name of your choice.</summary>
    public string? Body { get; init; }

    /// <summary>
    /// Wetted area of the nobler metal over that of the less noble one, 1e-6 to 1e6; null when not known. A small noble part
    /// on a large base one does little harm, the reverse eats the small part fast.
    /// </summary>
    public double? NobleOverBase { get; init; }

    /// <summary>One metal, for <see cref="ContactJoint.Other"/>; null otherwise.</summary>
    public MetalFamily? First { get; init; }

    /// <summary>The other metal, for <see cref="ContactJoint.Other"/>; null otherwise.</summary>
    public MetalFamily? Second { get; init; }

    internal void Validate(Validator v, Statue statue)
    {
        v.Defined(Joint);
        v.Defined(Isolation);
        if (NobleOverBase is { } ratio)
            v.InRange(ratio, 1e-6, 1e6, "It is the area of the nobler metal over that of the less noble one.", nameof(NobleOverBase));
        if (First is { } first)
            v.Defined(first, nameof(First));
        if (Second is { } second)
            v.Defined(second, nameof(Second));
        if (Joint == ContactJoint.Other)
        {
            v.Named(Body, nameof(Body));
            if (First is null || Second is null)
                v.Add(nameof(First), "and Second are needed", "Say which metals touch there.");
        }
        else if (Body is not null && Body != Corrosion.Trunk && (statue.Limbs ?? []).All(limb => limb?.Name != Body))
        {
            v.Add(nameof(Body), $"there is no limb \"{Body}\"", "Name a limb, say \"trunk\", or leave it out for all.");
        }
    }
}
