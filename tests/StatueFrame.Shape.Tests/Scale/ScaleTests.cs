using CsCheck;
using StatueFrame.Analysis;

namespace StatueFrame.Shape.Tests.Scale;

public class ScaleTests
{
    private const string Similarity = "definition of the number, worked by hand";

    private static readonly WindBody Full = new()
    {
        Width = 5.Meters,
        Speed = 40.MetersPerSecond,
        Frequency = 1.Hertz,
        MassPerHeight = 1000.KilogramsPerMeter,
        DampingRatio = 0.01,
        Modulus = 200.Gigapascals,
    };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("enlarged twice, all scaled: frequency of a cantilever by the analysis model", "f ∝ 1/s, dimensional analysis", 0.5, "-", 1e-9, () => FrequencyRatio(2, SheetRule.Scaled), ValueKind.IndependentComputation),
        new("enlarged 1.7 times, all scaled: mass by the analysis model", "m ∝ s³", Math.Pow(1.7, 3), "-", 1e-9, () => MassRatio(1.7, SheetRule.Scaled), ValueKind.IndependentComputation),
        new("enlarged twice, sheet kept: mass by the analysis model against the law", "(1 − μ) s³ + μ s²", new ScaleLaws(2, SheetRule.Kept, SheetFraction).Mass, "-", 1e-9, () => MassRatio(2, SheetRule.Kept), ValueKind.IndependentComputation),
        new("enlarged twice, sheet kept: frequency by the analysis model against the law", "√(s/m)", new ScaleLaws(2, SheetRule.Kept, SheetFraction).Frequency, "-", 0.03, () => FrequencyRatio(2, SheetRule.Kept), ValueKind.IndependentComputation),
        new("Froude number of 40 m/s on 5 m", Similarity, 1600 / (9.80665 * 5), "-", 1e-12, () => Full.Froude, ValueKind.FromMemory),
        new("reduced velocity of 40 m/s, 1 Hz, 5 m", Similarity, 8, "-", 1e-12, () => Full.ReducedVelocity, ValueKind.FromMemory),
        new("Scruton number of 1000 kg/m, δ = 0.02π, 5 m in air", Similarity, 2 * 1000 * 0.02 * Math.PI / (1.25 * 25), "-", 1e-4, () => Full.Scruton, ValueKind.FromMemory),
        new("model at 1:100 by Froude: speed", "√λ", 4, "m/s", 1e-12, () => ModelTest.Dimensioned(Full, 0.01).Model.Speed.MetersPerSecond, ValueKind.IndependentComputation),
        new("model at 1:100 by Froude: frequency", "1/√λ", 10, "Hz", 1e-12, () => ModelTest.Dimensioned(Full, 0.01).Model.Frequency.Hertz, ValueKind.IndependentComputation),
        new("model at 1:100 by Froude: Reynolds number over that at full size", "λ^(3/2)", 1e-3, "-", 1e-12, () => ModelTest.Dimensioned(Full, 0.01).Numbers[5].Ratio, ValueKind.IndependentComputation),
        new("model at 1:100 by Froude: force of 1 N at full size", "λ⁻³", 1e6, "N", 1e-9, () => ModelTest.Dimensioned(Full, 0.01).FullSize(1.Newtons).Newtons, ValueKind.IndependentComputation),
        new("model at 1:100 by Froude: acceleration at full size", "1", 1, "m/s²", 1e-9, () => ModelTest.Dimensioned(Full, 0.01).FullSize(1.MetersPerSecondSquared).MetersPerSecondSquared, ValueKind.IndependentComputation),
    ];

    [Fact]
    public void Scaled_frequencies_masses_and_sway_follow_the_laws() =>
        Gen.Double[0.6, 2].Sample(s =>
        {
            Statue small = Column(), large = small.Scaled(s, SheetRule.Scaled);
            return Near(StatueModel.Build(small).Modes(4).First.Frequency.Hertz / s, StatueModel.Build(large).Modes(4).First.Frequency.Hertz)
                && Near(Sway(small) * s, Sway(large))
                && Near(BaseMoment(small) * s * s * s, BaseMoment(large));
            static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-8 * Math.Abs(a);
        }, iter: 8);

    [Fact]
    public void Scaling_there_and_back_is_the_same_statue()
    {
        Statue back = Column().Scaled(2, SheetRule.Scaled).Scaled(0.5, SheetRule.Scaled);
        Assert.Equal(Column(), back);
        Assert.Equal(Column(), Column().Scaled(1, SheetRule.Kept));
    }

    [Fact]
    public void Every_kind_of_part_is_scaled_by_its_dimension()
    {
        Statue large = Column().Scaled(2, SheetRule.Kept);
        Assert.Equal(4, large.Tower.Levels[1].Elevation.Meters, 12);
        Assert.Equal(0.8, ((Tube)((MemberSegment)large.Tower.Segments[0]).Section).OuterDiameter.Meters, 12);
        Assert.Equal(16e10, ((CoreSegment)large.Tower.Segments[1]).BendingX.NewtonSquareMeters, 1e-3);
        Assert.Equal(8e9, large.Tower.Base.RotationX!.Value.NewtonMetersPerRadian, 1e-3);
        Assert.Equal(800, large.Fittings[0].Mass.Kilograms, 1e-9);
        Assert.Equal(2, large.Skin!.Thickness.Millimeters, 1e-12);
        Assert.Equal(6, large.Skin.ArmatureMass.KilogramsPerSquareMeter, 1e-12);
        Assert.Equal(Copper.HalfHardR240, large.Skin.Material);
        Assert.Equal(4, Column().Scaled(2, SheetRule.Scaled).Skin!.Thickness.Millimeters, 1e-12);
    }

    [Fact]
    public void A_model_dimensioned_by_Froude_matches_all_numbers_but_Reynolds()
    {
        ModelTest test = ModelTest.Dimensioned(Full, 1.0 / 50);
        Assert.All(test.Numbers.Take(5), n => Assert.True(n.Matches, n.Name));
        Assert.False(test.Numbers[5].Matches);
        Assert.Contains("Reynolds", test.ToString());
        Assert.False(ModelTest.Dimensioned(Full, 0.02, 0.5).Numbers[0].Matches);
        Assert.Equal(Full.Frequency.Hertz, test.FullSize(test.Model.Frequency).Hertz, 1e-12);
        Assert.Equal(Full.Speed.MetersPerSecond, test.FullSize(test.Model.Speed).MetersPerSecond, 1e-12);
        Assert.Equal(50, test.FullSize(1.Meters).Meters, 1e-9);
    }

    [Fact]
    public void Nonsense_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Column().Scaled(0, SheetRule.Kept));
        Assert.Throws<ArgumentOutOfRangeException>(() => Column().Scaled(double.NaN, SheetRule.Kept));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ScaleLaws(2, SheetRule.Kept, 1.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ModelTest.Dimensioned(Full, 1));
        Assert.Throws<ArgumentException>(() => ModelTest.Dimensioned(Full with { DampingRatio = 0 }, 0.1));
    }

    private static double FrequencyRatio(double s, SheetRule rule) =>
        StatueModel.Build(Column().Scaled(s, rule)).Modes(4).First.Frequency / StatueModel.Build(Column()).Modes(4).First.Frequency;

    private static double MassRatio(double s, SheetRule rule) =>
        StatueModel.Build(Column().Scaled(s, rule)).Masses.Total / StatueModel.Build(Column()).Masses.Total;

    /// <summary>Sheet alone, without armature, over all mass.</summary>
    private static double SheetFraction =>
        (Column().Skin! with { ArmatureMass = default }).Mass() / StatueModel.Build(Column()).Masses.Total;

    private static double Sway(Statue statue) => Storm(statue).GreatestSway("tip").Sway.Meters;

    private static double BaseMoment(Statue statue) => Storm(statue).OverturningGoverns.Base.Overturning.NewtonMeters;

    /// <summary>A wind whose pressure is the same everywhere, and no weight: all forces go with s².</summary>
    private static Response Storm(Statue statue) => StatueModel.Build(statue).Respond(new Situation
    {
        Name = "even wind",
        Actions =
        [
            new WindAction
            {
                Profile = new TableWind { SpeedIs = WindSpeedBasis.GustSpeed, Rows = [new WindTableRow(1.Meters, 40.MetersPerSecond), new WindTableRow(100.Meters, 40.MetersPerSecond)] },
                GustEffectFactor = 1,
            },
        ],
    });

    private static Statue Column()
    {
        var bar = new Standoff { Section = new FlatBar(60.Millimeters, 15.Millimeters), Material = StainlessSteel.Duplex2205, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid };
        return new Statue
        {
            Name = "column",
            Tower = new Tower
            {
                Levels = [new("base", 0.Meters), .. Enumerable.Range(1, 4).Select(i => new TowerLevel($"L{i}", (2.0 * i).Meters))],
                Segments =
                [
                    new MemberSegment { Section = new Tube(400.Millimeters, 12.Millimeters), Material = StructuralSteel.S355 },
                    new CoreSegment { BendingX = Rigidity.FromNewtonSquareMeters(1e10), BendingY = Rigidity.FromNewtonSquareMeters(1e10), Torsion = Rigidity.FromNewtonSquareMeters(1e9), Axial = 3e9.Newtons, Mass = 120.KilogramsPerMeter },
                    .. Enumerable.Repeat<TowerSegment>(new MemberSegment { Section = new Tube(400.Millimeters, 12.Millimeters), Material = StructuralSteel.S355 }, 2),
                ],
                Base = TowerBase.Rocking(1e9.NewtonMetersPerRadian),
            },
            Skin = new Skin
            {
                Material = Copper.HalfHardR240,
                Thickness = 2.Millimeters,
                ArmatureMass = 3.KilogramsPerSquareMeter,
                ForceCoefficient = 1.2,
                Stations = [.. Enumerable.Range(0, 5).Select(i => new SkinStation { Elevation = (i == 0 ? 0 : 1 + 2.0 * i).Meters, Outline = new EllipseOutline { WidthX = 2.Meters, WidthY = 1.5.Meters } })],
            },
            Standoffs = [.. Enumerable.Range(1, 4).Select(i => new EvenRing { Level = $"L{i}", Count = 12, Lay = 25.Degrees, Length = 0.4.Meters, Standoff = bar })],
            Fittings = [new Fitting { Name = "lamp", On = "L4", Mass = 100.Kilograms }],
            Points = [new NamedPoint("tip", "L4")],
        };
    }
}
