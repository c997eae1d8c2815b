using CsCheck;
using StatueFrame.Checks;

namespace StatueFrame.Tests.Checks.Cores;

public class ConcreteInteractionTests
{
    private static readonly Concrete c30 = Concrete.OfStrength(30.Megapascals);

    private static Reinforcement Bars(params (double X, double Y, double D)[] bars) => new()
    {
        Bars = [.. bars.Select(b => new ReinforcingBar(b.X.Meters, b.Y.Meters, b.D.Meters))],
        YieldStrength = 500.Megapascals,
    };

    /// <summary>300 × 500 with bars of 1500 mm² in tension 450 mm deep.</summary>
    private static ConcreteInteraction Beam()
    {
        double d = Math.Sqrt(4 * 1500e-6 / (2 * Math.PI));
        return new ConcreteInteraction(BlockSection.Rectangle(0.3.Meters, 0.5.Meters).Plan, c30, Bars((-0.1, -0.2, d), (0.1, -0.2, d)));
    }

    private static double BeamByHand()
    {
        // Parabola–rectangle: resultant 17/21 x b f_cd at 99/238 x from the edge.
        double T = 1500e-6 * 500e6 / 1.15, x = T / (17.0 / 21 * 0.3 * 20e6);
        return T * (0.45 - 99.0 / 238 * x);
    }

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("moment of a 300 × 500 beam, C30, 1500 mm², pure bending", "by hand: EN 1992-1-1 parabola–rectangle, resultant 17/21 x at 99/238 x", BeamByHand() * 1e-3, "kN·m", 1e-5, () => Beam().MomentAt(0, 0, 1) * 1e-3, ValueKind.IndependentComputation),
        new("axial resistance of a 400 × 400 column, C30, 8 bars of 20 mm", "by hand: f_cd A_c + A_s min(f_yd, 0.002 E_s)", (20e6 * 0.16 + 8 * Math.PI * 1e-4 * 400e6) * 1e-3, "kN", 1e-6, () => Column().AxialRange.Compression * 1e-3, ValueKind.IndependentComputation),
    ];

    private static ConcreteInteraction Column() => new(BlockSection.Rectangle(0.4.Meters, 0.4.Meters).Plan, c30, Bars(
        (-0.15, -0.15, 0.02), (0, -0.15, 0.02), (0.15, -0.15, 0.02), (-0.15, 0, 0.02), (0.15, 0, 0.02), (-0.15, 0.15, 0.02), (0, 0.15, 0.02), (0.15, 0.15, 0.02)));

    [Fact]
    public void A_square_column_is_as_strong_both_ways_and_weaker_on_the_diagonal_than_the_corner_of_both()
    {
        ConcreteInteraction column = Column();
        foreach (double N in new[] { -500e3, 0, 800e3, 2000e3, 3500e3 })
        {
            double x = column.MomentAt(N, 1, 0), y = column.MomentAt(N, 0, -1), diagonal = column.MomentAt(N, 1, 1);
            Assert.Equal(x, y, 1e-6 * x);
            Assert.InRange(diagonal, x / Math.Sqrt(2), x * Math.Sqrt(2));
        }
    }

    [Fact]
    public void Moment_falls_to_nothing_at_both_axial_limits()
    {
        ConcreteInteraction column = Column();
        (double most, double least) = column.AxialRange;
        double middle = column.MomentAt(0.35 * most, 1, 0.3);
        Assert.True(column.MomentAt(0.999 * most, 1, 0.3) < 0.05 * middle);
        Assert.True(column.MomentAt(0.999 * least, 1, 0.3) < 0.05 * middle);
        Assert.Equal(0, column.MomentAt(1.01 * most, 1, 0.3));
    }

    /// <summary>A round column against fibers: strains at the limit with the axis across x.</summary>
    [Fact]
    public void Round_column_agrees_with_fibers() => Gen.Double[0.1, 0.9].Sample(depth =>
    {
        const double D = 0.6;
        Reinforcement ring = Reinforcement.Ring(10, 0.5.Meters, 25.Millimeters, 500.Megapascals);
        BlockSection section = BlockSection.Round(D.Meters);
        double x = depth * D, slope = 0.0035 / x;
        double Strain(double at) => 0.0035 - slope * (D / 2 - at);
        double Law(double e) => e <= 0 ? 0 : 20e6 * (e >= 0.002 ? 1 : 1 - Math.Pow(1 - e / 0.002, 2));
        (double N, double X, _) = Fibers.Sum(section, 500, (px, _) => Law(Strain(px)));
        foreach (ReinforcingBar bar in ring.Bars)
        {
            double F = Math.PI / 4 * 0.025 * 0.025 * Math.Clamp(200e9 * Strain(bar.X.Meters), -500e6 / 1.15, 500e6 / 1.15);
            (N, X) = (N + F, X + F * bar.X.Meters);
        }
        double ours = new ConcreteInteraction(section.Plan, c30, ring).MomentAt(N, 1, 0);
        Assert.Equal(X, ours, 3e-3 * X);
    }, iter: 10);
}
