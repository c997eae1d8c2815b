using CsCheck;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Base;

public class ConcreteBreakoutTests
{
    private const double Inch = 0.0254, Pound = 4.4482216152605, Psi = Pound / (Inch * Inch);
    private const string Guide86 = "Design guide for concrete breakout using ACI 318 anchoring provisions, October 2025, p. 86 (16 anchors, k_c = 21, f′c 4000 psi, h_ef 5.75 in, edge 8 in)";
    private const string Guide73 = "Design guide for concrete breakout using ACI 318 anchoring provisions, October 2025, p. 73 (16 anchors, k_c = 17, f′c 4500 psi, h_ef 12 in, edge 6 in)";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("projected area A_Nc of a group near one edge", Guide86, 1532.16, "in²", 1e-4, () => Group(5.75, 8, 6, 6, 6).ProjectedArea(5.75 * Inch) / (Inch * Inch)),
        new("cone strength N_cbg of a group near one edge", Guide86, 92_221, "lb", 1e-3, () => Group(5.75, 8, 6, 6, 6).American(null, 4000 * Psi, true, 21) / Pound),
        new("projected area A_Nc of a group near one edge", Guide73, 3024, "in²", 1e-4, () => Group(12, 6, 8, 8, 8).ProjectedArea(12 * Inch) / (Inch * Inch)),
        new("cone strength N_cbg of a group near one edge", Guide73, 88_489, "lb", 1e-3, () => Group(12, 6, 8, 8, 8).American(null, 4500 * Psi, true, 17) / Pound),
        new("cone of one anchor far from edges", Guide86 + ", N_b", 18_313, "lb", 1e-3, () => Single(5.75 * Inch).American(null, 4000 * Psi, true, 21) / Pound),
        new("cone of one anchor far from edges", Guide73 + ", N_b", 47_405, "lb", 1e-3, () => Single(12 * Inch).American(null, 4500 * Psi, true, 17) / Pound),
        new("cone N⁰_Rk,c of a headed bar, C20, h_ef 200 mm, cracked", "EN 1992-4:2018, (7.2): 8.9 √20 200^1.5 N, from memory", 8.9 * Math.Sqrt(20) * Math.Pow(200, 1.5) * 1e-3, "kN", 1e-9, () => Single(0.2).Eurocode(null, 20e6, true, 1) * 1e-3, ValueKind.FromMemory),
        new("cone of two bars s = 1.5 h_ef apart over that of one", "EN 1992-4:2018, 7.2.1.4, by hand: A_c,N = 3h × 4.5h", 1.5, "-", 1e-9, () => Pair(0.3).Eurocode(null, 20e6, true, 1) / Single(0.2).Eurocode(null, 20e6, true, 1), ValueKind.IndependentComputation),
        new("effective embedment, two anchors s = 9 in, edges of 4, 4 and 6 in, the fourth far, h_ef = 5.5 in", "ACI 318-19, R17.6.2.1.2, example of the figure, from memory: the greater of 6/1.5 and 9/3", 4, "in", 1e-9, () => Trough(24).EffectiveEmbedment / Inch, ValueKind.FromMemory),
        new("cone of one headed bar cast in, h_ef 20 in, f′c 4000 psi", "ACI 318-19, (17.6.2.2.3): N_b = 16 λ √f′c h_ef^(5/3), from memory, by hand", 149_119, "lb", 1e-3, () => Single(20 * Inch).American(null, 4000 * Psi, true) / Pound, ValueKind.FromMemory),
    ];

    /// <summary>Two anchors across the end of a strip of concrete; the other end is so far from them.</summary>
    private static ConcreteBreakout Trough(double far) =>
        new(BlockSection.Rectangle(Length.FromInches(17), Length.FromInches(6 + far)), [(-4.5 * Inch, (3 - far / 2) * Inch, 1), (4.5 * Inch, (3 - far / 2) * Inch, 1)], 5.5 * Inch);

    [Fact]
    public void Two_near_edges_leave_the_cone_its_depth() =>
        Assert.Equal(5.5 * Inch, new ConcreteBreakout(BlockSection.Rectangle(Length.FromInches(60), Length.FromInches(30)), [(-25 * Inch, -9 * Inch, 1), (-16 * Inch, -9 * Inch, 1)], 5.5 * Inch).EffectiveEmbedment, 1e-12);

    private static ConcreteBreakout Single(double h) => new(BlockSection.Rectangle(50.Meters, 50.Meters), [(0, 0, 1)], h);

    private static ConcreteBreakout Pair(double s) => new(BlockSection.Rectangle(50.Meters, 50.Meters), [(0, 0, 1), (s, 0, 1)], 0.2);

    /// <summary>Four columns 9 in apart, four rows, the lowest near the edge at −y.</summary>
    private static ConcreteBreakout Group(double h, double edge, params double[] rows)
    {
        var bars = new List<(double, double, double)>();
        double y = -25 + edge * Inch;
        for (int row = 0; row < 4; row++)
        {
            for (int column = 0; column < 4; column++)
                bars.Add((9 * Inch * column, y, 1));
            y += row < 3 ? rows[row] * Inch : 0;
        }
        return new ConcreteBreakout(BlockSection.Rectangle(50.Meters, 50.Meters), [.. bars], h * Inch);
    }

    private static readonly Gen<(double X, double Y, double Force)[]> groups =
        Gen.Select(Gen.Double[-0.8, 0.8], Gen.Double[-0.8, 0.8], Gen.Double[1, 100]).Array[1, 6];

    [Fact]
    public void Projected_area_is_that_counted_on_a_grid() => Gen.Select(groups, Gen.Double[0.1, 0.8], Gen.Bool).Sample((bars, h, round) =>
    {
        BlockSection block = round ? BlockSection.Round(2.4.Meters) : BlockSection.Rectangle(2.Meters, 1.8.Meters);
        const int count = 250;
        double covered = 0, side = 2.4 / count;
        for (int i = 0; i < count * count; i++)
        {
            double x = -1.2 + (i % count + 0.5) * side, y = -1.2 + (i / count + 0.5) * side;
            if (Array.Exists(bars, b => Math.Abs(b.X - x) <= 1.5 * h && Math.Abs(b.Y - y) <= 1.5 * h) && (round ? x * x + y * y <= 1.44 : Math.Abs(x) <= 1 && Math.Abs(y) <= 0.9))
                covered += side * side;
        }
        Assert.Equal(covered, new ConcreteBreakout(block, bars, h).ProjectedArea(h), 0.02 * covered + 0.01);
    }, iter: 15);

    [Fact]
    public void Group_is_never_stronger_than_its_bars_alone() => Gen.Select(groups, Gen.Double[0.1, 0.5]).Sample((bars, h) =>
    {
        BlockSection block = BlockSection.Rectangle(20.Meters, 20.Meters);
        double alone = bars.Length * Single(h).Eurocode(null, 30e6, true, 1.5), together = new ConcreteBreakout(block, bars, h).Eurocode(null, 30e6, true, 1.5);
        Assert.True(together <= alone * (1 + 1e-9));
    });

    [Fact]
    public void Narrow_pier_does_not_gain_from_deeper_bars()
    {
        (double, double, double)[] bars = [(0.3, 0.3, 1), (-0.3, 0.3, 1), (0.3, -0.3, 1), (-0.3, -0.3, 1)];
        BlockSection pier = BlockSection.Rectangle(1.Meters, 1.Meters);
        double shallow = new ConcreteBreakout(pier, bars, 0.8).Eurocode(null, 30e6, true, 1.5), deep = new ConcreteBreakout(pier, bars, 2).Eurocode(null, 30e6, true, 1.5);
        Assert.Equal(shallow, deep, 1e-9 * deep);
    }
}
