using StatueFrame.Analysis;

namespace StatueFrame.Tests.Analyses;

/// <summary>
/// A 30 m statue with ten rings and bands, with twenty, and with forty. Each ring stands at the middle of its
/// band on a tapering tube; bars per height stay the same, since there are twice the rings of half the bars. (A lattice
/// would not stay the same: its plans are rigid at levels, and its horizontals are members between them.)
/// </summary>
public class RefinementTests
{
    private static StatueModel Tall(int levels)
    {
        double step = 30.0 / levels;
        double[] heights = [0, .. Enumerable.Range(0, levels).Select(i => (i + 0.5) * step), 30];
        Tube Tube(double z) => new((1.5 - 0.03 * z).Meters, (16 - 0.2 * z).Millimeters);
        SkinStation Station(double z, double a, double b) => new() { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = a.Meters, WidthY = b.Meters } };
        return StatueModel.Build(new Statue
        {
            Name = "tall",
            Tower = new Tower
            {
                Levels = [.. heights.Select((z, i) => new TowerLevel($"L{i}", z.Meters))],
                Segments = [.. heights.Zip(heights.Skip(1), (low, high) => new MemberSegment { Section = Tube(low), TopSection = Tube(high), Material = StructuralSteel.S355 })],
            },
            Skin = new Skin
            {
                Material = Copper.HalfHardR240,
                Thickness = 2.4.Millimeters,
                ArmatureMass = 9.KilogramsPerSquareMeter,
                FoldFactor = 1.2,
                Stations = [Station(0, 5.4, 5.2), Station(12, 6.4, 5.2), Station(21, 5, 4.2), Station(30, 3, 2.6)],
                BandEdges = [.. Enumerable.Range(0, levels + 1).Select(i => (i * step).Meters)],
            },
            Standoffs = [.. Enumerable.Range(0, levels).Select(i => new EvenRing
            {
                Level = $"L{i + 1}", Band = i + 1, Count = 320 / levels, FirstAngle = 3.Degrees, Lay = 45.Degrees, Length = 0.9.Meters,
                Standoff = new Standoff { Section = new FlatBar(60.Millimeters, 10.Millimeters), Material = StainlessSteel.Grade316L, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid },
            })],
            Points = [new NamedPoint("top", $"L{levels + 1}")],
        });
    }

    [Fact]
    public void Sway_and_lowest_frequencies_settle_as_levels_and_bands_are_doubled()
    {
        Situation wind = new() { Name = "wind", Actions = [new SelfWeight(), new SampleStatue().Wind(0.3)] };
        double[][] results = [.. new[] { 10, 20, 40 }.Select(Tall).Select(model => (double[])
            [model.Respond(wind).Cases[0].Of("top").Sway.Meters, .. model.Modes(3).Modes.Select(m => m.Frequency.Hertz)])];
        for (int i = 0; i < 4; i++)
        {
            double first = Math.Abs(results[1][i] / results[0][i] - 1), second = Math.Abs(results[2][i] / results[1][i] - 1);
            Assert.InRange(second, 0, 0.01);
            Assert.True(second < first);
        }
    }
}
