using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Mechanics.Vibration;
using UnitsNet;

namespace StatueFrame.Tests.Analyses.Earthquake;

public class EarthquakeResponseTests
{
    /// <summary>Kip, inch and the textbook's g in SI.</summary>
    private const double Kip = 4448.2216152605, Inch = 0.0254, g = 386.4 * Inch;

    private static readonly Lazy<StatueModel> Five = new(() => StatueModel.Build(ShearBuildings.Uniform(5, 31.54 * Kip / Inch, 100 * Kip / g)));

    /// <summary>Modal base shears of the textbook's five-story frame, kips.</summary>
    private static readonly double[] baseShears = [60.469, 24.533, 9.867, 2.943, 0.595];

    private static readonly double[] periods = [2.0, 0.6852, 0.4346, 0.3383, 0.2966];

    private static readonly Lazy<StatueModel> Sample = new(() => StatueModel.Build(new SampleStatue().Statue));

    private static readonly En1998Spectrum Spectrum = new() { ReferenceAcceleration = 2.MetersPerSecondSquared, Ground = GroundType.B };

    private static EarthquakeAction Action(
        DirectionRule rule = DirectionRule.SquareRootOfSquares, double orientation = 0, ModalRule modal = ModalRule.Cqc) =>
        new() { Horizontal = Spectrum, Vertical = Spectrum.Vertical(), DirectionRule = rule, Orientation = orientation.Degrees, ModalRule = modal };

    private static EffectiveModes FiveModes() => new(Five.Value.Modes(12));

    /// <summary>The modes of a uniform shear tower that sway along x.</summary>
    private sealed record EffectiveModes(ModalResponse Modes)
    {
        public int Index(int n) => Enumerable.Range(0, Modes.Modes.Count).Where(i => Modes.Modes[i].MassFractionX > 1e-4).ElementAt(n);

        public double Period(int n) => 1 / Modes.Modes[Index(n)].Frequency.Hertz;

        public double MassOverFloor(int n) => 5 * Modes.Modes[Index(n)].MassFractionX;

        public double Height(int n) => Modes.Set.Participation(Index(n), 4) / Modes.Set.Participation(Index(n), 0) / 3.6576;
    }

    private static double BaseShear(ModalRule rule)
    {
        EffectiveModes modes = FiveModes();
        // A spectrum that gives each mode its published base shear.
        SpectrumPoint[] points = [.. Enumerable.Range(0, 5).Select(n => new SpectrumPoint(
            modes.Period(n).Seconds, Acceleration.FromMetersPerSecondSquared(baseShears[n] * Kip / (modes.MassOverFloor(n) * 100 * Kip / g)))).Reverse()];
        var action = new EarthquakeAction
        {
            Horizontal = new TableSpectrum { Origin = Source.User, Points = points.ToValueList() },
            ModalRule = rule,
        };
        return EarthquakeResponse.Of(Five.Value, Five.Value.Modes(15), action).BaseUnder(EarthquakeComponent.First).ForceX.Newtons / Kip;
    }

    private static double Rho(double a, double b, double zetaA = 0.05, double zetaB = 0.05) => ModeCorrelation.Coefficient(a, b, zetaA, zetaB);

