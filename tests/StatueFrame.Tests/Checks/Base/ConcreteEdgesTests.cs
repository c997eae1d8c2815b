using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Base;

/// <summary>Edges, backs and sides of concrete blocks beside headed bars.</summary>
public class ConcreteEdgesTests
{
    private const double Inch = 0.0254, Pound = 4.4482216152605, Psi = Pound / (Inch * Inch);

    private static readonly BlockSection wide = BlockSection.Rectangle(40.Meters, 40.Meters);
    private static readonly BaseDesign european = new() { GammaMc = 1 }, american = new() { Code = BaseCode.American, PhiConcrete = 1 };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("edge in shear V⁰_Rk,c, d 24 mm, h_ef 200 mm, c₁ 150 mm, C25, cracked", "EN 1992-4:2018, (7.41): 1.7 d^α l_f^β √f_ck c₁^1.5, from memory", 1.7 * Math.Pow(24, 0.1 * Math.Sqrt(200.0 / 150)) * Math.Pow(200, 0.1 * Math.Pow(24.0 / 150, 0.2)) * 5 * Math.Pow(150, 1.5) * 1e-3, "kN", 1e-9,
            () => Edge([At(19.85, 0, 24, 200)], wide, european).Capacity!.Value * 1e-3, ValueKind.FromMemory),
        new("edge in shear V_b, d 1 in, h_ef 12 in, c_a1 10 in, f′c 4000 psi", "ACI 318-19, (17.7.2.2.1): 7 (l_e/d)^0.2 √d √f′c c^1.5 = 7 · 8^0.2 · √4000 · 10^1.5, at most 9 √4000 10^1.5, from memory", 9 * Math.Sqrt(4000) * Math.Pow(10, 1.5), "lb", 1e-9,
            () => Edge([At(20 - 10 * Inch, 0, 25.4, 304.8)], wide, american, 4000 * Psi).Capacity!.Value / Pound, ValueKind.FromMemory),
        new("blow-out N⁰_Rk,cb, c₁ 80 mm, head 100 mm on a bar of 40 mm, C30, cracked", "EN 1992-4:2018, (7.26): 8.7 c₁ √A_h √f_ck, from memory", 8.7 * 80 * Math.Sqrt(100 * 100 - Math.PI / 4 * 1600) * Math.Sqrt(30) * 1e-3, "kN", 1e-9,
            () => Side([At(19.92, 0, 40, 1000, 100)], european).Capacity!.Value * 1e-3, ValueKind.FromMemory),
        new("blow-out N_sb, c_a1 3 in, A_brg 4 in², f′c 4000 psi", "ACI 318-19, (17.6.4.1): 160 c √A_brg √f′c, from memory", 160 * 3 * 2 * Math.Sqrt(4000), "lb", 1e-9,
            () => Side([At(20 - 3 * Inch, 0, 25.4, 1000, 1e3 * Math.Sqrt(4 + Math.PI / 4) * Inch)], american, 4000 * Psi).Capacity!.Value / Pound, ValueKind.FromMemory),
        new("pry-out over the cone of one bar set deep", "EN 1992-4:2018, (7.39): k₈ = 2, from memory", 2, "-", 1e-9,
            () => ConcreteEdges.PryOut([At(0, 0, 24, 200)], [1], wide, C(25e6), european).Capacity!.Value / new ConcreteBreakout(wide, [(0, 0, 1)], 0.2).Eurocode(null, 25e6, true, 1), ValueKind.FromMemory),
    ];

    [Fact]
    public void Bars_far_apart_break_an_edge_as_one_each_and_near_ones_share()
    {
        double one = Edge([At(19.5, 0, 30, 400)], wide, european).Capacity!.Value;
        Assert.Equal(2 * one, Edge([At(19.5, 0, 30, 400), At(19.5, 1.5, 30, 400)], wide, european).Capacity!.Value, 1e-9 * one);
        Assert.Equal(1.5 * one, Edge([At(19.5, 0, 30, 400), At(19.5, 0.75, 30, 400)], wide, european).Capacity!.Value, 1e-9 * one);
        // A row behind does not help: the bars nearest to the edge take all.
        Assert.Equal(one, Edge([At(19.5, 0, 30, 400), At(19.0, 0, 30, 400)], wide, european).Capacity!.Value, 1e-9 * one);
        Assert.Equal(3, Edge([At(19.5, 0, 30, 400), At(19.0, 0, 30, 400)], wide, european, shears: [1, 2]).Demand);
    }

    /// <summary>Of bars that differ, the least diameter and the least embedment count.</summary>
    [Fact]
    public void A_thick_short_bar_beside_a_thin_long_one_breaks_the_edge_sooner()
    {
        foreach (BaseDesign design in (BaseDesign[])[european, american])
        {
            double mixed = Edge([At(19.5, 0, 30, 150), At(19.5, 1.5, 20, 400)], wide, design).Capacity!.Value;
            Assert.Equal(Edge([At(19.5, 0, 20, 150), At(19.5, 1.5, 20, 150)], wide, design).Capacity!.Value, mixed, 1e-9 * mixed);
        }
    }

    [Fact]
    public void A_bar_outside_the_block_has_no_edge() =>
        Assert.Equal(Verdict.Fail, Edge([At(20.1, 0, 30, 400)], wide, european).Verdict);

    /// <summary>
    /// Bars of 48 mm at 0.4 m, tightened: 6·48/400 = 0.72. A head of 100 mm under 500 kN, 0.15 m from an edge, in C25 (f_ctm 2.565 MPa):
    /// ¼(1 − 0.1/0.3)·500 kN over 0.3² m² at 0.8·0.7·2.565/1.5 MPa; weakening never helps.
    /// </summary>
    [Fact]
    public void Splitting_by_hand()
    {
        AnchorBar Tight(double x, double y, double kN) => At(x, y, 48, 2000, 100) with { PreTension = UnitsNet.Force.FromKilonewtons(kN) };
        Assert.Equal(0.72, ConcreteEdges.Splitting([Tight(0, 0, 1), Tight(0.4, 0, 1)], [1, 1], wide, C(25e6)).Demand!.Value, 1e-9);
        Assert.Equal(0.48, ConcreteEdges.Splitting([Tight(0, 0, 0), Tight(0.4, 0, 0)], [1, 1], wide, C(25e6)).Demand!.Value, 1e-9);
        double f_ctm = 0.3 * Math.Pow(25, 2.0 / 3) * 1e6, tension = 0.25 * (1 - 0.1 / 0.3) * 500e3 / (0.8 * 0.7 * f_ctm / C(25e6).PartialFactor * 0.09);
        Assert.Equal(tension, ConcreteEdges.Splitting([At(19.85, 0, 10, 2000, 100)], [500e3], wide, C(25e6)).Demand!.Value, 1e-6 * tension);
        Assert.True(ConcreteEdges.Splitting([At(19.9, 0, 10, 2000, 100)], [500e3], wide, C(25e6)).Demand > tension);
        Assert.True(ConcreteEdges.Splitting([At(19.85, 0, 10, 2000, 50)], [500e3], wide, C(25e6)).Demand > tension);
    }

    [Fact]
    public void Heads_far_from_an_edge_blow_nothing_out()
    {
        Assert.Null(ConcreteEdges.BlowOut(0, [At(18, 0, 30, 1000, 100)], 1.Kilonewtons, wide, C(30e6), european));
        Assert.Null(ConcreteEdges.BlowOut(0, [At(19.95, 0, 30, 1000)], 1.Kilonewtons, wide, C(30e6), european));
    }

    /// <summary>Nearer to an edge or a corner, in weaker concrete, beside more bars: never stronger.</summary>
    [Fact]
    public void Weakening_never_helps() => Gen.Select(Gen.Double[19, 19.9], Gen.Double[0, 19.9], Gen.Double[15, 60], Gen.Double[0.01, 0.3]).Sample((x, y, f, step) =>
    {
        foreach (BaseDesign design in (BaseDesign[])[european, american])
        {
            AnchorBar bar = At(x, y, 30, 3000, 80), nearer = At(Math.Min(19.95, x + step), y, 30, 3000, 80);
            double edge = Edge([bar], wide, design, 1e6 * f).Capacity!.Value, side = Side([bar], design, 1e6 * f).Capacity!.Value;
            Assert.True(Edge([nearer], wide, design, 1e6 * f).Capacity!.Value <= edge * (1 + 1e-9));
            Assert.True(Side([nearer], design, 1e6 * f).Capacity!.Value <= side * (1 + 1e-9));
            Assert.True(Edge([bar], wide, design, 0.9e6 * f).Capacity!.Value < edge);
            Assert.True(Side([bar], design, 0.9e6 * f).Capacity!.Value < side);
            Assert.True(Side([bar, At(x, y - step, 30, 3000, 80)], design, 1e6 * f).Capacity!.Value <= side * (1 + 1e-9));
        }
    });

    private static Concrete C(double f) => Concrete.OfStrength(Pressure.FromPascals(f));

    /// <summary>A bar by its place, m, diameter, embedment and head, mm.</summary>
    private static AnchorBar At(double x, double y, double d, double h, double head = 0) => new()
    {
        X = x.Meters,
        Y = y.Meters,
        Diameter = d.Millimeters,
        Material = StructuralSteel.S355,
        FreeLength = 1.Meters,
        Embedment = h.Millimeters,
        HeadWidth = head > 0 ? head.Millimeters : null,
    };

    private static Check Edge(AnchorBar[] bars, BlockSection block, BaseDesign design, double f = 25e6, double[]? shears = null) =>
        ConcreteEdges.EdgeShear(bars, shears ?? Array.ConvertAll(bars, _ => 1.0), block, C(f), 100.Meters, design);

    private static Check Side(AnchorBar[] bars, BaseDesign design, double f = 30e6) => ConcreteEdges.BlowOut(0, bars, 1.Kilonewtons, wide, C(f), design)!;
}
