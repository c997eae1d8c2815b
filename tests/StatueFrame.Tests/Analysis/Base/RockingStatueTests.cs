using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Tests.Analyses.Toppling;

/// <summary>Elastic statues on a base that lifts, against rigid blocks, against Lagrange's equations of one mass, and against the held base.</summary>
public class RockingStatueTests
{
    private const double g = SelfWeight.Gravity;

    /// <summary>A massless column of a stiffness with a mass on top and one at its foot.</summary>
    /// <param name="height">Height of the upper mass, m.</param>
    /// <param name="head">Upper mass, kg.</param>
    /// <param name="foot">Mass in the base, kg.</param>
    /// <param name="stiffness">3EI/L³, N/m.</param>
    private static StatueModel Column(double height, double head, double foot, double stiffness)
    {
        var rigidity = Rigidity.FromNewtonSquareMeters(stiffness * height * height * height / 3);
        return StatueModel.Build(new Statue
        {
            Name = "column",
            Tower = new Tower
            {
                Levels = [new TowerLevel("foot", 0.Meters), new TowerLevel("head", height.Meters)],
                Segments = [new CoreSegment { BendingX = rigidity, BendingY = rigidity, Torsion = rigidity, Axial = Force.FromNewtons(1e4 * stiffness * height) }],
            },
            Fittings = [new Fitting { Name = "head", On = "head", Mass = head.Kilograms }, new Fitting { Name = "foot", On = "foot", Mass = foot.Kilograms }],
        });
    }

    private static RockingStatue On(StatueModel model, double front, double damping = 0) => new() { Model = model, Heading = 0.Degrees, Front = front.Meters, Damping = DampingModel.OfRatio(damping) };

    private static Blow At(string on, double impulse) => new() { Name = "blow", On = on, Impulse = Impulse.FromNewtonSeconds(impulse), Heading = 0.Degrees };

    private static BasePulse HalfSine(double peak, double duration) => new(PulseShape.HalfSine, Acceleration.FromStandardGravity(peak), duration.Seconds);

