#:project ../../src/StatueFrame.Reporting/StatueFrame.Reporting.csproj

// From the tables of a survey to a printed calculation package: an 8 m copper figure on a tapered steel mast. The tables stand
// here as text; StatueTable.Load reads them from files. All data are invented.

using StatueFrame;
using StatueFrame.Reporting;
using UnitsNet;

const string outlines = """
    elevation [m],outline.widthX [m],outline.widthY [m],thickness [mm]
    0,1.60,1.40,2.5
    2,1.72,1.31,2.5
    4,1.80,1.20,
    6,1.21,0.88,
    8,0.50,0.40,
    """;
const string rows = """
    level;count;lay [°];length [m];standoff.section.thickness [mm]
    1 m;24;30;0.25;14
    3 m;24;30;0.25;14
    5 m;24;30;0.25;14
    7 m;24;30;0.25;14
    """;

var flat = new Standoff
{
    Section = new FlatBar(40.Millimeters, 14.Millimeters), Material = StainlessSteel.Grade316L,
    TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned,
};
var statue = new Statue
{
    Name = "Study for a heron",
    Tower = Tower.Mast(z => new Tube(0.32.Meters - 0.02 * z, 10.Millimeters), StructuralSteel.S355, 0.Meters, 1.Meters, 3.Meters, 5.Meters, 7.Meters),
    Skin = new Skin
    {
        Material = Copper.HalfHardR240, Thickness = 2.Millimeters,
        Stations = StatueTable.Read(outlines, like: SkinStation.Ellipse(0.Meters, 1.Meters, 1.Meters)),
        BandEdges = [0.Meters, 2.Meters, 4.Meters, 6.Meters, 8.Meters],
    },
    Standoffs = [.. StatueTable.Read(rows, like: new EvenRing { Level = "1 m", Count = 24, Standoff = flat })],
    Points = [new NamedPoint("tip", "band 4")],
};
var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 25.MetersPerSecond, Terrain = TerrainCategory.II },
    ForceCoefficient = 1.2, GustEffectFactor = 1.4,
};
var criteria = new Criteria { Sway = [new SwayLimit("tip", 40.Millimeters)], BarStressFraction = 1 / 1.1, DesignLife = 100 };
ValueList<Situation> situations = criteria.Basis.Combine(new CharacteristicActions { Variable = [wind] });
CheckSheet sheet = statue.Check(criteria, situations.AsSpan());
Console.WriteLine(sheet);

string folder = Directory.CreateDirectory(args.Length > 0 ? args[0] : Path.Combine(Path.GetTempPath(), "study-for-a-heron")).FullName;
new CalculationPackage { Statue = statue, Situations = situations, Criteria = criteria, Sheet = sheet, Revision = "A", Reference = "Saltmere harbor, invented" }
    .Save(Path.Combine(folder, "study.html"));
Console.WriteLine("study.html is printed from a browser.");
