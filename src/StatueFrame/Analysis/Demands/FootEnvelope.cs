using System.Runtime.InteropServices;
using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// The most that each standoff puts on the tower in a situation, component by component and without sign, at the point of the
/// tower's outline nearest to it, where its bracket stands. That components come at one time is on the safe side.
/// </summary>
/// <remarks>For one thread. Bars go by their names, which all models of one statue share.</remarks>
internal sealed class FootEnvelope
{
    private readonly Dictionary<string, (Vector3D At, Vector3D Force, Vector3D Moment)> most = [];
    private readonly List<(string On, Vector3D At, Vector3D Force)> put = [];

    public FootEnvelope(StatueModel model)
    {
        foreach (BodyModel body in model.Bodies)
        {
            foreach (RingElement ring in body.Rings)
            {
                int level = body.Tower.IndexOfLevel(ring.Level[body.Prefix.Length..]);
                Vector3D center = body.Tower.Levels[level].Center;
                PlanCurve? outline = body.Tower.OutlineAt(level);
                foreach (BarModel bar in ring.Bars)
                    most[bar.Where] = (FootOf(bar), default, default);

                Vector3D FootOf(BarModel bar)
                {
                    Vector3D end = body.Axes.ToLocal(bar.Bar.Place.TowerEnd);
                    if (outline is null)
                        return body.Axes.ToGlobal(center);
                    (double x, double y) = outline.NearestPoint(end.X - center.X, end.Y - center.Y);
                    return body.Axes.ToGlobal(new Vector3D(center.X + x, center.Y + y, center.Z));
                }
            }
        }
    }

    /// <summary>Takes what a fitting puts on a level, sizes along the statue's axes; on bands it does nothing.</summary>
    public void Put(string on, Vector3D at, Vector3D force) => put.Add((on, at, force));

    /// <summary>Looks at what acts on a bar; what is loose of it counts with whatever signs are worse.</summary>
    public void Look(BarModel bar, in BarEnds ends)
    {
        BarPlacement place = bar.Bar.Place;
        ref (Vector3D At, Vector3D Force, Vector3D Moment) known = ref CollectionsMarshal.GetValueRefOrNullRef(most, bar.Where);
        (Vector3D foot, Vector3D greatestForce, Vector3D greatestMoment) = known;
        FlatForces loose = ends.Loose;
        (Vector3D force, Vector3D moment) = (ends.Tower + -1 * loose).OnSupport;
        Vector3D arm = place.TowerEnd - foot;
        force = place.Axes.ToGlobal(force);
        moment = Sizes(place.Axes.ToGlobal(moment) + arm.Cross(force));
        Vector3D more = Sizes(place.Axes, loose.N, loose.AlongThickness, loose.AlongWidth), turn = Sizes(place.Axes, loose.T, loose.Strong, loose.Weak);
        force = Sizes(force) + more;
        moment += turn + Turned(Sizes(arm), more);
        known = (foot, Greater(force, greatestForce), Greater(moment, greatestMoment));
    }

    /// <summary>What stands on the tower at a level of a body, standoffs and fittings: where, in the body's axes, and the most it puts there along them.</summary>
    public IEnumerable<(BarModel? Bar, Vector3D At, Vector3D Force, Vector3D Moment)> At(BodyModel body, int level)
    {
        string name = body.Prefix + body.Tower.Levels[level].Name;
        foreach (BarModel bar in body.Rings.Where(ring => ring.Level == name).SelectMany(ring => ring.Bars))
        {
            (Vector3D at, Vector3D force, Vector3D moment) = most[bar.Where];
            yield return (bar, body.Axes.ToLocal(at), Along(body.Axes.Axes, force), Along(body.Axes.Axes, moment));
        }
        foreach ((_, Vector3D at, Vector3D force) in put.Where(own => own.On == name))
        {
            Vector3D local = body.Axes.ToLocal(at), center = body.Tower.Levels[level].Center;
            if (body.Tower.OutlineAt(level) is not { } outline)
                continue;
            (double x, double y) = outline.NearestPoint(local.X - center.X, local.Y - center.Y);
            var foot = new Vector3D(center.X + x, center.Y + y, center.Z);
            Vector3D along = Along(body.Axes.Axes, force);
            yield return (null, foot, along, Turned(Sizes(local - foot), along));
        }
    }

    /// <summary>The most moment of forces of given sizes about a point that is off by given sizes.</summary>
    private static Vector3D Turned(Vector3D arm, Vector3D force) =>
        new(arm.Y * force.Z + arm.Z * force.Y, arm.Z * force.X + arm.X * force.Z, arm.X * force.Y + arm.Y * force.X);

    /// <summary>Sizes in the statue's axes as the most that they can be along others.</summary>
    private static Vector3D Along(in Axes3D axes, Vector3D sizes) => new(Sizes(axes.X).Dot(sizes), Sizes(axes.Y).Dot(sizes), Sizes(axes.Z).Dot(sizes));

    private static Vector3D Sizes(in Axes3D axes, double x, double y, double z) =>
        Math.Abs(x) * Sizes(axes.X) + Math.Abs(y) * Sizes(axes.Y) + Math.Abs(z) * Sizes(axes.Z);

    private static Vector3D Sizes(Vector3D v) => new(Math.Abs(v.X), Math.Abs(v.Y), Math.Abs(v.Z));

    private static Vector3D Greater(Vector3D a, Vector3D b) => new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), Math.Max(a.Z, b.Z));
}
