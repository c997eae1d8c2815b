using StatueFrame.Analysis;

namespace StatueFrame.Tests.Analyses;

/// <summary>
/// Order of magnitude: a hollow copper figure about 46 m tall over a slender wrought-iron lattice, one limb raised, in a
/// wind of 140 km/h. All dimensions are invented, and were not fitted to the movement.
/// </summary>
public class TallFigureTests
{
    private const double Speed = 140 / 3.6;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("sway at the body of a 46 m copper figure on a slender iron lattice, wind 140 km/h", "order of magnitude known in the trade", 100, "mm", 1, () => Sway("body"), ValueKind.CommonPracticeNoSource),
        new("sway at the tip of its raised limb", "order of magnitude known in the trade", 180, "mm", 1, () => Sway("tip"), ValueKind.CommonPracticeNoSource),
        new("tip over body", "order of magnitude known in the trade", 1.8, "-", 0.34, () => Sway("tip") / Sway("body"), ValueKind.CommonPracticeNoSource),
    ];

    private static readonly Lazy<Response> response = new(() => StatueModel.Build(Figure).Respond(new Situation
    {
        Name = "gale",
        LimitState = LimitState.Service,
        Actions = [new SelfWeight(), new WindAction
        {
            Profile = new TableWind { SpeedIs = WindSpeedBasis.GustSpeed, Rows = [new WindTableRow(10.Meters, Speed.MetersPerSecond, null)] },
            ForceCoefficient = 1.3, GustEffectFactor = 1,
        }],
    }));

    private static double Sway(string point) => response.Value.GreatestSway(point).Sway.Millimeters;

    [Fact]
    public void Half_and_double_bound_the_sways()
    {
        Assert.InRange(Sway("body"), 50, 200);
        Assert.InRange(Sway("tip"), 90, 360);
        Assert.InRange(Sway("tip") / Sway("body"), 1.4, 2.4);
    }

    private static Statue Figure
    {
        get
        {
            SkinStation Station(double z, double a, double b) => new() { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = a.Meters, WidthY = b.Meters } };
            var bar = new Standoff { Section = new FlatBar(80.Millimeters, 12.Millimeters), Material = WroughtIron.Puddled, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid };
            var panel = new LatticeSegment
            {
                Legs = new AngleBar(220.Millimeters, 24.Millimeters),
                Braces = new AngleBar(90.Millimeters, 10.Millimeters),
                Material = WroughtIron.Puddled,
                ConnectionMassFraction = 0.15,
            };
            return new Statue
            {
                Name = "tall figure",
                Tower = new Tower
                {
                    Levels = [.. Enumerable.Range(0, 13).Select(i => new TowerLevel($"L{i}", (2.75 * i).Meters) { Plan = TowerPlan.Square((4.6 - 0.15 * i).Meters) })],
                    Segments = [.. Enumerable.Repeat<TowerSegment>(panel, 12)],
                },
                Skin = new Skin
                {
                    Material = Copper.SoftR220,
                    Thickness = 2.4.Millimeters,
                    FoldFactor = 1.5,
                    ArmatureMass = 15.KilogramsPerSquareMeter,
                    Stations = [Station(0, 10.5, 10), Station(12, 9.5, 9), Station(24, 9, 7.5), Station(28, 7, 6), Station(34, 4.5, 4.5)],
                    BandEdges = [.. Enumerable.Range(0, 12).Select(i => (2.75 * i).Meters), 34.Meters],
                },
                Standoffs = [.. Enumerable.Range(1, 12).Select(i => new EvenRing { Level = $"L{i}", Band = i, Rise = (-1).Meters, Count = 24, Lay = 45.Degrees, Length = 1.6.Meters, Standoff = bar })],
                Limbs =
                [
                    new Limb
                    {
                        Name = "arm", From = "L10", Heading = 90.Degrees, Inclination = 75.Degrees, Root = Point3.FromMeters(0, 1.2, 0),
                        Tower = new Tower
                        {
                            Levels = [.. Enumerable.Range(0, 8).Select(i => new TowerLevel($"A{i}", (2.7 * i).Meters) { Plan = TowerPlan.Square((1.6 - 0.1 * i).Meters) })],
                            Segments = [.. Enumerable.Repeat<TowerSegment>(panel with { Legs = new AngleBar(110.Millimeters, 12.Millimeters), Braces = new AngleBar(60.Millimeters, 7.Millimeters) }, 7)],
                        },
                        Skin = new Skin
                        {
                            Material = Copper.SoftR220, Thickness = 2.4.Millimeters, FoldFactor = 1.3, ArmatureMass = 12.KilogramsPerSquareMeter,
                            Stations = [Station(4, 3.2, 3.2), Station(12, 2.6, 2.6), Station(19, 2.2, 2.2)],
                            BandEdges = [4.Meters, 6.75.Meters, 9.45.Meters, 12.15.Meters, 14.85.Meters, 19.Meters],
                        },
                        Standoffs = [.. Enumerable.Range(2, 5).Select(i => new EvenRing { Level = $"A{i}", Band = i - 1, Count = 12, Lay = 30.Degrees, Length = 0.7.Meters, Standoff = bar with { Section = new FlatBar(50.Millimeters, 10.Millimeters) } })],
                    },
                ],
                Points = [new NamedPoint("body", "L12"), new NamedPoint("tip", "arm/A7")],
            };
        }
    }
}
