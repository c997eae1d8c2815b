using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using static StatueFrame.Tests.Validation.SmallStatue;

namespace StatueFrame.Tests.Validation;

/// <summary>Whatever is put in, out comes a sheet of numbers or one error that lists problems.</summary>
public class AnyInputTests
{
    private delegate SmallStatue Mutation(SmallStatue statue, double factor, int count);

    private static readonly Mutation[] mutations =
    [
        (s, f, n) => s.With(t => t with { BaseAboveGround = 1.Meters * f }),
        (s, f, n) => Tower(s, t => t with { Levels = t.Levels.With(Of3(n), t.Levels[Of3(n)] with { Elevation = 3.Meters * f }) }),
        (s, f, n) => Tower(s, t => t with { Levels = t.Levels.With(Of3(n), t.Levels[Of3(n)] with { OffsetX = 1.Meters * f }) }),
        (s, f, n) => Tower(s, t => t with { Levels = t.Levels.With(Of3(n), t.Levels[Of3(n)] with { Plan = new RectangularPlan(1.Meters * f, 1.Meters) }) }),
        (s, f, n) => Tower(s, t => t with { Levels = t.Levels.With(Of3(n), t.Levels[Of3(n)] with { Plan = new PolygonPlan(n, 1.Meters) }) }),
        (s, f, n) => Tower(s, t => t with { Segments = [Panel with { Bays = n, Bracing = (Bracing)(n & 7) }, t.Segments[1]] }),
        (s, f, n) => Tower(s, t => t with { Segments = [Panel with { ConnectionMassFraction = 0.1 * f }, t.Segments[1]] }),
        (s, f, n) => Tower(s, t => t with { Segments = [Panel with { Legs = new AngleBar(100.Millimeters * f, 10.Millimeters) }, t.Segments[1]] }),
        (s, f, n) => Tower(s, t => t with { Segments = [Panel with { Braces = new RoundBar(20.Millimeters * f), Bracing = Bracing.TensionOnlyCross }, t.Segments[1]] }),
        (s, f, n) => Tower(s, t => t with { Segments = [Panel with { Material = Metal(f, n) }, t.Segments[1]] }),
        (s, f, n) => Tower(s, t => t with { Segments = [t.Segments[0], Mast with { TopSection = new Tube(300.Millimeters * f, 5.Millimeters) }] }),
        (s, f, n) => Tower(s, t => t with { Segments = [t.Segments[0], SmallStatue.Core with { BendingX = Rigidity.FromNewtonSquareMeters(1e6 * f * f) }] }),
        (s, f, n) => Tower(s, t => t with { Segments = [SmallStatue.Core with { Axial = 1e9.Newtons * f, Mass = 1.KilogramsPerMeter * f }, t.Segments[1]] }),
        (s, f, n) => Tower(s, t => t with { Base = TowerBase.Rocking(1e6.NewtonMetersPerRadian * f * f) }),
        (s, f, n) => Tower(s, t => t with { Base = new TowerBase { X = 1e6.NewtonsPerMeter * f * f, RotationZ = 1e6.NewtonMetersPerRadian / f } }),
        (s, f, n) => Skin(s, k => k with { Thickness = 2.5.Millimeters * f }),
        (s, f, n) => Skin(s, k => k with { FoldFactor = f }),
        (s, f, n) => Skin(s, k => k with { ArmatureMass = 10.KilogramsPerSquareMeter * f, ForceCoefficient = f }),
        (s, f, n) => Skin(s, k => k with { Stations = k.Stations.With(Of3(n), k.Stations[Of3(n)] with { Elevation = 3.Meters * f }) }),
        (s, f, n) => Skin(s, k => k with { Stations = k.Stations.With(Of3(n), k.Stations[Of3(n)] with { Outline = new EllipseOutline { WidthX = 3.Meters * f, WidthY = 3.Meters, CenterX = 0.1.Meters * f, Rotation = 1.Degrees * f } }) }),
        (s, f, n) => Skin(s, k => k with { BandEdges = [0.Meters, 1.Meters * f, 6.Meters] }),
        (s, f, n) => First(s, r => r with { Count = n }),
        (s, f, n) => First(s, r => r with { Missing = [n], Loose = [1, n + 1] }),
        (s, f, n) => Tower(s, t => t with { Segments = [Panel with { Bays = 1 + Of3(n), Missing = [$"brace a, face {n}, bay 1"] }, t.Segments[1]] }),
        (s, f, n) => s.With(t => t with { Corrosion = new Corrosion { Air = Atmosphere.Of((Corrosivity)(n & 7)), TowerCoating = 10.Years365 * f, Age = 5.Years365 * f } }).Durable(f),
        (s, f, n) => s.With(t => t with { Corrosion = new Corrosion { Air = Atmosphere.Of(Air(f)), Contacts = [new MetalContact { Joint = (ContactJoint)(n & 7), Isolation = (Isolation)(n & 7), NobleOverBase = f }] } }).Durable(f),
        (s, f, n) => First(s, r => r with { Lay = 40.Degrees * f, FirstAngle = 10.Degrees * f }),
        (s, f, n) => First(s, r => r with { Length = 1.5.Meters * f }),
        (s, f, n) => First(s, r => r with { Rise = 1.Meters * f, Length = null }),
        (s, f, n) => First(s, r => r with { Standoff = Flat with { Section = new FlatBar(60.Millimeters * f, 8.Millimeters) } }),
        (s, f, n) => First(s, r => r with { Standoff = Flat with { Section = new FlatBar(60.Millimeters, 8.Millimeters * f) } }),
        (s, f, n) => First(s, r => r with { Standoff = Flat with { Material = Metal(f, n), Slide = Slide(f, n) } }),
        (s, f, n) => First(s, r => r with { Standoff = Flat with { SkinFixity = EndFixity.Spring(1e3.NewtonMetersPerRadian * f * f), TowerFixity = n % 2 == 0 ? EndFixity.Pinned : EndFixity.Rigid, Roll = 10.Degrees * f } }),
        (s, f, n) => s.With(t => t with { Standoffs = [Props with { Bars = [.. Props.Bars.Take(n), Props.Bars[0] with { SkinEnd = Point3.FromMeters(1.5, 0.1 * f, 1) }] }, .. t.Standoffs] }),
        (s, f, n) => s.With(t => t with { Seams = new SeamStiffness(1e6.Pascals * f * f, 1e6.Pascals / f) }),
        (s, f, n) => s.With(t => t with { Limbs = [Arm with { Inclination = 20.Degrees * f, Root = Point3.FromMeters(f, 0, 0) }] }),
        (s, f, n) => s.With(t => t with { Limbs = [Arm with { Tower = Arm.Tower with { Base = TowerBase.Rocking(1e6.NewtonMetersPerRadian * f * f) } }] }),
        (s, f, n) => s.With(t => t with { Limbs = [.. Enumerable.Range(0, (int)Math.Min(Math.Abs((long)n), 9)).Select(i => Arm with { Name = $"arm{i}", Heading = 40.Degrees * i }), Arm] }),
        (s, f, n) => s.With(t => t with { Fittings = [new Fitting { Name = "lamp", On = "top", Mass = 50.Kilograms * f, At = Point3.FromMeters(f, 0, 0) }] }),
        (s, f, n) => s.With(t => t with { Points = t.Points.With(0, t.Points[0] with { At = Point3.FromMeters(f, 0, f) }) }),
        (s, f, n) => s with { Criteria = s.Criteria with { Modes = n, BarStressFraction = f, LeastBucklingFactor = f } },
        (s, f, n) => s with { Situations = [Storm with { Actions = [f * new SelfWeight(), f * Wind] }] },
        (s, f, n) => s with { Situations = [Storm with { Actions = [new ImposedLoad { Name = "people", On = "top", Down = 1e3.Newtons * f, AlongX = 1e3.Newtons * f }] }] },
        (s, f, n) => s with { Situations = [Storm with { Actions = [Wind with { ForceCoefficient = f, GustEffectFactor = 1 / f }, new SelfWeight()] }] },
        (s, f, n) => s with { Situations = [Storm with { Actions = [Wind with { Profile = new PowerLawWind { SpeedIs = WindSpeedBasis.GustSpeed, ReferenceSpeed = 30.MetersPerSecond * f, ReferenceHeight = 10.Meters / f, Exponent = 0.16 } }] }] },
    ];

