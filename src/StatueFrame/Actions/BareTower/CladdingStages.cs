using System.Globalization;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A statue while it is built, or stripped for repair: the tower stands, and the skin reaches to some height only. The
/// bare tower above catches wind of its own, often more than a lattice designer expects and always without shelter.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class CladdingStages
{
    private const double Slack = 1e-6;

    // A ring at the edge of two bands carries the lower one, as when the model is built.
    private const double EdgeReach = 1e-3;

    /// <summary>
    /// The statue with those whole bands of the trunk's skin whose upper edge lies at or below a height, open at the top.
    /// A limb keeps its skin when it starts at or below that height, and is bare otherwise. Standoffs, named points and
    /// fittings that belong to bands which are gone go with them.
    /// </summary>
    /// <param name="statue">The finished statue.</param>
    /// <param name="height">Height above the tower's base.</param>
    /// <exception cref="InvalidStatueException">The statue's description has problems.</exception>
    public static Statue CladUpTo(this Statue statue, Length height)
    {
        double h = height.Meters;
        if (statue.FindProblems() is { Count: > 0 } problems)
            throw new InvalidStatueException(problems);
        (Skin? skin, ValueList<StandoffRing> rings) = CutTrunk(statue, h);
        Limb[] limbs = CutLimbs(statue, h);
        Statue stage = statue with
        {
            Name = string.Create(CultureInfo.InvariantCulture, $"{statue.Name}, clad up to {h:0.##} m"),
            Skin = skin,
            Standoffs = rings,
            Seams = skin is null ? null : statue.Seams,
            Limbs = [.. limbs],
        };
        var names = new StatueNames(stage);
        return stage with
        {
            Points = statue.Points.Where(p => names.Has(p.On)).ToValueList(),
            Fittings = statue.Fittings.Where(f => names.Has(f.On)).ToValueList(),
        };
    }

    private static (Skin? Skin, ValueList<StandoffRing> Rings) CutTrunk(Statue statue, double h)
    {
        if (statue.Skin is not { } skin)
            return (null, []);
        Length[] edges = [.. skin.BandEdges ?? skin.Stations.Select(s => s.Elevation).ToValueList()];
        int kept = edges.Count(e => e.Meters <= h + Slack) - 1;
        if (kept <= 0)
            return (null, []);
        if (kept == skin.BandCount)
            return (skin, statue.Standoffs);
        SkinBand[] bands = BandBuilder.Bands(skin);
        return (CutSkin(skin, edges, kept), statue.Standoffs.Where(r => BandOf(r, statue.Tower, bands) < kept).ToValueList());
    }

    private static Skin CutSkin(Skin skin, Length[] edges, int kept) => skin with
    {
        Stations = [.. skin.Stations.Where(s => s.Elevation.Meters < edges[kept].Meters - Slack), StationAt(skin, edges[kept])],
        Joints = skin.Joints?.Where(joint => joint.Elevation.Meters < edges[kept].Meters - Slack).ToValueList(),
        BandEdges = skin.BandEdges is null ? null : edges[..(kept + 1)].ToValueList(),
        BandForceCoefficients = skin.BandForceCoefficients.Where(c => c.Band <= kept).ToValueList(),
        BandHeadingCoefficients = skin.BandHeadingCoefficients.Where(c => c.Band <= kept).ToValueList(),
        ClosedTop = false,
    };

    private static Limb[] CutLimbs(Statue statue, double h)
    {
        var bare = new Dictionary<string, bool>();
        var limbs = new Limb[statue.Limbs.Count];
        for (int i = 0; i < limbs.Length; i++)
        {
            Limb limb = statue.Limbs[i];
            int slash = limb.From.IndexOf('/');
            bare[limb.Name] = slash >= 0
                ? bare[limb.From[..slash]]
                : statue.Tower.Levels[statue.Tower.IndexOfLevel(limb.From)].Elevation.Meters > h + Slack;
            limbs[i] = bare[limb.Name] ? limb with { Skin = null, Standoffs = [], Seams = null } : limb;
        }
        return limbs;
    }

    /// <summary>The band, from 0, that a ring carries.</summary>
    private static int BandOf(StandoffRing ring, Tower tower, SkinBand[] bands)
    {
        if (ring.Band is { } number)
            return number - 1;
        double z = ring.SkinElevation(tower.Levels[tower.IndexOfLevel(ring.Level)].Elevation.Meters);
        int band = Array.FindIndex(bands, b => z <= b.Top + EdgeReach);
        return band < 0 ? bands.Length - 1 : band;
    }

    /// <summary>The station at a height: one that is there, or the skin's own run between its neighbors.</summary>
    private static SkinStation StationAt(Skin skin, Length elevation)
    {
        double z = elevation.Meters;
        if (skin.Stations.FirstOrDefault(s => Math.Abs(s.Elevation.Meters - z) <= Slack) is { } there)
            return there;
        int i = 1;
        while (skin.Stations[i].Elevation.Meters < z)
            i++;
        (SkinStation lower, SkinStation upper) = (skin.Stations[i - 1], skin.Stations[i]);
        SkinSection section = SkinSlab.Between(lower, lower.Outline.Curve(), upper, upper.Outline.Curve(), skin).At(z);
        double t = (z - lower.Elevation.Meters) / (upper.Elevation - lower.Elevation).Meters;
        return new SkinStation
        {
            Elevation = elevation,
            Outline = Between(lower.Outline, upper.Outline, t) ?? (Outline)AsPolygon(section.Curve),
            Thickness = Length.FromMeters(section.Thickness),
            FoldFactor = section.FoldFactor,
        };
    }

    /// <summary>The ellipse between two that are turned alike; null for other outlines.</summary>
    private static EllipseOutline? Between(Outline lower, Outline upper, double t) =>
        lower is EllipseOutline a && upper is EllipseOutline b && a.Rotation.Radians == b.Rotation.Radians
            ? new EllipseOutline
            {
                WidthX = Mix(a.WidthX, b.WidthX, t),
                WidthY = Mix(a.WidthY, b.WidthY, t),
                CenterX = Mix(a.CenterX, b.CenterX, t),
                CenterY = Mix(a.CenterY, b.CenterY, t),
                Rotation = a.Rotation,
            }
            : null;

    private static PolygonOutline AsPolygon(PlanCurve curve)
    {
        var vertices = new PlanPoint[curve.Count];
        for (int i = 0; i < vertices.Length; i++)
            vertices[i] = new PlanPoint(Length.FromMeters(curve.X[i]), Length.FromMeters(curve.Y[i]));
        return new PolygonOutline { Vertices = [.. vertices] };
    }

    private static Length Mix(Length from, Length to, double t) => from * (1 - t) + to * t;
}
