using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>Something of a statue that is adjusted until its model meets what was measured on site.</summary>
/// <remarks>Immutable and safe to share between threads when its function is.</remarks>
/// <param name="Number">The number that is adjusted, above zero.</param>
/// <param name="Change">Makes the statue for a value of it.</param>
public sealed record StatueAdjustment(Adjustable Number, Func<Statue, double, Statue> Change)
{
    /// <summary>The stiffness of the trunk's tower, as a factor on the moduli of its metals.</summary>
    /// <param name="least">Least factor.</param>
    /// <param name="greatest">Greatest factor.</param>
    public static StatueAdjustment TowerStiffness(double least = 0.3, double greatest = 3) => new(new("tower stiffness", 1, least, greatest), (statue, factor) => statue with
    {
        Tower = statue.Tower with
        {
            Segments = statue.Tower.Segments.Select(segment => segment switch
            {
                LatticeSegment lattice => lattice with { Material = Stiffened(lattice.Material, factor) },
                MemberSegment member => (TowerSegment)(member with { Material = Stiffened(member.Material, factor) }),
                _ => segment,
            }).ToValueList(),
        },
    });

    /// <summary>The base's stiffness against rocking, N·m/rad.</summary>
    /// <param name="start">Where the search begins.</param>
    /// <param name="least">The least it may be.</param>
    /// <param name="greatest">The greatest it may be; beyond some stiffness it is as good as rigid, which the fit says.</param>
    public static StatueAdjustment BaseRocking(RotationalStiffness start, RotationalStiffness least, RotationalStiffness greatest) => new(
        new("base rocking stiffness", start.NewtonMetersPerRadian, least.NewtonMetersPerRadian, greatest.NewtonMetersPerRadian),
        (statue, k) => statue with { Tower = statue.Tower with { Base = TowerBase.Rocking(RotationalStiffness.FromNewtonMetersPerRadian(k)) } });

    /// <summary>The fixity of the bars' skin ends, N·m/rad about both bending axes.</summary>
    /// <param name="start">Where the search begins.</param>
    /// <param name="least">The least it may be.</param>
    /// <param name="greatest">The greatest it may be.</param>
    public static StatueAdjustment BarFixity(RotationalStiffness start, RotationalStiffness least, RotationalStiffness greatest) => new(
        new("bar fixity", start.NewtonMetersPerRadian, least.NewtonMetersPerRadian, greatest.NewtonMetersPerRadian), (statue, k) =>
        {
            EndFixity fixity = EndFixity.Spring(RotationalStiffness.FromNewtonMetersPerRadian(k));
            ValueList<StandoffRing> With(ValueList<StandoffRing> rings) => rings.Select(ring => ring switch
            {
                EvenRing even => even with { Standoff = even.Standoff with { SkinFixity = fixity } },
                ExplicitRing by => (StandoffRing)(by with { Bars = by.Bars.Select(bar => bar with { Standoff = bar.Standoff with { SkinFixity = fixity } }).ToValueList() }),
                _ => ring,
            }).ToValueList();
            return statue with { Standoffs = With(statue.Standoffs), Limbs = statue.Limbs.Select(limb => limb with { Standoffs = With(limb.Standoffs) }).ToValueList() };
        });

    /// <summary>The mass of the skin with its armature, as a factor, for trunk and limbs alike.</summary>
    /// <param name="least">Least factor.</param>
    /// <param name="greatest">Greatest factor.</param>
    public static StatueAdjustment SkinMass(double least = 0.5, double greatest = 2) => new(new("skin mass", 1, least, greatest), (statue, factor) =>
    {
        Skin? Of(Skin? skin) => skin is null ? null : skin with { Material = skin.Material with { Density = factor * skin.Material.Density }, ArmatureMass = factor * skin.ArmatureMass };
        return statue with { Skin = Of(statue.Skin), Limbs = statue.Limbs.Select(limb => limb with { Skin = Of(limb.Skin) }).ToValueList() };
    });

    private static Material Stiffened(Material metal, double factor) =>
        metal with { YoungsModulus = factor * metal.YoungsModulus, ShearModulus = factor * metal.ShearModulus };
}
