using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Reporting;

/// <summary>
/// Drawings to scale that carry the names by which sheets and part lists speak: levels and bands, legs and faces, bars and
/// brackets, plates and anchors, with the main dimensions.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class MarkedDrawings
{
    /// <summary>All of them: two elevations, the plan of every ring, and the base when it is described.</summary>
    /// <param name="model">The model.</param>
    public static IReadOnlyList<Drawing> All(StatueModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var all = new List<Drawing> { Elevation(model), Elevation(model, UnitsNet.Angle.Zero) };
        all.AddRange(model.Rings.Select(r => r.Ring.BandName).Distinct().Select(band => Ring(model, band)));
        if (model.Statue.HoldDown is not null)
            all.Add(Base(model.Statue));
        return all;
    }

    /// <summary>The statue from one side: levels by name at the left, bands at the right, heights and widths.</summary>
    /// <param name="model">The model.</param>
    /// <param name="looking">The plan angle the view looks towards; null looks along +y, with x to the right.</param>
    public static Drawing Elevation(StatueModel model, UnitsNet.Angle? looking = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        double view = (looking ?? UnitsNet.Angle.FromDegrees(90)).Radians;
        (double rightX, double rightY) = (Math.Sin(view), -Math.Cos(view));
        var pen = new DrawingPen();
        double left = double.MaxValue, right = double.MinValue, top = 0;
        foreach (ModelLine line in LineModel.Of(model).Lines.Where(l => l.Kind is not (LineKind.Rib or LineKind.Standoff or LineKind.Bracket)))
        {
            (double X, double Y)[] points = [.. line.Points.Select(p => (p.X * rightX + p.Y * rightY, p.Z))];
            if (line.Kind == LineKind.Outline)
                points = [points.MinBy(p => p.X), points.MaxBy(p => p.X)];
            pen.Line(line.Kind == LineKind.Outline ? DrawnLayer.Edge : DrawnLayer.Member, points);
            (left, right, top) = (Math.Min(left, points.Min(p => p.X)), Math.Max(right, points.Max(p => p.X)), Math.Max(top, points.Max(p => p.Y)));
        }
        Silhouette(model, pen, rightX, rightY);
        double step = top / 60, tick = step / 4;
        foreach (BodyModel body in model.Bodies)
        {
            bool trunk = body.Prefix.Length == 0;
            double free = double.MinValue;
            for (int i = 0; i < body.Levels.Length; i++)
            {
                double x = body.Levels[i].Center.X * rightX + body.Levels[i].Center.Y * rightY, z = body.Levels[i].Center.Z;
                if (trunk)
                    pen.Line(DrawnLayer.Axis, (left - 2 * step, z), (x, z));
                if (!trunk || z >= free)
                    pen.Text(body.Prefix + body.Tower.Levels[i].Name, trunk ? left - 3.5 * step : x, trunk ? z : z - step);
                free = z + 0.8 * step;
            }
            free = double.MinValue;
            for (int i = 0; trunk && i < body.Bands.Length; i++)
            {
                double z = 0.5 * (body.Bands[i].Bottom + body.Bands[i].Top);
                if (z >= free)
                    pen.Text(body.BandName(i), right + 4 * step, z);
                free = z + 0.8 * step;
            }
        }
        pen.Up(0, top, left - 7 * step, tick);
        pen.Line(DrawnLayer.Edge, (left - 8 * step, 0), (right + 6 * step, 0));
        if (model.Bodies[0].Bands is { Length: > 0 } bands)
        {
            (double least, double most) = Extent(bands.MaxBy(b => Width(b, rightX, rightY))!.MidOutline, rightX, rightY);
            pen.Across(least, most, -2 * step, tick);
        }
        return pen.Finish(
            Invariant($"{model.Statue.Name}: elevation looking towards {view * 180 / Math.PI:0.#}°"),
            "Side view to scale: members of the tower, outline of the skin, names of levels at the left and of bands at the right, height and greatest width.");
    }

    /// <summary>The plan of a band's ring, across the body's axis: outline, legs, faces, bars and brackets with their numbers.</summary>
    /// <param name="model">The model.</param>
    /// <param name="band">Name of the band, as in "band 3" or "wing/band 2".</param>
    /// <exception cref="ArgumentException">No standoffs carry such a band.</exception>
    public static Drawing Ring(StatueModel model, string band)
    {
        ArgumentNullException.ThrowIfNull(model);
        RingElement[] rings = [.. model.Rings.Where(r => r.Ring.BandName == band).Select(r => r.Ring)];
        if (rings.Length == 0)
            throw new ArgumentException($"No standoffs carry \"{band}\". {new StatueNames(model.Statue).Suggest(band)}", nameof(band));
        BodyModel body = model.Bodies.First(b => b.Rings.Contains(rings[0]));
        var pen = new DrawingPen();
        PlanCurve outline = rings[0].Outline;
        pen.Closed(DrawnLayer.Edge, [.. Enumerable.Range(0, outline.Count).Select(i => (outline.X[i], outline.Y[i]))]);
        (double lowX, double highX) = (outline.X.ToArray().Min(), outline.X.ToArray().Max());
        (double lowY, double highY) = (outline.Y.ToArray().Min(), outline.Y.ToArray().Max());
        double step = Math.Max(highX - lowX, highY - lowY) / 40, tick = step / 4;
        foreach (RingElement ring in rings)
        {
            Level(body, ring.Level, pen, step);
            foreach (BarModel bar in ring.Bars)
            {
                Vector3D from = body.Axes.ToLocal(bar.Bar.Place.TowerEnd), to = body.Axes.ToLocal(bar.Bar.Place.SkinEnd), outward = body.Axes.Axes.ToLocal(bar.Bar.Place.Outward);
                pen.Line(DrawnLayer.Standoff, (from.X, from.Y), (to.X, to.Y));
                pen.Text(Invariant($"{bar.Number}"), to.X + step * outward.X, to.Y + step * outward.Y);
                if (bar.Bar.Place.Bracket is { } bracket)
                {
                    Vector3D foot = body.Axes.ToLocal(bracket.Foot), tip = body.Axes.ToLocal(bracket.Tip);
                    pen.Line(DrawnLayer.Bracket, (foot.X, foot.Y), (tip.X, tip.Y));
                }
            }
        }
        foreach ((RingElement ring, int i) in rings.DistinctBy(r => r.Level).Select((ring, i) => (ring, i)))
            pen.Text(Invariant($"{ring.Level} at {LevelOf(body, ring.Level).Elevation.Meters:0.###} m along the axis of {body.Name}"), 0.5 * (lowX + highX), lowY - (5.5 + 1.5 * i) * step);
        pen.Across(lowX, highX, lowY - 3 * step, tick);
        pen.Up(lowY, highY, lowX - 3 * step, tick);
        int bars = rings.Sum(r => r.Bars.Length), brackets = rings.Sum(r => r.Brackets.Count());
        return pen.Finish(
            Invariant($"{model.Statue.Name}: ring of {band} on {string.Join(", ", rings.Select(r => r.Level).Distinct())}"),
            Invariant($"Plan to scale across the axis of {body.Name}: outline of the skin, {bars} bars with the numbers that the sheet uses, {brackets} brackets with their bars' numbers, legs and faces."));
    }

    /// <summary>The base from above: plates, anchor bars and the block they stand on, with numbers and distances.</summary>
    /// <param name="statue">A statue with a <see cref="Statue.HoldDown"/>.</param>
    /// <exception cref="ArgumentException">The statue has none.</exception>
    public static Drawing Base(Statue statue)
    {
        ArgumentNullException.ThrowIfNull(statue);
        HoldDown base_ = statue.HoldDown ?? throw new ArgumentException("The statue's HoldDown is not described.", nameof(statue));
        var pen = new DrawingPen();
        (double wide, double high) = statue.Pedestal is { Courses: { Count: > 0 } courses } ? courses[0].Section.Widths : (0, 0);
        if (wide > 0)
            pen.Rectangle(DrawnLayer.Axis, 0, 0, wide, high);
        double size = base_.Plates.Max(p => Math.Max(Math.Abs(p.X.Meters) + p.WidthX.Meters / 2, Math.Abs(p.Y.Meters) + p.WidthY.Meters / 2)), step = size / 20, tick = step / 4;
        for (int i = 0; i < base_.Plates.Count; i++)
        {
            BasePlate p = base_.Plates[i];
            pen.Rectangle(DrawnLayer.Edge, p.X.Meters, p.Y.Meters, p.WidthX.Meters, p.WidthY.Meters);
            pen.Rectangle(DrawnLayer.Member, p.X.Meters, p.Y.Meters, p.FootX.Meters, p.FootY.Meters);
            pen.Text(Invariant($"plate {i + 1}, {p.WidthX.Millimeters:0}×{p.WidthY.Millimeters:0}×{p.Thickness.Millimeters:0}"), p.X.Meters, p.Y.Meters);
            pen.Across(p.X.Meters - p.WidthX.Meters / 2, p.X.Meters + p.WidthX.Meters / 2, p.Y.Meters - p.WidthY.Meters / 2 - step, tick);
        }
        for (int i = 0; i < base_.Bars.Count; i++)
        {
            AnchorBar a = base_.Bars[i];
            pen.Circle(DrawnLayer.Hole, a.X.Meters, a.Y.Meters, a.Diameter.Meters / 2);
            pen.Text(Invariant($"{i + 1}"), a.X.Meters, a.Y.Meters + a.Diameter.Meters / 2 + 0.5 * step);
        }
        Chain([.. base_.Bars.Select(b => b.X.Meters).Concat(base_.Plates.Select(p => p.X.Meters))], true);
        Chain([.. base_.Bars.Select(b => b.Y.Meters).Concat(base_.Plates.Select(p => p.Y.Meters))], false);
        return pen.Finish($"{statue.Name}: base", Invariant($"Plan to scale: {base_.Plates.Count} plates and {base_.Bars.Count} anchor bars with their numbers, x to the right and y up from the center of the tower's base, and the distances of their centers."));

        // The distances between neighboring centers, in one line.
        void Chain(double[] places, bool across)
        {
            double[] at = [.. places.Order().Where((p, i) => i == 0 || p - places.Order().ElementAt(i - 1) > 1e-3)];
            // Every other one on a line of its own, so that the numbers of short ones stay apart.
            for (int i = 1; i < at.Length; i++)
            {
                double line = -Math.Max(size, (across ? high : wide) / 2) - (3 + 1.5 * (i % 2)) * step;
                if (across)
                    pen.Across(at[i - 1], at[i], line, tick);
                else
                    pen.Up(at[i - 1], at[i], line, tick);
            }
        }
    }

    private static void Level(BodyModel body, string level, DrawingPen pen, double step)
    {
        TowerLevel at = LevelOf(body, level);
        Vector3D[] legs = at.Legs;
        foreach (LevelMember member in at.Members)
            pen.Line(DrawnLayer.Member, (member.From.X, member.From.Y), (member.To.X, member.To.Y));
        Vector3D center = at.Center;
        for (int i = 0; i < legs.Length; i++)
        {
            pen.Rectangle(DrawnLayer.Member, legs[i].X, legs[i].Y, 0.6 * step, 0.6 * step);
            Vector3D inward = (center - legs[i]).Normalized(), middle = 0.5 * (legs[i] + legs[(i + 1) % legs.Length]);
            pen.Text(Invariant($"leg {i + 1}"), legs[i].X + 1.5 * step * inward.X, legs[i].Y + 1.5 * step * inward.Y);
            Vector3D face = (center - middle) is { Length: > 1e-9 } toward ? toward.Normalized() : Vector3D.Zero;
            pen.Text(Invariant($"face {i + 1}"), middle.X + 2 * step * face.X, middle.Y + 2 * step * face.Y);
        }
    }

    private static TowerLevel LevelOf(BodyModel body, string level) => body.Tower.Levels.First(l => body.Prefix + l.Name == level);

    /// <summary>The two sides of the skin seen from the view: the outermost points of neighboring edges, joined.</summary>
    private static void Silhouette(StatueModel model, DrawingPen pen, double rightX, double rightY)
    {
        foreach (BodyModel body in model.Bodies)
        {
            foreach (SkinBand band in body.Bands)
            {
                (Vector3D leastLow, Vector3D mostLow) = Sides(body, band.BottomOutline, band.Bottom);
                (Vector3D leastHigh, Vector3D mostHigh) = Sides(body, band.TopOutline, band.Top);
                pen.Line(DrawnLayer.Edge, View(leastLow), View(leastHigh));
                pen.Line(DrawnLayer.Edge, View(mostLow), View(mostHigh));
            }
        }

        (double X, double Y) View(Vector3D p) => (p.X * rightX + p.Y * rightY, p.Z);

        (Vector3D Least, Vector3D Most) Sides(BodyModel body, PlanCurve curve, double z)
        {
            Vector3D[] points = [.. Enumerable.Range(0, curve.Count).Select(i => body.Axes.ToGlobal(new Vector3D(curve.X[i], curve.Y[i], z)))];
            // Across the body's axis as the view sees it: the outermost points of a limb lie above and below its axis.
            (double ax, double az) = View(body.Axes.Axes.Z);
            (double nx, double nz) = ax * ax + az * az > 1e-6 ? (az, -ax) : (1, 0);
            return (points.MinBy(p => Across(View(p))), points.MaxBy(p => Across(View(p))));

            double Across((double X, double Y) p) => nx * p.X + nz * p.Y;
        }
    }

    private static double Width(SkinBand band, double rightX, double rightY) => Extent(band.MidOutline, rightX, rightY) is var (least, most) ? most - least : 0;

    private static (double Least, double Most) Extent(PlanCurve curve, double rightX, double rightY)
    {
        double least = double.MaxValue, most = double.MinValue;
        for (int i = 0; i < curve.Count; i++)
        {
            double x = curve.X[i] * rightX + curve.Y[i] * rightY;
            (least, most) = (Math.Min(least, x), Math.Max(most, x));
        }
        return (least, most);
    }
}
