using StatueFrame.Analysis;

namespace StatueFrame.Works.Tests.Keeping;

public class InspectionTests
{
    private const string Head = "part,date,condition,thickness_mm,photo,note\n";

    [Fact]
    public void A_record_is_read_with_quotes_and_holes()
    {
        InspectionRecord record = InspectionRecord.Parse(Head + "\"band 3, bar 7\",2031-05-17,worn,21.4,IMG 12,\"pitted, lee side\"\nband 9,2031-05-18,Sound,,,\n");
        Assert.Equal(2, record.Findings.Count);
        Assert.Equal(21.4, record.Findings[0].Thickness!.Value.Millimeters, 1e-9);
        Assert.Equal("pitted, lee side", record.Findings[0].Note);
        Assert.Null(record.Findings[1].Thickness);
    }

    [Fact]
    public void All_slips_of_a_record_are_told_with_their_lines()
    {
        InvalidStatueException error = Assert.Throws<InvalidStatueException>(() => InspectionRecord.Parse(Head + "band 3,17.5.2031,wrn,-2,,\n,2031-05-17,3,x,,\n"));
        Assert.Equal(6, error.Problems.Count);
        Assert.Contains("line 2", error.Message);
        Assert.Contains("line 3", error.Message);
        Assert.Throws<InvalidStatueException>(() => InspectionRecord.Parse(""));
        Assert.Throws<InvalidStatueException>(() => InspectionRecord.Parse("part,date\n"));
    }

    [Fact]
    public void Nothing_found_changes_nothing()
    {
        InspectedStatue same = InspectedStatue.Of(Heron.Statue, InspectionRecord.Parse(Head + "band 3,2031-05-17,Sound,,,\n"));
        Assert.Equal(Heron.Statue with { Name = same.Statue.Name }, same.Statue);
        Assert.Empty(same.Changes);
    }

    [Fact]
    public void A_bar_measured_at_its_thickness_leaves_the_statue_as_it_was()
    {
        InspectedStatue same = InspectedStatue.Of(Heron.Statue, InspectionRecord.Parse(Head + "\"band 8, bar 3\",2031-05-17,Sound,22,,\n\"wing/band 2, bar 1\",2031-05-17,Sound,20,,\n"));
        Assert.IsType<ExplicitRing>(same.Statue.Standoffs[7]);
        double was = Heron.Model.Modes(2).Modes[1].Frequency.Hertz;
        Assert.Equal(was, StatueModel.Build(same.Statue).Modes(2).Modes[1].Frequency.Hertz, 1e-7 * was);
    }

    [Fact]
    public void What_is_thinner_or_gone_makes_the_statue_softer_and_lighter()
    {
        InspectedStatue found = InspectedStatue.Of(Heron.Statue, InspectionRecord.Parse(Head
            + "\"band 8, bar 3\",2031-05-17,Worn,15,,\n\"band 9, bar 4\",2031-05-17,Failed,,,\nband 12,2031-05-17,Worn,2.1,,\n\"L3-L4, brace a, face 2, bay 1\",2031-05-17,Failed,,,\n\"L5–L6, leg 1, bay 1\",2031-05-17,Worn,20,,\nN20–N21,2031-05-17,Worn,13,,\nwing/band 3,2031-05-17,Worn,2.2,,\n"));
        var model = StatueModel.Build(found.Statue);
        Assert.True(model.Masses.Total < Heron.Model.Masses.Total);
        Assert.Equal(Heron.Model.BarCount - 1, model.BarCount);
        Assert.Contains("brace a, face 2, bay 1", ((LatticeSegment)found.Statue.Tower.Segments[3]).Missing);
        Assert.Equal(20, ((AngleBar)((LatticeSegment)found.Statue.Tower.Segments[5]).Legs).Thickness.Millimeters, 1e-6);
        Assert.Equal(7, found.Changes.Count);
    }

    [Fact]
    public void Damage_is_left_to_a_person_and_parts_that_are_not_there_are_named()
    {
        InspectedStatue found = InspectedStatue.Of(Heron.Statue, InspectionRecord.Parse(Head + "\"band 8, bar 3\",2031-05-17,Damaged,,,cracked weld\n"));
        Assert.Contains(found.NotTaken, n => n.Contains("cracked weld"));
        InvalidStatueException error = Assert.Throws<InvalidStatueException>(() => InspectedStatue.Of(Heron.Statue, InspectionRecord.Parse(Head + "\"band 8, bar 300\",2031-05-17,Worn,,,\nband 77,2031-05-17,Worn,,,\nband 3,2031-05-17,Worn,24,,\n")));
        Assert.Equal(3, error.Problems.Count);
    }

    [Fact]
    public void Of_a_part_the_last_finding_counts()
    {
        InspectionRecord record = InspectionRecord.Parse(Head + "\"band 8, bar 3\",2041-05-17,Worn,18,,\n\"band 8, bar 3\",2031-05-17,Failed,,,\n");
        Assert.Equal(18, Assert.Single(record.Latest).Thickness!.Value.Millimeters, 1e-9);
    }

    [Fact]
    public void Works_are_listed_by_urgency()
    {
        WorkList works = WorkList.Of(InspectionRecord.Parse(Head + "band 3,2031-05-17,Sound,,,\n\"band 8, bar 3\",2031-05-17,Failed,,,\nband 9,2031-05-17,Damaged,,,\n"), Heron.Sheet);
        Assert.Equal([Urgency.AtOnce, Urgency.BeforeStorms, Urgency.Watch], works.Items.Select(i => i.Urgency));
        Assert.NotNull(works.Items[^1].Utilization);
        Assert.Contains("AT ONCE", works.ToString());
    }

    [Fact]
    public void A_check_that_fails_where_nobody_looked_is_a_work_at_once()
    {
        CheckSheet weak = (Heron.Document with { Statue = Heron.Statue with { Skin = Heron.Statue.Skin! with { Thickness = 0.4.Millimeters } } }).Check();
        WorkList works = WorkList.Of(InspectionRecord.Parse(Head + "band 3,2031-05-17,Sound,,,\n"), weak);
        Assert.Contains(works.Items, i => i.Urgency == Urgency.AtOnce && i.Reason.StartsWith("not found", StringComparison.Ordinal));
    }
}
