using System.Globalization;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>Turns slices of a body into stations of a skin.</summary>
internal static class SkinSlicer
{
    private const int Headings = 8;
    private const double LeastFold = 1, GreatestFold = 5;

    public static SlicedSkin Slice(ShapeBody body, SkinSlicing slicing)
    {
        slicing.Validate();
        var notes = new List<string>();
        double[] z = slicing.Elevations is { } given ? [.. given.Select(e => e.Meters)] : Even(body, slicing);
        double[] middles = [.. Enumerable.Range(0, z.Length - 1).Select(i => 0.5 * (z[i] + z[i + 1]))];
        PlanSlice[] slices = body.SlicesAt(z), between = body.SlicesAt(middles);
        PolygonOutline[] outlines = [.. slices.Select(s => Outline(s, slicing, notes))];
        SheetBand[] bands = body.Measured(z, beyond: true);
        double[] loft = [.. bands.Select((_, i) => LoftArea(z, outlines, i))];
        double cap = PolygonArea(outlines[^1]);
        double[] smooth = [.. loft];
        smooth[^1] += cap;
        double[] folds = Folds(bands, smooth);
        Area sheet = Area.FromSquareMeters(bands.Sum(b => b.SheetArea.SquareMeters));
        double even = sheet / ModelArea(z, outlines, folds);
        folds = Limited(z, Array.ConvertAll(folds, f => even * f), notes);
        return new SlicedSkin
        {
            Stations = Stations(z, outlines, folds),
            Bands = [.. bands.Select((b, i) => b with { LoftArea = Area.FromSquareMeters(smooth[i]) })],
            SheetArea = sheet,
            ModelArea = ModelArea(z, outlines, folds),
            OutlineError = OutlineError(z, outlines, between, slicing),
            ProjectedError = ProjectedError(z, slices, between),
            Notes = [.. notes.Distinct()],
        };
    }

    /// <summary>Even heights between the ends, away from tips too narrow for an outline.</summary>
    private static double[] Even(ShapeBody body, SkinSlicing slicing)
    {
        const int steps = 200;
        const double inward = 1e-6;
        double low = body.LowestZ, height = body.HighestZ - low;
        double[] z = [.. Enumerable.Range(0, steps + 1).Select(i => low + height * Math.Clamp((double)i / steps, inward, 1 - inward))];
        bool[] wide = [.. body.SlicesAt(z).Select(s => IsWide(s, slicing))];
        int first = Array.IndexOf(wide, true), last = Array.LastIndexOf(wide, true);
        double bottom = first <= 0 ? z[0] : End(body, slicing, z[first - 1], z[first]);
        double top = last < 0 || last == steps ? z[^1] : End(body, slicing, z[last + 1], z[last]);
        if (first < 0 || !(top - bottom >= slicing.Bands * 1e-3))
            throw new InvalidMeshException(string.Create(CultureInfo.InvariantCulture, $"The {body.Name} is nowhere {slicing.LeastWidth.Meters:g3} m wide over a height that bands could have; is the unit right?"));
        return [.. Enumerable.Range(0, slicing.Bands + 1).Select(i => i == slicing.Bands ? top : bottom + i * (top - bottom) / slicing.Bands)];
    }

    /// <summary>The height between a narrow and a wide place from which on the outline is wide enough.</summary>
    private static double End(ShapeBody body, SkinSlicing slicing, double narrow, double wide)
    {
        const int halvings = 10;
        for (int k = 0; k < halvings; k++)
        {
            double middle = 0.5 * (narrow + wide);
            (narrow, wide) = IsWide(body.SlicesAt([middle])[0], slicing) ? (narrow, middle) : (middle, wide);
        }
        return wide;
    }

    private static bool IsWide(PlanSlice slice, SkinSlicing slicing)
    {
        double least = slicing.LeastWidth.Meters;
        SliceLoop? main = slice.Loops.MaxBy(l => l.SignedArea);
        return main is not null && Wide(main.Extent(1, 0)) && Wide(main.Extent(0, 1));

        bool Wide((double Least, double Greatest) extent) => extent.Greatest - extent.Least >= least;
    }

    private static SliceLoop Main(PlanSlice slice, SkinSlicing slicing, List<string>? notes)
    {
        SliceLoop[] outer = [.. slice.Loops.Where(l => !l.IsHole)];
        if (outer.Length == 0)
            throw new InvalidMeshException(string.Create(CultureInfo.InvariantCulture, $"At {slice.Z:g6} m there is no outline."));
        if (slice.Loops.Any(l => l.IsHole))
            notes?.Add(string.Create(CultureInfo.InvariantCulture, $"at {slice.Z:g5} m the slice has holes; the outline leaves them out, their sheet counts by the fold factor"));
        if (outer.Length == 1)
            return outer[0];
        switch (slicing.Several)
        {
            case SeveralOutlines.Largest:
                notes?.Add(string.Create(CultureInfo.InvariantCulture, $"at {slice.Z:g5} m the largest of {outer.Length} outlines is taken"));
                return outer.MaxBy(l => l.SignedArea)!;
            case SeveralOutlines.Hull:
                notes?.Add(string.Create(CultureInfo.InvariantCulture, $"at {slice.Z:g5} m the hull of {outer.Length} outlines is taken"));
                return SliceLoop.Hull(outer);
            default:
                string places = string.Join(", ", outer.Take(5).Select(l => string.Create(CultureInfo.InvariantCulture, $"({l.CenterX:g4}, {l.CenterY:g4}) m")));
                throw new InvalidMeshException(string.Create(CultureInfo.InvariantCulture, $"At {slice.Z:g6} m there are {outer.Length} outlines, round {places}. Cut off limbs first, or say what to do by SkinSlicing.Several."));
        }
    }

