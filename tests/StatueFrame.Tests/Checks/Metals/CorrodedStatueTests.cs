using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Metals;

public class CorrodedStatueTests
{
    [Fact]
    public void No_time_changes_nothing() => Assert.Equal(HeronMetals.Statue, HeronMetals.Statue.Corroded(0.Years365));

    [Fact]
    public void Every_face_loses_its_own_layer()
    {
        Statue later = HeronMetals.Statue.Corroded(50.Years365);
        double copper = CorrosionLaw.TimeFactor(50, 0.667), steel = 37.5e-6 * CorrosionLaw.TimeFactor(50, 0.523);
        Assert.Equal(2.4e-3 - 4.2e-6 * copper - 0.95e-6 * copper, later.Skin!.Thickness.Meters, 1e-12);
        var legs = (AngleBar)((LatticeSegment)later.Tower.Segments[0]).Legs;
        Assert.Equal(0.080 - 2 * steel, legs.LongLeg.Meters, 1e-12);
        Assert.Equal(0.008 - 2 * steel, legs.Thickness.Meters, 1e-12);
        var tube = (Tube)((MemberSegment)later.Tower.Segments[2]).Section;
        Assert.Equal(0.3 - 2 * steel, tube.OuterDiameter.Meters, 1e-12);
        Assert.Equal(0.008 - steel, tube.Wall.Meters, 1e-12);
        Assert.Equal(0.012 - 2 * steel, ((EvenRing)later.Standoffs[1]).Standoff.Section.Thickness.Meters, 1e-12);
        Assert.Equal(HeronMetals.Statue.Limbs[0].Tower, later.Limbs[0].Tower);
        Assert.Equal("heron, 50 years old", later.Name);
        Assert.Empty(later.FindProblems());
    }

    [Fact]
    public void Going_there_in_two_steps_takes_no_more() => Gen.Select(Gen.Double[0.1, 60], Gen.Double[0.1, 60], Gen.Double[0, 40]).Sample((a, b, coat) =>
    {
        Statue start = HeronMetals.Statue with { Corrosion = HeronMetals.Sea with { SkinCoating = coat.Years365, TowerCoating = coat.Years365 } };
        Statue two = start.Corroded(a.Years365).Corroded(b.Years365), one = start.Corroded((a + b).Years365);
        Assert.Equal(one.Skin!.Thickness.Meters, two.Skin!.Thickness.Meters, 1e-12);
        Assert.Equal(Leg(one), Leg(two), 1e-12);
        Assert.Equal(one.Name, two.Name);
    }, iter: 30);

    [Fact]
    public void Mass_falls_with_the_years()
    {
        double[] masses = [.. new[] { 0, 1, 10, 50, 90 }.Select(years => StatueModel.Build(HeronMetals.Statue.Corroded(years.Years365)).Masses.Total.Kilograms)];
        Assert.Equal(masses.OrderDescending(), masses);
        Assert.Equal(masses.Distinct(), masses);
    }

    [Fact]
    public void Worse_air_leaves_less()
    {
        double last = double.PositiveInfinity;
        foreach (Corrosivity category in Enum.GetValues<Corrosivity>())
        {
            double leg = Leg((HeronMetals.Statue with { Corrosion = new Corrosion { Air = Atmosphere.Of(category, CategoryValue.Lower) } }).Corroded(10.Years365));
            Assert.True(leg < last);
            last = leg;
        }
    }

    [Fact]
    public void A_coating_keeps_the_air_off_for_its_life()
    {
        Statue coated = HeronMetals.Statue with { Corrosion = HeronMetals.Sea with { TowerCoating = 15.Years365 } };
        Assert.Equal(0.080, Leg(coated.Corroded(15.Years365)), 1e-12);
        Assert.Equal(Leg(HeronMetals.Statue.Corroded(5.Years365)), Leg(coated.Corroded(20.Years365)), 1e-12);
    }

    [Fact]
    public void What_is_worn_through_is_said()
    {
        Statue bad = HeronMetals.Statue with { Corrosion = new Corrosion { Air = Atmosphere.Of(Corrosivity.CX) } };
        var e = Assert.Throws<InvalidStatueException>(() => bad.Corroded(100.Years365));
        Assert.Contains("worn through", e.Message);
        Assert.Throws<InvalidStatueException>(() => (HeronMetals.Statue with { Corrosion = null }).Corroded(1.Years365));
        Assert.Throws<InvalidStatueException>(() => HeronMetals.Statue.Corroded((-1).Years365));
    }

