using ScottPlot;
using ScottPlot.Plottables;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Studies;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Reporting;

/// <summary>Pictures of results: wind over height, force on the bands, utilization by height, sway curve and rose.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class ResultPictures
{
    /// <summary>The peak velocity pressure over the height of the statue.</summary>
    /// <param name="model">The model.</param>
    /// <param name="profile">The wind.</param>
    /// <param name="units">The units of the axes.</param>
    public static Picture WindProfile(StatueModel model, WindProfile profile, DisplayUnits units = DisplayUnits.Metric)
    {
        double bottom = model.Statue.BaseAboveGround.Meters, top = bottom + LineModel.Of(model).Lines.Max(l => l.Points.Max(p => p.Z));
        double[] z = [.. Enumerable.Range(0, 81).Select(i => bottom + (top - bottom) * i / 80)];
        double[] q = [.. z.Select(h => profile.PeakPressure(UnitsNet.Length.FromMeters(h)).Pascals)];
        return new Picture(
            $"Peak velocity pressure: {profile.Name}",
            $"Peak velocity pressure from {Dimension.Pressure.Format(q[0], units)} at the base to {Dimension.Pressure.Format(q[^1], units)} at the top.",
            plot =>
            {
                Pen.Curve(plot, Values(q, Dimension.Pressure, units), Values(z, Dimension.Length, units), 0, "", marked: false);
                Pen.Axes(plot, Label("peak velocity pressure", Dimension.Pressure, units), Label("height above ground", Dimension.Length, units));
                plot.Axes.SetLimitsX(0, 1.1 * Dimension.Pressure.Value(q.Max(), units));
            }, 560, 600);
    }

    /// <summary>The wind force on every band of one load case, by height.</summary>
    /// <param name="loadCase">The load case; it must have wind.</param>
    /// <param name="units">The units of the axes.</param>
    /// <exception cref="ArgumentException">The load case has no wind, or the statue no skin.</exception>
    public static Picture BandForces(LoadCase loadCase, DisplayUnits units = DisplayUnits.Metric)
    {
        ArgumentNullException.ThrowIfNull(loadCase);
        IReadOnlyList<BandWindForce> forces = loadCase.BandWindForces();
        if (loadCase.Heading is null || forces.Count == 0)
            throw new ArgumentException("There is no wind on a skin in this load case.", nameof(loadCase));
        BandWindForce greatest = forces.MaxBy(f => f.Along)!;
        return new Picture(
            $"Wind force on each band, {Headings.Describe(loadCase.Heading)}",
            $"Force along the wind on each band by height; the greatest is {Dimension.Force.Format(greatest.Along.Newtons, units)} on {greatest.Band}.",
            plot =>
            {
                foreach ((int i, IGrouping<string, BandWindForce> body) in forces.GroupBy(f => BodyOf(f.Band)).Index())
                {
                    Scatter points = Pen.Curve(
                        plot, [.. body.Select(f => Dimension.Force.Value(f.Along.Newtons, units))],
                        [.. body.Select(f => Dimension.Length.Value(f.Elevation.Meters, units))], i, body.Key);
                    points.LineWidth = 0.8f;
                }
                Pen.Axes(plot, Label("force along the wind", Dimension.Force, units), Label("height above the base", Dimension.Length, units));
                plot.ShowLegend(Alignment.UpperRight);
            }, 560, 600);
    }

    /// <summary>The worst utilization of the standoffs of each band, by height: one curve a kind of check.</summary>
    /// <param name="model">The model.</param>
    /// <param name="sheet">A sheet of it.</param>
    /// <param name="units">The units of the axes.</param>
    /// <exception cref="ArgumentException">No standoff of the trunk was checked.</exception>
    public static Picture BarUtilization(StatueModel model, CheckSheet sheet, DisplayUnits units = DisplayUnits.Metric)
    {
        const int Curves = 4;
        var kinds = sheet.Checks
            .Where(c => c is { Family: "bars", Utilization: { } u } && double.IsFinite(u) && c.Where.StartsWith("band ", StringComparison.Ordinal))
            .GroupBy(c => c.Id)
            .Select(kind => (Id: kind.Key, Points: kind.GroupBy(c => c.Where.Split(',')[0])
                .Select(band => (Z: model.ElevationOf(band.Key).Meters, U: band.Max(c => c.Utilization!.Value))).OrderBy(p => p.Z).ToArray()))
            .OrderByDescending(kind => kind.Points.Max(p => p.U)).Take(Curves).ToArray();
        if (kinds.Length == 0)
            throw new ArgumentException("No standoff of the trunk was checked.", nameof(sheet));
        return new Picture(
            "Utilization of the standoffs by height",
            Invariant($"Worst utilization of each band's standoffs; the greatest is {kinds.Max(k => k.Points.Max(p => p.U)):0.00} in {kinds[0].Id}. One passes."),
            plot =>
            {
                foreach ((int i, (string id, (double Z, double U)[] points)) in kinds.Index())
                    Pen.Curve(plot, [.. points.Select(p => p.U)], [.. points.Select(p => Dimension.Length.Value(p.Z, units))], i, id);
                Limit(plot, vertical: true, 1);
                Pen.Axes(plot, "utilization", Label("height above the base", Dimension.Length, units));
                plot.Axes.SetLimitsX(0, Math.Max(1.1, 1.1 * kinds.Max(k => k.Points.Max(p => p.U))));
                plot.ShowLegend(Alignment.UpperRight);
            }, 640, 640);
    }

    /// <summary>The worst utilization of each family of checks, beside the limit.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <exception cref="ArgumentException">Nothing was checked.</exception>
    public static Picture Families(CheckSheet sheet)
    {
        Check[] worst = [.. sheet.GoverningByFamily.Where(c => c.Utilization is { } u && double.IsFinite(u)).OrderBy(c => c.Utilization)];
        if (worst.Length == 0)
            throw new ArgumentException("Nothing was checked.", nameof(sheet));
        return new Picture(
            $"{sheet.Title}: governing check of each family",
            $"Worst utilization by family: {string.Join(", ", worst.Reverse().Select(c => $"{c.Family} {c.UtilizationText}"))}. One passes.",
            plot =>
            {
                Bar[] bars = [.. worst.Select((c, i) => new Bar
                {
                    Position = i, Value = c.Utilization!.Value, Size = 0.6, LineWidth = 1, LineColor = Pen.Graphite,
                    FillColor = c.Verdict == Verdict.Fail ? Pen.Accent : Pen.Gray, Label = c.UtilizationText,
                })];
                plot.Add.Bars(bars).Horizontal = true;
                Limit(plot, vertical: true, 1);
                Pen.Axes(plot, "utilization", "");
                plot.Axes.Left.SetTicks([.. worst.Select((_, i) => (double)i)], [.. worst.Select(c => $"{c.Title}\n{c.Id}")]);
                plot.Axes.SetLimitsX(0, Math.Max(1.15, 1.15 * worst[^1].Utilization!.Value));
            }, 900, 140 + 48 * worst.Length);
    }

    /// <summary>Sway of the named points against the mean wind speed: mean and gust.</summary>
    /// <param name="curve">The study.</param>
    /// <param name="units">The units of the axes.</param>
    public static Picture Sway(SwayCurve curve, DisplayUnits units = DisplayUnits.Metric)
    {
        ArgumentNullException.ThrowIfNull(curve);
        string[] points = [.. curve.Rows[0].Points.Select(p => p.Point)];
        double[] speed = Values([.. curve.Rows.Select(r => r.MeanSpeed.MetersPerSecond)], Dimension.Speed, units);
        SwayCurveRow last = curve.Rows[^1];
        return new Picture(
            $"{curve.Model.Statue.Name}: sway against wind speed",
            $"Gust sway at {Dimension.Speed.Format(last.MeanSpeed.MetersPerSecond, units)}: {string.Join(", ", last.Points.Select(p => $"{p.Point} {Dimension.SmallLength.Format(p.Gust.Meters, units)}"))}.",
            plot =>
            {
                foreach ((int i, string point) in points.Index())
                {
                    Pen.Curve(plot, speed, Values([.. curve.Rows.Select(r => r.At(point).Gust.Meters)], Dimension.SmallLength, units), i, $"{point}, gust");
                    Scatter mean = Pen.Curve(plot, speed, Values([.. curve.Rows.Select(r => r.At(point).Mean.Meters)], Dimension.SmallLength, units), i, $"{point}, mean", marked: false);
                    mean.LineWidth = 0.9f;
                }
                Pen.Axes(plot, Label("mean wind speed", Dimension.Speed, units), Label("sway", Dimension.SmallLength, units));
                plot.ShowLegend(Alignment.UpperLeft);
            });
    }

    /// <summary>A quantity by the heading that the wind blows towards, as a rose.</summary>
    /// <param name="series">One quantity of a heading study.</param>
    /// <param name="units">The units of the rings.</param>
    public static Picture Rose(HeadingSeries series, DisplayUnits units = DisplayUnits.Metric)
    {
        ArgumentNullException.ThrowIfNull(series);
        return new Picture(
            $"{series.Name} by heading, {series.Dimension.Unit(units)}",
            Invariant($"Rose of {series.Name}: greatest {series.Dimension.Format(series.Worst.Value, units)} with wind towards {series.Worst.Heading.Degrees:0.#}°."),
            plot =>
            {
                double most = series.Dimension.Value(series.Rose.Max(p => p.Value), units);
                PolarAxis axis = plot.Add.PolarAxis(most * 1.05);
                axis.Circles.ForEach(c => { c.LineColor = Color.FromHex("#d4d7d9"); c.LabelStyle.FontSize = 11; });
                axis.SetSpokes(12, most * 1.1, degreeLabels: true);
                axis.Spokes.ForEach(s => s.LineColor = Color.FromHex("#d4d7d9"));
                axis.SetCircles(most * 1.05, 4);
                foreach (PolarAxisCircle circle in axis.Circles)
                    circle.LabelText = series.Dimension.FormatNumber(SiOf(circle.Radius, series.Dimension, units), units);
                RosePoint[] round = [.. series.Rose.OrderBy(p => p.Heading.Radians)];
                double[] x = [.. round.Append(round[0]).Select(p => series.Dimension.Value(p.Value, units) * Math.Cos(p.Heading.Radians))];
                double[] y = [.. round.Append(round[0]).Select(p => series.Dimension.Value(p.Value, units) * Math.Sin(p.Heading.Radians))];
                Pen.Stroke(plot, x, y, Pen.Graphite, 1.8f);
                double worst = series.Dimension.Value(series.Worst.Value, units), angle = series.Worst.Heading.Radians;
                Pen.Stroke(plot, [0, worst * Math.Cos(angle)], [0, worst * Math.Sin(angle)], Pen.Accent, 2, LinePattern.Dashed);
                plot.HideAxesAndGrid();
                plot.Axes.Title.IsVisible = true;
                plot.Axes.SquareUnits();
            }, 640, 680);
    }

    /// <summary>
    /// The stress of the sheet of one body, unrolled: round its axis from left to right, along it upwards; each field shows the
    /// greatest equivalent stress of its triangles, the darker the greater.
    /// </summary>
    /// <param name="loadCase">A load case of a fine model.</param>
    /// <param name="limb">The limb; empty for the trunk.</param>
    /// <param name="units">The units of the axes.</param>
    /// <exception cref="ArgumentException">The statue has no skin on such a limb.</exception>
    public static Picture SkinStress(FineCase loadCase, string limb = "", DisplayUnits units = DisplayUnits.Metric)
    {
        const int Round = 72, Along = 60;
        ArgumentNullException.ThrowIfNull(loadCase);
        SkinStressResult[] all = [.. loadCase.SkinStress().Where(s => BodyOf(s.Band) == (limb.Length == 0 ? "trunk" : limb))];
        if (all.Length == 0)
            throw new ArgumentException($"The statue has no skin on a limb \"{limb}\".", nameof(limb));
        SkinStressResult worst = all.MaxBy(s => s.VonMises.Pascals)!;
        double bottom = all.Min(s => s.Along.Meters), top = all.Max(s => s.Along.Meters);
        var fields = new double[Along, Round];
        foreach (SkinStressResult stress in all)
        {
            int column = Math.Clamp((int)((stress.Around.Degrees + 180) / 360 * Round), 0, Round - 1);
            int row = Math.Clamp((int)((stress.Along.Meters - bottom) / (top - bottom) * Along), 0, Along - 1);
            // The first row of a heat map is its uppermost.
            ref double field = ref fields[Along - 1 - row, column];
            field = Math.Max(field, Dimension.Stress.Value(stress.VonMises.Pascals, units));
        }
        return new Picture(
            $"Stress of the sheet of {(limb.Length == 0 ? "the trunk" : limb)}, {(loadCase.Heading is null ? "without wind" : Headings.Describe(loadCase.Heading))}",
            $"Equivalent stress of the unrolled sheet; the greatest is {Dimension.Stress.Format(worst.VonMises.Pascals, units)} in {worst.Band}.",
            plot =>
            {
                Heatmap map = plot.Add.Heatmap(fields);
                map.Colormap = new ScottPlot.Colormaps.CustomInterpolated([Colors.White, Color.FromHex("#c9cdd0"), Color.FromHex("#7b8288"), Pen.Graphite]);
                map.Extent = new CoordinateRect(-180, 180, Dimension.Length.Value(bottom, units), Dimension.Length.Value(top, units));
                ScottPlot.Panels.ColorBar bar = plot.Add.ColorBar(map);
                bar.Label = Label("equivalent stress", Dimension.Stress, units);
                Pen.Axes(plot, "round the axis, °", Label("along the axis", Dimension.Length, units));
                plot.Axes.SetLimits(-180, 180, Dimension.Length.Value(bottom, units), Dimension.Length.Value(top, units));
            }, 720, 720);
    }

    internal static void Limit(Plot plot, bool vertical, double value)
    {
        ScottPlot.Plottables.AxisLine line = vertical ? plot.Add.VerticalLine(value) : plot.Add.HorizontalLine(value);
        line.Color = Pen.Accent;
        line.LineWidth = 1.4f;
        line.LinePattern = LinePattern.Dashed;
    }

    internal static string Label(string name, Dimension dimension, DisplayUnits units) =>
        dimension.Unit(units) is { Length: > 0 } unit ? $"{name}, {unit}" : name;

    internal static double[] Values(double[] si, Dimension dimension, DisplayUnits units) => Array.ConvertAll(si, v => dimension.Value(v, units));

    /// <summary>The SI value of a number of display units; the scales of a rose start at zero.</summary>
    private static double SiOf(double display, Dimension dimension, DisplayUnits units) => display / dimension.Value(1, units);

    private static string BodyOf(string band) => band.LastIndexOf('/') is > 0 and int slash ? band[..slash] : "trunk";
}