    private static PolygonOutline Outline(PlanSlice slice, SkinSlicing slicing, List<string> notes) => new()
    {
        Vertices = [.. Main(slice, slicing, notes).Resampled(slicing.OutlinePoints).Select(p => new PlanPoint(Length.FromMeters(p.X), Length.FromMeters(p.Y)))],
    };

    /// <summary>The area of the ruled surface between two stations, as the skin itself computes it.</summary>
    /// <exception cref="InvalidMeshException">The slices are no stations that a skin can have.</exception>
    private static double LoftArea(double[] z, PolygonOutline[] outlines, int i)
    {
        var skin = new Skin
        {
            Material = Copper.HalfHardR240,
            Thickness = Length.FromMillimeters(1),
            ClosedTop = false,
            Stations =
            [
                new SkinStation { Elevation = Length.FromMeters(z[i]), Outline = outlines[i] },
                new SkinStation { Elevation = Length.FromMeters(z[i + 1]), Outline = outlines[i + 1] },
            ],
        };
        try
        {
            return skin.SheetArea().SquareMeters;
        }
        catch (InvalidStatueException e)
        {
            Problem first = e.Problems[0];
            int station = first.Path.Contains($"{nameof(Skin.Stations)}[0]", StringComparison.Ordinal) ? i : i + 1;
            throw new InvalidMeshException(string.Create(CultureInfo.InvariantCulture, $"At {z[station]:g6} m there is no outline that a skin could have: {first.Message}. The surface cuts through itself there, or its folds lie closer than SkinSlicing.OutlinePoints tell apart, or the unit is wrong."));
        }
    }

    private static ValueList<SkinStation> Stations(double[] z, PolygonOutline[] outlines, double[] folds) =>
        [.. z.Select((e, i) => new SkinStation { Elevation = Length.FromMeters(e), Outline = outlines[i], FoldFactor = folds[i] })];

    private static Area ModelArea(double[] z, PolygonOutline[] outlines, double[] folds) => new Skin
    {
        Material = Copper.HalfHardR240,
        Thickness = Length.FromMillimeters(1),
        Stations = Stations(z, outlines, Array.ConvertAll(folds, f => Math.Clamp(f, LeastFold, GreatestFold))),
    }.SheetArea();

    /// <summary>Fold factors of the stations: between two bands the mean of theirs, by smooth area.</summary>
    private static double[] Folds(SheetBand[] bands, double[] smooth)
    {
        var folds = new double[bands.Length + 1];
        for (int i = 0; i < folds.Length; i++)
        {
            (int below, int above) = (Math.Max(0, i - 1), Math.Min(bands.Length - 1, i));
            folds[i] = (bands[below].SheetArea + bands[above].SheetArea).SquareMeters / (smooth[below] + smooth[above]);
        }
        return folds;
    }

    private static double[] Limited(double[] z, double[] folds, List<string> notes)
    {
        for (int i = 0; i < folds.Length; i++)
        {
            if (folds[i] > GreatestFold)
                throw new InvalidMeshException(string.Create(CultureInfo.InvariantCulture, $"Near {z[i]:g5} m there is {folds[i]:g3} times as much sheet as the outline has; begin the stations nearer to the end, or cut the limb elsewhere."));
            if (folds[i] < LeastFold - 0.02)
                notes.Add(string.Create(CultureInfo.InvariantCulture, $"near {z[i]:g5} m the outline has {100 * (1 / folds[i] - 1):f0} % more area than the sheet; the skin takes the outline's"));
        }
        return Array.ConvertAll(folds, f => Math.Max(f, LeastFold));
    }

    private static double OutlineError(double[] z, PolygonOutline[] outlines, PlanSlice[] between, SkinSlicing slicing)
    {
        double wrong = 0, volume = 0;
        for (int i = 0; i < between.Length; i++)
        {
            double mesh = Main(between[i], slicing, null).SignedArea;
            PlanPoint[] middle = [.. outlines[i].Vertices.Zip(outlines[i + 1].Vertices, (a, b) => new PlanPoint(0.5 * (a.X + b.X), 0.5 * (a.Y + b.Y)))];
            wrong += (z[i + 1] - z[i]) * Math.Abs(PolygonArea(middle) - mesh);
            volume += (z[i + 1] - z[i]) * mesh;
        }
        return wrong / volume;
    }

    private static double ProjectedError(double[] z, PlanSlice[] slices, PlanSlice[] between)
    {
        double worst = 0;
        for (int k = 0; k < Headings; k++)
        {
            double heading = Math.PI * k / Headings, stations = 0, fine = 0;
            for (int i = 0; i < between.Length; i++)
            {
                double h = z[i + 1] - z[i], ends = 0.5 * (slices[i].Width(heading) + slices[i + 1].Width(heading));
                stations += h * ends;
                fine += h * (ends + 2 * between[i].Width(heading)) / 3;
            }
            worst = Math.Max(worst, Math.Abs(stations - fine) / fine);
        }
        return worst;
    }

    private static double PolygonArea(PolygonOutline outline) => PolygonArea([.. outline.Vertices]);

    private static double PolygonArea(ReadOnlySpan<PlanPoint> p)
    {
        double sum = 0;
        for (int i = 0; i < p.Length; i++)
        {
            PlanPoint a = p[i], b = p[(i + 1) % p.Length];
            sum += a.X.Meters * b.Y.Meters - a.Y.Meters * b.X.Meters;
        }
        return 0.5 * sum;
    }
}
