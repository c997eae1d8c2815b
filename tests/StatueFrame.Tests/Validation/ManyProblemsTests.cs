using static StatueFrame.Tests.Validation.SmallStatue;

namespace StatueFrame.Tests.Validation;

public class ManyProblemsTests
{
    private static readonly SmallStatue wrong = Good with
    {
        Statue = Good.Statue with
        {
            Name = "",
            Tower = Trunk with { Segments = [Panel with { Bays = 0 }, Mast] },
            Skin = Body with { Thickness = 2.5.Meters },
            Standoffs = [Ring("bass"), Ring("mid")],
            Limbs = [Arm with { From = "nowhere" }],
            Fittings = [new Fitting { Name = "lamp", On = "top", Mass = (-1).Kilograms }],
            Points = [new NamedPoint("tip", "band 22")],
        },
        Criteria = new Criteria { Modes = 0 },
        Situations = [Storm with { Actions = [] }],
    };

    [Fact]
    public void All_problems_are_listed_in_the_order_of_the_description()
    {
        var thrown = Assert.Throws<InvalidStatueException>(wrong.Check);
        Assert.Equal(
        [
            "Name", "Tower.Segments[0].Bays", "Skin.Thickness", "Standoffs[0].Level", "Limbs[0].From", "Fittings[0].Mass",
            "Points[0].On", "Criteria.Modes", "Situations[0].Actions",
        ], thrown.Problems.Select(p => p.Path));
        Assert.All(thrown.Problems, p => Assert.NotEmpty(p.Hint));
        Assert.StartsWith("9 problems in the description:", thrown.Message);
    }

    [Fact]
    public void FindProblems_gives_those_of_the_statue_without_throwing()
    {
        Assert.Equal(7, wrong.Statue.FindProblems().Count);
        Assert.Empty(Good.Statue.FindProblems());
    }

    [Fact]
    public void Message_lists_each_problem_on_a_line()
    {
        var one = new InvalidStatueException([new Problem("Skin.Thickness", "is not plausible: 2.4 m", "Did you mean 2.4 mm?")]);
        Assert.Equal($"1 problem in the description:{Environment.NewLine}  Skin.Thickness: is not plausible: 2.4 m. Did you mean 2.4 mm?", one.Message);
        Assert.Equal("Name: must not be empty", new Problem("Name", "must not be empty").ToString());
    }

    [Fact]
    public void One_mistake_that_rings_share_is_told_once_with_its_places()
    {
        Standoff thin = Flat with { Section = new FlatBar(60.Millimeters, 0.Millimeters) };
        Statue statue = Good.Statue with { Name = "", Standoffs = [.. Enumerable.Range(0, 3).Select(i => Ring("mid") with { Standoff = thin })] };
        var thrown = Assert.Throws<InvalidStatueException>(() => StatueFrame.Analysis.StatueModel.Build(statue));
        Assert.Equal(3, thrown.Problems.Count(p => p.Path.EndsWith("Standoff.Section.Thickness", StringComparison.Ordinal)));
        Assert.StartsWith($"2 problems at 4 places in the description:{Environment.NewLine}  Name: ", thrown.Message, StringComparison.Ordinal);
        Assert.Contains("Standoffs[0].Standoff.Section.Thickness, 1 more and Standoffs[2].Standoff.Section.Thickness: must be greater than zero", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Model_and_its_response_refuse_what_the_sheet_refuses()
    {
        Assert.Equal(7, Assert.Throws<InvalidStatueException>(() => StatueFrame.Analysis.StatueModel.Build(wrong.Statue)).Problems.Count);
        var model = StatueFrame.Analysis.StatueModel.Build(Good.Statue);
        Assert.Equal("Situation.Actions", Assert.Throws<InvalidStatueException>(() => model.Respond(Storm with { Actions = [] })).Problems[0].Path);
        Assert.Throws<ArgumentNullException>(() => model.Respond(null!));
        Assert.Throws<ArgumentNullException>(() => Good.Statue.Check(null!, Storm));
    }

    [Fact]
    public void Counts_of_the_whole_statue_are_limited()
    {
        TowerLevel[] levels = [.. Enumerable.Range(0, 2501).Select(i => new TowerLevel($"L{i}", (0.01 * i).Meters))];
        var tall = new Tower { Levels = [.. levels], Segments = [.. Enumerable.Repeat<TowerSegment>(Mast, 2500)] };
        Limb limb = Arm with { Name = "staff", From = "L3", Tower = tall, Skin = null, Standoffs = [] };
        Statue statue = Good.Statue with { Tower = tall, Skin = null, Standoffs = [], Limbs = [limb], Fittings = [], Points = [] };
        Problem problem = Assert.Single(statue.FindProblems());
        Assert.Equal("Tower.Levels", problem.Path);
        Assert.Contains("too many: 5002, of at most 5000", problem.Message);
        Problem bars = Assert.Single((Good.Statue with { Standoffs = [.. Enumerable.Repeat(Ring("base") with { Count = 400 }, 501)] }).FindProblems());
        Assert.Contains("too many: 200406, of at most 200000", bars.Message);
    }
}
