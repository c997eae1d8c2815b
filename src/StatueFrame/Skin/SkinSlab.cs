namespace StatueFrame;

/// <summary>
/// A slice of skin with one ruled surface: it joins corresponding points of a lower and an upper curve by straight
/// lines, with thickness and fold factor linear along them. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed record SkinSlab
{
    public required SkinSection Lower { get; init; }

    public required SkinSection Upper { get; init; }

    public double Height => Upper.Z - Lower.Z;

    /// <summary>
    /// True when the surface narrows between its ends to less than ¾ of the smaller end's area, as it does when the ends
    /// are turned against each other by 60° or more: corresponding points do not lie above each other.
    /// </summary>
    public bool IsPinched =>
        PlanCurve.MomentsBetween(Lower.Curve, Upper.Curve, 0.5).Area < 0.75 * Math.Min(Lower.Curve.Area, Upper.Curve.Area);

    /// <summary>The slab between two stations of a skin.</summary>
    /// <param name="lower">The lower station.</param>
    /// <param name="below">Its outline's curve.</param>
    /// <param name="upper">The upper station.</param>
    /// <param name="above">Its outline's curve.</param>
    /// <param name="skin">The skin.</param>
    public static SkinSlab Between(SkinStation lower, PlanCurve below, SkinStation upper, PlanCurve above, Skin skin)
    {
        if (below.Count != above.Count || lower.Outline.GetType() != upper.Outline.GetType())
        {
            double[] fractions = Merged(below.Fractions(), above.Fractions());
            (below, above) = (below.AtFractions(fractions), above.AtFractions(fractions));
        }
        return new SkinSlab { Lower = Section(lower, below), Upper = Section(upper, above) };

        SkinSection Section(SkinStation s, PlanCurve curve) =>
            new(s.Elevation.Meters, curve, (s.Thickness ?? skin.Thickness).Meters, s.FoldFactor ?? skin.FoldFactor);
    }

    /// <summary>The section at the elevation <paramref name="z"/>.</summary>
    public SkinSection At(double z)
    {
        double t = (z - Lower.Z) / Height;
        return new SkinSection(z, PlanCurve.Between(Lower.Curve, Upper.Curve, t),
            Lower.Thickness + t * (Upper.Thickness - Lower.Thickness), Lower.FoldFactor + t * (Upper.FoldFactor - Lower.FoldFactor));
    }

    /// <summary>The part of the slab between two elevations within it.</summary>
    public SkinSlab Slice(double bottom, double top) => this with
    {
        Lower = bottom == Lower.Z ? Lower : At(bottom),
        Upper = top == Upper.Z ? Upper : At(top),
    };

    /// <summary>All fractions of both lists once, so that both curves keep all their corners.</summary>
    private static double[] Merged(double[] a, double[] b)
    {
        const double same = 1e-9;
        double[] all = [.. a, .. b];
        Array.Sort(all);
        int n = 1;
        for (int i = 1; i < all.Length; i++)
        {
            if (all[i] - all[n - 1] > same)
                all[n++] = all[i];
        }
        return all[..n];
    }
}
