using CsCheck;
using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Bars;

namespace StatueFrame.Tests.Checks.Heat;

public class HeatChecksTests
{
    private static readonly HeatMovement copper = new()
    {
        Skin = 17.PpmPerKelvin,
        Tower = 12.PpmPerKelvin,
        SkinChange = 50.Kelvins,
        TowerChange = 20.Kelvins,
        Distance = 10.Meters,
    };

    private static readonly LoadedBar bar = LoadedBars.Steel() with { Length = 500.Millimeters };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("free movement, 10 m, 17 ppm/K × 50 K against 12 ppm/K × 20 K", "ΔL = α ΔT L, by hand", 6.1, "mm", 1e-9, () => copper.Free.Millimeters, ValueKind.IndependentComputation),
        new("stress of a flat, both ends clamped, skin end moved by 5 mm: 3 E t δ/L²", "beam theory, by hand (M = 6EIδ/L²)", 3 * 210e3 * 8 * 5 / 250e3, "MPa", 2e-3,
            () => 1e-6 * HeatChecks.ImposedStress(null, bar, 0, 0.005, 0), ValueKind.IndependentComputation),
        new("stress of a flat, hinged skin end moved by 5 mm: 1.5 E t δ/L²", "beam theory, by hand (M = 3EIδ/L²)", 1.5 * 210e3 * 8 * 5 / 250e3, "MPa", 2e-3,
            () => 1e-6 * HeatChecks.ImposedStress(null, bar with { SkinFixity = EndFixity.Pinned }, 0, 0.005, 0), ValueKind.IndependentComputation),
        new("stress of a bar held along its length: E δ/L", "by hand", 210e3 * 0.1 / 500, "MPa", 1e-9, () => 1e-6 * HeatChecks.ImposedStress(null, bar, 0.0001, 0, 0), ValueKind.IndependentComputation),
        new("stress of a plate held both ways, copper, 0.61 ‰: Eε/(1 − ν)", "by hand", Copper.HardR290.YoungsModulus.Megapascals * 0.61e-3 / (1 - 0.34), "MPa", 1e-6,
            () => 1e-6 * HeatChecks.RestrainedSkin(copper, Copper.HardR290, true, 1 / 1.5).Demand!.Value, ValueKind.IndependentComputation),
    ];

    [Fact]
    public void Skin_and_tower_of_one_metal_and_temperature_move_together() =>
        Assert.Equal(0, (copper with { Tower = copper.Skin, TowerChange = copper.SkinChange }).Free.Meters);

    [Fact]
    public void Stress_is_linear_in_the_movement_along_one_axis() => Gen.Select(Gen.Double[0.001, 0.02], Gen.Double[-3, 3]).Sample((d, by) =>
        Assert.Equal(Math.Abs(by) * HeatChecks.ImposedStress(null, bar, 0, d, 0), HeatChecks.ImposedStress(null, bar, 0, by * d, 0), 1));

    [Fact]
    public void A_longer_bar_is_bent_less_by_heat() => Gen.Select(Gen.Double[0.1, 2], Gen.Double[1, 2]).Sample((L, by) =>
        Assert.True(HeatChecks.ImposedStress(null, bar with { Length = (by * L).Meters }, 0, 0.005, 0.001) <= HeatChecks.ImposedStress(null, bar with { Length = L.Meters }, 0, 0.005, 0.001) * (1 + 1e-12)));

    [Fact]
    public void Imposed_forces_make_the_same_stress_in_the_check_of_the_section()
    {
        LoadedBar loaded = HeatChecks.Imposed(bar, 0.01.Millimeters, 5.Millimeters, 0.1.Millimeters);
        double stress = HeatChecks.BarStress(bar, 0.01.Millimeters, 5.Millimeters, 0.1.Millimeters, LoadedBars.En).Demand!.Value;
        Assert.Equal(stress, BarChecks.Bending(null, loaded.Load(LoadedBars.En).Ends, 0.06, 0.008, 355e6, 1).Stress, 1e-6 * stress);

        // A clamped bar pushed sideways bends in double curvature.
        LoadedBar pushed = HeatChecks.Imposed(bar, 0.Meters, 5.Millimeters, 0.Meters);
        Assert.Equal(-1, SecondOrderBar.MomentRatio(pushed.AtTower.WeakMoment.NewtonMeters, pushed.AtSkin.WeakMoment.NewtonMeters), 1e-9);
    }

    [Fact]
    public void Slot_and_joint_need_movement_and_reserve()
    {
        Assert.Equal(8.1 / 10, HeatChecks.SlotTravel(copper, 10.Millimeters, 2.Millimeters).Utilization!.Value, 1e-9);
        Assert.Equal(Verdict.Fail, HeatChecks.JointGap(copper, 8.Millimeters, 2.Millimeters).Verdict);
        Assert.Equal(8.1 / 10, HeatChecks.SlotTravel(copper with { SkinChange = -50.Kelvins, TowerChange = -20.Kelvins }, 10.Millimeters, 2.Millimeters).Utilization!.Value, 1e-9);
        Assert.Contains("free movement", HeatChecks.SlotTravel(copper, 10.Millimeters, 2.Millimeters).Working().ToText());
        Assert.Contains("k_y", HeatChecks.BarStress(bar, 0.Meters, 5.Millimeters, 0.Meters, LoadedBars.En).Working().ToText());
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        Assert.ThrowsAny<ArgumentException>(() => (copper with { SkinChange = 5000.Kelvins }).Free);
        Assert.ThrowsAny<ArgumentException>(() => (copper with { Distance = -1.Meters }).Strain);
        Assert.ThrowsAny<ArgumentException>(() => HeatChecks.SlotTravel(copper, -1.Meters, 0.Meters));
        Assert.ThrowsAny<ArgumentException>(() => HeatChecks.RestrainedSkin(copper, Copper.HardR290, false, 2));
    }
}
