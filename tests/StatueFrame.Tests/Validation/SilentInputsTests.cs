using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using StatueFrame.Tests.Checks.Catalogue;

namespace StatueFrame.Tests.Validation;

/// <summary>Every number of a description is looked at: changed, it is refused or changes what some check says.</summary>
public partial class SilentInputsTests
{
    /// <summary>Members that no check needs, each with its reason.</summary>
    private static readonly Dictionary<string, string> needless = new()
    {
        ["criteria.base.phiConcrete"] = "of American rules, which are not in use",
        ["criteria.skin.allowedDent"] = "no load that dents is given",
        ["criteria.skin.maintenancePatch"] = "no load that dents is given",
        ["statue.foundation.material.poissonRatio"] = "a block is stiff",
        ["statue.foundation.material.thermalExpansion"] = "the ground keeps its temperature",
        ["statue.foundation.material.youngsModulus"] = "a block is stiff",
        ["statue.pedestal.courses[].material.poissonRatio"] = "courses are pressed and bent alone",
        ["statue.pedestal.courses[].material.thermalExpansion"] = "a pedestal is free to grow",
        ["statue.skin.armature.straps.rivet.ultimateStrength"] = "riveted copper goes by its yield strength",
        ["statue.skin.sheetSeam.rivet.ultimateStrength"] = "riveted copper goes by its yield strength",
        ["statue.tower.segments[].lowerJoint.preTension"] = "bolts of so small a mast are pulled too little to tire",
    };

    /// <summary>A small statue with whatever can be described of every part.</summary>
    private static StatueDocument Whole()
    {
        SmallStatue whole = SmallWhole.Of(wind: 32, slides: true);
        static Bolt M(double diameter) => new() { Diameter = diameter.Millimeters, Grade = BoltGrade.Class88 };
        var gusset = new JointPlate { Thickness = 10.Millimeters, Width = 120.Millimeters, Material = StructuralSteel.S355, FreeLength = 80.Millimeters, Eccentricity = 20.Millimeters, Throat = 5.Millimeters, WeldLength = 200.Millimeters };
        var frame = new LevelFrame
        {
            Horizontals = new RectangularTube(200.Millimeters, 200.Millimeters, 12.Millimeters),
            Throat = 6.Millimeters,
            PlanBracing = new AngleBar(60.Millimeters, 6.Millimeters),
            Material = StructuralSteel.S355,
            PlanBracingJoint = new MemberConnection { Bolt = M(16), InLine = 2, EndDistance = 35.Millimeters, EdgeDistance = 25.Millimeters, Pitch = 50.Millimeters, Plate = gusset },
        };
        DetailCategory detail = new("25", 25.Megapascals, false, Source.User);
        var straps = new SaddleStrap { Distance = 0.25.Meters, Width = 40.Millimeters, Thickness = 2.Millimeters, Material = Copper.HalfHardR240, Rivet = Rivet.Of(4.Millimeters, Copper.HalfHardR240), Reach = 15.Millimeters, FatigueDetail = detail };
        return new StatueDocument
        {
            Statue = whole.Statue with
            {
                Tower = whole.Statue.Tower with
                {
                    Levels = [.. whole.Statue.Tower.Levels.Select(level => level.Plan is null || level.Name == "base" ? level : level with { Frame = frame })],
                    Segments = [.. whole.Statue.Tower.Segments.Select(segment => segment switch
                    {
                        LatticeSegment lattice => lattice with { BraceJoint = lattice.BraceJoint! with { Plate = gusset } },
                        MemberSegment { LowerJoint: FlangeJoint flange } mast => mast with { LowerJoint = flange with { Weld = new WeldedTubeJoint { Throat = 5.Millimeters }, PreTension = 5.Kilonewtons } },
                        _ => segment,
                    })],
                },
                Fittings = [.. whole.Statue.Fittings.Select(fitting => fitting with { WindArea = 0.3.SquareMeters, Fixing = new FittingFixing { Bolt = M(12), Count = 4, Lever = 0.2.Meters, Reach = 0.15.Meters } })],
                Limbs = [],
                Points = [.. whole.Statue.Points.Where(point => !point.On.Contains('/'))],
                Skin = whole.Statue.Skin! with { FatigueDetail = detail, Armature = whole.Statue.Skin.Armature! with { FatigueDetail = detail, Straps = straps } },
                Standoffs = [.. whole.Statue.Standoffs.Cast<EvenRing>().Select(ring => ring with
                {
                    Rise = 0.3.Meters,
                    Length = 0.6.Meters,
                    Bracket = new Bracket { Section = new RectangularTube(100.Millimeters, 50.Millimeters, 4.Millimeters), Material = StructuralSteel.S355, TowerFixity = EndFixity.Rigid, Throat = 4.Millimeters },
                    Standoff = ring.Standoff with { FatigueDetail = detail, Saddle = ring.Standoff.Saddle! with { Travel = 10.Millimeters, Stop = 2.Kilonewtons } },
                })],
            },
            Criteria = whole.Criteria,
            Situations = [.. whole.Situations, new Situation { Name = "heat", Actions = [1.35 * new SelfWeight(), 1.5 * new TemperatureAction { Name = "sun", SkinChange = 20.Kelvins }] }],
        };
    }

