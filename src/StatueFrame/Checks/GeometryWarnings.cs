using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>What of a description cannot be built as it stands, though it can be computed.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class GeometryWarnings
{
    /// <summary>Places this near count as met, m.</summary>
    private const double Slack = 0.01;

    /// <summary>The armature may weigh this much less than its bars, for lengths and laps.</summary>
    private const double LeastMassPart = 0.95;

    public static IEnumerable<string> Of(StatueModel model, bool hasFineModel) =>
        model.Bodies.SelectMany(body => BarsPastAxis(body).Concat(BarsOutsideSkin(body)).Concat(TowerOutsideSkin(body)).Concat(ArmatureMass(body)).Concat(hasFineModel ? [] : BareSheet(body))).Concat(LegsOffPlates(model)).Concat(BaseBelowPedestal(model.Statue));

    /// <summary>Where the bounds on the skin are known to fail: see the theory page on the reduced model against the fine one.</summary>
    private static IEnumerable<string> BareSheet(BodyModel body)
    {
        if (body.Rings.Length > 0 && body.Skin!.Armature is null)
            yield return $"Skin of {body.Name}: no armature is described. On figures of bare sheet a shell model stresses one ring of standoffs in seven more than the bounds on the skin do, by up to 2.4 times, and points on the skin sway up to several times as much: give the armature, or run the fine model (Criteria.{nameof(Criteria.Fine)}).";
    }

    /// <summary>A base that stands lower above ground than its own pedestal is tall meets less wind than it should.</summary>
    private static IEnumerable<string> BaseBelowPedestal(Statue statue)
    {
        double buried = statue.Foundation is { } block ? Math.Max(0, block.Depth.Meters - block.Thickness.Meters) : 0;
        double tall = statue.Pedestal?.Courses.Sum(course => course.Height.Meters) ?? 0, above = statue.BaseAboveGround.Meters;
        if (above < tall - buried - Slack)
            yield return Invariant($"The base is said to stand {above:0.##} m above ground, and its pedestal reaches {tall - buried:0.##} m: the wind is taken too low (Statue.{nameof(Statue.BaseAboveGround)}).");
    }

    private static IEnumerable<string> BarsPastAxis(BodyModel body)
    {
        int past = 0;
        string first = "";
        foreach (RingElement ring in body.Rings)
        {
            Vector3D center = body.Tower.Levels[body.Tower.IndexOfLevel(ring.Level[body.Prefix.Length..])].Center;
            foreach (BarModel bar in ring.Bars)
            {
                Vector3D root = body.Axes.ToLocal(bar.Bar.Place.TowerEnd) - center, skin = body.Axes.ToLocal(bar.Bar.Place.SkinEnd) - center;
                double reach = Math.Sqrt(root.X * root.X + root.Y * root.Y);
                if (reach <= Slack || root.X * skin.X + root.Y * skin.Y >= 0)
                    continue;
                first = past++ == 0 ? bar.Where : first;
            }
        }
        if (past > 0)
            yield return Invariant($"{past} standoffs of {body.Name} reach past the axis of the tower, {first} the first: shorten them or choose another lay.");
    }

    /// <summary>Bars, or the brackets that carry them, that come through the sheet: laid too flat where the outline turns sharply.</summary>
    private static IEnumerable<string> BarsOutsideSkin(BodyModel body)
    {
        int outside = 0;
        double most = Slack;
        string worst = "";
        foreach (RingElement ring in body.Rings)
        {
            foreach (BarModel bar in ring.Bars)
            {
                BarPlacement place = bar.Bar.Place;
                Vector3D root = body.Axes.ToLocal(place.TowerEnd), skin = body.Axes.ToLocal(place.SkinEnd);
                double out_ = Enumerable.Range(0, 5).Select(i => skin + (1 - i / 5.0) * (root - skin)).Max(Beyond);
                if (place.Bracket is { } bracket)
                    out_ = Math.Max(out_, Beyond(body.Axes.ToLocal(bracket.Middle)));
                if (out_ <= Slack)
                    continue;
                outside++;
                if (out_ > most)
                    (most, worst) = (out_, bar.Where);
            }

            double Beyond(Vector3D p) => ring.Outline.Contains(p.X, p.Y) ? 0 : ring.Outline.DistanceTo(p.X, p.Y);
        }
        if (outside > 0)
            yield return Invariant($"{outside} standoffs of {body.Name} come through the skin, {worst} by {1000 * most:0} mm the farthest: lay them steeper there, or shorten them.");
    }

    private static IEnumerable<string> TowerOutsideSkin(BodyModel body)
    {
        for (int i = 0; i < body.Tower.Levels.Count; i++)
        {
            TowerLevel level = body.Tower.Levels[i];
            if (body.Tower.OutlineAt(i) is not { } plan || Array.Find(body.Bands, b => b.Bottom <= level.Center.Z && level.Center.Z <= b.Top) is not { } band)
                continue;
            double part = (level.Center.Z - band.Bottom) / (band.Top - band.Bottom);
            PlanCurve skin = PlanCurve.Between(band.BottomOutline, band.TopOutline, part);
            for (int k = 0; k < plan.Count; k++)
            {
                double x = plan.X[k] + level.Center.X, y = plan.Y[k] + level.Center.Y;
                if (skin.Contains(x, y) || skin.DistanceTo(x, y) <= Slack)
                    continue;
                yield return Invariant($"The tower at {body.Prefix}{level.Name} reaches {1000 * skin.DistanceTo(x, y):0} mm out of the skin.");
                break;
            }
        }
    }

    private static IEnumerable<string> ArmatureMass(BodyModel body)
    {
        if (body.Skin is not { Armature: { } armature } skin)
            yield break;
        double bars = armature.Material.Density.KilogramsPerCubicMeter * armature.Bar.Area.SquareMeters / armature.Spacing.Meters;
        double given = skin.ArmatureMass.KilogramsPerSquareMeter;
        if (given < LeastMassPart * bars)
            yield return Invariant($"The armature of {body.Name} is given as {given:0.##} kg/m², but its bars alone weigh {bars:0.##} kg/m².");
    }

    private static IEnumerable<string> LegsOffPlates(StatueModel model)
    {
        BodyModel trunk = model.Bodies[0];
        if (model.Statue.HoldDown is not { } holdDown || trunk.Segments[0].Segment is not LatticeSegment || trunk.Tower.OutlineAt(0) is not { } legs)
            yield break;
        Vector3D center = trunk.Tower.Levels[0].Center;
        for (int i = 0; i < legs.Count; i++)
        {
            double x = legs.X[i] + center.X, y = legs.Y[i] + center.Y;
            if (!holdDown.Plates.Any(plate => Math.Abs(x - plate.X.Meters) <= 0.5 * plate.WidthX.Meters + Slack && Math.Abs(y - plate.Y.Meters) <= 0.5 * plate.WidthY.Meters + Slack))
                yield return Invariant($"Leg {i + 1} stands at ({x:0.##} m, {y:0.##} m), where there is no base plate.");
        }
    }
}
