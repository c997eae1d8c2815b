#:project ../../src/StatueFrame.Works/StatueFrame.Works.csproj

// From the crane to the centenary: stages of raising, hold-down bars tightened in order, an inspection taken into the statue, works by
// urgency, a storm against the calculation, the guard's table and a page for the owner. All data are invented.

using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Studies;
using StatueFrame.Works;
using UnitsNet;

StatueDocument document = StatueFile.Load(Path.Combine(Here(), "saltmere-heron.json"));
Statue heron = document.Statue;

// 1. Stages, each in the wind that its duration asks for. The wing comes last: bare, its tubes would swing in vortices and tire.
Console.WriteLine(RaisingStudy.Of(heron, document.Criteria, document.Actions!,
    new RaisingStage { Name = "tower to L14, bare", TowerTo = "L14", CladTo = 0.Meters, WithoutLimbs = ["wing"], Stands = Duration.FromDays(20) },
    new RaisingStage { Name = "all steel but the wing's up, bare", CladTo = 0.Meters, WithoutLimbs = ["wing"], Stands = Duration.FromDays(60) },
    new RaisingStage { Name = "clad to 12 m, no wing yet", CladTo = 12.Meters, WithoutLimbs = ["wing"], Stands = Duration.FromDays(100) }));

// 2. Holes that must meet, and bars that slacken each other.
var chain = new ToleranceChain
{
    Name = "seam of sheets 12 and 13", Fastener = 4.8.Millimeters, Hole = 5.Millimeters, Reaming = 1.Millimeters,
    Links = [new("template of sheet 12", 0.5.Millimeters), new("template of sheet 13", 0.5.Millimeters), new("hammering", 0.8.Millimeters), new("drilling, twice", 0.4.Millimeters)],
};
foreach (StatueFrame.Checks.Check check in chain.Checks())
    Console.WriteLine(check);
Console.WriteLine($"\nTIGHTENING  {TighteningPlan.Of(heron, torqueFactor: 0.14)}");

// 3. Thirty years on: what the inspectors found, and the sheet of the statue as it is.
InspectionRecord record = InspectionRecord.Parse("""
    part,date,condition,thickness_mm,photo,note
    "band 8, bar 3",2057-05-12,Worn,20.1,0812,pitted below the saddle
    "band 9, bar 17",2057-05-12,Failed,,0815,weld at the tower end broken
    band 12,2057-05-13,Worn,2.25,0822,
    "L3-L4, leg 2, bay 1",2057-05-13,Worn,23.2,0830,
    "wing/band 4, bar 6",2057-05-14,Damaged,,0841,bent by a ladder
    band 1,2057-05-14,Sound,2.4,,
    """);
InspectedStatue found = InspectedStatue.Of(heron, record);
Console.WriteLine("\nAS INSPECTED");
foreach (string line in found.Changes.Concat(found.NotTaken))
    Console.WriteLine($"  {line}");
StatueFrame.CheckSheet asIs = (document with { Statue = found.Statue }).Check();
Console.WriteLine($"  {asIs.VerdictText}\n\nWORKS\n{WorkList.Of(record, asIs)}");

// 4. A storm, with the anemometer on a mast of 12 m.
SwayCurve curve = SwayCurve.Of(StatueModel.Build(heron), (WindAction)document.Actions!.Variable[0].Action, new SwayCurveOptions { AnemometerHeight = 12.Meters });
var storm = new StormRecord
{
    Name = "3 November", Point = "tip", TiltLeft = 0.004.Degrees, TiltError = 0.005.Degrees,
    Readings = StormRecord.ParseReadings("""
        time,gust_m_s,sway_mm,error_mm
        02:10,22.4,18,2
        02:20,25.1,23,2
        02:30,28.0,27,2
        02:40,30.2,33,2
        02:50,27.3,25,2
        03:00,24.8,22,2
        """),
};
Console.WriteLine(StormReport.Of(curve, storm));

// 5. Visitors.
VisitorArea stair = VisitorArea.HelicalStair("stair", ["L2", "L6", "L10", "L14"], 0.3.Meters, 1.9.Meters, turns: 6);
Console.WriteLine($"STAIR  {stair.Area.SquareMeters:0.0} m², {stair.Occupancy} people, {stair.ToLoads()[0].Down.Kilonewtons:0.0} kN on each of its {stair.On.Count} levels\n");
Console.WriteLine(ClosingTable.Of(curve, new ClosingRule("platform in the wing", "wing tip", 25.Millimeters), new ClosingRule("stair", "tip", 60.Millimeters)));

// 6. The page for the owner.
var page = new OwnerPage { Sheet = document.Check(), Curve = curve, NextInspection = new DateOnly(2028, 4, 30) };
File.WriteAllText(Path.Combine(Path.GetTempPath(), "saltmere-owner.html"), page.ToHtml());
Console.WriteLine($"FOR THE OWNER\n{page}");

static string Here([System.Runtime.CompilerServices.CallerFilePath] string script = "") => Path.GetDirectoryName(script)!;
