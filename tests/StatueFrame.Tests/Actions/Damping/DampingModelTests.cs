using CsCheck;
using UnitsNet;

namespace StatueFrame.Tests.Actions.Damping;

public class DampingModelTests
{
    private const string TableF2 = "EN 1991-1-4:2005, Table F.2";

    public static IEnumerable<PublishedValue> Rows =>
    [
        Row(DampingCategory.SteelBuilding, 0.05),
        Row(DampingCategory.MixedBuilding, 0.08),
        Row(DampingCategory.ConcreteBuilding, 0.10),
        Row(DampingCategory.ConcreteTower, 0.03),
        Row(DampingCategory.WeldedSteelTube, 0.012),
        Row(DampingCategory.InsulatedSteelTube, 0.020),
        Row(DampingCategory.WeldedLattice, 0.02),
        Row(DampingCategory.FrictionBoltedLattice, 0.03),
        Row(DampingCategory.BoltedLattice, 0.05),
        new("logarithmic decrement at a damping ratio of 0.1", "two amplitudes a period apart of the free motion e^(−ζωt)cos(ω_d t), by hand",
            Math.Log(1 / Math.Exp(-0.1 * 2 * Math.PI / Math.Sqrt(0.99))), "-", 1e-12, () => DampingModel.DecrementOf(0.1), ValueKind.IndependentComputation),
    ];

    private static PublishedValue Row(DampingCategory category, double value) =>
        new($"structural decrement, {category}", TableF2, value, "-", 1e-12, () => DampingModel.Of(category).StructuralDecrement, ValueKind.FromMemory) { IsReadBack = true };

    [Fact]
    public void Decrement_and_ratio_turn_into_one_another() => Gen.Double[0, 0.95].Sample(zeta =>
    {
        Assert.Equal(zeta, DampingModel.RatioOf(DampingModel.DecrementOf(zeta)), 1e-13);
        Assert.Equal(zeta, DampingModel.SmallRatioOf(DampingModel.SmallDecrementOf(zeta)), 1e-13);
        Assert.True(DampingModel.DecrementOf(zeta) >= DampingModel.SmallDecrementOf(zeta));
    }, iter: 300);

    [Fact]
    public void Dampers_add_to_the_structure_in_their_own_modes()
    {
        DampingModel model = DampingModel.Of(DampingCategory.FrictionBoltedLattice) with { Dampers = [new TunedDamper { Decrement = 0.02 }, new TunedDamper { Decrement = 0.1, Frequency = 5.Hertz }] };
        Assert.Equal(0.05, model.DecrementAt(1.05, 1), 1e-15);
        Assert.Equal(0.03, model.DecrementAt(2, 1), 1e-15);
        Assert.Equal(0.13, model.DecrementAt(4.6, 1), 1e-15);
        Assert.Equal(["structural damping", "dampers", "dampers"], model.Assumptions.Select(a => a.Subject));
        Assert.Equal(["dampers", "dampers"], (model with { StructuralDecrement = 0.025 }).Assumptions.Select(a => a.Subject));
        Assert.Empty(DampingModel.OfRatio(0.01).Assumptions);
        Assert.Equal(Source.User, DampingModel.OfRatio(0.005).StructuralSource);
    }

    private static Gen<DampingStrip[]> Strips { get; } = Gen.Select(Gen.Double[0.1, 3], Gen.Double[0.2, 8], Gen.Double[0.5, 2], Gen.Double[5, 40], Gen.Double[-1, 1])
        .Select((l, b, c, v, a) => new DampingStrip(l.Meters, b.Meters, c, v.MetersPerSecond, a)).Array[1, 12];

