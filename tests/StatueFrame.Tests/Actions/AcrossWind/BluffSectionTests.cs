using CsCheck;

namespace StatueFrame.Tests.Actions.AcrossWind;

public class BluffSectionTests
{
    private const string Figure = "EN 1991-1-4, Figure E.2, and Ruscheweyh 1994, Fig. 2.4, quoted second-hand";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("Strouhal number of a circle", "EN 1991-1-4:2005, Table E.1", 0.18, "-", 1e-12, () => BluffSection.Round.StrouhalNumber, ValueKind.FromMemory) { IsReadBack = true },
        .. new[] { (0.5, 0.12), (1, 0.12), (2, 0.06), (3, 0.06), (3.5, 0.15), (5, 0.11), (10, 0.09) }.Select(p => new PublishedValue(
            $"Strouhal number of a sharp rectangle, d/b {p.Item1:0.0}", "EN 1991-1-4:2005, Figure E.1", p.Item2, "-", 1e-12,
            () => BluffSection.Rectangle(p.Item1).StrouhalNumber, ValueKind.FromMemory) { IsReadBack = true }),
        .. new[] { (1e5, 0.7), (3e5, 0.7), (5e5, 0.2), (5e6, 0.2), (1e7, 0.3), (1e8, 0.3) }.Select(p => new PublishedValue(
            $"c_lat,0 of a circle at Re {p.Item1:0e0}", Figure, p.Item2, "-", 1e-12, () => BluffSection.Round.BasicLateralCoefficient(p.Item1)) { IsReadBack = true }),
        new("c_lat,0 of a sharp rectangle", "EN 1991-1-4:2005, Table E.2", 1.1, "-", 1e-12, () => BluffSection.Rectangle(1.3).BasicLateralCoefficient(1e6), ValueKind.FromMemory) { IsReadBack = true },
        .. new[] { (0.5, 0.7), (2.0 / 3, 1.0), (1, 1.2), (1.5, 1.7), (2, 2.0) }.Select(p => new PublishedValue(
            $"a_G of a sharp rectangle, d/b {p.Item1:0.00}", "EN 1991-1-4:2005, Table E.7", p.Item2, "-", 1e-12,
            () => BluffSection.Rectangle(p.Item1).GallopingFactor!.Value, ValueKind.FromMemory) { IsReadBack = true }),
        new("a_G of a circle with ice", "EN 1991-1-4:2005, Table E.7", 1.0, "-", 1e-12, () => BluffSection.RoundWithIce.GallopingFactor!.Value, ValueKind.FromMemory) { IsReadBack = true },
        new("ovalling frequency of a steel ring, b 4 m, t 6 mm", "inextensional ring, ω² = n²(n²−1)²/(n²+1)·EI/(mR⁴) with n = 2 (Timoshenko's formula), by hand",
            Ring(4, 0.006, 210e9, 47.1), "Hz", 3e-3, () => ShellOvalling.LowestFrequency(6.Millimeters, 210.Gigapascals, 47.1.KilogramsPerSquareMeter, 4.Meters).Hertz, ValueKind.IndependentComputation),
    ];

    private static double Ring(double b, double t, double E, double mass) =>
        Math.Sqrt(36.0 / 5 * E * t * t * t / 12 / (mass * Math.Pow(b / 2, 4))) / (2 * Math.PI);

    [Fact]
    public void Values_lie_between_those_of_the_tables() => Gen.Select(Gen.Double[0.5, 10], Gen.Double[3, 9]).Sample((ratio, log) =>
    {
        BluffSection rectangle = BluffSection.Rectangle(ratio);
        Assert.InRange(rectangle.StrouhalNumber, 0.06, 0.15);
        Assert.Equal(ratio <= 2, rectangle.GallopingFactor is not null);
        Assert.InRange(rectangle.GallopingFactor ?? 1, 0.7, 2);
        Assert.InRange(BluffSection.Round.BasicLateralCoefficient(Math.Pow(10, log)), 0.2 - 1e-12, 0.7);
    }, iter: 300);

    [Fact]
    public void Ovalling_is_struck_twice_by_each_pair_of_vortices() =>
        Assert.Equal(3 * 0.6 / (2 * 0.18), ShellOvalling.CriticalSpeed(0.6.Hertz, 3.Meters).MetersPerSecond, 1e-12);

    [Fact]
    public void Refuses_what_cannot_be()
    {
        foreach (double ratio in (double[])[0.49, 10.1, double.NaN])
            Assert.Throws<ArgumentOutOfRangeException>("depthToWidth", () => BluffSection.Rectangle(ratio));
        Assert.Throws<ArgumentOutOfRangeException>("strouhalNumber", () => BluffSection.Given(0, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>("lateralCoefficient", () => BluffSection.Given(0.2, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("gallopingFactor", () => BluffSection.Given(0.2, 0.5, -1));
        Assert.Throws<ArgumentOutOfRangeException>("reynoldsNumber", () => BluffSection.Round.BasicLateralCoefficient(0));
        Assert.Throws<ArgumentOutOfRangeException>("diameter", () => ShellOvalling.LowestFrequency(6.Millimeters, 210.Gigapascals, 47.KilogramsPerSquareMeter, 0.Meters));
    }
}
