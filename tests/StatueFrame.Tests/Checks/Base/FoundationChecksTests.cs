using CsCheck;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Base;

public class FoundationChecksTests
{
    private const string Sheet = "calculation sheet, bearing resistance to EN 1997-1 Annex D, second hand: B 1 m, L 6 m, V 200 kN, H 60 and 30 kN, M 30 and 88 kN·m, γ 10 kN/m³, depth 0.75 m";
    private const string Gazetas = "Gazetas 1991 and Mylonakis et al. 2006, square footing, from memory";

    private static readonly Angle phi30 = 30.Degrees;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("drained bearing resistance, φ′ = 30°, eccentric and inclined", Sheet, 95, "kPa", 6e-3, () => BearingResistance.Drained(phi30, Pressure.Zero, 7.5.Kilopascals, SpecificWeight.FromKilonewtonsPerCubicMeter(10), 0.7.Meters, 5.12.Meters, 200.Kilonewtons, 60.Kilonewtons, 30.Kilonewtons).Kilopascals),
        new("undrained bearing resistance of a vertically loaded square, c_u = 100 kPa", "EN 1997-1:2004, (D.1), by hand: (π + 2) × 1.2 c_u + q", (Math.PI + 2) * 120 + 10, "kPa", 1e-9, () => BearingResistance.Undrained(100.Kilopascals, 10.Kilopascals, 2.Meters, 2.Meters, Force.Zero).Kilopascals, ValueKind.IndependentComputation),
        new("N_q at φ′ = 30°", Sheet, 18.40, "-", 3e-4, () => Factor(1, 0, 0)),
        new("N_c at φ′ = 30°", Sheet, 30.14, "-", 3e-4, () => Factor(0, 1, 0)),
        new("N_γ at φ′ = 30°", Sheet, 20.09, "-", 3e-4, () => Factor(0, 0, 1)),
        new("vertical stiffness of a square, K_z(1 − ν)/(GB)", Gazetas, 4.54, "-", 1e-3, () => Square().Vertical.NewtonsPerMeter * 0.7, ValueKind.FromMemory),
        new("horizontal stiffness of a square, K_y(2 − ν)/(GB)", Gazetas, 9, "-", 1e-3, () => Square().SlideX.NewtonsPerMeter * 1.7, ValueKind.FromMemory),
        new("rocking stiffness of a square, K_rx(1 − ν)/(GB³)", Gazetas, 3.6, "-", 2e-3, () => Square().RockingX.NewtonMetersPerRadian * 0.7, ValueKind.FromMemory),
        new("rocking stiffness of a square, K(1 − ν)/(GB³)", "Pais and Kausel 1988, r = 1: 4.0, from memory", 4.0, "-", 1e-3, () => FootingStiffness.PaisKausel(2.Meters, 2.Meters, 1.Pascals, 0.3).RockingX.NewtonMetersPerRadian * 0.7, ValueKind.FromMemory),
        new("rocking of a square by Pais and Kausel over the circle of like inertia", "exact circle 8GR³/(3(1 − ν)), R⁴ = 16B⁴/(3π); the two agree within some percent", 1, "-", 0.03, () => FootingStiffness.PaisKausel(2.Meters, 2.Meters, 1.Pascals, 0.3).RockingX / FootingStiffness.Circle((2 * Math.Pow(16 / (3 * Math.PI), 0.25)).Meters, 1.Pascals, 0.3).RockingX, ValueKind.IndependentComputation),
        new("sinking of a square by Gazetas over the circle of like area", "exact circle 4GR/(1 − ν), R² = 4B²/π; the two agree within some percent", 1, "-", 0.03, () => Square().Vertical / FootingStiffness.Circle((4 / Math.Sqrt(Math.PI)).Meters, 1.Pascals, 0.3).Vertical, ValueKind.IndependentComputation),
    ];

    private static FootingStiffness Square() => FootingStiffness.Gazetas(2.Meters, 2.Meters, 1.Pascals, 0.3);

    /// <summary>One bearing factor: a long footing without shape factors.</summary>
    private static double Factor(double q, double c, double gammaB) => BearingResistance.Drained(
        phi30, c.Pascals, q.Pascals, SpecificWeight.FromNewtonsPerCubicMeter(2 * gammaB), 1.Meters, 1e9.Meters, 1.Newtons, Force.Zero, Force.Zero).Pascals;

    internal static Foundation Block { get; } = new()
    {
        WidthX = 6.Meters,
        WidthY = 5.Meters,
        Thickness = 1.5.Meters,
        Depth = 1.5.Meters,
        Material = Concrete.OfStrength(25.Megapascals),
        Soil = new Soil { FrictionAngle = 32.Degrees, ShearModulus = 40.Megapascals, AllowableBearing = 250.Kilopascals },
    };

    private static readonly Gen<(double V, double H, double ex, double ey)> loads = Gen.Select(Gen.Double[100, 3000], Gen.Double[0, 40], Gen.Double[-2, 2], Gen.Double[-1.6, 1.6]);

    [Fact]
    public void Swapping_x_and_y_swaps_nothing_but_names() => loads.Sample(l =>
    {
        Foundation turned = Block with { WidthX = Block.WidthY, WidthY = Block.WidthX };
        double here = FoundationChecks.Bearing(Block, l.V.Kilonewtons, l.H.Kilonewtons, 5.Kilonewtons, Torque.FromKilonewtonMeters(-l.V * l.ey), Torque.FromKilonewtonMeters(l.V * l.ex)).Capacity!.Value;
        double there = FoundationChecks.Bearing(turned, l.V.Kilonewtons, 5.Kilonewtons, l.H.Kilonewtons, Torque.FromKilonewtonMeters(-l.V * l.ex), Torque.FromKilonewtonMeters(l.V * l.ey)).Capacity!.Value;
        Assert.Equal(here, there, 1e-9 * Math.Abs(here) + 1e-6);
    });

    [Fact]
    public void Inclination_and_eccentricity_only_weaken() => loads.Sample(l =>
    {
        double Capacity(double e, double H) => FoundationChecks.Bearing(Block, l.V.Kilonewtons, H.Kilonewtons, Force.Zero, Torque.Zero, Torque.FromKilonewtonMeters(l.V * e)).Capacity!.Value;
        Assert.True(Capacity(l.ex, l.H) <= Capacity(l.ex, 0) * (1 + 1e-9));
        Assert.True(Capacity(1.1 * l.ex, 0) <= Capacity(l.ex, 0) * (1 + 1e-9));
    });

    [Fact]
    public void Pressure_is_that_of_a_rectangle_without_tension()
    {
        StatueFrame.Checks.Check check = FoundationChecks.Pressure(Block, 3000.Kilonewtons, Torque.Zero, Torque.FromKilonewtonMeters(3000 * 2));
        Assert.Equal(2 * 3000e3 / (3 * 5 * (3 - 2)), check.Demand!.Value, 1);
    }

    [Fact]
    public void Half_the_base_is_in_touch_at_a_third_of_the_width() =>
        Assert.Equal(1, FoundationChecks.Uplift(Block, 100.Kilonewtons, Torque.Zero, Torque.FromKilonewtonMeters(100 * 6 / 3.0)).Demand!.Value, 1e-9);

    [Fact]
    public void Sliding_on_friction_and_on_clay()
    {
        Assert.Equal(1000e3 * Math.Tan(32 * Math.PI / 180) / 1.1, FoundationChecks.Sliding(Block, 1000.Kilonewtons, 10.Kilonewtons, Force.Zero, Torque.Zero, Torque.Zero).Capacity!.Value, 1);
        Foundation clay = Block with { Soil = new Soil { UndrainedStrength = 20.Kilopascals } };
        Assert.Equal(Math.Min(30 * 20e3 / 1.1, 0.4 * 1000e3), FoundationChecks.Sliding(clay, 1000.Kilonewtons, 10.Kilonewtons, Force.Zero, Torque.Zero, Torque.Zero).Capacity!.Value, 1);
    }

    [Fact]
    public void Unknown_ground_is_not_checked()
    {
        Foundation bare = Block with { Soil = new Soil() };
        Assert.Equal(Verdict.NotChecked, FoundationChecks.Bearing(bare, 1.Kilonewtons, Force.Zero, Force.Zero, Torque.Zero, Torque.Zero).Verdict);
        Assert.Equal(Verdict.NotChecked, FoundationChecks.Sliding(bare, 1.Kilonewtons, Force.Zero, Force.Zero, Torque.Zero, Torque.Zero).Verdict);
        Assert.Equal(Verdict.NotChecked, FoundationChecks.Pressure(bare, 1.Kilonewtons, Torque.Zero, Torque.Zero).Verdict);
        Assert.Null(FoundationChecks.Stiffness(bare));
    }

    [Fact]
    public void Long_footing_is_stiffer_about_its_short_side() => Gen.Double[1.05, 6].Sample(r =>
    {
        foreach (FootingStiffness k in new[] { FootingStiffness.Gazetas(r.Meters, 1.Meters, 1.Pascals, 0.3), FootingStiffness.PaisKausel(r.Meters, 1.Meters, 1.Pascals, 0.3), FootingStiffness.Winkler(r.Meters, 1.Meters, SpecificWeight.FromNewtonsPerCubicMeter(1)) })
            Assert.True(k.RockingY > k.RockingX);
        FootingStiffness a = FootingStiffness.Gazetas(r.Meters, 1.Meters, 1.Pascals, 0.3), b = FootingStiffness.Gazetas(1.Meters, r.Meters, 1.Pascals, 0.3);
        Assert.Equal(a.RockingX, b.RockingY);
        Assert.Equal(a.SlideX, b.SlideY);
    });
}
