namespace StatueFrame.Tests.Validation;

/// <summary>Descriptions are values: equal when they say the same, unchanged by what is made from them.</summary>
public class DescriptionValueTests
{
    [Fact]
    public void Lists_compare_by_value()
    {
        ValueList<int> list = [1, 2, 3];
        Assert.Equal(list, new[] { 1, 2, 3 }.ToValueList());
        Assert.Equal(list.GetHashCode(), new[] { 1, 2, 3 }.ToValueList().GetHashCode());
        Assert.False(list.Equals([1, 2]));
        Assert.False(list.Equals([3, 2, 1]));
        Assert.False(list.Equals((ValueList<int>?)null));
        Assert.False(list.Equals((object?)"123"));
        Assert.Equal("[1, 2, 3]", list.ToString());
        Assert.Same(ValueList<int>.Empty, (ValueList<int>)[]);
    }

    [Fact]
    public void List_with_another_item_leaves_the_first_as_it_was()
    {
        ValueList<int> list = [1, 2, 3];
        Assert.Equal([1, 9, 3], list.With(1, 9));
        Assert.Equal([1, 2, 3], list);
        Assert.Throws<IndexOutOfRangeException>(() => list.With(3, 0));
        Assert.Throws<IndexOutOfRangeException>(() => list[-1]);
    }

    [Fact]
    public void List_does_not_change_with_the_array_it_was_made_of()
    {
        int[] array = [1, 2];
        var list = array.ToValueList();
        array[0] = 9;
        Assert.Equal([1, 2], list);
    }

    [Fact]
    public void Statues_compare_by_value_through_all_their_lists()
    {
        Statue again = SmallStatue.Good.Statue with
        {
            Limbs = [.. SmallStatue.Good.Statue.Limbs.Select(limb => limb with { })],
            Skin = SmallStatue.Good.Statue.Skin! with { Stations = [.. SmallStatue.Good.Statue.Skin!.Stations] },
        };
        Assert.Equal(SmallStatue.Good.Statue, again);
        Assert.Equal(SmallStatue.Good.Statue.GetHashCode(), again.GetHashCode());
        Assert.NotEqual(SmallStatue.Good.Statue, again with { Limbs = [] });
        Assert.NotEqual(SmallStatue.Good.Statue, again with { Points = again.Points.With(0, again.Points[0] with { At = default(Point3) }) });
    }

    [Fact]
    public void Situations_and_criteria_compare_by_value()
    {
        Assert.Equal(SmallStatue.Storm, SmallStatue.Storm with { Actions = [1.35 * new SelfWeight(), 1.5 * SmallStatue.Wind] });
        Assert.NotEqual(SmallStatue.Storm, SmallStatue.Storm with { Actions = [1.35 * new SelfWeight(), 1.4 * SmallStatue.Wind] });
        Assert.Equal(new Criteria { Sway = [new SwayLimit("tip", 1.Meters)] }, new Criteria { Sway = [new SwayLimit("tip", 1.Meters)] });
        Assert.NotEqual(new Criteria(), new Criteria { Modes = 7 });
        Assert.Equal("1.35 self-weight", SmallStatue.Storm.Actions[0].ToString());
    }

    [Fact]
    public void Sources_and_assumptions_read_as_one_line()
    {
        Assert.Equal("EN 1990:2002+A1:2005, A1.3", Source.En1990("A1.3").ToString());
        Assert.Equal("given by the user", Source.User.ToString());
        Assert.Equal(Source.Roark("Table 8.1"), Source.Roark("Table 8.1"));
        Assert.NotEqual(Source.Asce7_16("26.1"), Source.Asce7_22("26.1"));
        Assert.Equal("levels: rigid in plan (StatueFrame assumption, model)", new Assumption("levels", "rigid in plan", Source.Assumed("model")).ToString());
    }

    [Fact]
    public void Points_are_where_they_were_said_to_be()
    {
        Assert.Equal(new Point3(1.Meters, 2.Meters, 3.Meters), Point3.FromMeters(1, 2, 3));
        Assert.NotEqual(Point3.FromMeters(1, 2, 3), Point3.FromMeters(1, 2, 4));
        Assert.Equal("(1 m, 2 m, 3 m)", Point3.FromMeters(1, 2, 3).ToString());
        Assert.Throws<ArgumentException>(() => Point3.FromMeters(double.NaN, 0, 0));
        Assert.Equal(new NamedPoint("tip", "top"), new NamedPoint("tip", "top"));
        Assert.NotEqual(new NamedPoint("tip", "top"), new NamedPoint("tip", "top") { At = default(Point3) });
    }

    [Fact]
    public void Headings_are_even_and_counted()
    {
        Assert.Equal(4, Headings.Evenly(4).Count);
        Assert.Equal(270, Headings.Evenly(4)[3].Degrees, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Headings.Evenly(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Headings.Evenly(361));
    }
}
