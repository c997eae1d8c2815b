using System.Runtime.CompilerServices;
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
        Assert.True(File.ReadAllText(kept) == svg, "Run the tests once with STATUEFRAME_UPDATE=1.");
    }

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
