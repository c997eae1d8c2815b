using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Analysis;

/// <summary>Lays out the rings of one body: finds the band of each, places its bars, and splits the band's skin among them.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class RingPlacer(
    string prefix, Tower tower, SkinBand[] bands, BodyAxes axes, Place[] levels, Place[] bandPlaces)
{
    /// <summary>How far the skin ends of a ring may stand off the band they are said to carry, m.</summary>
    private const double Reach = 0.001;

    private sealed record Found(StandoffRing Ring, int Level, int Band, double SkinElevation, BarPlacement[] Bars, PlanCurve Outline);

    /// <summary>The rings as elements; problems go to <paramref name="at"/>, the validator of the body.</summary>
    public RingElement[] Place(ValueList<StandoffRing> standoffs, Validator at)
    {
        var found = new List<Found>(standoffs.Count);
        for (int i = 0; i < standoffs.Count; i++)
        {
            if (Find(standoffs[i], at.At(nameof(Statue.Standoffs), i)) is { } ring)
                found.Add(ring);
        }
        return [.. found.Select(ring => Element(ring, found))];
    }

    private Found? Find(StandoffRing ring, Validator at)
    {
        int level = tower.IndexOfLevel(ring.Level);
        double z = ring.SkinElevation(tower.Levels[level].Elevation.Meters);
        int band = ring.Band is { } number ? number - 1 : Array.FindIndex(bands, b => z >= b.Bottom - Reach && z <= b.Top + Reach);
        if (band < 0 || band >= bands.Length)
        {
            string range = bands.Length == 0 ? "" : Invariant($"The skin reaches from {bands[0].Bottom:0.###} m to {bands[^1].Top:0.###} m and has {bands.Length} bands.");
            at.Add(nameof(StandoffRing.Band), ring.Band is null ? Invariant($"there is no skin at {z:0.###} m, where the ring would meet it") : $"there is no band {ring.Band}", range);
            return null;
        }
        if (z < bands[band].Bottom - Reach || z > bands[band].Top + Reach)
        {
            at.Add(nameof(StandoffRing.Band), Invariant($"band {band + 1} reaches from {bands[band].Bottom:0.###} m to {bands[band].Top:0.###} m, but the ring meets the skin at {z:0.###} m"), "Choose another Band, Level or Rise.");
            return null;
        }
        PlanCurve outline = bands[band].OutlineAt(z);
        Vector3D center = tower.Levels[level].Center;
        PlanCurve? towerOutline = tower.OutlineAt(level)?.Shifted(center.X, center.Y);
        BarPlacement[] bars = ring.Place(new RingSite(outline, z, towerOutline, center.X, center.Y), at);
        if (ring.Bracket is { } bracket)
            bars = OnBrackets(bars, bracket, towerOutline, center.Z, at);
        return bars.Length == 0 ? null : new Found(ring, level, band, z, bars, outline);
    }

    /// <summary>The bars with brackets under the tower ends that lie off the tower; none when the tower has no outline there.</summary>
    private static BarPlacement[] OnBrackets(BarPlacement[] bars, Bracket bracket, PlanCurve? outline, double elevation, Validator at)
    {
        if (outline is null)
        {
            at.Add(nameof(StandoffRing.Bracket), "has nothing to stand on, as the tower is given by its stiffness and has no outline", $"Give the level a {nameof(TowerLevel.Plan)}.");
            return [];
        }
        return Array.ConvertAll(bars, bar =>
        {
            (double x, double y) = outline.NearestPoint(bar.TowerEnd.X, bar.TowerEnd.Y);
            var foot = new Vector3D(x, y, elevation);
            return (bar.TowerEnd - foot).Length < Bracket.LeastLength ? bar : bar with { Bracket = PlacedBracket.Between(foot, bar.TowerEnd, bracket) };
        });
    }

    private RingElement Element(Found ring, List<Found> all)
    {
        SkinBand band = bands[ring.Band];
        (double bottom, double top) = Strip(ring, all, band);
        int[] holding = [.. Enumerable.Range(0, ring.Bars.Length).Where(i => ring.Ring.Holds(i + 1))];
        (double From, double To)[] shares = BandShare.Split(Array.ConvertAll(holding, i => ring.Bars[i].Position / ring.Outline.Perimeter));
        double[] fractions = band.MidOutline.Fractions();
        var bars = new BarModel[holding.Length];
        for (int i = 0; i < bars.Length; i++)
        {
            BarPlacement place = ring.Bars[holding[i]].Moved(axes.Axes, axes.Origin);
            (double from, double to) = shares[i];
            double skinMass = band.Mass * (to - from) * (top - bottom) / (band.Top - band.Bottom);
            bars[i] = new BarModel(
                new PlacedBar(place, levels[ring.Level].NodeAt, bandPlaces[ring.Band].NodeAt),
                new BandShare(from, to, top - bottom, skinMass), PlanCurve.Stretch(fractions, from, to), place.Mass, holding[i] + 1, i,
                Invariant($"{prefix}{StatueNames.OfBand(ring.Band)}, bar {holding[i] + 1}"));
        }
        return new RingElement(
            prefix + tower.Levels[ring.Level].Name, ring.Band, prefix + StatueNames.OfBand(ring.Band), bars,
            levels[ring.Level], bandPlaces[ring.Band])
        {
            Outline = ring.Outline,
            Loose = [.. ring.Bars.Where((_, i) => ring.Ring.Loose.Contains(i + 1) && !ring.Ring.Missing.Contains(i + 1)).Select(bar => bar.Moved(axes.Axes, axes.Origin))],
        };
    }

    /// <summary>The slice of the band that the ring serves: halfway to the rings above and below it on the same band.</summary>
    private static (double Bottom, double Top) Strip(Found ring, List<Found> all, SkinBand band)
    {
        double below = double.NegativeInfinity, above = double.PositiveInfinity;
        int level = 0;
        foreach (Found other in all)
        {
            if (other.Band != ring.Band || ReferenceEquals(other, ring))
                continue;
            if (Math.Abs(other.SkinElevation - ring.SkinElevation) < Reach)
                level++;
            else if (other.SkinElevation < ring.SkinElevation)
                below = Math.Max(below, other.SkinElevation);
            else
                above = Math.Min(above, other.SkinElevation);
        }
        double bottom = double.IsFinite(below) ? 0.5 * (below + ring.SkinElevation) : band.Bottom;
        double top = double.IsFinite(above) ? 0.5 * (above + ring.SkinElevation) : band.Top;
        // Rings at one height share their slice.
        return (bottom, bottom + (top - bottom) / (1 + level));
    }
}
