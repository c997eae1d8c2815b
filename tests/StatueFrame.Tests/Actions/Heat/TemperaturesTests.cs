using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Heat;
using UnitsNet;

namespace StatueFrame.Tests.Actions.Heat;

/// <summary>Temperatures by EN 1991-1-5, and heat against beam theory by hand.</summary>
public class TemperaturesTests
{
    private const string AnnexA = "EN 1991-1-5:2003, Annex A, Figure A.1";
    private const string Hand = "beam theory, by hand";

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);

    private static TemperatureDelta K(double kelvins) => TemperatureDelta.FromKelvins(kelvins);

    private static TemperatureAction Even(double skin, double tower = 0) => new() { SkinChange = K(skin), TowerChange = K(tower) };

    private static double Stress(Statue statue, TemperatureAction heat) => HotRing.Respond(statue, heat).WorstBar!.Stress.Megapascals;

    private static Statue Tied(int bands) => HotRing.Of(8, bands, seams: new SeamStiffness(1e6.Megapascals, 1e6.Megapascals));

    /// <summary>Force of a radial bar on a round ring that grows evenly, over its stiffness, m.</summary>
    private static double Radial(double skin, double tower) =>
        17.64e-6 * skin * 1.5 - 12e-6 * tower * 0.9 - 12e-6 * 0.5 * (skin + tower) * 0.6;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("greatest air temperature for p = 0.02 over T_max", AnnexA, 1.0, "-", 1e-3, () => En1991Temperatures.Maximum(C(40), 0.02).DegreesCelsius / 40, ValueKind.FromMemory) { IsReadBack = true },
        new("least air temperature for p = 0.02 over T_min", AnnexA, 1.0, "-", 2e-3, () => En1991Temperatures.Minimum(C(-20), 0.02).DegreesCelsius / -20, ValueKind.FromMemory) { IsReadBack = true },
        new("greatest air temperature for p = 0.01 over T_max", AnnexA + ", by hand from k₁, k₂", 0.781 + 0.056 * 4.60015, "-", 1e-5, () => En1991Temperatures.Maximum(C(40), 0.01).DegreesCelsius / 40, ValueKind.IndependentComputation),
        new("least air temperature for p = 0.005 over T_min", AnnexA + ", by hand from k₃, k₄", 0.393 + 0.156 * 5.29581, "-", 1e-5, () => En1991Temperatures.Minimum(C(-20), 0.005).DegreesCelsius / -20, ValueKind.IndependentComputation),
        new("what the sun adds to a dark surface that faces it", "EN 1991-1-5:2003, Table 5.2", 42, "K", 1e-9, () => En1991Temperatures.SolarRise(SurfaceTone.Dark).Kelvins, ValueKind.FromMemory) { IsReadBack = true },
        new("what the sun adds to a bright surface that faces it", "EN 1991-1-5:2003, Table 5.2", 18, "K", 1e-9, () => En1991Temperatures.SolarRise(SurfaceTone.Bright).Kelvins, ValueKind.FromMemory) { IsReadBack = true },
        new("ψ₀ of temperature", "EN 1990:2002, Table A1.1", 0.6, "-", 1e-9, () => PsiFactors.Of(VariableKind.Temperature).Combination, ValueKind.FromMemory) { IsReadBack = true },
        new("radial bars on a round copper band 3 m wide, 30 K warmer: E (free movement)/L", Hand, 210e3 * Radial(30, 0) / 0.6, "MPa", 1e-5, () => Stress(HotRing.Of(8), Even(30)), ValueKind.IndependentComputation),
        new("the same with the tower 12 K warmer", Hand, 210e3 * Radial(30, 12) / 0.6, "MPa", 1e-5, () => Stress(HotRing.Of(8), Even(30, 12)), ValueKind.IndependentComputation),
        new("five bands of 2 m tied firmly, 30 K: bars of the top ring alone, N/A + 6EIδ/L² on W with shear", Hand,
            210e3 * Radial(30, 0) / 0.6 + 1e-6 * 3 * 210e9 * 0.06 * (17.64e-6 * 30 * 4) / 0.36 / (1 + 12 * 210e9 * 0.06 * 0.06 / 12 / (5.0 / 6 * 81e9 * 0.36)), "MPa", 2e-3,
            () => HotRing.Respond(Tied(5), Even(30)).Bars[^1].Stress.Megapascals, ValueKind.IndependentComputation),
        new("bow of a mast 6 m high, 0.4 m wide, one side 20 K warmer: αΔT h²/(2D)", Hand, 12e-6 * 20 / 0.4 * 36 / 2 * 1e3, "mm", 2e-3, Bow, ValueKind.IndependentComputation),
        new("closing of a joint between fields of 4 m and 8 m, skin 30 K and tower 10 K warmer", Hand, 1e3 * (17.64e-6 * 30 * 6 - 12e-6 * 10 * 6), "mm", 1e-4, Closing, ValueKind.IndependentComputation),
        new("stress of a skin that bars hold: N/A + R/(2πA)", Hand, 10e3 / 20e-3 * 1e-6 + 5e3 / (2 * Math.PI * 4e-3) * 1e-6, "MPa", 1e-9,
            () => 1e-6 * HeatChecks.Restraint(10.Kilonewtons, Area.FromSquareMeters(20e-3), 5.Kilonewtons, Area.FromSquareMeters(4e-3), Held, Copper.HalfHardR240, 0.5).Demand!.Value, ValueKind.IndependentComputation),
        new("stress of a skin held fully: at most Eε/(1 − ν)", Hand, Copper.HalfHardR240.YoungsModulus.Megapascals * 17.64e-6 * 30 / (1 - Copper.HalfHardR240.PoissonRatio), "MPa", 1e-6,
            () => 1e-6 * HeatChecks.Restraint(10_000.Kilonewtons, Area.FromSquareMeters(20e-3), Force.Zero, Area.FromSquareMeters(4e-3), Held, Copper.HalfHardR240, 0.5).Demand!.Value, ValueKind.IndependentComputation),
    ];

    private static HeatMovement Held => new()
    {
        Skin = Copper.HalfHardR240.ThermalExpansion,
        Tower = 12.PpmPerKelvin,
        SkinChange = K(30),
        TowerChange = K(0),
        Distance = 1.Meters,
    };

    private static double Bow()
    {
        Statue mast = Validation.SmallStatue.Good.Statue with
        {
            Tower = new Tower { Levels = [new TowerLevel("base", 0.Meters), new TowerLevel("top", 6.Meters)], Segments = [Validation.SmallStatue.Mast] },
            Skin = null,
            Standoffs = [],
            Limbs = [],
            Fittings = [],
            Points = [new NamedPoint("tip", "top")],
        };
        return -HotRing.Under(mast, Even(0) with { TowerSunRise = K(20), SunSide = 0.Degrees }).Of("tip").X.Millimeters;
    }

    private static double Closing()
    {
        Statue ring = HotRing.Of(8, bands: 6);
        StatueModel model = StatueModel.Build(ring with { Skin = ring.Skin! with { Joints = [new SkinJoint(4.Meters, 2.Millimeters)] } });
        HeatField heat = model.Respond(new Situation { Name = "heat", Actions = [Even(30, 10)] }).Heat!;
        SkinField[] fields = [.. heat.Fields];
        return 1e3 * heat.Closing(fields[0], fields[1]);
    }

    [Fact]
    public void Rarer_temperatures_are_more_extreme()
    {
        double hot = 0, cold = 0;
        foreach (double p in new[] { 0.5, 0.1, 0.02, 0.005, 0.0005 })
        {
            double hotter = En1991Temperatures.Maximum(C(35), p).DegreesCelsius, colder = En1991Temperatures.Minimum(C(-15), p).DegreesCelsius;
            Assert.True(hotter > hot && colder < cold);
            (hot, cold) = (hotter, colder);
        }
        Assert.Equal(25, En1991Temperatures.Change(C(35), En1991Temperatures.DefaultInitial).Kelvins, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => En1991Temperatures.Maximum(C(35), 0));
    }
}