    private static readonly double[] extremes = [0, -1, 1, 1e-300, 1e90, -1e90, 1e-90];

    private static readonly Gen<double> factor = Gen.Frequency(
        (6, Gen.Double[-1, 1].Select(p => Math.Pow(10, p))), (3, Gen.Double[-12, 12].Select(p => Math.Pow(10, p))),
        (1, Gen.Int[0, 6].Select(i => extremes[i])));

    private static readonly Gen<int> count = Gen.Frequency((6, Gen.Int[1, 9]), (1, Gen.Int), (1, Gen.Int[-3, 3]), (1, Gen.Int[10, 500]));

    private static readonly Gen<(int Index, double Factor, int Count)[]> changes =
        Gen.Select(Gen.Int[0, mutations.Length - 1], factor, count).Array[1, 3];

    /// <summary>Small statues with a few things changed, most of them to something possible.</summary>
    internal static Gen<SmallStatue> Statues { get; } = changes.Select(Changed);

    [Fact]
    public void Every_description_gives_numbers_or_problems()
    {
        int sheets = 0, refused = 0;
        changes.Sample(list =>
        {
            SmallStatue statue = Changed(list);
            CheckSheet sheet;
            try
            {
                sheet = statue.Check();
            }
            catch (InvalidStatueException e)
            {
                Interlocked.Increment(ref refused);
                return e.Problems.Count > 0 && e.Problems.All(p => p.Path.Length > 0 && p.Message.Length > 0 && p.Hint.Length > 0);
            }
            Interlocked.Increment(ref sheets);
            return sheet.Results.All(line => double.IsFinite(line.Value)) && sheet.Checks.All(IsSound)
                && !sheet.Print(SheetForm.Everything).Contains("NaN");
        }, iter: 140);
        Assert.True(sheets > 18 && refused > 18, $"{sheets} sheets, {refused} refused");
    }

