using CsCheck;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Mechanics.Tests.Vibration;

public class TwoMassSystemTests
{
    private const string DenHartog = "Den Hartog, Mechanical Vibrations, chapter 3";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("Two equal masses on equal springs, lower ω/√(k/m)", DenHartog, 0.618, "-", 1e-4, () => 2 * Math.PI * TwoMassSystem.Chain(1, 1, 1, 1).LowerFrequency, ValueKind.FromMemory),
        new("Two equal masses on equal springs, higher ω/√(k/m)", DenHartog, 1.618, "-", 1e-4, () => 2 * Math.PI * TwoMassSystem.Chain(1, 1, 1, 1).HigherFrequency, ValueKind.FromMemory),
        new("Tuned absorber of a fifth of the mass, lower frequency over that tuned to", DenHartog + ", fig. 3.8", 0.80, "-", 0.005, () => 2 * Math.PI * TwoMassSystem.Chain(5, 5, 1, 1).LowerFrequency, ValueKind.FromMemory),
        new("Tuned absorber of a fifth of the mass, higher frequency over that tuned to", DenHartog + ", fig. 3.8", 1.25, "-", 0.005, () => 2 * Math.PI * TwoMassSystem.Chain(5, 5, 1, 1).HigherFrequency, ValueKind.FromMemory),
    ];

    private static readonly Gen<(double m1, double k1, double m2, double k2)> systems =
        Gen.Select(Gen.Double[0.1, 50], Gen.Double[0.1, 1000], Gen.Double[0.1, 50], Gen.Double[0.1, 1000]);

    [Fact]
    public void Frequencies_make_the_equations_of_motion_singular() => systems.Sample(s =>
    {
        TwoMassSystem two = TwoMassSystem.Chain(s.m1, s.k1, s.m2, s.k2);
        foreach (double f in (double[])[two.LowerFrequency, two.HigherFrequency])
        {
            double w2 = Math.Pow(2 * Math.PI * f, 2);
            double yy = s.k1 + s.k2 - w2 * s.m1, zz = s.k2 - w2 * s.m2;
            Assert.True(Math.Abs(yy * zz - s.k2 * s.k2) < 1e-9 * (Math.Abs(yy * zz) + s.k2 * s.k2 + s.k1 * s.k2));
        }
    });

    [Fact]
    public void Slow_force_passes_through_and_fast_force_is_held_back() => systems.Sample(s =>
    {
        TwoMassSystem two = TwoMassSystem.Chain(s.m1, s.k1, s.m2, s.k2);
        (double tower, double springs) = two.Transmissibility(1e-5 * two.LowerFrequency, 0);
        (double fastTower, double fastSprings) = two.Transmissibility(300 * two.HigherFrequency, 0);
        Assert.Equal(1, tower, 1e-8);
        Assert.Equal(1, springs, 1e-8);
        Assert.True(fastSprings < 1e-3 && fastTower < fastSprings + 1e-12);
    });

    [Fact]
    public void Peaks_are_those_of_direct_steps() => systems.Sample(s =>
    {
        TwoMassSystem two = TwoMassSystem.Chain(s.m1, s.k1, s.m2, s.k2);
        double h = 1 / (400 * two.HigherFrequency);
        int pulse = 300;
        double[] samples = [.. Enumerable.Range(0, pulse + 1).Select(i => Math.Sin(Math.PI * i / pulse))];
        (double tower, double springs) = two.PeakForces(samples, h, 0, 3000 * h);
        // Semi-implicit steps in the absolute displacements, a tenth as long.
        double y = 0, z = 0, dy = 0, dz = 0, towerSeen = 0, springsSeen = 0;
        for (int i = 0; i < 30_000; i++)
        {
            double t = (i + 0.5) / 10, force = t < pulse ? Math.Sin(Math.PI * t / pulse) : 0;
            dy += 0.1 * h * (s.k2 * (z - y) - s.k1 * y) / s.m1;
            dz += 0.1 * h * (force - s.k2 * (z - y)) / s.m2;
            (y, z) = (y + 0.1 * h * dy, z + 0.1 * h * dz);
            (towerSeen, springsSeen) = (Math.Max(towerSeen, Math.Abs(s.k1 * y)), Math.Max(springsSeen, Math.Abs(s.k2 * (z - y))));
        }
        Assert.Equal(towerSeen, tower, 0.01 * towerSeen);
        Assert.Equal(springsSeen, springs, 0.01 * springsSeen);
    }, iter: 20);

    [Theory, InlineData(1, 1, 1, 1, 1), InlineData(0, 0, 1, 1, 1), InlineData(1, 0, 1, 0, 1), InlineData(1, 0, 1, 1, double.NaN)]
    public void Values_out_of_range_are_refused(double A, double B, double C, double k, double s) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new TwoMassSystem(A, B, C, k, s));
}
