using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>One way to hold the skin, for comparison: bars of a thickness, bars as they are, or links that do not give.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record IsolationVariant
{
    /// <summary>Stands for rigid: this much stiffer than the statue's own bars.</summary>
    private const double Rigid = 1e5;

    private readonly double? thickness;

    private IsolationVariant(string name, double? thickness, bool isRigid) => (Name, this.thickness, IsRigid) = (name, thickness, isRigid);

    /// <summary>The name it is listed under.</summary>
    public string Name { get; private init; }

    /// <summary>True for links that do not give, whose stress means nothing.</summary>
    public bool IsRigid { get; }

    /// <summary>The bars as the statue has them.</summary>
    public static IsolationVariant AsIs { get; } = new("bars as they are", null, false);

    /// <summary>Links that do not give.</summary>
    public static IsolationVariant RigidLinks { get; } = new("rigid links", null, true);

    /// <summary>All bars of one thickness.</summary>
    /// <param name="thickness">The thickness; what a <see cref="Standoff"/> accepts.</param>
    public static IsolationVariant Thickness(Length thickness) =>
        new(FormattableString.Invariant($"bars {thickness.Millimeters:0.###} mm thick"), thickness.Meters, false);

    /// <summary>The same variant under another name.</summary>
    public IsolationVariant Named(string name) => this with { Name = name };

    /// <summary>The model of a statue with its skin held this way.</summary>
    internal StatueModel Build(Statue statue)
    {
        if (thickness is null && !IsRigid)
            return StatueModel.Build(statue);
        Statue changed = statue with
        {
            Standoffs = Change(statue.Standoffs),
            Limbs = statue.Limbs.Select(l => l with { Standoffs = Change(l.Standoffs) }).ToValueList(),
        };
        // No metal is as stiff as a link that does not give, so that the description is not looked at again.
        return IsRigid ? ModelBuilder.BuildValid(changed) : StatueModel.Build(changed);
    }

    private ValueList<StandoffRing> Change(ValueList<StandoffRing> rings) => rings.Select(ring => ring switch
    {
        EvenRing even => even with { Standoff = Change(even.Standoff), Bracket = Change(even.Bracket) },
        ExplicitRing given => (StandoffRing)(given with { Bars = given.Bars.Select(b => b with { Standoff = Change(b.Standoff) }).ToValueList(), Bracket = Change(given.Bracket) }),
        _ => ring,
    }).ToValueList();

    /// <summary>A metal that does not give.</summary>
    private static Material Stiff(Material metal) => metal with { YoungsModulus = metal.YoungsModulus * Rigid, ShearModulus = metal.ShearModulus * Rigid };

    private Bracket? Change(Bracket? bracket) => IsRigid && bracket is not null
        ? bracket with { Material = Stiff(bracket.Material), TowerFixity = EndFixity.Rigid }
        : bracket;

    private Standoff Change(Standoff bar) => IsRigid
        ? bar with
        {
            Material = Stiff(bar.Material),
            TowerFixity = EndFixity.Rigid,
            SkinFixity = EndFixity.Rigid,
            Slide = SaddleSlide.None,
        }
        : bar with { Section = new FlatBar(bar.Section.Width, Length.FromMeters(thickness!.Value)) };
}
