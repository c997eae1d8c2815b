using System.Text.RegularExpressions;
using ScottPlot;

namespace StatueFrame.Reporting;

/// <summary>
/// A picture of a statue or of a result: drawn anew each time it is asked for, as SVG or PNG, at any size. Made to be
/// read in print without color: kinds of line differ by weight and dash, points by their mark.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source of the drawing of axes: the ScottPlot library.</remarks>
[TypeFormatterSource(typeof(PictureNotebook))]
public sealed partial class Picture
{
    /// <summary>Least and greatest width and height.</summary>
    private const int Smallest = 200, Largest = 8000;

    private readonly Action<Plot> draw;

    internal Picture(string title, string description, Action<Plot> draw, int width = 800, int height = 600)
    {
        (Title, Description, this.draw) = (title, description, draw);
        (Width, Height) = (width, height);
    }

    /// <summary>What it shows.</summary>
    public string Title { get; }

    /// <summary>What there is to see, for readers who cannot see it.</summary>
    public string Description { get; }

    /// <summary>The width it is drawn with unless another is asked for, in pixels.</summary>
    public int Width { get; }

    /// <summary>The height it is drawn with unless another is asked for, in pixels.</summary>
    public int Height { get; }

    /// <summary>The picture as an SVG document.</summary>
    /// <param name="width">Width in pixels, 200 to 8000; null for <see cref="Width"/>.</param>
    /// <param name="height">Height in pixels, 200 to 8000; null for <see cref="Height"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size is out of range.</exception>
    public string ToSvg(int? width = null, int? height = null)
    {
        (int w, int h) = SizeOf(width, height);
        return WithOwnNumbers(Drawn().GetSvgXml(w, h));
    }

    /// <summary>The same document with its clips numbered from 1: the drawing library counts them over all that the process has drawn.</summary>
    private static string WithOwnNumbers(string svg)
    {
        var numbers = new Dictionary<string, int>();
        return Clip().Replace(svg, match =>
        {
            string known = match.Groups[2].Value;
            if (!numbers.TryGetValue(known, out int number))
                numbers[known] = number = numbers.Count + 1;
            return FormattableString.Invariant($"{match.Groups[1].Value}cl_{number}");
        });
    }

    [GeneratedRegex("(id=\"|url\\(#)cl_([0-9a-f]+)")]
    private static partial Regex Clip();

    /// <summary>The picture as a PNG image.</summary>
    /// <param name="width">Width in pixels, 200 to 8000; null for <see cref="Width"/>.</param>
    /// <param name="height">Height in pixels, 200 to 8000; null for <see cref="Height"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size is out of range.</exception>
    public byte[] ToPng(int? width = null, int? height = null)
    {
        (int w, int h) = SizeOf(width, height);
        return Drawn().GetImageBytes(w, h, ImageFormat.Png);
    }

    /// <summary>Saves the picture, as SVG or PNG by the end of the path.</summary>
    /// <param name="path">Ends in ".svg" or ".png"; an existing file is replaced.</param>
    /// <exception cref="ArgumentException">The path ends otherwise.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void Save(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        switch (Path.GetExtension(path).ToLowerInvariant())
        {
            case ".svg":
                WholeFile.Write(path, ToSvg());
                break;
            case ".png":
                WholeFile.Write(path, ToPng());
                break;
            default:
                throw new ArgumentException($"\"{path}\" ends in neither .svg nor .png.", nameof(path));
        }
    }

    /// <summary>The picture for a calculation package.</summary>
    /// <param name="section">Where it stands.</param>
    public Figure ToFigure(PackageSection section = PackageSection.Statue) => new() { Title = Title, Description = Description, Svg = ToSvg(), Section = section };

    private (int Width, int Height) SizeOf(int? width, int? height)
    {
        (int w, int h) = (width ?? Width, height ?? Height);
        ArgumentOutOfRangeException.ThrowIfLessThan(w, Smallest, nameof(width));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(w, Largest, nameof(width));
        ArgumentOutOfRangeException.ThrowIfLessThan(h, Smallest, nameof(height));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(h, Largest, nameof(height));
        return (w, h);
    }

    private Plot Drawn()
    {
        Plot plot = Pen.NewPlot(Title);
        draw(plot);
        return plot;
    }
}
