using StatueFrame.Mechanics;
using StatueFrame.Reporting;
using StatueFrame.Shape;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>Draws templates and form sections of one sheet.</summary>
internal static class SheetTemplate
{
    public static Drawing Of(SheetWorkshop shop, int index, SheetBlank blank, SeamSide[] sides)
    {
        var pen = new DrawingPen();
        double e = shop.Seam.EdgeDistance.Meters, pitch = shop.Seam.Pitch.Meters;
        foreach (List<SeamSide> loop in Loops(sides))
        {
            (double X, double Y)[] seam = [.. loop.Select(s => On(s, s.Start))];
            pen.Closed(DrawnLayer.Axis, seam);
            pen.Closed(DrawnLayer.Edge, Beyond(seam, [.. loop.Select(s => s.Other >= 0 && !shop.IsFlush(s.Middle) ? e : 0)]));
            AddHoles(loop);
        }
        pen.Text(Invariant($"sheet {blank.Sheet.Number}, outside up"), 0, 0);
        // Which way is up on the statue, as the blank lies.
        Vector3D up = blank.Frame.Axes.ToLocal(Vector3D.UnitZ);
        double size = 0.15 * blank.Width.Meters, norm = Math.Sqrt(up.X * up.X + up.Y * up.Y);
        if (norm > 1e-6)
        {
            (double x, double y) = (size * up.X / norm, size * up.Y / norm);
            pen.Line(DrawnLayer.Dimension, (0.5 * x, 0.5 * y), (1.5 * x, 1.5 * y));
            pen.Line(DrawnLayer.Dimension, (1.3 * x - 0.1 * y, 1.3 * y + 0.1 * x), (1.5 * x, 1.5 * y), (1.3 * x + 0.1 * y, 1.3 * y - 0.1 * x));
            pen.Text("up", 1.8 * x, 1.8 * y);
        }
        return pen.Finish(
            Invariant($"Sheet {blank.Sheet.Number}: blank {blank.Length.Millimeters:0}×{blank.Width.Millimeters:0}×{shop.Cutting.Thickness.Millimeters:0.##} mm, {shop.Cutting.Metal.Name}"),
            Invariant($"Template in true size: cut edge, seam line with {shop.Seam.Pitch.Millimeters:0.#} mm pitch of rivets, numbers of the sheets across the seams. Area {blank.Sheet.Area.SquareMeters:0.000} m²; hammering leaves {100 * blank.LeastThickness:0} to {100 * blank.GreatestThickness:0} % of the thickness."));

        (double X, double Y) On(SeamSide s, double t)
        {
            ((double ax, double ay), (double bx, double by)) = (blank.At(s.From), blank.At(s.To));
            return (ax + t * (bx - ax), ay + t * (by - ay));
        }

        // Holes sit at half a pitch from the ends of each seam and then evenly, as they must on the sheet across it.
        void AddHoles(List<SeamSide> loop)
        {
            int start = Math.Max(0, loop.FindIndex(s => s.Other != loop[^1].Other));
            for (int i = 0; i < loop.Count;)
            {
                var run = new List<SeamSide>();
                SeamSide first = loop[(start + i) % loop.Count];
                while (i < loop.Count && loop[(start + i) % loop.Count].Other == first.Other)
                    run.Add(loop[(start + i++) % loop.Count]);
                if (first.Other < 0)
                    continue;
                double length = run.Sum(s => s.Length), done = 0;
                int count = Math.Max(1, (int)Math.Ceiling(length / pitch - 1e-9)), next = 0;
                foreach (SeamSide s in run)
                {
                    while (next < count && (next + 0.5) * length / count <= done + s.Length)
                    {
                        (double x, double y) = On(s, s.Start + (s.End - s.Start) * ((next + 0.5) * length / count - done) / s.Length);
                        (double inX, double inY) = Inward(s);
                        double off = shop.IsFlush(s.Middle) ? e : 0;
                        pen.Circle(DrawnLayer.Hole, x + off * inX, y + off * inY, 0.5 * shop.Seam.Rivet.d_0);
                        if (next == count / 2)
                            pen.Text(Invariant($"{shop.Plan.Sheets[first.Other].Number}"), x + (off + 3 * e) * inX, y + (off + 3 * e) * inY);
                        next++;
                    }
                    done += s.Length;
                }
            }
        }

        // Edges run anticlockwise round the outward side: inward is to the left.
        (double X, double Y) Inward(SeamSide s)
        {
            ((double ax, double ay), (double bx, double by)) = (blank.At(s.From), blank.At(s.To));
            double length = Math.Sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
            return length > 0 ? (-(by - ay) / length, (bx - ax) / length) : (0, 0);
        }
    }

