using UnitsNet;

namespace StatueFrame.Tests.Actions.Cladding;

public class AsceWallPressureTests
{
    private const string Low = "ASCE/SEI 7-16, Figure 30.3-1", High = "ASCE/SEI 7-16, Figure 30.4-1";

    public static IEnumerable<PublishedValue> Rows =>
    [
        Value("GC_p of zone 5 on 10 ft², h to 60 ft", Low, -1.4, 10, Math.PI, 15, true), Value("GC_p of zone 5 on 500 ft², h to 60 ft", Low, -0.8, 500, Math.PI, 15, true),
        Value("GC_p of zone 4 on 10 ft², h to 60 ft", Low, -1.1, 10, Math.PI, 15, false), Value("GC_p inward on 10 ft², h to 60 ft", Low, 1.0, 10, 0, 15, true),
        Value("GC_p inward on 500 ft², h to 60 ft", Low, 0.7, 500, 0, 15, true),
        Value("GC_p of zone 5 on 20 ft², h above 60 ft", High, -1.8, 20, Math.PI, 30, true), Value("GC_p of zone 5 on 500 ft², h above 60 ft", High, -1.0, 500, Math.PI, 30, true),
        Value("GC_p of zone 4 on 20 ft², h above 60 ft", High, -0.9, 20, Math.PI, 30, false), Value("GC_p inward on 20 ft², h above 60 ft", High, 0.9, 20, 0, 30, false),
        Value("GC_p of zone 5 on 100 ft² (√(20·500)), h above 60 ft: half-way in the logarithm", High, -1.4, 100, Math.PI, 30, true),
    ];

    private static PublishedValue Value(string what, string source, double expected, double feet, double alpha, double height, bool edge) =>
        new(what, source, expected, "-", 1e-6, () => new AsceWallPressure { Height = Length.FromMeters(height), IsAtEdge = edge }.At(alpha, feet / 10.7639, 40), ValueKind.FromMemory);

    [Fact]
    public void Without_a_height_the_worse_figure_counts_and_nothing_lies_outside_of_its_ends()
    {
        foreach (double area in (double[])[0.1, 1, 5, 20, 100])
        {
            double either = new AsceWallPressure().At(3, area, 40);
            Assert.Equal(Math.Min(Of(15), Of(30)), either, 1e-12);
            Assert.InRange(either, -1.8, -1.0);

            double Of(double height) => new AsceWallPressure { Height = Length.FromMeters(height) }.At(3, area, 40);
        }
    }
}