    [Fact]
    public void A_cantilever_of_one_width_has_the_damping_of_the_standard() => Gen.Select(Gen.Double[5, 60], Gen.Double[0.3, 5], Gen.Double[50, 5000], Gen.Double[0, 3]).Sample((h, b, m, zeta) =>
    {
        const int n = 50;
        DampingStrip[] strips = [.. Enumerable.Range(0, n).Select(i => new DampingStrip((h / n).Meters, b.Meters, 1.3, 25.MetersPerSecond, Math.Pow((i + 0.5) / n, zeta)))];
        double generalized = strips.Sum(s => m * s.Length.Meters * s.Amplitude * s.Amplitude);
        double expected = 1.3 * 1.25 * b * 25 / (2 * 0.8 * m);
        Assert.Equal(expected, AerodynamicDamping.Decrement(1.25.KilogramsPerCubicMeter, 0.8.Hertz, generalized.Kilograms, strips), 1e-12 * expected);
        Assert.Equal(expected, AerodynamicDamping.Decrement(1.3, 1.25.KilogramsPerCubicMeter, 25.MetersPerSecond, 0.8.Hertz, (m / b).KilogramsPerSquareMeter), 1e-12 * expected);
    }, iter: 100);

    [Fact]
    public void Aerodynamic_damping_does_not_depend_on_the_scale_of_the_mode() => Gen.Select(Strips, Gen.Double[0.01, 100]).Sample((strips, k) =>
    {
        double one = AerodynamicDamping.Decrement(1.25.KilogramsPerCubicMeter, 1.2.Hertz, 800.Kilograms, strips);
        double other = AerodynamicDamping.Decrement(1.25.KilogramsPerCubicMeter, 1.2.Hertz, (800 * k * k).Kilograms,
            [.. strips.Select(s => s with { Amplitude = k * s.Amplitude })]);
        Assert.Equal(one, other, 1e-12 * one);
        Assert.True(one >= 0);
    }, iter: 200);

    [Fact]
    public void Power_lost_to_the_air_is_the_damping()
    {
        // Quasi-steady drag of a rigid plate that sways: ½ρc_f b L(v − ẏ)², averaged over one period of y = a cos ωt.
        const double rho = 1.25, cf = 1.2, b = 2, L = 3, v = 20, M = 500, n = 1.5, a = 0.01;
        double omega = 2 * Math.PI * n, work = 0;
        const int steps = 2000;
        for (int i = 0; i < steps; i++)
        {
            double velocity = -a * omega * Math.Sin(2 * Math.PI * (i + 0.5) / steps);
            work += 0.5 * rho * cf * b * L * (v - velocity) * (v - velocity) * velocity / (n * steps);
        }
        double decrement = -work / (2 * (0.5 * M * omega * omega * a * a));
        Assert.Equal(decrement, AerodynamicDamping.Decrement(rho.KilogramsPerCubicMeter, n.Hertz, M.Kilograms, new DampingStrip(L.Meters, b.Meters, cf, v.MetersPerSecond, 1)), 1e-9);
    }

    [Fact]
    public void Refuses_what_cannot_be()
    {
        Assert.Throws<ArgumentOutOfRangeException>("dampingRatio", () => DampingModel.OfRatio(1));
        Assert.Throws<ArgumentOutOfRangeException>("decrement", () => DampingModel.RatioOf(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("category", () => DampingModel.Of((DampingCategory)99));
        Assert.Throws<ArgumentOutOfRangeException>("generalizedMass", () => AerodynamicDamping.Decrement(1.25.KilogramsPerCubicMeter, 1.Hertz, Mass.Zero));
        Assert.Throws<ArgumentOutOfRangeException>("strips", () => AerodynamicDamping.Decrement(1.25.KilogramsPerCubicMeter, 1.Hertz, 1.Kilograms,
            new DampingStrip(1.Meters, 1.Meters, 1, 1.MetersPerSecond, double.NaN)));
        var v = new Validator();
        new DampingModel { StructuralDecrement = 2, Dampers = [new TunedDamper { Decrement = -1, Frequency = 0.Hertz }] }.Validate(v);
        Assert.Equal(["StructuralDecrement", "Dampers[0].Decrement", "Dampers[0].Frequency"], v.Problems.Select(p => p.Path));
    }
}
