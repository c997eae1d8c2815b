using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Works.Tests.Parts;

public class PartListTests
{
    private static readonly PartList List = PartList.Of(Heron.Statue);

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("flange ring 1000×30 mm round a tube of 800 mm: mass", "closed form ρ t π/4 (D² − d²)", 7850 * 0.03 * Math.PI / 4 * (1 - 0.64), "kg", 1e-9, () => FlangeOf(new Tube(0.8.Meters, 0.015.Meters)), ValueKind.IndependentComputation),
        new("bolt M20×60 with nut and two washers: mass", "common practice, no source", 0.295, "kg", 0.03, () => new Bolt { Diameter = 20.Millimeters, Grade = BoltGrade.Class88 }.SetMass, ValueKind.CommonPracticeNoSource),
    ];

    private static double FlangeOf(Tube tube)
    {
        var member = new MemberSegment { Section = tube, Material = StructuralSteel.S355 };
        var joint = new FlangeJoint { Bolt = new Bolt { Diameter = 24.Millimeters, Grade = BoltGrade.Class88 }, Count = 20, BoltCircle = 0.9.Meters, OuterDiameter = 1.Meters, Thickness = 30.Millimeters };
        return 0.5 * (joint.Mass(member) - 20 * joint.Bolt.SetMass);
    }

    [Fact]
    public void Parts_that_are_in_the_model_weigh_what_it_weighs()
    {
        Assert.Equal(List.ModelMass.Kilograms, List.MassInModel.Kilograms, 1e-6);
        PartList cut = PartList.Of(Heron.Statue, [new BodySheets("trunk", Heron.Sheets)]);
        Assert.Equal(cut.ModelMass.Kilograms, cut.MassInModel.Kilograms, 1e-6);
        PartList tube = PartList.Of(Heron.Tube(3, 2));
        Assert.Equal(tube.ModelMass.Kilograms, tube.Mass.Kilograms, 1e-6);
    }

    [Fact]
    public void Every_piece_of_the_model_is_on_the_list_once()
    {
        Assert.Equal(Heron.Model.BarCount, Count(PartKind.Standoff));
        Assert.Equal(Heron.Model.Rings.Sum(r => r.Ring.Brackets.Count()), Count(PartKind.Bracket));
        Assert.Equal(Heron.Model.LatticeSegments.Sum(s => s.Members.Count(m => m.Role == LatticeRole.Leg)), Count(PartKind.Leg));
        Assert.Equal(Heron.Model.LatticeSegments.Sum(s => s.Members.Count(m => m.Role == LatticeRole.Brace)), Count(PartKind.Brace));
        Assert.Equal(Heron.Statue.HoldDown!.Bars.Count, Count(PartKind.Anchor));
        Assert.Equal(Heron.Statue.HoldDown.Plates.Count, Count(PartKind.Plate));
        Assert.Equal(List.Parts.Count, List.Parts.Select(p => (p.Kind, p.Where)).Distinct().Count());

        static int Count(PartKind kind) => List.Parts.Count(p => p.Kind == kind);
    }

    /// <summary>Straps by the length of armature, each with its rivets; gussets two a member.</summary>
    [Fact]
    public void Straps_and_gussets_are_listed_with_their_rivets()
    {
        Skin skin = Heron.Statue.Skin!;
        SaddleStrap strap = skin.Armature!.Straps!;
        foreach (Part straps in List.Parts.Where(p => p.Kind == PartKind.Strap && !p.Where.Contains('/')))
        {
            Part armature = List.Parts.Single(p => p.Kind == PartKind.Armature && $"{p.Where}, straps" == straps.Where);
            Assert.Equal((int)Math.Ceiling(armature.Length!.Value.Meters / strap.Distance.Meters - 1e-9), straps.Count);
            Assert.Equal(strap.Rivets * straps.Count, List.Parts.Single(p => p.Kind == PartKind.Rivet && p.Where == straps.Where).Count);
            double each = strap.Width.Meters * strap.Thickness.Meters * straps.Length!.Value.Meters * strap.Material.Density.KilogramsPerCubicMeter;
            Assert.Equal(each * straps.Count, straps.Mass!.Value.Kilograms, 1e-9);
        }
        Assert.Contains(List.Parts, p => p.Kind == PartKind.Strap);
        Assert.All(List.Parts.Where(p => p.Kind == PartKind.JointPlate), plate => Assert.Contains(List.Parts, p => p.Kind is PartKind.Bolt or PartKind.Rivet && p.Where == plate.Where));
    }

    [Fact]
    public void Like_pieces_carry_one_mark_and_unlike_ones_another()
    {
        Part[] pieces = [.. List.Parts.Where(p => p.Length is not null && p.Kind is not (PartKind.Armature or PartKind.Core))];
        foreach (IGrouping<string, Part> mark in pieces.GroupBy(p => p.Mark))
            Assert.Single(mark.Select(p => (p.Kind, p.Size, p.Material, Math.Round(p.Length!.Value.Millimeters))).Distinct());
        Assert.Equal(pieces.Select(p => p.Mark).Distinct().Count(), pieces.Select(p => (p.Kind, p.Size, p.Material, Math.Round(p.Length!.Value.Millimeters))).Distinct().Count());
    }

    [Fact]
    public void Totals_add_up_and_carbon_goes_with_mass()
    {
        Assert.Equal(List.Mass.Kilograms, List.Totals.Sum(t => t.Mass.Kilograms), 1e-6);
        MaterialTotal copper = List.Totals.First(t => t.Material.StartsWith("copper", StringComparison.Ordinal));
        Assert.Equal(2.71 * copper.Mass.Kilograms, copper.Carbon!.Value.Kilograms, 1e-6);
    }

    [Fact]
    public void The_model_carries_the_mass_of_its_flanges()
    {
        Statue without = Heron.Statue with { Tower = Heron.Statue.Tower with { Segments = [.. Heron.Statue.Tower.Segments.Select(s => s is MemberSegment m ? m with { LowerJoint = null } : s)] } };
        double flanges = List.Parts.Where(p => p.Kind == PartKind.Flange || (p.Kind == PartKind.Bolt && p.InModel)).Sum(p => p.Mass!.Value.Kilograms);
        Assert.True(flanges > 1000);
        Assert.Equal(flanges, (Heron.Model.Masses.Total - StatueModel.Build(without).Masses.Total).Kilograms, 1e-6);
    }

    [Fact]
    public void An_armature_heavier_than_described_is_said()
    {
        Statue light = Heron.Statue with { Skin = Heron.Statue.Skin! with { ArmatureMass = 5.KilogramsPerSquareMeter } };
        Assert.Contains(PartList.Of(light).Notes, n => n.Contains("too light"));
    }

    [Fact]
    public void Names_cannot_become_markup_and_the_table_keeps_its_columns()
    {
        Statue named = Heron.Tube(2, 2) with { Name = "<script>alert(1)</script>", Fittings = [new Fitting { Name = "lamp, \"old\"", On = "T1", Mass = 3.Kilograms }] };
        PartList list = PartList.Of(named);
        Assert.DoesNotContain("<script", list.ToHtml());
        using var reader = new CsvHelper.CsvReader(new StringReader(list.ToCsv()), System.Globalization.CultureInfo.InvariantCulture);
        Assert.True(reader.Read() && reader.ReadHeader());
        int rows = 0;
        while (reader.Read())
        {
            Assert.Equal(reader.HeaderRecord!.Length, reader.Parser.Count);
            rows++;
        }
        Assert.Equal(list.Parts.Count, rows);
    }

    [Fact]
    public void The_list_stands_at_the_end_of_a_package()
    {
        Statue tube = Heron.Tube(2, 2) with { Fittings = [new Fitting { Name = "<lamp>", On = "T1", Mass = 3.Kilograms }] };
        Reporting.CalculationPackage package = Reporting.CalculationPackage.Of(tube, new Criteria(), new Situation { Name = "calm", Actions = [new SelfWeight()] }) with { Appendices = [PartList.Of(tube).ToAppendix()] };
        string html = package.ToHtml();
        Assert.Contains("Appendix: Part list", html);
        Assert.Contains("tube 400×10 mm", html);
        Assert.DoesNotContain("<lamp>", html);
        Reporting.Appendix own = List.ToAppendix();
        Assert.All(own.Rows, row => Assert.Equal(own.Heads.Count, row.Count));
        Assert.Equal(List.Parts.Where(p => p.Kind != PartKind.Allowance).Select(p => p.Mark).Distinct().Count(), own.Rows.Count);
    }

    [Fact]
    public void Sheets_of_no_body_are_refused_by_name() =>
        Assert.Contains("trunk", Assert.Throws<InvalidStatueException>(() => PartList.Of(Heron.Statue, [new BodySheets("trnk", Heron.Sheets)])).Message);
}
