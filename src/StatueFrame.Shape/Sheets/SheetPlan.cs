using System.Globalization;
using System.Text;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// A skin cut into sheets by level and upright seams, each piece halved across its longer way until it is within the
/// limits: the same mesh and limits give the same sheets.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SheetPlan
{
    private const int MostSheets = 100_000;

    /// <summary>Pieces smaller than this part of the allowed width are not cut for their turn.</summary>
    private const double LeastPart = 0.125;

    /// <summary>The sheets, from the lowest up.</summary>
    public required ValueList<MetalSheet> Sheets { get; init; }

    /// <summary>Area of all sheets.</summary>
    public Area Area => Area.FromSquareMeters(Sheets.Sum(s => s.Area.SquareMeters));

    /// <summary>Mass of all sheets.</summary>
    public Mass Mass => Mass.FromKilograms(Sheets.Sum(s => s.Mass.Kilograms));

    /// <summary>Lapped seam, each counted once.</summary>
    public Length LappedSeam => Length.FromMeters(Sheets.Sum(s => s.LappedSeam.Meters) / 2);

    /// <summary>Flush seam, each counted once.</summary>
    public Length FlushSeam => Length.FromMeters(Sheets.Sum(s => s.FlushSeam.Meters) / 2);

    /// <summary>Rivets: one row along lapped seams; two, one in each sheet, along the strap of flush ones.</summary>
    public required int Rivets { get; init; }

    /// <summary>Cuts a surface into sheets.</summary>
    /// <param name="surface">The sheet of a body, <see cref="ShapeBody.Surface"/>, or any mesh with consistent facing.</param>
    /// <param name="cutting">Metal and limits.</param>
    /// <exception cref="ArgumentException">A limit is out of range.</exception>
    /// <exception cref="InvalidMeshException">The limits ask for more than 100 000 sheets.</exception>
    public static SheetPlan Of(Mesh surface, SheetCutting cutting)
    {
        ArgumentNullException.ThrowIfNull(surface);
        ArgumentNullException.ThrowIfNull(cutting);
        cutting.Validate();
        var cutter = new SurfaceCutter(surface);
        List<int> all = [.. surface.Corners];
        foreach ((int from, int to) in SurfaceCutter.OpenSides(all))
            cutter.Mark(from, to);
        var open = new Stack<List<int>>(SurfaceCutter.Pieces(all));
        var done = new List<(List<int> Corners, SheetForm Form, bool WithinTurn)>();
        while (open.TryPop(out List<int>? piece))
        {
            SheetForm form = SheetForm.Of(cutter, piece);
            bool fits = form.Length <= cutting.GreatestLength.Meters && form.Width <= cutting.GreatestWidth.Meters
                && form.Area * cutting.SurfaceDensity <= cutting.GreatestMass.Kilograms;
            bool straight = form.Turn <= cutting.GreatestTurn.Radians;
            if (fits && (straight || Math.Max(form.Depth, Math.Max(form.ChordU, form.ChordV)) < LeastPart * cutting.GreatestWidth.Meters))
            {
                done.Add((piece, form, straight));
                continue;
            }
            if (done.Count + open.Count > MostSheets)
                throw new InvalidMeshException($"The limits ask for more than {MostSheets} sheets; are their units right?");
            (List<int> front, List<int> back) = cutter.Cut(piece, form.Center, Across(cutter, piece));
            if (front.Count == 0 || back.Count == 0)
            {
                done.Add((piece, form, straight));
                continue;
            }
            foreach (List<int> part in SurfaceCutter.Pieces(front).Concat(SurfaceCutter.Pieces(back)))
                open.Push(part);
        }
        MetalSheet[] sheets =
        [
            .. done.Where(d => d.Form.Area > 0).OrderBy(d => d.Form.Center.Z).ThenBy(d => d.Form.Center.Y).ThenBy(d => d.Form.Center.X)
                .Select((d, i) => Sheet(cutter, cutting, i + 1, d.Corners, d.Form, d.WithinTurn)),
        ];
        double pitch = cutting.RivetPitch.Meters;
        double rivets = sheets.Sum(s => s.LappedSeam.Meters / 2 + s.FlushSeam.Meters) / pitch;
        return new SheetPlan { Sheets = [.. sheets], Rivets = (int)Math.Ceiling(rivets - 1e-9) };
    }

    /// <summary>Up, or the level direction in which the piece is longest, whichever spreads its area more.</summary>
    private static Vector3D Across(SurfaceCutter cutter, List<int> piece)
    {
        var moments = new SheetMoments();
        for (int t = 0; t < piece.Count; t += 3)
            moments.Add(cutter[piece[t]], cutter[piece[t + 1]], cutter[piece[t + 2]]);
        (double xx, double yy, double zz, double xy, _, _) = moments.Central;
        double radius = Math.Sqrt(0.25 * (xx - yy) * (xx - yy) + xy * xy), level = 0.5 * (xx + yy) + radius;
        if (zz >= level * (1 - 1e-9))
            return Vector3D.UnitZ;
        double angle = radius > 1e-9 * level ? 0.5 * Math.Atan2(2 * xy, xx - yy) : 0;
        return new Vector3D(Math.Cos(angle), Math.Sin(angle), 0);
    }

    private static MetalSheet Sheet(SurfaceCutter cutter, SheetCutting cutting, int number, List<int> corners, SheetForm form, bool withinTurn)
    {
        double lapped = 0, flush = 0, free = 0;
        foreach ((int from, int to) in SurfaceCutter.OpenSides(corners))
        {
            double length = (cutter[to] - cutter[from]).Length;
            Vector3D middle = 0.5 * (cutter[from] + cutter[to]);
            if (cutter.IsMarked(from, to))
                free += length;
            else if (cutting.Flush.Any(r => (ShapeAxis.At(r.Center) - middle).Length <= r.Radius.Meters))
                flush += length;
            else
                lapped += length;
        }
        return new MetalSheet
        {
            Number = number,
            Area = Area.FromSquareMeters(form.Area),
            Mass = Mass.FromKilograms(form.Area * cutting.SurfaceDensity),
            Center = Mesh.Point(form.Center),
            Length = Length.FromMeters(form.Length),
            Width = Length.FromMeters(form.Width),
            Depth = Length.FromMeters(form.Depth),
            LappedSeam = Length.FromMeters(lapped),
            FlushSeam = Length.FromMeters(flush),
            FreeEdge = Length.FromMeters(free),
            RivetHoles = (int)Math.Ceiling((lapped + flush) / cutting.RivetPitch.Meters - 1e-9),
            StrongCurvature = form.Strong,
            WeakCurvature = form.Weak,
            WithinTurn = withinTurn,
            Surface = cutter.ToMesh(corners),
        };
    }

    /// <summary>The schedule as comma-separated values, with a heading.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder("sheet,x_m,y_m,z_m,area_m2,mass_kg,length_m,width_m,depth_m,lapped_seam_m,flush_seam_m,free_edge_m,rivet_holes,curvature_1_per_m,curvature_2_per_m,area_strain,within_turn\n");
        foreach (MetalSheet s in Sheets)
            text.Append(CultureInfo.InvariantCulture, $"{s.Number},{s.Center.X.Meters:f3},{s.Center.Y.Meters:f3},{s.Center.Z.Meters:f3},{s.Area.SquareMeters:f3},{s.Mass.Kilograms:f2},{s.Length.Meters:f3},{s.Width.Meters:f3},{s.Depth.Meters:f3},{s.LappedSeam.Meters:f3},{s.FlushSeam.Meters:f3},{s.FreeEdge.Meters:f3},{s.RivetHoles},{s.StrongCurvature:f4},{s.WeakCurvature:f4},{s.AreaStrain:f5},{(s.WithinTurn ? "yes" : "no")}\n");
        return text.ToString();
    }

    /// <summary>A line of totals and the sheets that need the most hammering.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{Sheets.Count} sheets, {Area.SquareMeters:f1} m², {Mass.Kilograms:f0} kg; seams {LappedSeam.Meters:f0} m lapped, {FlushSeam.Meters:f0} m flush; {Rivets} rivets\n");
        foreach (MetalSheet s in Sheets.OrderByDescending(s => s.AreaStrain).ThenBy(s => s.Number).Take(5))
            text.Append(CultureInfo.InvariantCulture, $"  sheet {s.Number}: {s.Length.Meters:f2} × {s.Width.Meters:f2} m, {s.Mass.Kilograms:f1} kg, curved {s.StrongCurvature:f2} and {s.WeakCurvature:f2} per m, hammered by {100 * s.AreaStrain:f1} % of area\n");
        return text.ToString();
    }
}
