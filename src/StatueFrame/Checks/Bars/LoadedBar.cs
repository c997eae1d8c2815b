using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// A flat bar with what acts on its ends: the one input of all bar checks. Fill it by hand in a script, or take
/// <see cref="Of"/> for a bar of an analyzed statue.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record LoadedBar
{
    /// <summary>The flat.</summary>
    public required FlatBar Section { get; init; }

    /// <summary>The metal.</summary>
    public required Material Material { get; init; }

    /// <summary>Length between its ends, 0.02 m to 20 m.</summary>
    public required Length Length { get; init; }

    /// <summary>How the tower end is held against turning.</summary>
    public EndFixity TowerFixity { get; init; } = EndFixity.Rigid;

    /// <summary>How the skin end is held against turning; without effect when it is <see cref="BarRestraint.Free"/>.</summary>
    public EndFixity SkinFixity { get; init; } = EndFixity.Rigid;

    /// <summary>How the skin end is held when the bar buckles; a free end is the worst.</summary>
    public BarRestraint Restraint { get; init; } = BarRestraint.Free;

    /// <summary>Forces at the tower end.</summary>
    public required BarSectionForces AtTower { get; init; }

    /// <summary>Forces at the skin end.</summary>
    public BarSectionForces AtSkin { get; init; } = new();

    /// <summary>How far the unloaded bar is bowed out of straight, besides the imperfection of its buckling curve; zero or more.</summary>
    public Length InitialBow { get; init; }

    /// <summary>Where it is, as in "band 3, bar 2".</summary>
    public string Where { get; init; } = "";

    /// <summary>The name of the situation.</summary>
    public string Situation { get; init; } = "";

    /// <summary>A bar of an analyzed statue with the forces of its worst stress: free at its skin end under limp skin, swaying on a rigid ring.</summary>
    /// <param name="bar">The bar in its situation.</param>
    /// <param name="situation">Name of the situation.</param>
    public static LoadedBar Of(BarResult bar, string situation)
    {
        BarForces forces = bar.Forces;
        return new LoadedBar
        {
            Section = bar.Standoff.Section,
            Material = bar.Standoff.Material,
            Length = bar.Length,
            TowerFixity = bar.Standoff.TowerFixity,
            SkinFixity = bar.Standoff.SkinFixity,
            Restraint = bar.StressAssumption == SkinAssumption.LimpSkin ? BarRestraint.Free : BarRestraint.Sway,
            AtTower = BarSectionForces.AtTower(forces),
            AtSkin = BarSectionForces.AtSkin(forces),
            Where = bar.Where,
            Situation = situation,
        };
    }

    /// <summary>As the catalogue's entries take it.</summary>
    /// <exception cref="InvalidStatueException">Something is not valid.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A force is not finite.</exception>
    internal BarLoad Load(BarDesign design, StandoffFixing? fixing = null, bool atSkin = false)
    {
        Validate(design);
        if (fixing is not null)
        {
            var v = new Validator();
            fixing.Validate(v.At("Fixing"), Section.Width.Meters);
            v.ThrowIfAny();
        }
        var standoff = new Standoff
        {
            Section = Section,
            Material = Material,
            TowerFixity = TowerFixity,
            SkinFixity = SkinFixity,
            TowerFixing = atSkin ? null : fixing,
            SkinFixing = atSkin ? fixing : null,
        };
        return new BarLoad(
            new CheckedBar(standoff, Length.Meters, design, Where, InitialBow.Meters), new BarEnds(AtTower.Si(nameof(AtTower)), AtSkin.Si(nameof(AtSkin))), Restraint);
    }

    /// <summary>Refuses what no bar can be.</summary>
    /// <exception cref="InvalidStatueException">Something is not valid.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A force is not finite.</exception>
    private void Validate(BarDesign design)
    {
        var v = new Validator();
        Section.Validate(v.At(nameof(Section)));
        Material.Validate(v.At(nameof(Material)));
        v.Positive(Length, Length.Meters, Standoff.LeastLength, Standoff.GreatestLength);
        TowerFixity.Validate(v.At(nameof(TowerFixity)));
        SkinFixity.Validate(v.At(nameof(SkinFixity)));
        v.NotNegative(InitialBow, InitialBow.Meters, 1);
        design.Validate(v.At("Design"));
        v.ThrowIfAny();
    }
}
