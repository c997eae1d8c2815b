using StatueFrame.Mechanics;

namespace StatueFrame.Reporting;

/// <summary>
/// A drawing to scale, of lines and words alone: written as SVG for paper, with a border, a scale bar and the caution, or as
/// DXF in true size for the workshop.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
[TypeFormatterSource(typeof(PictureNotebook))]
public sealed record Drawing
{
    /// <summary>Words printed below every drawing.</summary>
    internal const string Caution = "For review by a licensed engineer; no permission to build, erect or let people in.";

    /// <summary>The scales of ISO 5455 (from memory), as 1 to the number.</summary>
    private static readonly int[] scales = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];

    /// <summary>What it shows.</summary>
    public required string Title { get; init; }

    /// <summary>What there is to see, for readers who cannot see it.</summary>
    public required string Description { get; init; }

    /// <summary>Its lines, in true size.</summary>
    public required ValueList<DrawnLine> Lines { get; init; }

    /// <summary>Its words.</summary>
    public ValueList<DrawnText> Texts { get; init; } = [];

    /// <summary>The largest of the standard scales, as 1 to this number, at which the drawing fits on an A3 sheet.</summary>
    public int Scale
    {
        get
        {
            (double width, double height) = Extent;
            const double Wide = 0.37, High = 0.24;
            return scales.FirstOrDefault(n => Fits(width, height, n) || Fits(height, width, n), scales[^1]);

            static bool Fits(double along, double across, int n) => along / n <= Wide && across / n <= High;
        }
    }

    /// <summary>Width and height in true size, m.</summary>
    private (double Width, double Height) Extent => (Most.X - Least.X, Most.Y - Least.Y);

    internal Vector3D Least => Points.Aggregate(Vector3D.Zero with { X = double.MaxValue, Y = double.MaxValue }, (a, p) => new Vector3D(Math.Min(a.X, p.X), Math.Min(a.Y, p.Y), 0));

    internal Vector3D Most => Points.Aggregate(Vector3D.Zero with { X = double.MinValue, Y = double.MinValue }, (a, p) => new Vector3D(Math.Max(a.X, p.X), Math.Max(a.Y, p.Y), 0));

    private IEnumerable<Vector3D> Points => Lines.SelectMany(line => line.Points).Concat(Texts.Select(text => text.At)).DefaultIfEmpty(Vector3D.Zero);

    /// <summary>The drawing as an SVG document in millimeters of paper.</summary>
    /// <param name="scale">1 to this number; null takes <see cref="Scale"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The scale is not from 1 to 10 000.</exception>
    public string ToSvg(int? scale = null)
    {
        int n = scale ?? Scale;
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 1, nameof(scale));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(n, 10_000, nameof(scale));
        return DrawingSvg.Of(this, n);
    }

    /// <summary>The drawing as a DXF file of release 12 in ASCII, in millimeters of true size, a layer for each kind of line.</summary>
    /// <remarks>Source: the DXF reference of the format's publisher, group codes of release 12, from memory.</remarks>
    public string ToDxf() => DrawingDxf.Of(this);

    /// <summary>The drawing for a calculation package.</summary>
    public Figure ToFigure() => new() { Title = Title, Description = Description, Svg = ToSvg() };

    /// <summary>Saves the drawing, as SVG or DXF by the end of the path.</summary>
    /// <param name="path">Ends in ".svg" or ".dxf"; an existing file is replaced whole.</param>
    /// <exception cref="ArgumentException">The path ends otherwise.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void Save(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        WholeFile.Write(path, Path.GetExtension(path).ToLowerInvariant() switch
        {
            ".svg" => ToSvg(),
            ".dxf" => ToDxf(),
            _ => throw new ArgumentException($"\"{path}\" ends in neither .svg nor .dxf.", nameof(path)),
        });
    }
}
