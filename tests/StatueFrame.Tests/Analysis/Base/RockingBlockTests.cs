using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Studies;
using UnitsNet;

namespace StatueFrame.Tests.Analyses.Toppling;

public class RockingBlockTests
{
    private const double g = SelfWeight.Gravity;

    private static RockingBlock Slender(double alpha, double R = 2) =>
        RockingBlock.Solid((2 * R * Math.Sin(alpha)).Meters, (2 * R * Math.Cos(alpha)).Meters, 1000.Kilograms);

    private static RockingResult Pulse(RockingBlock block, PulseShape shape, double overUplift, double duration) =>
        block.Shake(new BasePulse(shape, overUplift * block.UpliftAcceleration, duration.Seconds));

    /// <summary>The time from release to the first impact is a quarter of the free period.</summary>
    private static double QuarterPeriod(RockingBlock block, double rotation) => block.Release(rotation.Radians).History.First(p => p.Rotation.Radians <= 0).Time.Seconds;

    /// <summary>The least peak, over the uplift, by simulation of a very slender block.</summary>
    private static double LeastPeak(PulseShape shape, double ratio)
    {
        RockingBlock block = Slender(0.004);
        double duration = Math.PI / (ratio * block.FrequencyParameter);
        return OverturningSpectrum.Of(block, shape, [duration.Seconds]).Points[0].Overturning!.Value / block.UpliftAcceleration;
    }

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("free rocking period of a slender block, θ₀ = 0.5 α, times p", "Housner 1963: T = (4/p) arcosh(1/(1 − θ₀/α)) = 4 arcosh 2", 5.26783, "-", 1e-5, () => 3 * HousnerBlock.FreePeriod(3, 0.5).Seconds, ValueKind.IndependentComputation),
        new("time to the first impact by integration over Housner's quarter period, α = 0.01", "Housner 1963, small angles", 1, "-", 1e-4,
            () => QuarterPeriod(Slender(0.01), 0.005) / (0.25 * HousnerBlock.FreePeriod(Slender(0.01).FrequencyParameter, 0.5).Seconds), ValueKind.IndependentComputation),
        new("frequency parameter of a block with R = 1 m", "Housner 1963: p² = 3g/(4R)", 2.71201, "rad/s", 1e-5, () => Slender(0.3, 1).FrequencyParameter, ValueKind.IndependentComputation),
        new("part of the energy left at an impact, α = 20°", "Housner 1963: r = (1 − 1.5 sin²α)²", 0.67985, "-", 1e-4, () => Math.Pow(Slender(20 * Math.PI / 180).RestitutionInUse, 2), ValueKind.IndependentComputation),
        new("least acceleration that lifts an edge, width over height 1/4", "Housner 1963: g·b/h", g / 4, "m/s²", 1e-12, () => RockingBlock.Solid(1.Meters, 4.Meters, 1.Kilograms).UpliftAcceleration.MetersPerSecondSquared, ValueKind.IndependentComputation),
        new("constant pulse that topples, a = 2 gα, times p", "Housner 1963: cosh(pt) = 1 + 1/(2·2·1)", Math.Acosh(1.25), "-", 1e-9, () => HousnerBlock.ConstantPulse(1.7, 2).Seconds * 1.7, ValueKind.IndependentComputation),
        new("constant pulse that topples by integration over the formula, a = 2 gα, α = 0.004", "Housner 1963, small angles", 1, "-", 2e-3, () =>
        {
            RockingBlock block = Slender(0.004);
            double t = HousnerBlock.ConstantPulse(block.FrequencyParameter, 2).Seconds;
            return OverturningSpectrum.Of(block, PulseShape.Rectangle, [t.Seconds]).Points[0].Overturning!.Value / (2 * block.UpliftAcceleration);
        }, ValueKind.IndependentComputation),
        new("half-sine pulse that topples, ω/p = 3, Housner's formula", "Housner 1963: √(1 + (ω/p)²)", Math.Sqrt(10), "-", 1e-9, () => HousnerBlock.HousnerHalfSine(3), ValueKind.IndependentComputation),
        new("half-sine pulse that topples, ω/p = 3, closed form over integration", "integration of the equation of motion, α = 0.004", 1, "-", 2e-3, () => HousnerBlock.HalfSinePulse(3) / LeastPeak(PulseShape.HalfSine, 3), ValueKind.IndependentComputation),
        new("half-sine pulse that topples, ω/p = 1, closed form over integration", "integration of the equation of motion, α = 0.004", 1, "-", 2e-3, () => HousnerBlock.HalfSinePulse(1) / LeastPeak(PulseShape.HalfSine, 1), ValueKind.IndependentComputation),
    ];

    [Fact]
    public void A_block_stays_below_its_uplift_and_lifts_above() => Gen.Select(Gen.Double[0.05, 0.6], Gen.Double[0.3, 10], Gen.Enum<PulseShape>()).Sample((alpha, R, shape) =>
    {
        RockingBlock block = Slender(alpha, R);
        Assert.False(Pulse(block, shape, 0.999, 0.5).Lifts);
        Assert.True(Pulse(block, shape, 1.01, 0.5).Lifts);
    }, iter: 30);

    [Fact]
    public void Large_blocks_rock_as_small_ones_in_slower_time() => Gen.Select(Gen.Double[0.1, 0.4], Gen.Double[0.5, 3], Gen.Double[2, 10], Gen.Double[1.2, 4]).Sample((alpha, R, k, over) =>
    {
        RockingBlock small = Slender(alpha, R), large = Slender(alpha, k * R);
        double duration = 0.8 / small.FrequencyParameter;
        RockingResult a = Pulse(small, PulseShape.FullSine, over, duration), b = Pulse(large, PulseShape.FullSine, over, Math.Sqrt(k) * duration);
        Assert.Equal(a.Topples, b.Topples);
        if (!a.Topples)
            Assert.Equal(a.PeakRotation.Radians, b.PeakRotation.Radians, 1e-7);
    }, iter: 20);

    [Fact]
    public void Mirrored_motion_gives_mirrored_rocking()
    {
        RockingBlock block = Slender(0.25) with { HalfWidthBehind = 0.6.Meters };
        RockingBlock turned = block with { HalfWidth = 0.6.Meters, HalfWidthBehind = block.HalfWidth };
        var random = new Random(5);
        ValueList<double> a = [.. Enumerable.Range(0, 300).Select(i => 6 * (random.NextDouble() - 0.5) + 3 * Math.Sin(0.05 * i))];
        var record = new BaseMotionRecord { Name = "noise", Step = 0.02.Seconds, X = a };
        RockingResult one = block.Shake(record), other = turned.Shake(record, 180.Degrees);
        Assert.True(one.Lifts);
        Assert.Equal(one.Topples, other.Topples);
        Assert.Equal(one.PeakRotation.Radians, other.PeakRotation.Radians, 1e-9);
        Assert.Equal(one.Impacts, other.Impacts);
    }

    [Fact]
    public void Energy_never_rises_on_still_ground_and_is_kept_between_impacts() => Gen.Select(Gen.Double[0.1, 0.5], Gen.Double[0.1, 0.9], Gen.Bool).Sample((alpha, part, tied) =>
    {
        RockingBlock block = Slender(alpha) with { Tendon = tied ? new RockingTendon(3000.Newtons, 2e5.NewtonsPerMeter) : null };
        var body = new RockingBody(block);
        double before = double.PositiveInfinity;
        foreach (RockingPoint point in block.Release((part * alpha).Radians, 4.Seconds).History)
        {
            double energy = body.Energy(point.Rotation.Radians >= 0 ? 0 : 1, Math.Abs(point.Rotation.Radians), point.Velocity.RadiansPerSecond);
            Assert.True(energy <= before * (1 + 1e-8) + 1e-6);
            before = energy;
        }
    }, iter: 20);

    [Fact]
    public void Each_impact_takes_its_part_of_the_energy()
    {
        RockingBlock block = Slender(0.3);
        var body = new RockingBody(block);
        RockingPoint[] history = [.. block.Release(0.2.Radians).History];
        int hit = Array.FindIndex(history, p => p.Rotation.Radians == 0 && p.Velocity.RadiansPerSecond != 0);
        double ratio = history[hit + 1].Velocity.RadiansPerSecond / history[hit].Velocity.RadiansPerSecond;
        Assert.Equal(1 - 1.5 * Math.Pow(Math.Sin(0.3), 2), ratio, 1e-12);
        double start = body.Energy(0, 0.2, 0), atHit = body.Energy(0, 0, history[hit].Velocity.RadiansPerSecond);
        Assert.Equal(start, atHit, 1e-8 * start);
    }

    [Fact]
    public void Without_loss_a_block_rocks_on_with_its_free_period()
    {
        RockingBlock block = Slender(0.01) with { Restitution = 1 };
        double period = HousnerBlock.FreePeriod(block.FrequencyParameter, 0.6).Seconds;
        RockingResult result = block.Release(0.006.Radians, (10.01 * period).Seconds);
        Assert.Equal(20, result.Impacts);
        Assert.Equal(0.006, result.PeakRotation.Radians, 1e-9);
    }

    [Fact]
    public void Beyond_its_balance_a_block_falls() => Gen.Double[0.05, 0.7].Sample(alpha =>
    {
        RockingBlock block = Slender(alpha);
        Assert.True(block.Release((1.001 * alpha).Radians).Topples);
        Assert.False(block.Release((0.999 * alpha).Radians).Topples);
    }, iter: 20);

    [Fact]
    public void A_tendon_raises_the_uplift_and_keeps_a_block_up()
    {
        RockingBlock block = Slender(0.15);
        RockingBlock tied = block with { Tendon = new RockingTendon(5000.Newtons, 5e5.NewtonsPerMeter) };
        double expected = (g * block.HalfWidth.Meters + 5000 * block.HalfWidth.Meters / 1000) / block.CenterHeight.Meters;
        Assert.Equal(expected, tied.UpliftAcceleration.MetersPerSecondSquared, 1e-12);
        var pulse = new BasePulse(PulseShape.HalfSine, 9.MetersPerSecondSquared, 0.6.Seconds);
        Assert.True(block.Shake(pulse).Topples);
        RockingResult held = tied.Shake(pulse);
        Assert.True(held.Lifts && !held.Topples && held.PeakTendonForce.Newtons > 5000);
    }

    [Fact]
    public void Housner_lets_the_wave_run_on_and_so_asks_for_more_than_a_half_sine_needs() =>
        Gen.Double[0.2, 20].Sample(ratio => HousnerBlock.HalfSinePulse(ratio) <= HousnerBlock.HousnerHalfSine(ratio) && HousnerBlock.HalfSinePulse(ratio) >= 1);

    [Fact]
    public void Short_pulses_need_more()
    {
        RockingBlock block = Slender(0.2);
        OverturningSpectrum spectrum = OverturningSpectrum.Of(block, PulseShape.HalfSine, [0.2.Seconds, 0.4.Seconds, 0.8.Seconds]);
        Assert.True(spectrum.Points[0].Overturning > spectrum.Points[1].Overturning && spectrum.Points[1].Overturning > spectrum.Points[2].Overturning);
        Assert.Equal(4, spectrum.ToCsv().Trim().Split("\r\n").Length);
        Assert.Null(OverturningSpectrum.Of(block, PulseShape.HalfSine, [0.002.Seconds], 2).Points[0].Overturning);
    }

    [Fact]
    public void A_statue_has_its_own_inertia()
    {
        // Two masses of 2000 kg at 4 m and 8 m on a weightless tower.
        Statue two = Earthquake.ShearBuildings.Uniform(2, 1e9, 2000, height: 4);
        StatueModel model = StatueModel.Build(two);
        RockingBlock block = RockingBlock.Of(model, 30.Degrees, 1.Meters);
        Assert.Equal(6, block.CenterHeight.Meters, 1e-9);
        Assert.Equal(2 * 2000 * 4.0, block.Inertia.KilogramSquareMeters, 1e-6);
        Assert.Equal(g / 6, block.UpliftAcceleration.MetersPerSecondSquared, 1e-9);
        StatueModel sample = StatueModel.Build(new SampleStatue { HasLimb = true }.Statue);
        var free = sample.Modes(1).Set;
        double moving = free.MovingMass(4), whole = RigidInertia.Of(sample, Mechanics.Vector3D.UnitY, Mechanics.Vector3D.Zero);
        // The frame leaves out what rests on the held base: the pump of 900 kg at 0.4 m and 0.8 m, and the feet of the legs.
        Assert.InRange(whole - moving, 900 * (0.8 * 0.8 + 0.4 * 0.4), 900 * 0.8 + 0.01 * whole);
    }

    [Fact]
    public void Wrong_blocks_are_told()
    {
        RockingBlock block = Slender(0.2);
        Assert.Throws<InvalidStatueException>(() => (block with { CenterHeight = Length.Zero }).UpliftAcceleration);
        Assert.Throws<InvalidStatueException>(() => block.Shake(new BasePulse(PulseShape.HalfSine, Acceleration.Zero, 1.Seconds)));
        Assert.Throws<ArgumentOutOfRangeException>(() => block.Release(100.Degrees));
        Assert.Throws<ArgumentOutOfRangeException>(() => HousnerBlock.FreePeriod(1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => HousnerBlock.ConstantPulse(1, 1));
        Assert.Throws<ArgumentException>(() => RockingBlock.Of(StatueModel.Build(new SampleStatue().Statue), 0.Degrees, 0.01.Meters));
    }
}
