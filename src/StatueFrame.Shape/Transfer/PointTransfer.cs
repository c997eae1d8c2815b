using System.Globalization;
using System.Text;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>Points carried to full size: the workshop's table for the enlarged frame.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record PointTransfer
{
    private const int NearestLines = 3;

    /// <summary>Full size over the measured model.</summary>
    public required double Factor { get; init; }

    /// <summary>The lines of the enlarged frame.</summary>
    public required ValueList<ReferenceLine> Lines { get; init; }

    /// <summary>The points.</summary>
    public required ValueList<TransferredPoint> Points { get; init; }

    /// <summary>
    /// At each stage a point's place is multiplied by the factor s, and its covariance becomes s² C + e² x xᵀ + m² I with
    /// the scale error e, the place x reached, and the setting-out error m.
    /// </summary>
    internal static PointTransfer Of(AdjustedSurvey survey, ReadOnlySpan<EnlargementStage> stages)
    {
        if (stages.IsEmpty)
            throw new ArgumentException("must be at least one", nameof(stages));
        double factor = 1;
        foreach (EnlargementStage stage in stages)
        {
            stage.Validate();
            factor *= stage.Factor;
        }
        if (!(factor is >= 0.01 and <= 1000))
            throw new ArgumentException($"all stages together must enlarge 0.01 to 1000 times, do {factor}", nameof(stages));
        ReferenceLine[] lines = [.. survey.Survey.Lines.Select(l => l with { X = factor * l.X, Y = factor * l.Y })];
        var points = new TransferredPoint[survey.Points.Count];
        for (int i = 0; i < points.Length; i++)
            points[i] = Point(survey.Points[i], stages, lines);
        return new PointTransfer { Factor = factor, Lines = [.. lines], Points = [.. points] };
    }

    private static TransferredPoint Point(AdjustedPoint from, ReadOnlySpan<EnlargementStage> stages, ReferenceLine[] lines)
    {
        Vector3D at = ShapeAxis.At(from.At);
        (double xx, double yy, double zz, double xy, double xz, double yz) = (from.Covariance.XX, from.Covariance.YY, from.Covariance.ZZ, from.Covariance.XY, 0, 0);
        foreach (EnlargementStage stage in stages)
        {
            at *= stage.Factor;
            double s = stage.Factor * stage.Factor, e = stage.ScaleError * stage.ScaleError, m = stage.SettingOutError.Meters * stage.SettingOutError.Meters;
            xx = s * xx + e * at.X * at.X + m;
            yy = s * yy + e * at.Y * at.Y + m;
            zz = s * zz + e * at.Z * at.Z + m;
            xy = s * xy + e * at.X * at.Y;
            xz = s * xz + e * at.X * at.Z;
            yz = s * yz + e * at.Y * at.Z;
        }
        return new TransferredPoint
        {
            Name = from.Name,
            At = Mesh.Point(at),
            Covariance = (xx, yy, zz, xy, xz, yz),
            Distances =
            [
                .. lines.Select(l => (l.Name, Distance: Math.Sqrt(Math.Pow(at.X - l.X.Meters, 2) + Math.Pow(at.Y - l.Y.Meters, 2))))
                    .OrderBy(l => l.Distance).Take(NearestLines).Select(l => (l.Name, Length.FromMeters(l.Distance))),
            ],
        };
    }

    /// <summary>The table as comma-separated values in millimeters, with a heading.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder("point,x_mm,y_mm,z_mm,error_x_mm,error_y_mm,error_z_mm");
        for (int k = 1; k <= NearestLines; k++)
            text.Append(CultureInfo.InvariantCulture, $",line_{k},distance_{k}_mm");
        text.Append('\n');
        foreach (TransferredPoint p in Points)
        {
            text.Append(CultureInfo.InvariantCulture, $"{Quoted(p.Name)},{p.At.X.Millimeters:f2},{p.At.Y.Millimeters:f2},{p.At.Z.Millimeters:f2},{p.ErrorX.Millimeters:f3},{p.ErrorY.Millimeters:f3},{p.ErrorZ.Millimeters:f3}");
            for (int k = 0; k < NearestLines; k++)
                text.Append(k < p.Distances.Count ? string.Create(CultureInfo.InvariantCulture, $",{Quoted(p.Distances[k].Line)},{p.Distances[k].Distance.Millimeters:f2}") : ",,");
            text.Append('\n');
        }
        return text.ToString();

        static string Quoted(string s) => s.AsSpan().ContainsAny(",\"\r\n") ? $"\"{s.Replace("\"", "\"\"")}\"" : s;
    }

    /// <summary>The table as text: distances from the nearest lines, height, and errors, in millimeters.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"Enlarged {Factor:g6} times\n");
        text.Append("point           height mm   ±x mm   ±y mm   ±z mm   from line: mm\n");
        foreach (TransferredPoint p in Points)
        {
            text.Append(CultureInfo.InvariantCulture, $"{p.Name,-12} {p.At.Z.Millimeters,12:f1}{p.ErrorX.Millimeters,8:f1}{p.ErrorY.Millimeters,8:f1}{p.ErrorZ.Millimeters,8:f1}");
            foreach ((string line, Length distance) in p.Distances)
                text.Append(CultureInfo.InvariantCulture, $"   {line}: {distance.Millimeters:f1}");
            text.Append('\n');
        }
        return text.ToString();
    }
}
