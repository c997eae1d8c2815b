using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using StatueFrame.Analysis;

namespace StatueFrame.Reporting.Tests;

/// <summary>The picture on the first page of the project is the elevation of the Heron as it is described now.</summary>
public class ReadmePictureTests
{
    [Fact]
    public void The_picture_shows_the_heron_as_it_is()
    {
        string examples = Path.Combine(Here(), "../../docs/examples/saltmere-heron.json"), kept = Path.Combine(Here(), "../../docs/pictures/saltmere-heron.svg");
        string svg = StatueDrawings.Elevation(StatueModel.Build(StatueFile.Load(examples).Statue), UnitsNet.Angle.FromDegrees(180)).ToFigure().Svg;
        if (Environment.GetEnvironmentVariable("STATUEFRAME_UPDATE") == "1")
            File.WriteAllText(kept, svg);
        Assert.True(Strokes(svg) > 1000);
        Assert.True(Strokes(svg) == Strokes(File.ReadAllText(kept)), "Run the tests once with STATUEFRAME_UPDATE=1.");
    }

    /// <summary>How many lines are drawn within paths of several; where they stand on the paper depends on the letters of the axes, and those on the machine's fonts.</summary>
    private static int Strokes(string svg) => Regex.Matches(svg, " d=\"([^\"]+)\"").Where(match => match.Value.Contains('M', StringComparison.Ordinal)).Sum(match => match.Groups[1].Value.Count(c => c is 'L' or 'H' or 'V'));

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
