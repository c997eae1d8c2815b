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

    internal double b => Section.Width.Meters;

    internal double t => Section.Thickness.Meters;

    internal double L => Length.Meters;

    internal double E => Material.YoungsModulus.Pascals;

    internal double G => Material.ShearModulus.Pascals;

    internal double f_y => Material.YieldStrength.Pascals;

    internal double f_u => Material.UltimateStrength.Pascals;

    /// <summary>Effective length factor about one axis; +∞ for a mechanism.</summary>
    internal double EffectiveLengthFactor(bool weak)
    {
        double I = weak ? b * t * t * t / 12 : t * b * b * b / 12;
        EndSprings tower = TowerFixity.Springs, skin = SkinFixity.Springs;
        double scale = L / (E * I);
        double atTower = (weak ? tower.Weak : tower.Strong) * scale;
        double atSkin = Restraint == BarRestraint.Free ? 0 : (weak ? skin.Weak : skin.Strong) * scale;
        return EffectiveLength.Factor(atTower, atSkin, Restraint != BarRestraint.Held);
    }

    internal CheckSubject Subject(string id, string title) => new(id, title, Where, Situation);

    /// <summary>Refuses what no bar can be.</summary>
    /// <exception cref="InvalidStatueException">Something is not valid.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A force is not finite.</exception>
    internal void Validate(BarDesign design)
    {
        var v = new Validator();
        Section.Validate(v.At(nameof(Section)));
        Material.Validate(v.At(nameof(Material)));
        v.Positive(Length, L, Standoff.LeastLength, Standoff.GreatestLength);
        TowerFixity.Validate(v.At(nameof(TowerFixity)));
        SkinFixity.Validate(v.At(nameof(SkinFixity)));
        v.NotNegative(InitialBow, InitialBow.Meters, 1);
        design.Validate(v.At("Design"));
        v.ThrowIfAny();
        _ = AtTower.Si(nameof(AtTower));
        _ = AtSkin.Si(nameof(AtSkin));
    }
}
