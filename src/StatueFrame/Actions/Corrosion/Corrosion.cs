using UnitsNet;

namespace StatueFrame;

/// <summary>How the statue weathers: the air outside and inside, how long coatings keep it off, and what is between unlike metals.</summary>
/// <remarks>
/// <para>
/// Corrosion is even over a face. Pits, crevices, water traps, galvanic attack, wear and the weight of the rust are not in it.
/// Tubes are sealed: they do not corrode inside. Armature bars weather like the skin's inside, though the mass given for the
/// armature stays; so do straps of seams, from both faces. Cores given by rigidities, masonry, rivets, fittings, hold-down
/// and foundation do not change.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
public sealed record Corrosion
{
    internal const string Trunk = "trunk";

    /// <summary>The air outside.</summary>
    public required Atmosphere Air { get; init; }

    /// <summary>
    /// The air inside the skin, round standoffs, tower and limbs that have a skin; null takes that outside, which the sheet
    /// lists as assumed. Surfaces that no rain washes can fare better or, near the sea, worse.
    /// </summary>
    public Atmosphere? AirInside { get; init; }

    /// <summary>Whether the loss follows the mean or the upper exponent; the mean by default.</summary>
    public LossExponent Exponent { get; init; }

    /// <summary>Composition of the carbon steel, for its own exponent; null takes that of unalloyed steel.</summary>
    public SteelComposition? Steel { get; init; }

    /// <summary>How long a coating keeps the air off the skin's outside; zero by default, at most 1000 years.</summary>
    public Duration SkinCoating { get; init; }

    /// <summary>The same for the skin's inside.</summary>
    public Duration SkinInsideCoating { get; init; }

    /// <summary>The same for standoffs.</summary>
    public Duration StandoffCoating { get; init; }

    /// <summary>The same for tower and limbs.</summary>
    public Duration TowerCoating { get; init; }

    /// <summary>The age at which the statue has the thicknesses described; zero, new, by default, at most 1000 years.</summary>
    public Duration Age { get; init; }

    /// <summary>What is between unlike metals. Contacts that are not listed are not checked where they need isolation.</summary>
    public ValueList<MetalContact> Contacts { get; init; } = [];

    /// <summary>
    /// What a face loses from the age described to another, m; null when the metal's loss is not known.
    /// </summary>
    /// <param name="material">The metal.</param>
    /// <param name="face">The face.</param>
    /// <param name="untilYears">The later age of the statue, years.</param>
    /// <param name="sinceYears">The statue's age when the part was put in, years.</param>
    internal double? Loss(Material material, CorrosionFace face, double untilYears, double sinceYears = 0)
    {
        if (material.Family is not { } metal || AirAt(face).FirstYear(metal) is not { } first)
            return null;
        // Stainless steel and lead have no exponent of their own: a loss given for them goes on at its first rate.
        double b = metal == MetalFamily.CarbonSteel && Steel is { } steel ? steel.ExponentInUse : CorrosionLaw.Exponent(metal, Exponent) ?? 1;
        double coated = CoatingOf(face).Years365;
        return first.Loss.Meters * (Factor(untilYears) - Factor(Age.Years365));

        double Factor(double years) => CorrosionLaw.TimeFactor(Math.Max(0, years - sinceYears - coated), b);
    }

    internal Atmosphere AirAt(CorrosionFace face) => face is CorrosionFace.SkinOutside or CorrosionFace.BareTower ? Air : AirInside ?? Air;

    internal void Validate(Validator v, Statue statue)
    {
        v.Required(Air)?.Validate(v.At(nameof(Air)));
        AirInside?.Validate(v.At(nameof(AirInside)));
        v.Defined(Exponent);
        Steel?.Validate(v.At(nameof(Steel)));
        v.NotNegative(SkinCoating, SkinCoating.Seconds, Atmosphere.LongestExposure);
        v.NotNegative(SkinInsideCoating, SkinInsideCoating.Seconds, Atmosphere.LongestExposure);
        v.NotNegative(StandoffCoating, StandoffCoating.Seconds, Atmosphere.LongestExposure);
        v.NotNegative(TowerCoating, TowerCoating.Seconds, Atmosphere.LongestExposure);
        v.NotNegative(Age, Age.Seconds, Atmosphere.LongestExposure);
        foreach ((_, MetalContact contact, Validator at) in v.Items(Contacts, 500))
            contact.Validate(at, statue);
    }

    private Duration CoatingOf(CorrosionFace face) => face switch
    {
        CorrosionFace.SkinOutside => SkinCoating,
        CorrosionFace.SkinInside => SkinInsideCoating,
        CorrosionFace.Standoff => StandoffCoating,
        _ => TowerCoating,
    };
}