    /// <summary>Contribution of a mode to a static response to a force at the top, over the whole response.</summary>
    private static (double Base, double Top) Contribution(int n)
    {
        EffectiveModes modes = FiveModes();
        ModeSet set = modes.Modes.Set;
        int i = modes.Index(n), top = 6 * Five.Value.PlaceOf("F5").Node;
        double phi = set.Shape(i)[top], w = set.CircularFrequency(i);
        return (phi * set.Participation(i, 0), phi * phi / (w * w) * (31.54 * Kip / Inch) / 5);
    }

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. Enumerable.Range(0, 5).Select(n => new PublishedValue($"five-story shear frame, period of mode {n + 1}", "Chopra, Dynamics of Structures, Section 12.8 and Figure 12.8.2", periods[n], "s", 3e-4, () => FiveModes().Period(n), ValueKind.FromMemory)),
        new("five-story shear frame, effective modal mass 1", "Chopra, Dynamics of Structures, Figure 13.2.4", 4.398, "m", 2e-4, () => FiveModes().MassOverFloor(0), ValueKind.FromMemory),
        new("five-story shear frame, effective modal mass 2", "Chopra, Dynamics of Structures, Figure 13.2.4", 0.436, "m", 2e-3, () => FiveModes().MassOverFloor(1), ValueKind.FromMemory),
        new("five-story shear frame, effective modal mass 3", "Chopra, Dynamics of Structures, Figure 13.2.4", 0.121, "m", 5e-3, () => FiveModes().MassOverFloor(2), ValueKind.FromMemory),
        new("five-story shear frame, effective modal height 1", "Chopra, Dynamics of Structures, Figure 13.2.4", 3.51, "h", 2e-3, () => FiveModes().Height(0), ValueKind.FromMemory),
        new("five-story shear frame, effective modal height 2", "Chopra, Dynamics of Structures, Figure 13.2.4", -1.20, "h", 5e-3, () => FiveModes().Height(1), ValueKind.FromMemory),
        new("five-story shear frame, base shear by SRSS", "Chopra, Dynamics of Structures, Table 13.8.5, from its modal base shears", 66.066, "kip", 1e-4, () => BaseShear(ModalRule.Srss), ValueKind.FromMemory),
        new("five-story shear frame, base shear by CQC", "Chopra, Dynamics of Structures, Table 13.8.5, from its modal base shears", 66.507, "kip", 1e-4, () => BaseShear(ModalRule.Cqc), ValueKind.FromMemory),
        new("force at the top, part of mode 1 in the base shear", "Chopra, Dynamics of Structures, 2nd ed., on truncation errors, second hand", 1.252, "-", 4e-4, () => Contribution(0).Base),
        new("force at the top, part of mode 3 in the base shear", "Chopra, Dynamics of Structures, 2nd ed., on truncation errors, second hand", 0.159, "-", 4e-3, () => Contribution(2).Base),
        new("force at the top, part of mode 1 in the top's displacement", "Chopra, Dynamics of Structures, 2nd ed., on truncation errors, second hand", 0.880, "-", 6e-4, () => Contribution(0).Top),
        new("force at the top, part of mode 2 in the top's displacement", "Chopra, Dynamics of Structures, 2nd ed., on truncation errors, second hand", 0.087, "-", 6e-3, () => Contribution(1).Top),
        new("correlation of 13.869 and 13.931 rad/s at 5 %", "Wilson, Der Kiureghian and Bayo 1981, four-story building", 0.998, "-", 1e-3, () => Rho(13.869, 13.931), ValueKind.FromMemory),
        new("correlation of 43.995 and 54.418 rad/s at 5 %", "Wilson, Der Kiureghian and Bayo 1981, four-story building", 0.180, "-", 3e-3, () => Rho(43.995, 54.418), ValueKind.FromMemory),
        new("correlation of 44.189 and 54.418 rad/s at 5 %", "Wilson, Der Kiureghian and Bayo 1981, four-story building", 0.186, "-", 3e-3, () => Rho(44.189, 54.418), ValueKind.FromMemory),
        new("correlation of 13.931 and 43.995 rad/s at 5 %", "Wilson, Der Kiureghian and Bayo 1981, four-story building", 0.006, "-", 0.09, () => Rho(13.931, 43.995), ValueKind.FromMemory),
    ];

    [Fact]
    public void Correlation_is_symmetric_and_one_for_a_mode_with_itself() =>
        Gen.Select(Gen.Double[0.1, 100], Gen.Double[0.1, 100], Gen.Double[0.001, 0.3], Gen.Double[0.001, 0.3]).Sample((a, b, za, zb) =>
            Rho(a, a, za, za) == 1 && Math.Abs(Rho(a, b, za, zb) - Rho(b, a, zb, za)) < 1e-14 && Rho(a, b, za, zb) is >= 0 and <= 1);

    [Fact]
    public void Correlation_by_the_formula_for_equal_damping() =>
        Gen.Select(Gen.Double[0.1, 10], Gen.Double[0.005, 0.2]).Sample((r, z) =>
        {
            double expected = 8 * z * z * (1 + r) * Math.Pow(r, 1.5) / (Math.Pow(1 - r * r, 2) + 4 * z * z * r * (1 + r) * (1 + r));
            return Math.Abs(Rho(2, 2 * r, z, z) - expected) < 1e-12;
        });

    [Fact]
    public void Modes_far_apart_combine_as_the_square_root_of_squares() =>
        Gen.Double[-1, 1].Array[4].Sample(peaks =>
        {
            double[] rho = ModeCorrelation.Matrix([1, 100, 1e4, 1e6], [0.02, 0.02, 0.02, 0.02]);
            return Math.Abs(ModeCorrelation.Combine(rho, peaks) - Math.Sqrt(peaks.Sum(p => p * p))) < 1e-3;
        });

    [Fact]
    public void Twin_modes_of_opposite_sign_cancel()
    {
        double[] rho = ModeCorrelation.Matrix([5, 5], [0.05, 0.05]);
        Assert.Equal(0, ModeCorrelation.Combine(rho, [1, -1]), 1e-12);
        Assert.Equal(2, ModeCorrelation.Combine(rho, [1, 1]), 1e-12);
    }

    [Fact]
    public void A_rigid_statue_shakes_with_the_ground()
    {
        EarthquakeAction action = Action() with { RigidFrequency = 1.Hertz };
        StatueModel model = StatueModel.Build(ShearBuildings.Uniform(3, 1e9, 2000));
        EarthquakeResponse response = EarthquakeResponse.Of(model, action);
        Assert.Empty(response.Modes);
        double mass = model.Masses.Total.Kilograms;
        foreach (EarthquakeComponent component in Enum.GetValues<EarthquakeComponent>())
        {
            EarthquakeBase under = response.BaseUnder(component);
            double a = action.SpectrumOf(component)!.At(Duration.Zero).MetersPerSecondSquared;
            double force = component == EarthquakeComponent.Vertical ? under.ForceZ.Newtons : under.Shear.Newtons;
            Assert.Equal(mass * a, force, 1e-9 * mass * a);
        }
        double height = model.Masses.Center.Z.Meters;
        Assert.Equal(mass * 2.4 * height, response.BaseUnder(EarthquakeComponent.First).MomentY.NewtonMeters, 1e-6 * mass);
        Assert.Equal(2.4, response.Of("top").Acceleration.MetersPerSecondSquared, 1e-9);
    }

    [Fact]
    public void Mass_on_the_held_base_shakes_too()
    {
        Statue heavy = ShearBuildings.Uniform(1, 1e9, 2000);
        heavy = heavy with { Fittings = [.. heavy.Fittings, new Fitting { Name = "plinth", On = "F0", Mass = 5000.Kilograms }] };
        EarthquakeResponse response = EarthquakeResponse.Of(StatueModel.Build(heavy), Action() with { RigidFrequency = 1.Hertz });
        Assert.Equal(7000 * 2.4, response.BaseUnder(EarthquakeComponent.First).ForceX.Newtons, 1e-6);
    }

    [Fact]
    public void A_statue_of_one_mass_answers_like_an_oscillator()
    {
        double k = 4e6, m = 25_000, T = 2 * Math.PI * Math.Sqrt(m / k);
        StatueModel model = StatueModel.Build(ShearBuildings.Uniform(1, k, m));
        EarthquakeResponse response = EarthquakeResponse.Of(model, Action() with { Vertical = null });
        double a = Spectrum.At(T.Seconds).MetersPerSecondSquared;
        Assert.Equal(m * a, response.BaseUnder(EarthquakeComponent.First).ForceX.Newtons, 1e-5 * m * a);
        EarthquakeResponse first = EarthquakeResponse.Of(model, Action() with { Vertical = null, SecondHorizontal = new TableSpectrum { Origin = Source.User, Points = [new(Duration.Zero, 1e-6.MetersPerSecondSquared)] } });
        Assert.Equal(m * a / k, first.Of("top").Sway.Meters, 1e-5 * m * a / k);
        Assert.Equal(a, first.Of("top").Acceleration.MetersPerSecondSquared, 1e-5 * a);
    }

    [Fact]
    public void The_cut_at_the_base_is_what_comes_down_at_the_base()
    {
        EarthquakeResponse response = EarthquakeResponse.Of(Five.Value, Action());
        EarthquakeCut bottom = response.Cuts()[0];
        Assert.Equal(response.Base.ForceX.Newtons, bottom.ShearX.Newtons, 1e-5 * bottom.ShearX.Newtons);
        Assert.Equal(response.Base.MomentY.NewtonMeters, bottom.MomentY.NewtonMeters, 1e-5 * bottom.MomentY.NewtonMeters);
        Assert.Equal(response.Base.ForceZ.Newtons, bottom.Axial.Newtons, 1e-5 * bottom.Axial.Newtons);
    }

    [Fact]
    public void The_top_story_shear_is_its_level_force()
    {
        EarthquakeResponse response = EarthquakeResponse.Of(Five.Value, Action());
        EarthquakeCut top = response.Cuts()[^1];
        EarthquakeLevelForce level = response.LevelForces().Single(f => f.Part == "F5");
        Assert.Equal(level.X.Newtons, top.ShearX.Newtons, 1e-5 * level.X.Newtons);
    }

    [Theory]
    [InlineData(ModalRule.Cqc)]
    [InlineData(ModalRule.Srss)]
    public void Turning_the_components_changes_nothing_when_they_are_combined_by_squares(ModalRule modal)
    {
        EarthquakeResponse still = EarthquakeResponse.Of(Sample.Value, Action(modal: modal));
        foreach (double turn in new[] { 17.0, 45, 130 })
        {
            EarthquakeResponse turned = EarthquakeResponse.Of(Sample.Value, Action(orientation: turn, modal: modal));
            Assert.Equal(still.Base.Shear.Newtons, turned.Base.Shear.Newtons, 1e-8 * still.Base.Shear.Newtons);
            Assert.Equal(still.Of("wing tip").Sway.Meters, turned.Of("wing tip").Sway.Meters, 1e-8 * still.Of("wing tip").Sway.Meters);
            Assert.Equal(still.Rings()[2].Stress.Pascals, turned.Rings()[2].Stress.Pascals, 1e-8 * still.Rings()[2].Stress.Pascals);
        }
    }

    [Fact]
    public void Turning_the_statue_with_the_earthquake_turns_the_answer()
    {
        EarthquakeResponse still = EarthquakeResponse.Of(Sample.Value, Action(DirectionRule.HundredThirtyThirty));
        double turn = 0.7;
        EarthquakeResponse turned = EarthquakeResponse.Of(
            StatueModel.Build(new SampleStatue { Turn = turn }.Statue), Action(DirectionRule.HundredThirtyThirty) with { Orientation = turn.Radians });
        // The greatest direction is looked for in steps of half a degree.
        Assert.Equal(still.Base.Overturning.NewtonMeters, turned.Base.Overturning.NewtonMeters, 1e-4 * still.Base.Overturning.NewtonMeters);
        Assert.Equal(still.Base.MomentZ.NewtonMeters, turned.Base.MomentZ.NewtonMeters, 1e-6 * still.Base.MomentZ.NewtonMeters);
        Assert.Equal(still.Rings()[0].Stress.Pascals, turned.Rings()[0].Stress.Pascals, 1e-6 * still.Rings()[0].Stress.Pascals);
    }

    [Fact]
    public void Modes_and_remainder_hold_all_of_the_mass()
    {
        var motion = new BaseMotionModes(Sample.Value, Sample.Value.Modes(5).Set);
        Resultant[] all = motion.Base();
        for (int axis = 0; axis < 3; axis++)
        {
            double sum = 0;
            for (int i = 0; i < motion.ModeCount; i++)
                sum += motion.Participation(i, axis) * motion.Participation(i, axis);
            Vector3(all[motion.ModeCount + axis].Force, axis, out double rest);
            Assert.Equal(Sample.Value.Masses.Total.Kilograms, sum + rest, 1e-6);
        }

        static void Vector3(Mechanics.Vector3D v, int axis, out double value) => value = axis switch { 0 => v.X, 1 => v.Y, _ => v.Z };
    }

    [Fact]
    public void Few_modes_with_the_missing_mass_come_near_many_modes_for_a_flat_spectrum()
    {
        var flat = new TableSpectrum { Origin = Source.User, Points = [new(Duration.Zero, 3.MetersPerSecondSquared)] };
        var action = new EarthquakeAction { Horizontal = flat, Vertical = flat, ModalRule = ModalRule.Srss };
        EarthquakeResponse few = EarthquakeResponse.Of(Five.Value, Five.Value.Modes(6), action);
        EarthquakeResponse many = EarthquakeResponse.Of(Five.Value, Five.Value.Modes(30), action);
        Assert.Equal(many.Base.ForceX.Newtons, few.Base.ForceX.Newtons, 0.01 * many.Base.ForceX.Newtons);
        Assert.True(EarthquakeResponse.Of(Five.Value, Five.Value.Modes(3), action with { MissingMass = false }).Base.ForceX < few.Base.ForceX);
    }

    [Fact]
    public void Corner_stresses_are_combined_with_their_signs()
    {
        // The norm of combined force parts would be at least as great as the combined stress of the worst corner.
        StatueModel model = Sample.Value;
        EarthquakeBar bar = EarthquakeResponse.Of(model, Action()).Rings()[1];
        Assert.True(bar.Stress.Pascals > 0 && bar.StaticStress.Pascals == 0);
        double axialPart = bar.Axial.Newtons / bar.Standoff.Section.Properties.A;
        Assert.True(bar.Stress.Pascals >= axialPart * (1 - 1e-9));
    }

    [Fact]
    public void Modes_of_another_model_are_refused()
    {
        StatueModel other = StatueModel.Build(ShearBuildings.Uniform(2, 1e7, 1000));
        Assert.Throws<ArgumentException>(() => EarthquakeResponse.Of(Five.Value, other.Modes(3), Action()));
        Assert.Throws<ArgumentException>(() => EarthquakeResponse.Of(Five.Value, Action()).Of("nose"));
        Assert.Throws<InvalidStatueException>(() => EarthquakeResponse.Of(Five.Value, Action() with { Orientation = 4000.Degrees }));
    }
}