    [Fact]
    public void The_sheet_finds_the_contacts_and_the_losses()
    {
        CheckSheet sheet = HeronMetals.Statue.Check(HeronMetals.Criteria, HeronMetals.Storm);
        Check saddle = Of(sheet, "metals.galvanic", "saddles of trunk");
        Assert.Equal(Verdict.NotChecked, saddle.Verdict);
        Assert.Equal(Verdict.Pass, Of(sheet, "metals.galvanic", "fixings of trunk").Verdict);
        Assert.Equal(Verdict.NotChecked, Of(sheet, "metals.galvanic", "fixings of fin").Verdict);
        Assert.Equal(Verdict.NotChecked, Of(sheet, "metals.galvanic", "root of fin").Verdict);
        Check skin = Of(sheet, "metals.loss", "skin of trunk");
        Assert.Equal(5.15e-6 * CorrosionLaw.TimeFactor(50, 0.667), skin.Demand!.Value, 1e-12);
        Assert.Equal(0.48e-3, skin.Capacity!.Value, 1e-12);
        Assert.Equal(Verdict.NotChecked, Of(sheet, "metals.loss", "tower members of fin").Verdict);

        Corrosion isolated = HeronMetals.Sea with
        {
            Contacts = [new() { Joint = ContactJoint.Saddle, Isolation = Isolation.Ptfe }, new() { Joint = ContactJoint.LimbRoot, Body = "fin", Isolation = Isolation.None }],
        };
        sheet = (HeronMetals.Statue with { Corrosion = isolated }).Check(HeronMetals.Criteria, HeronMetals.Storm);
        Assert.Equal(Verdict.Pass, Of(sheet, "metals.galvanic", "saddles of trunk").Verdict);
        Assert.Equal(Verdict.Pass, Of(sheet, "metals.galvanic", "saddles of fin").Verdict);
        Assert.Equal(Verdict.Fail, Of(sheet, "metals.galvanic", "root of fin").Verdict);
    }

    [Fact]
    public void Armature_and_rivets_touch_and_weather_too()
    {
        Statue armed = HeronMetals.Statue with
        {
            Skin = HeronMetals.Statue.Skin! with
            {
                Armature = new Armature { Bar = new FlatBar(30.Millimeters, 6.Millimeters), Material = WroughtIron.Puddled, Spacing = 0.5.Meters, PanelLength = 0.5.Meters, Span = 0.8.Meters },
                SheetSeam = new RivetedSeam { Rivet = Rivet.Of(5.Millimeters, Copper.HalfHardR240), Pitch = 25.Millimeters, EdgeDistance = 15.Millimeters },
            },
            Corrosion = HeronMetals.Sea with { Contacts = [new() { Joint = ContactJoint.Armature, Isolation = Isolation.None }] },
        };
        CheckSheet sheet = armed.Check(HeronMetals.Criteria, HeronMetals.Storm);
        Assert.Equal(Verdict.Fail, Of(sheet, "metals.galvanic", "armature of trunk, copper").Verdict);
        Assert.Equal(Verdict.Pass, Of(sheet, "metals.galvanic", "armature of trunk, puddled").Verdict);
        Assert.Equal(Verdict.Pass, Of(sheet, "metals.galvanic", "seams of trunk").Verdict);
        double iron = 37.5e-6 * CorrosionLaw.TimeFactor(50, 0.523);
        Assert.Equal(2 * iron, Of(sheet, "metals.loss", "armature of trunk").Demand!.Value, 1e-12);
        Assert.Equal(0.006 - 2 * iron, ((FlatBar)armed.Corroded(50.Years365).Skin!.Armature!.Bar).Thickness.Meters, 1e-12);
    }

    [Fact]
    public void What_is_not_described_is_not_checked()
    {
        CheckSheet sheet = (HeronMetals.Statue with { Corrosion = null }).Check(HeronMetals.Criteria, HeronMetals.Storm);
        Assert.Equal(["metals.galvanic", "metals.loss"], sheet.NotChecked.Where(c => c.Family == "metals").Select(c => c.Id).Order());
    }

    [Fact]
    public void Mistakes_in_the_description_are_listed()
    {
        Statue wrong = HeronMetals.Statue with
        {
            Corrosion = new Corrosion
            {
                Air = new Atmosphere(),
                TowerCoating = (-1).Years365,
                Contacts = [new() { Joint = ContactJoint.Saddle, Isolation = Isolation.None, Body = "tail" }, new() { Joint = ContactJoint.Other, Isolation = Isolation.None }],
            },
        };
        string[] paths = [.. wrong.FindProblems().Select(p => p.Path)];
        Assert.Equal(["Corrosion.Air.Category", "Corrosion.TowerCoating", "Corrosion.Contacts[0].Body", "Corrosion.Contacts[1].Body", "Corrosion.Contacts[1].First"], paths);
        Assert.All(wrong.FindProblems(), p => Assert.NotEmpty(p.Hint));
    }

    private static double Leg(Statue statue) => ((AngleBar)((LatticeSegment)statue.Tower.Segments[0]).Legs).LongLeg.Meters;

    private static Check Of(CheckSheet sheet, string id, string where) => sheet.Checks.First(c => c.Id == id && c.Where.StartsWith(where, StringComparison.Ordinal));
}