    public static Drawing Form(MetalSheet sheet, SheetAxes frame, double thickness, double spacing)
    {
        var pen = new DrawingPen();
        Mesh mesh = sheet.Surface;
        (Vector3D least, Vector3D most) = (frame.Least, frame.Most);
        double wide = most.Y - least.Y, deep = most.Z - least.Z + 0.1 * wide + thickness, step = wide + 0.15 * wide;
        int ribs = Math.Max(2, (int)Math.Ceiling((most.X - least.X) / spacing)), columns = (int)Math.Ceiling(Math.Sqrt(ribs * deep / step));
        for (int r = 0; r < ribs; r++)
        {
            double u = least.X + (r + 0.5) / ribs * (most.X - least.X);
            (double ox, double oy) = (r % columns * step - least.Y, -(r / columns) * 1.4 * deep - least.Z);
            double from = double.MaxValue, to = double.MinValue;
            for (int t = 0; t < mesh.TriangleCount; t++)
            {
                var cut = new List<(double Y, double Z)>(2);
                for (int k = 0; k < 3; k++)
                {
                    (Vector3D p, Vector3D q) = (frame.Points[mesh.Corners[3 * t + k]], frame.Points[mesh.Corners[3 * t + (k + 1) % 3]]);
                    if (p.X < u == q.X < u)
                        continue;
                    double s = (u - p.X) / (q.X - p.X);
                    cut.Add((p.Y + s * (q.Y - p.Y), p.Z + s * (q.Z - p.Z)));
                }
                if (cut.Count != 2)
                    continue;
                // The form is on the inner side: below by the thickness along the section's own normal.
                double dy = cut[1].Y - cut[0].Y, dz = cut[1].Z - cut[0].Z, l = Math.Sqrt(dy * dy + dz * dz), sign = dy >= 0 ? 1 : -1;
                (double ny, double nz) = l > 0 ? (sign * dz / l * thickness, -sign * dy / l * thickness) : (0, 0);
                pen.Line(DrawnLayer.Edge, (ox + cut[0].Y + ny, oy + cut[0].Z + nz), (ox + cut[1].Y + ny, oy + cut[1].Z + nz));
                (from, to) = (Math.Min(from, Math.Min(cut[0].Y, cut[1].Y)), Math.Max(to, Math.Max(cut[0].Y, cut[1].Y)));
            }
            double foot = oy + least.Z - 0.1 * wide;
            if (to > from)
                pen.Line(DrawnLayer.Axis, (ox + from, foot), (ox + to, foot));
            pen.Text(Invariant($"rib {r + 1}, {1000 * (u - least.X):0} mm from the edge"), ox + 0.5 * (least.Y + most.Y), foot - 0.06 * wide);
        }
        return pen.Finish(Invariant($"Sheet {sheet.Number}: {ribs} ribs of its form, {1000 * (most.X - least.X) / ribs:0} mm apart"),
            Invariant($"Sections through the sheet across its longer way, each over a level base line that lies {1000 * 0.1 * wide:0} mm below the sheet's lowest point, as seen from the edge that the distances count from."));
    }

    /// <summary>The sides of a sheet as closed runs, each going on where the one before ends.</summary>
    private static IEnumerable<List<SeamSide>> Loops(SeamSide[] sides)
    {
        ILookup<int, SeamSide> from = sides.OrderBy(s => s.Start).ToLookup(s => s.From);
        var left = new HashSet<int>(sides.Select(s => s.From));
        while (left.Count > 0)
        {
            var loop = new List<SeamSide>();
            int at = left.Min();
            while (left.Remove(at))
            {
                loop.AddRange(from[at]);
                at = loop[^1].To;
            }
            yield return loop;
        }
    }

    /// <summary>A closed figure moved outward, each side by its own distance; corners are cut where sides meet sharply.</summary>
    private static (double X, double Y)[] Beyond((double X, double Y)[] p, double[] distance)
    {
        var moved = new List<(double, double)>(2 * p.Length);
        for (int i = 0; i < p.Length; i++)
        {
            (double ax, double ay) = p[i];
            (double bx, double by) = p[(i + 1) % p.Length];
            double l = Math.Sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
            if (l <= 0)
                continue;
            (double nx, double ny) = ((by - ay) / l * distance[i], -(bx - ax) / l * distance[i]);
            moved.Add((ax + nx, ay + ny));
            moved.Add((bx + nx, by + ny));
        }
        return [.. moved];
    }
}
