#:project ../../src/StatueFrame/StatueFrame.csproj

// A first statue: an 8 m copper figure on a tapered steel mast. All data are invented.

using StatueFrame;
using UnitsNet;

var bar = new Standoff
{
    Section = new FlatBar(40.Millimeters, 14.Millimeters), Material = StainlessSteel.Grade316L,
    TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned,
};
var ring = new EvenRing { Level = "1 m", Count = 24, Lay = 30.Degrees, Length = 0.25.Meters, Standoff = bar };
var statue = new Statue
{
    Name = "Study for a heron",
    Tower = Tower.Mast(z => new Tube(0.32.Meters - 0.02 * z, 10.Millimeters), StructuralSteel.S355, 0.Meters, 1.Meters, 3.Meters, 5.Meters, 7.Meters),
    Skin = new Skin
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.Millimeters,
        Stations = [Station(0, 1.6, 1.4), Station(4, 1.8, 1.2), Station(8, 0.5, 0.4)],
        BandEdges = [0.Meters, 2.Meters, 4.Meters, 6.Meters, 8.Meters],
    },
    Standoffs = ring.OnLevels("1 m", "3 m", "5 m", "7 m"),
    Points = [new NamedPoint("tip", "band 4")],
};

// What acts, at its characteristic values: the basis of design makes the situations of it.
var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 25.MetersPerSecond, Terrain = TerrainCategory.II },
    ForceCoefficient = 1.2,
    GustEffectFactor = 1.4,
};
// Behind bare sheet only a fine model of the skin knows what each bar carries.
var criteria = new Criteria { Sway = [new SwayLimit("tip", 40.Millimeters)], BarStressFraction = 1 / 1.1, DesignLife = 100, Fine = new FineMesh { Size = 0.1.Meters } };
Console.WriteLine(statue.Check(criteria, new CharacteristicActions { Variable = [wind] }));

SkinStation Station(double z, double x, double y) => SkinStation.Ellipse(z.Meters, x.Meters, y.Meters);
