using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The thin metal sheets of a body (the figure itself, or a limb), described by outlines at stations along the body's
/// axis. For the analysis the skin is cut across the axis into bands; each band has the mass, centroid and inertia of
/// its thin shell and catches wind on its projected area.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Skin
{
    private const double LeastStep = 1e-3;

    /// <summary>Outlines along the axis, at least two, ascending by at least 1 mm.</summary>
    public required ValueList<SkinStation> Stations { get; init; }

    /// <summary>The metal of the sheets.</summary>
    public required Material Material { get; init; }

    /// <summary>Sheet thickness at stations that give none of their own, 0.2 to 30 mm.</summary>
    public required Length Thickness { get; init; }

    /// <summary>
    /// True sheet area over the area of the smooth outline surface, for folds, drapery and relief: 1 (smooth, the
    /// default) to 5. Holds at stations that give none of their own.
    /// </summary>
    public double FoldFactor { get; init; } = 1;

    /// <summary>
    /// Mass of armature bars, saddles and rivets per area of the smooth outline surface (slope included, folds not);
    /// zero by default, at most 500 kg/m².
    /// </summary>
    public AreaDensity ArmatureMass { get; init; }

    /// <summary>
    /// Elevations between which the bands lie, ascending by at least 1 mm, from the lowest station to the highest. When
    /// not given, there is one band between each pair of stations.
    /// </summary>
    public ValueList<Length>? BandEdges { get; init; }

    /// <summary>
    /// Force coefficient c_f on the projected area of all bands, 0.1 to 4. When not given, the wind action takes a
    /// default and lists it as an assumption.
    /// </summary>
    public double? ForceCoefficient { get; init; }

    /// <summary>Force coefficients of single bands that differ from <see cref="ForceCoefficient"/>.</summary>
    public ValueList<BandForceCoefficient> BandForceCoefficients { get; init; } = [];

    /// <summary>
    /// Force coefficients by heading of all bands, as a wind-tunnel test of trunk or limb gives them; in place of
    /// <see cref="ForceCoefficient"/>. A heading is that of the statue's axes, also on limbs.
    /// </summary>
    public ForceCoefficientTable? HeadingCoefficients { get; init; }

    /// <summary>Force coefficients by heading of single bands that differ from the rest.</summary>
    public ValueList<BandCoefficientTable> BandHeadingCoefficients { get; init; } = [];

    /// <summary>
    /// Whether the top is closed: then the uppermost outline is filled with sheet like that of the skin at the top
    /// station, which has mass and catches wind along the axis. True by default.
    /// </summary>
    public bool ClosedTop { get; init; } = true;

    /// <summary>The bars behind the sheet and the panels between them; null leaves armature and sheet unchecked.</summary>
    public Armature? Armature { get; init; }

    /// <summary>The rivets that join the sheets; null leaves seams unchecked.</summary>
    public RivetedSeam? SheetSeam { get; init; }

    /// <summary>
    /// Fatigue strength of the sheet where it is riveted and bends over its bars, which counts for its rivets too; null leaves sheet and
    /// seams open. No code gives that of copper: take a category with its own source.
    /// </summary>
    public DetailCategory? FatigueDetail { get; init; }

    /// <summary>
    /// The joints across the axis that let the skin move with heat, each at an inner edge of the bands; the fields between
    /// them grow as one piece. Empty for a skin without joints; null when it is not described: then bands that seams tie
    /// grow as one piece, and other bands each by itself.
    /// </summary>
    public ValueList<SkinJoint>? Joints { get; init; }

    /// <summary>Number of bands the skin is cut into.</summary>
    public int BandCount => Math.Max(0, (BandEdges?.Count ?? Stations?.Count ?? 0) - 1);

    /// <summary>Mass of sheets and armature.</summary>
    /// <exception cref="InvalidStatueException">The description has problems.</exception>
    public Mass Mass() => UnitsNet.Mass.FromKilograms(CheckedBands().Sum(b => b.Mass));

    /// <summary>Area of sheet, folds and top included; overlaps at seams are not.</summary>
    /// <exception cref="InvalidStatueException">The description has problems.</exception>
    public Area SheetArea() => Area.FromSquareMeters(CheckedBands().Sum(b => b.SheetArea));

    internal void Validate(Validator v)
    {
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        CheckThickness(v, Thickness);
        CheckFoldFactor(v, FoldFactor);
        Armature?.Validate(v.At(nameof(Armature)));
        SheetSeam?.Validate(v.At(nameof(SheetSeam)));
        FatigueDetail?.Validate(v.At(nameof(FatigueDetail)));
        v.NotNegative(ArmatureMass, ArmatureMass.KilogramsPerSquareMeter, 500);
        if (ForceCoefficient is { } force)
            CheckForceCoefficient(v, force, nameof(ForceCoefficient));
        HeadingCoefficients?.Validate(v.At(nameof(HeadingCoefficients)));
        if (ForceCoefficient is not null && HeadingCoefficients is not null)
            v.Add(nameof(HeadingCoefficients), "must not be given together with ForceCoefficient", "Leave out one of them.");
        if (CheckStations(v))
        {
            CheckEdges(v);
            CheckBandForceCoefficients(v);
            CheckJoints(v);
        }
    }

    /// <summary>Looks at metal, thickness and mass alone.</summary>
    internal void ValidateSheet(Validator v)
    {
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        CheckThickness(v, Thickness);
        v.NotNegative(ArmatureMass, ArmatureMass.KilogramsPerSquareMeter, 500);
    }

    /// <summary>Whether a joint lies at an edge, m.</summary>
    internal bool HasJointAt(double edge) => Joints?.Any(joint => IsAt(joint, edge)) ?? false;

    /// <summary>Whether a joint is the one at an edge, m.</summary>
    internal static bool IsAt(SkinJoint joint, double edge) => Math.Abs(joint.Elevation.Meters - edge) <= LeastStep;

    private void CheckJoints(Validator v)
    {
        if (Joints is null)
            return;
        double[] edges = [.. (BandEdges ?? Stations.Select(s => s.Elevation).ToValueList()).Select(e => e.Meters)];
        var seen = new HashSet<int>();
        foreach ((_, SkinJoint joint, Validator at) in v.Items(Joints, StatueSize.Bands))
        {
            at.NotNegative(joint.Gap, joint.Gap.Meters, 1, nameof(SkinJoint.Gap));
            at.NotNegative(joint.Reserve, joint.Reserve.Meters, 1, nameof(SkinJoint.Reserve));
            int edge = Array.FindIndex(edges, e => Math.Abs(e - joint.Elevation.Meters) <= LeastStep);
            if (edge <= 0 || edge >= edges.Length - 1)
                at.Add(nameof(SkinJoint.Elevation), $"is no inner edge of the bands ({Text(joint.Elevation)})", "A joint lies between two bands: give BandEdges an edge there.");
            else if (!seen.Add(edge))
                at.Add(nameof(SkinJoint.Elevation), $"has two joints ({Text(joint.Elevation)})", "Take one of them out.");
        }
    }

    internal static void CheckThickness(Validator v, Length thickness) => v.Positive(thickness, thickness.Meters, 0.2e-3, 30e-3, nameof(Thickness));

    internal static void CheckFoldFactor(Validator v, double fold) =>
        v.InRange(fold, 1, 5, "It is the true sheet area over the area of the smooth outline surface.", nameof(FoldFactor));

    private static void CheckForceCoefficient(Validator v, double value, string member) =>
        v.InRange(value, 0.1, 4, "It is the wind force over dynamic pressure and projected area.", member);

    private bool CheckStations(Validator v)
    {
        int before = v.Problems.Count;
        foreach ((_, SkinStation station, Validator at) in v.Items(Stations, StatueSize.Stations))
            station.Validate(at);
        if (Stations?.Count < 2)
            v.Add(nameof(Stations), $"must be at least 2, are {Stations.Count}", "Give the outline at the skin's lower and at its upper end.");
        if (v.Problems.Count > before)
            return false;
        PlanCurve above = Stations![0].Outline.Curve();
        for (int i = 1; i < Stations.Count; i++)
        {
            (SkinStation lower, SkinStation upper) = (Stations[i - 1], Stations[i]);
            PlanCurve below = above;
            above = upper.Outline.Curve();
            Validator at = v.At(nameof(Stations), i);
            if (!(upper.Elevation.Meters - lower.Elevation.Meters >= LeastStep))
                at.Add(nameof(SkinStation.Elevation), $"must be at least 1 mm above the station before it ({Text(upper.Elevation)} after {Text(lower.Elevation)})", "List the stations from the lowest up.");
            else if (SkinSlab.Between(lower, below, upper, above, this).IsPinched)
                at.Add(nameof(SkinStation.Outline), "does not join with the station before it: the skin pinches between them", "Rotate by less than 60° from station to station, and begin polygons at corresponding vertices.");
        }
        return v.Problems.Count == before;
    }

    private void CheckEdges(Validator v)
    {
        if (BandEdges is not { } edges)
            return;
        if (edges.Count < 2)
        {
            v.Add(nameof(BandEdges), $"must be at least 2, are {edges.Count}", "Leave them out for one band between each pair of stations.");
            return;
        }
        if (!v.AtMost(edges.Count, StatueSize.Bands, nameof(BandEdges)))
            return;
        CheckEnd(0, Stations[0].Elevation, "lowest");
        CheckEnd(edges.Count - 1, Stations[^1].Elevation, "highest");
        for (int i = 1; i < edges.Count; i++)
        {
            if (!(edges[i].Meters - edges[i - 1].Meters >= LeastStep))
                v.At(nameof(BandEdges), i).Add("", $"must be at least 1 mm above the edge before it ({Text(edges[i])} after {Text(edges[i - 1])})", "List the edges from the lowest up.");
        }

        void CheckEnd(int i, Length station, string which)
        {
            if (!(Math.Abs(edges[i].Meters - station.Meters) <= BandBuilder.EdgeTolerance))
                v.At(nameof(BandEdges), i).Add("", $"must be the elevation of the {which} station, {Text(station)}, is {Text(edges[i])}", "Skin outside the bands would have no mass and catch no wind.");
        }
    }

    private void CheckBandForceCoefficients(Validator v)
    {
        int bands = BandCount;
        var seen = new HashSet<int>();
        foreach ((_, (int band, double value), Validator at) in v.Items(BandForceCoefficients, StatueSize.Bands))
        {
            CheckForceCoefficient(at, value, nameof(BandForceCoefficient.Value));
            if (band < 1 || band > bands)
                at.Add(nameof(BandForceCoefficient.Band), $"there is no band {band}; the skin has bands 1 to {bands}", "Bands are counted from 1, the lowest.");
            if (!seen.Add(band))
                at.Add(nameof(BandForceCoefficient.Band), $"band {band} has two force coefficients", "Take one of them out.");
        }
        foreach ((_, BandCoefficientTable own, Validator at) in v.Items(BandHeadingCoefficients, StatueSize.Bands))
        {
            at.Required(own.Table, nameof(BandCoefficientTable.Table))?.Validate(at.At(nameof(BandCoefficientTable.Table)));
            if (own.Band < 1 || own.Band > bands)
                at.Add(nameof(BandCoefficientTable.Band), $"there is no band {own.Band}; the skin has bands 1 to {bands}", "Bands are counted from 1, the lowest.");
            if (!seen.Add(own.Band))
                at.Add(nameof(BandCoefficientTable.Band), $"band {own.Band} has two force coefficients", "Take one of them out.");
        }
    }

    private SkinBand[] CheckedBands()
    {
        var v = new Validator();
        Validate(v.At(nameof(Skin)));
        v.ThrowIfAny();
        return BandBuilder.Bands(this);
    }

    private static string Text(Length length) => QuantityText.Of(length);
}
