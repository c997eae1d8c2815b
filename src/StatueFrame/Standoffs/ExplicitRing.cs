namespace StatueFrame;

/// <summary>Standoffs that are each placed by hand, for the spots where no even ring fits.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ExplicitRing : StandoffRing
{
    /// <summary>The bars, 1 to 400.</summary>
    public required ValueList<StandoffBar> Bars { get; init; }

    internal override double SkinElevation(double levelElevation)
    {
        double sum = 0;
        foreach (StandoffBar bar in Bars.AsSpan())
            sum += bar.SkinEnd.Z.Meters;
        return sum / Bars.Count;
    }

    internal override BarPlacement[] Place(in RingSite site, Validator v) => RingLayout.Place(this, site);

    internal override IEnumerable<Assumption> Assumptions() => [RigidBrackets];

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.InRange(Bars.Count, 1, MostBars);
        for (int i = 0; i < Bars.Count; i++)
            Bars[i].Validate(v.At(nameof(Bars), i));
    }
}
