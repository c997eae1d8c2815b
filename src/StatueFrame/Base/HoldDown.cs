using UnitsNet;

namespace StatueFrame;

/// <summary>
/// How the tower is tied to what it stands on: base plates that push, anchor bars that pull, friction or a key against
/// sliding. The plates and bars act as one rigid base.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record HoldDown
{
    /// <summary>The plates, 1 to 100, none over another: one under a core, or one under each leg.</summary>
    public required ValueList<BasePlate> Plates { get; init; }

    /// <summary>The bars, at most 500; empty for a tower that stands by its weight.</summary>
    public ValueList<AnchorBar> Bars { get; init; } = [];

    /// <summary>Friction between plate, grout and block, 0 to 1; 0.2 by default (EN 1993-1-8, 6.2.2 (6), cement mortar).</summary>
    public double Friction { get; init; } = DefaultFriction;

    internal const double DefaultFriction = 0.2;

    /// <summary>Shear that a key in the block takes, factors included; zero by default.</summary>
    public Force KeyResistance { get; init; }

    /// <summary>The girder that the most stressed bars pull against; null when they have heads or plates.</summary>
    public AnchorGirder? Girder { get; init; }

    /// <summary>What takes pre-tension away; null leaves the losses out, which the sheet says.</summary>
    public PreTensionLosses? Losses { get; init; }

    /// <summary>
    /// Depth of block that the plates squeeze, for the bed's stiffness E/depth; null takes the bars' mean free length, or
    /// without bars the mean width of the plates. 0.02 to 50 m.
    /// </summary>
    public Length? BedDepth { get; init; }

    /// <summary>Whether the bars can take a twist: there are two or more, apart from each other.</summary>
    internal bool BarsTakeTwist => Bars.Any(bar => Math.Abs(bar.X.Meters - Bars[0].X.Meters) + Math.Abs(bar.Y.Meters - Bars[0].Y.Meters) > 1e-3);

    internal PlanArea Plan
    {
        get
        {
            PlanArea? sum = null;
            foreach (BasePlate plate in Plates)
            {
                PlanArea one = PlanArea.Rectangle(plate.WidthX.Meters, plate.WidthY.Meters, plate.X.Meters, plate.Y.Meters);
                sum = sum is null ? one : sum.With(one);
            }
            return sum!;
        }
    }

    internal double BedDepthInUse => BedDepth?.Meters
        ?? (Bars.Count > 0 ? Bars.Average(bar => bar.FreeLength.Meters) : Plates.Average(p => 0.5 * (p.WidthX.Meters + p.WidthY.Meters)));

    internal void Validate(Validator v)
    {
        var plates = new List<BasePlate>();
        foreach ((_, BasePlate plate, Validator at) in v.Items(Plates, 100))
        {
            plate.Validate(at);
            if (plates.Any(other => Overlap(plate, other)))
                at.Add("", "lies over an earlier plate", "Plates may touch, not overlap; move or narrow one.");
            plates.Add(plate);
        }
        if (Plates is not null && plates.Count == 0)
            v.Add(nameof(Plates), "must not be empty", "Describe at least one plate that stands on the block.");
        foreach ((_, AnchorBar bar, Validator at) in v.Items(Bars, 500))
            bar.Validate(at);
        v.InRange(Friction, 0, 1, "It is 0.2 to 0.3 of steel on mortar.");
        v.NotNegative(KeyResistance, KeyResistance.Newtons, 1e9);
        Girder?.Validate(v.At(nameof(Girder)));
        Losses?.Validate(v.At(nameof(Losses)));
        if (BedDepth is { } depth)
            v.Positive(depth, depth.Meters, 0.02, 50, nameof(BedDepth));
    }

    private static bool Overlap(BasePlate p, BasePlate q) =>
        Math.Abs(p.X.Meters - q.X.Meters) < 0.5 * (p.WidthX.Meters + q.WidthX.Meters) - 1e-6
        && Math.Abs(p.Y.Meters - q.Y.Meters) < 0.5 * (p.WidthY.Meters + q.WidthY.Meters) - 1e-6;
}