    /// <summary>How far a blow that topples a rigid body by Housner's energies is off that which topples a stiff statue.</summary>
    private static double ImpulseThatTopples()
    {
        StatueModel model = Column(4, 2000, 1000, 4e9);
        var block = RockingBlock.Of(model, 0.Degrees, 0.5.Meters);
        double R = Math.Sqrt(0.25 + Math.Pow(block.CenterHeight.Meters, 2)), I = block.Inertia.KilogramSquareMeters + 3000 * R * R;
        double expected = Math.Sqrt(2 * I * 3000 * g * R * (1 - Math.Cos(block.Slenderness.Radians))) / 4;
        (double stands, double topples) = (0.5, 1.5);
        for (int i = 0; i < 12; i++)
        {
            double middle = 0.5 * (stands + topples);
            if (On(model, 0.5).Under(At("head", middle * expected)).Topples)
                topples = middle;
            else
                stands = middle;
        }
        return topples;
    }

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("blow that topples a stiff statue over that of a rigid body", "Housner 1963: kinetic energy after the blow = weight raised to its balance", 1, "-", 5e-4, ImpulseThatTopples, ValueKind.IndependentComputation),
        new("greatest rotation of a stiff statue over a rigid block's, half sine", "equations of a rigid block, integrated with error control", 1, "-", 5e-3, () =>
        {
            StatueModel model = Column(4, 2000, 1000, 4e9);
            return On(model, 0.5).Shake(HalfSine(0.35, 0.5)).PeakRotation / RockingBlock.Of(model, 0.Degrees, 0.5.Meters).Shake(HalfSine(0.35, 0.5)).PeakRotation;
        }, ValueKind.IndependentComputation),
    ];

    [Fact]
    public void A_stiff_statue_stands_and_topples_as_a_rigid_block()
    {
        StatueModel model = Column(4, 2000, 1000, 4e9);
        foreach (double peak in new[] { 0.1, 0.25, 0.4, 0.6, 0.9 })
        {
            RockingResult rigid = RockingBlock.Of(model, 0.Degrees, 0.5.Meters).Shake(HalfSine(peak, 0.5));
            RockingStatueResult own = On(model, 0.5, 0.02).Shake(HalfSine(peak, 0.5));
            Assert.Equal(rigid.Topples, own.Topples);
            Assert.Equal(rigid.Lifts, own.Lifts);
            Assert.Equal(rigid.PeakRotation.Degrees, own.PeakRotation.Degrees, 0.01 * rigid.PeakRotation.Degrees + 1e-3);
        }
    }

    /// <summary>Two freedoms by Lagrange's equations with nothing left out, stepped by Runge and Kutta: the first swing of a struck column.</summary>
    [Theory]
    [InlineData(0.5, 4e5, 2000)]
    [InlineData(0.5, 1e5, 1800)]
    [InlineData(0.8, 3e6, 3000)]
    public void A_mass_on_a_column_swings_as_by_lagrange(double b, double k, double impulse)
    {
        const double M = 2000, m = 1000, L = 4;
        RockingStatueResult found = On(Column(L, M, m, k), b).Under(At("head", impulse));
        double u = 0, v = impulse / M, theta = 0, omega = 0, dt = 1e-5, peak = 0;
        bool lifted = false;
        for (int i = 0; i < 2_000_000; i++)
        {
            if (!lifted && k * u * L > (M + m) * g * b - M * g * u)
                lifted = true;
            Step(lifted);
            peak = Math.Max(peak, theta);
            if (lifted && theta < 0)
                break;
        }
        Assert.True(found.Lifts && !found.Topples);
        RockingPoint[] swing = [.. found.History.SkipWhile(point => point.Rotation.Radians == 0).TakeWhile(point => point.Rotation.Radians > 0)];
        Assert.Equal(peak, swing.Max(point => point.Rotation.Radians), 0.01 * peak);

        void Step(bool turns)
        {
            (double u, double v, double t, double o) y = (u, v, theta, omega);
            var k1 = Slope(y, turns);
            var k2 = Slope(Add(y, k1, dt / 2), turns);
            var k3 = Slope(Add(y, k2, dt / 2), turns);
            var k4 = Slope(Add(y, k3, dt), turns);
            u += dt / 6 * (k1.u + 2 * k2.u + 2 * k3.u + k4.u);
            v += dt / 6 * (k1.v + 2 * k2.v + 2 * k3.v + k4.v);
            theta += dt / 6 * (k1.t + 2 * k2.t + 2 * k3.t + k4.t);
            omega += dt / 6 * (k1.o + 2 * k2.o + 2 * k3.o + k4.o);
        }

        // T = ½M[(u̇ + Lθ̇)² + (u − b)²θ̇²] + ½m b²θ̇², V = Mg(L cos θ − (u − b) sin θ) + mg b sin θ + ½k u².
        (double u, double v, double t, double o) Slope((double u, double v, double t, double o) y, bool turns)
        {
            if (!turns)
                return (y.v, -k / M * y.u, 0, 0);
            double x = y.u - b, sin = Math.Sin(y.t), cos = Math.Cos(y.t);
            // ü + Lθ̈ = xθ̇² − (k/M)u + g sin θ; MLü + (ML² + Mx² + mb²)θ̈ = −2Mxu̇θ̇ + Mg(L sin θ + x cos θ) − mgb cos θ.
            double first = x * y.o * y.o - k / M * y.u + g * sin, second = -2 * M * x * y.v * y.o + M * g * (L * sin + x * cos) - m * g * b * cos;
            double turn = (second - M * L * first) / (M * x * x + m * b * b);
            return (y.v, first - L * turn, y.o, turn);
        }

        static (double u, double v, double t, double o) Add((double u, double v, double t, double o) a, (double u, double v, double t, double o) b, double s) =>
            (a.u + s * b.u, a.v + s * b.v, a.t + s * b.t, a.o + s * b.o);
    }

    [Fact]
    public void Energies_balance_and_none_is_made()
    {
        StatueModel model = Column(4, 2000, 1000, 1e6);
        foreach (double damping in new[] { 0, 0.05 })
        {
            RockingStatueResult blow = On(model, 0.5, damping).Under(At("head", 2000)), shaken = On(model, 0.5, damping).Shake(HalfSine(0.35, 0.4));
            foreach (RockingStatueResult r in new[] { blow, shaken })
            {
                Assert.True(r.Lifts && !r.Topples && r.Landings > 0);
                Assert.InRange(r.BalanceError, 0, 1e-4);
                Assert.InRange(r.Rocking.Value.Joules, 0, 1.0001 * r.Input.Value.Joules);
                Assert.InRange(r.LostInLandings.Joules, 0, r.Input.Value.Joules);
                Assert.True(r.Damped.Joules >= 0);
            }
            Assert.Equal(0.5 * 2000 * 2000 / 2000, blow.Input.Value.Joules, 1e-3);
        }
    }

    [Fact]
    public void It_lifts_when_the_held_base_would_have_to_pull()
    {
        StatueModel model = Column(4, 2000, 1000, 1e6);
        var held = ShockResponse.Of(model, new Situation { Name = "blow", Actions = [new SelfWeight(), At("head", 100)] }, DampingModel.OfRatio(0.01));
        double lifts = 100 / held.OverturningOn(1.Meters)!.Ratio;
        Assert.False(On(model, 0.5, 0.01).Under(At("head", 0.98 * lifts)).Lifts);
        Assert.True(On(model, 0.5, 0.01).Under(At("head", 1.02 * lifts)).Lifts);
    }

    /// <summary>Lengths times s, masses times s³, stiffness of the column times s², times times √s: rotations are the same.</summary>
    [Fact]
    public void A_model_on_a_table_rocks_as_the_figure_does()
    {
        RockingStatueResult large = Scaled(1);
        foreach (double scale in new[] { 0.05, 0.3, 12 })
        {
            RockingStatueResult other = Scaled(scale);
            Assert.Equal(large.PeakRotation.Degrees, other.PeakRotation.Degrees, 1e-6);
            Assert.Equal(large.Landings, other.Landings);
            Assert.Equal(large.FirstLift!.Value.Seconds * Math.Sqrt(scale), other.FirstLift!.Value.Seconds, 1e-9 * Math.Sqrt(scale));
        }

        static RockingStatueResult Scaled(double s) =>
            On(Column(4 * s, 500 * s * s * s, 250 * s * s * s, 2.5e5 * s * s), 0.5 * s, 0.02).Under(At("head", 800 * s * s * s * Math.Sqrt(s)));
    }

    [Fact]
    public void A_plinth_and_a_tendon_count_as_on_a_rigid_block()
    {
        StatueModel model = Column(4, 2000, 1000, 4e9);
        var tendon = new RockingTendon(5.Kilonewtons, ForcePerLength.FromKilonewtonsPerMeter(50));
        var block = RockingBlock.Of(model, 0.Degrees, 0.7.Meters);
        // The whole: statue, and below it a plinth of 2 t, 1.4 m wide and 0.5 m high.
        double z = (3000 * (block.CenterHeight.Meters + 0.5) + 2000 * 0.25) / 5000;
        double I = block.Inertia.KilogramSquareMeters + 3000 * Math.Pow(block.CenterHeight.Meters + 0.5 - z, 2) + 2000 * ((0.25 + 1.96) / 12 + Math.Pow(z - 0.25, 2));
        RockingBlock whole = block with { Mass = 5000.Kilograms, CenterHeight = z.Meters, Inertia = MassMomentOfInertia.FromKilogramSquareMeters(I), Tendon = tendon };
        RockingStatue own = On(model, 0.7, 0.02) with { PlinthHeight = 0.5.Meters, PlinthMass = 2000.Kilograms, Tendon = tendon };
        foreach (double peak in new[] { 0.3, 0.6, 0.8 })
        {
            RockingResult rigid = whole.Shake(HalfSine(peak, 0.5));
            RockingStatueResult found = own.Shake(HalfSine(peak, 0.5));
            Assert.Equal(rigid.Lifts, found.Lifts);
            Assert.Equal(rigid.PeakRotation.Degrees, found.PeakRotation.Degrees, 0.01 * rigid.PeakRotation.Degrees + 1e-3);
            Assert.Equal(rigid.PeakTendonForce.Newtons, found.PeakTendonForce.Newtons, 0.01 * rigid.PeakTendonForce.Newtons);
        }
    }

    [Fact]
    public void Both_ways_are_alike_on_an_even_base()
    {
        StatueModel model = Column(4, 2000, 1000, 1e6);
        RockingStatueResult front = On(model, 0.5, 0.02).Under(At("head", 3000)), back = On(model, 0.5, 0.02).Under(At("head", 3000) with { Heading = 180.Degrees });
        Assert.Equal(front.PeakRotation.Degrees, back.PeakRotation.Degrees, 1e-9);
        Assert.Equal(front.History.Max(p => p.Rotation.Degrees), -back.History.Min(p => p.Rotation.Degrees), 1e-9);
    }

    [Fact]
    public void Nothing_moves_what_nothing_strikes()
    {
        RockingStatueResult still = On(Column(4, 2000, 1000, 1e6), 0.5).Under(At("head", 0.001));
        Assert.False(still.Lifts || still.Topples);
        Assert.Equal("stays on its base", still.ToString());
    }

    [Fact]
    public void What_was_taken_is_told()
    {
        RockingStatue own = On(Column(4, 2000, 1000, 1e6), 0.5);
        Assert.Contains(own.Under(At("head", 100)).Assumptions, a => a.Value.Contains("held against sliding", StringComparison.Ordinal));
        Assert.Contains((own with { Damping = null }).Under(At("head", 100)).Assumptions, a => a.Subject == "structural damping");
        Assert.Single(own.Under(At("head", 100)).Assumptions);
    }

    [Fact]
    public void What_cannot_stand_is_refused_with_all_that_is_wrong()
    {
        RockingStatue wrong = On(Column(4, 2000, 1000, 1e6), -1) with { Heading = 1000.Degrees, PlinthMass = 5.Kilograms, Modes = 0 };
        var e = Assert.Throws<InvalidStatueException>(() => wrong.Under(At("nowhere", 1)));
        foreach (string path in (string[])["Heading", "Front", "PlinthHeight", "Modes", "Shock.On"])
            Assert.Contains(e.Problems, problem => problem.Path == path);
    }
}
