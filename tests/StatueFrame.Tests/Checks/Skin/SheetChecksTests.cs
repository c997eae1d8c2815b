using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Sheets;

public class SheetChecksTests
{
    private const string Plates = "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.";

    private const string Roark = "Roark's Formulas for Stress and Strain, 7th ed., Table 11.4, case 1a, ν = 0.3";

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. new[] { (1, 0.2874, 0.0444), (1.2, 0.3762, 0.0616), (1.4, 0.4530, 0.0770), (1.6, 0.5172, 0.0906), (1.8, 0.5688, 0.1017), (2, 0.6102, 0.1110), (3, 0.7134, 0.1335), (4, 0.7410, 0.1400), (5, 0.7476, 0.1417) }
            .SelectMany(r => new PublishedValue[]
            {
                new($"stress of a supported plate 1:{r.Item1}, β", Roark, r.Item2, "-", 1e-3, () => 6 * PlateBending.Of(r.Item1, 0.3, PanelEdges.Supported).MiddleShort),
                new($"deflection of a supported plate 1:{r.Item1}, α", Roark, r.Item3, "-", 5e-3, () => 12 * 0.91 * PlateBending.Of(r.Item1, 0.3, PanelEdges.Supported).Deflection),
            }),
        new("deflection of a clamped square plate", "NAFEMS LE5 after Timoshenko and Woinowsky-Krieger, second hand", 0.00126, "q a⁴/D", 5e-3, () => PlateBending.Of(1, 0.3, PanelEdges.Clamped).Deflection),
        .. Supported(1.0, 0.00406, 0.0479, 0.0479),
        .. Supported(1.5, 0.00772, 0.0812, 0.0498),
        .. Supported(2.0, 0.01013, 0.1017, 0.0464),
        .. Supported(3.0, 0.01223, 0.1189, 0.0406),
        .. Clamped(1.0, 0.00126, 0.0513, 0.0231),
        .. Clamped(1.5, 0.00220, 0.0757, 0.0368),
        .. Clamped(2.0, 0.00254, 0.0829, 0.0412),
        new("frequency factor, square, clamped", "Leissa, Vibration of Plates, NASA SP-160, Table C-C-C-C", 35.992, "-", 5e-4, () => PlateBending.Of(1, 0.3, PanelEdges.Clamped).Frequency, ValueKind.FromMemory),
        new("frequency factor, square, supported", "Leissa, Vibration of Plates, NASA SP-160, (4.20)", 19.739, "-", 1e-4, () => PlateBending.Of(1, 0.3, PanelEdges.Supported).Frequency, ValueKind.FromMemory),
        new("k of a clamped long plate in compression across its ends", "Timoshenko and Gere, Theory of Elastic Stability, 9.4", 6.97, "-", 1e-9, () => BucklingFactor(PanelEdges.Clamped), ValueKind.FromMemory),
    ];

    [Fact]
    public void A_long_plate_is_a_strip()
    {
        PlateBending supported = PlateBending.Of(6, 0.3, PanelEdges.Supported), clamped = PlateBending.Of(6, 0.3, PanelEdges.Clamped);
        Assert.Equal(5.0 / 384, supported.Deflection, 1e-4);
        Assert.Equal(1.0 / 8, supported.MiddleShort, 1e-3);
        Assert.Equal(1.0 / 384, clamped.Deflection, 2e-5);
        Assert.Equal(1.0 / 12, clamped.LongEdge, 2e-4);
        Assert.Equal(1.0 / 24, clamped.MiddleShort, 2e-4);
    }

    [Fact]
    public void Sides_may_be_named_either_way() =>
        Gen.Select(Side, Side, Pressures).Sample((a, b, q) => Math.Abs(Stress(Panel(a, b, 2), q) / Stress(Panel(b, a, 2), q) - 1) < 1e-12, iter: 10);

    [Fact]
    public void Stress_and_deflection_grow_with_pressure_and_fall_with_thickness() =>
        Gen.Select(Side, Side, Gen.Double[1, 4], Pressures, Gen.Int[0, 1]).Sample((a, b, t, q, edges) =>
        {
            SheetPanel panel = Panel(a, b, t) with { Edges = (PanelEdges)edges };
            return Stress(panel, 1.1 * q) > Stress(panel, q) && Deflect(panel, 1.1 * q) > Deflect(panel, q) && Deflect(panel with { Thickness = (1.1 * t).Millimeters }, q) < Deflect(panel, q);
        }, iter: 20);

    [Fact]
    public void A_small_load_deflects_as_small_deflection_theory_says() =>
        Gen.Select(Side, Side, Gen.Int[0, 1]).Sample((a, b, edges) =>
        {
            SheetPanel panel = Panel(a, b, 3) with { Edges = (PanelEdges)edges };
            double q = 1e-3 * panel.D * panel.t / Math.Pow(panel.Short, 4);
            double over = SheetChecks.FlatDeflection(null, panel, q) / (panel.Bending.Deflection * q * Math.Pow(panel.Short, 4) / panel.D) - 1;
            return over > -1e-5 && over < (edges == (int)PanelEdges.Clamped && panel.Long > 3 * panel.Short ? 3e-3 : 1e-5);
        }, iter: 15);

    [Fact]
    public void Holding_the_edges_never_lets_a_panel_deflect_more() =>
        Gen.Select(Side, Side, Pressures).Sample((a, b, q) => Deflect(Panel(a, b, 2) with { EdgesHeldInPlane = true }, q) <= Deflect(Panel(a, b, 2), q), iter: 10);

    [Fact]
    public void A_held_curved_sheet_carries_suction_as_a_membrane()
    {
        SheetPanel curved = Panel(0.6, 0.5, 2.4) with { Radius = 1.5.Meters, EdgesHeldInPlane = true };
        Check check = SheetChecks.PanelBending(curved, Pressure.Zero, Pressure.FromKilopascals(4), 1);
        Assert.Equal(4000 * 1.5 / 0.0024, check.Demand!.Value, 1);
        Assert.True(Stress(curved with { Radius = 1e4.Meters }, 4000) <= Stress(curved with { Radius = null }, 4000) * (1 + 1e-9));
    }

    [Fact]
    public void A_panel_that_carries_more_dents_less() =>
        Gen.Select(Gen.Double[0.2, 1], Gen.Double[1, 4], Gen.Double[200, 3000]).Sample((b, t, load) =>
        {
            double Dent(double thickness, double P) => SheetChecks.Denting(Panel(b, b, thickness), Force.FromNewtons(P), 50.Millimeters, 3.Millimeters).Demand!.Value;
            return Dent(t, load) >= Dent(1.1 * t, load) && Dent(t, 1.1 * load) >= Dent(t, load);
        });

    [Fact]
    public void Curvature_stiffens()
    {
        SheetPanel flat = Panel(0.6, 0.5, 2.4);
        Assert.True(SheetChecks.NaturalFrequency(flat with { Radius = 1.Meters }) > SheetChecks.NaturalFrequency(flat));
        Assert.Equal(SheetChecks.NaturalFrequency(flat).Hertz, SheetChecks.NaturalFrequency(flat with { Radius = 1e4.Meters }).Hertz, 0.01);
        Assert.True(SheetChecks.Buckling(flat with { Radius = 1.Meters }, 1.Meters, 2).Capacity > SheetChecks.Buckling(flat, 1.Meters, 2).Capacity);
    }

    [Fact]
    public void A_continuous_bar_is_stressed_less_than_a_simple_one()
    {
        Armature simple = Bars with { IsContinuous = false };
        Assert.Equal(1.25, ArmatureChecks.Bending(simple, Pressure.FromKilopascals(2), Pressure.Zero, 0.6).Demand!.Value / ArmatureChecks.Bending(Bars, Pressure.FromKilopascals(2), Pressure.Zero, 0.6).Demand!.Value, 1e-9);
        Assert.Equal(5.0 / 384 / 0.0069, ArmatureChecks.Deflection(simple, Pressure.FromKilopascals(2)).Demand!.Value / ArmatureChecks.Deflection(Bars, Pressure.FromKilopascals(2)).Demand!.Value, 1e-9);
    }

    [Fact]
    public void Bad_panels_are_refused()
    {
        InvalidStatueException e = Assert.Throws<InvalidStatueException>(() => SheetChecks.Sag(Panel(0, 0.5, 2) with { Thickness = 2.Meters }, 0.01));
        Assert.Equal(2, e.Problems.Count);
        Assert.Throws<ArgumentOutOfRangeException>(() => SheetChecks.PanelBending(Panel(0.5, 0.5, 2), Pressure.FromPascals(-1), Pressure.Zero, 1));
    }

    [Fact]
    public void Every_check_can_show_its_working()
    {
        SheetPanel panel = Panel(0.6, 0.5, 2.4) with { Radius = 1.5.Meters, EdgesHeldInPlane = true, Edges = PanelEdges.Clamped };
        Check[] checks =
        [
            SheetChecks.PanelBending(panel, Pressure.FromKilopascals(2), Pressure.FromKilopascals(3), 0.6), SheetChecks.PanelDeflection(panel, Pressure.FromKilopascals(2), Pressure.FromKilopascals(3), 0.02),
            SheetChecks.Denting(panel, Force.FromKilonewtons(1.5), 50.Millimeters, 3.Millimeters), SheetChecks.Sag(panel, 0.01), SheetChecks.PanelFrequency(panel, Frequency.FromHertz(5)), SheetChecks.Buckling(panel, 1.Meters, 2),
            ArmatureChecks.Bending(Bars, Pressure.FromKilopascals(2), Pressure.FromPascals(200), 0.6), ArmatureChecks.Deflection(Bars, Pressure.FromKilopascals(2)),
        ];
        Assert.All(checks, c => Assert.True(c.Working().Lines.Count > 4));
    }

    private static Gen<double> Side => Gen.Double[0.1, 1.5];

    private static Gen<double> Pressures => Gen.Double[50, 8000];

    private static Armature Bars => new()
    {
        Bar = new FlatBar(40.Millimeters, 10.Millimeters),
        Material = StainlessSteel.Grade316L,
        Spacing = 0.5.Meters,
        PanelLength = 0.6.Meters,
        Span = 0.6.Meters,
    };

    private static SheetPanel Panel(double a, double b, double t) => new() { Length = a.Meters, Width = b.Meters, Thickness = t.Millimeters, Material = Copper.HalfHardR240 };

    private static double Stress(SheetPanel panel, double q) => SheetChecks.PanelBending(panel, Pressure.FromPascals(q), Pressure.Zero, 1).Demand!.Value;

    private static double Deflect(SheetPanel panel, double q) => SheetChecks.PanelDeflection(panel, Pressure.FromPascals(q), Pressure.Zero, 0.1).Demand!.Value;

    private static PublishedValue[] Supported(double ratio, double w, double m_x, double m_y) =>
    [
        new($"deflection of a supported plate 1:{ratio}", $"{Plates}, Table 8", w, "q b⁴/D", 3e-3, () => PlateBending.Of(ratio, 0.3, PanelEdges.Supported).Deflection, ValueKind.FromMemory),
        new($"moment the shorter way of a supported plate 1:{ratio}", $"{Plates}, Table 8", m_x, "q b²", 3e-3, () => PlateBending.Of(ratio, 0.3, PanelEdges.Supported).MiddleShort, ValueKind.FromMemory),
        new($"moment the longer way of a supported plate 1:{ratio}", $"{Plates}, Table 8", m_y, "q b²", 3e-3, () => PlateBending.Of(ratio, 0.3, PanelEdges.Supported).MiddleLong, ValueKind.FromMemory),
    ];

    private static PublishedValue[] Clamped(double ratio, double w, double edge, double middle) =>
    [
        new($"deflection of a clamped plate 1:{ratio}", $"{Plates}, Table 35", w, "q b⁴/D", 6e-3, () => PlateBending.Of(ratio, 0.3, PanelEdges.Clamped).Deflection, ValueKind.FromMemory),
        new($"edge moment of a clamped plate 1:{ratio}", $"{Plates}, Table 35", edge, "q b²", 3e-3, () => PlateBending.Of(ratio, 0.3, PanelEdges.Clamped).LongEdge, ValueKind.FromMemory),
        new($"middle moment of a clamped plate 1:{ratio}", $"{Plates}, Table 35", middle, "q b²", 1e-2, () => PlateBending.Of(ratio, 0.3, PanelEdges.Clamped).MiddleShort, ValueKind.FromMemory),
    ];

    private static double BucklingFactor(PanelEdges edges)
    {
        SheetPanel panel = Panel(0.6, 0.5, 2) with { Edges = edges };
        return SheetChecks.Buckling(panel, 1.Meters, 1).Capacity!.Value / (Math.PI * Math.PI * panel.E / (12 * (1 - panel.nu * panel.nu)) * Math.Pow(panel.t / 0.5, 2));
    }
}
