using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Like bars at equal plan angles. Bar k meets the skin at the plan angle <see cref="FirstAngle"/> + 360°·k/Count, seen
/// from the tower's center; from there it runs to the tower as <see cref="Lay"/> says.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record EvenRing : StandoffRing
{
    /// <summary>Number of bars, 1 to 400.</summary>
    public required int Count { get; init; }

    /// <summary>What each bar is made of and how it is fastened.</summary>
    public required Standoff Standoff { get; init; }

    /// <summary>The plan angle of bar 0's skin end, anticlockwise from +x; from −360° to 360°.</summary>
    public Angle FirstAngle { get; init; }

    /// <summary>
    /// How the bar lies in plan: the angle at the skin from the inward normal to the bar, from −90° to 90°. At 0° the
    /// bar is radial and props the skin end-on; at 90° it lies along the skin and only flexes; between, it is oblique.
    /// When positive the tower end lies anticlockwise of the skin end.
    /// </summary>
    public Angle Lay { get; init; }

    /// <summary>How far the skin end is above the tower end, along the body's axis; negative when below.</summary>
    public Length Rise { get; init; }

    /// <summary>
    /// The length of the bars, 0.02 m to 20 m and more than <see cref="Rise"/>; a rigid bracket then joins the tower
    /// end to the level. Null takes the length at which the bar meets the outline of the tower.
    /// </summary>
    public Length? Length { get; init; }

    /// <summary>The same ring on each of several levels.</summary>
    /// <param name="levels">Their names.</param>
    public ValueList<StandoffRing> OnLevels(params ReadOnlySpan<string> levels)
    {
        var rings = new StandoffRing[levels.Length];
        for (int i = 0; i < rings.Length; i++)
            rings[i] = this with { Level = levels[i] };
        return ValueList.Create<StandoffRing>(rings);
    }

    internal override int BarCount => Count;

    internal override double SkinElevation(double levelElevation) => levelElevation + Rise.Meters;

    internal override BarPlacement[] Place(in RingSite site, Validator v) => RingLayout.Place(this, site, v);

    internal override IEnumerable<Assumption> Assumptions() => Length is null || Bracket is not null ? [] : [RigidBrackets];

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.InRange(Count, 1, MostBars, "It is the number of bars round the ring.");
        v.Required(Standoff)?.Validate(v.At(nameof(Standoff)));
        v.Within(FirstAngle, FirstAngle.Radians, -2 * Math.PI * (1 + 1e-9), 2 * Math.PI * (1 + 1e-9));
        v.Within(Lay, Lay.Radians, -0.5 * Math.PI * (1 + 1e-9), 0.5 * Math.PI * (1 + 1e-9));
        v.Within(Rise, Rise.Meters, -Standoff.GreatestLength, Standoff.GreatestLength);
        if (Length is not { } length)
            return;
        if (Standoff?.ValidateLength(v, nameof(Length), "the bar", length.Meters) == true && Math.Abs(Rise.Meters) >= length.Meters)
            v.Add(nameof(Rise), $"is not less than the bar's length ({QuantityText.Of(Rise)} of {QuantityText.Of(length)})", "A bar that rises by its whole length stands upright; place it in an ExplicitRing.");
    }
}