    [Fact]
    public void Every_number_of_a_description_is_looked_at()
    {
        JsonObject root = JsonNode.Parse(StatueFile.Write(Whole()))!.AsObject();
        string before = Said(root)!;
        var silent = new List<string>();
        foreach ((string path, List<JsonValue> values) in Numbers(root))
        {
            bool wasTaken = false, isHeard = false;
            foreach (double factor in (ReadOnlySpan<double>)[0.7, 1.4, 0.2, 5])
            {
                if (isHeard)
                    break;
                JsonObject changed = root.DeepClone().AsObject();
                foreach (JsonValue value in Numbers(changed).First(number => number.Path == path).Values)
                    value.ReplaceWith(Times(value, factor));
                if (Said(changed) is { } said)
                    (wasTaken, isHeard) = (true, said != before);
            }
            if (wasTaken && !isHeard)
                silent.Add(path);
        }
        Assert.Equal(string.Join("\n", needless.Keys.Order()), string.Join("\n", silent.Order()));
    }

    /// <summary>What all checks say, in numbers; null when the description is refused.</summary>
    private static string? Said(JsonObject root)
    {
        try
        {
            return string.Join('\n', StatueFile.Read(root.ToJsonString()).Check().Checks.Select(check => string.Create(CultureInfo.InvariantCulture, $"{check.Id} {check.Where} {check.Verdict} {check.Demand:R} {check.Capacity:R}")));
        }
        catch (Exception e) when (e is StatueFileException or InvalidStatueException)
        {
            return null;
        }
    }

    /// <summary>Numbers and quantities with those that stand in like places of a list.</summary>
    private static List<(string Path, List<JsonValue> Values)> Numbers(JsonObject root)
    {
        var all = new List<(string Path, List<JsonValue> Values)>();
        Walk(root, "");
        return all;

        void Walk(JsonNode? node, string path)
        {
            switch (node)
            {
                case JsonObject members:
                    foreach ((string name, JsonNode? member) in members.ToArray())
                        Walk(member, path.Length > 0 ? $"{path}.{name}" : name);
                    break;
                case JsonArray items:
                    foreach (JsonNode? item in items.ToArray())
                        Walk(item, $"{path}[]");
                    break;
                case JsonValue value when value.GetValueKind() == JsonValueKind.Number || (value.GetValueKind() == JsonValueKind.String && Quantity().IsMatch(value.GetValue<string>())):
                    if (all.FindIndex(number => number.Path == path) is var at and >= 0)
                        all[at].Values.Add(value);
                    else
                        all.Add((path, [value]));
                    break;
            }
        }
    }

    private static JsonNode Times(JsonValue value, double factor)
    {
        if (value.GetValueKind() == JsonValueKind.Number)
        {
            double number = value.GetValue<double>();
            return number == Math.Floor(number) && number > 1 ? (int)Math.Max(1, Math.Round(number * factor)) : number * factor;
        }
        Match match = Quantity().Match(value.GetValue<string>());
        return string.Create(CultureInfo.InvariantCulture, $"{factor * double.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture):R} {match.Groups["unit"].Value}");
    }

    [GeneratedRegex(@"^(?<number>-?[0-9.]+(E[-+]?[0-9]+)?) (?<unit>\S+)$", RegexOptions.ExplicitCapture)]
    private static partial Regex Quantity();
}