    private static SmallStatue Changed((int Index, double Factor, int Count)[] list)
    {
        SmallStatue statue = Good;
        foreach ((int index, double f, int n) in list)
        {
            try
            {
                statue = mutations[index](statue, f, n);
            }
            catch (ArgumentException)
            {
                // The quantities refuse what is not a number where it is written, before there is a statue.
            }
        }
        return statue;
    }

    private static bool IsSound(StatueFrame.Checks.Check check) =>
        double.IsFinite(check.Demand ?? 0) && double.IsFinite(check.Capacity ?? 0) && !double.IsNaN(check.Utilization ?? 0);

    private static AirConditions Air(double f) => new()
    {
        Temperature = (10 * f).DegreesCelsius,
        Humidity = RelativeHumidity.FromPercent(70 * f),
        SulfurDioxide = AirConditions.Deposition(10 * f),
        Chloride = AirConditions.Deposition(60 * f),
    };

    private static int Of3(int n) => (n & 0xFF) % 3;

    private static SmallStatue Tower(SmallStatue s, Func<Tower, Tower> change) => s.With(t => t with { Tower = change(t.Tower) });

    private static SmallStatue Skin(SmallStatue s, Func<Skin, Skin> change) => s.With(t => t with { Skin = change(t.Skin!) });

    private static SmallStatue First(SmallStatue s, Func<EvenRing, EvenRing> change) =>
        s.With(t => t with { Standoffs = t.Standoffs.With(0, change(t.Standoffs[0] as EvenRing ?? Ring("base"))) });

    private static SaddleSlide Slide(double f, int n) => (n & 3) switch
    {
        0 => SaddleSlide.AlongBar,
        1 => SaddleSlide.AlongAxis,
        2 => SaddleSlide.AlongSkin,
        _ => SaddleSlide.Along(1, f, 0),
    };

    private static Material Metal(double f, int n) => (n & 3) switch
    {
        0 => StructuralSteel.S355 with { YoungsModulus = 210.Gigapascals * f, ShearModulus = 80.Gigapascals * f },
        1 => StructuralSteel.S355 with { Density = 7850.KilogramsPerCubicMeter * f },
        2 => StructuralSteel.S355 with { YieldStrength = 355.Megapascals * f, UltimateStrength = 500.Megapascals * f },
        _ => StructuralSteel.S355 with { ShearModulus = 80.Gigapascals * f },
    };
}
