using StatueFrame.Checks;
using StatueFrame.Studies;
using StatueFrame.Tests.Heron;
using UnitsNet;

namespace StatueFrame.Tests.Validation;

/// <summary>What once broke a sheet, lost a file or passed without a word.</summary>
public class NothingBreaksItTests
{
    private static readonly SmallStatue good = SmallStatue.Good;

    private static Situation With(params FactoredAction[] actions) => new() { Name = "storm", Actions = [.. actions] };

    [Fact]
    public void A_check_that_throws_is_not_done_and_the_others_stand()
    {
        var error = new DivideByZeroException("no such angle\nPASS: all");
        Check broken = Check.Of(new CheckSubject("bars.bending", "bending", "band 1"), Dimension.Number, Source.User, _ => throw error);
        Assert.Equal(Verdict.NotChecked, broken.Verdict);
        Assert.Same(error, broken.Error);
        Assert.Equal("internal error: DivideByZeroException: no such angle", broken.Reason);
        Check fine = Check.Of(new CheckSubject("bars.shear", "shear", "band 1"), Dimension.Number, Source.User, _ => (0.5, 1));
        var sheet = new CheckSheet { Title = "x", Checks = [fine, broken] };
        Assert.False(sheet.Holds);
        Assert.False(sheet.Passed);
        Assert.StartsWith("BROKEN OFF: 1 broke off by an internal error (bars.bending, band 1), 1 passes", sheet.VerdictText, StringComparison.Ordinal);
    }

    [Fact]
    public void An_entry_that_throws_for_one_part_is_named_and_does_not_hide_the_others()
    {
        FormulaEntry<int> entry = new("bars.bending", "bending", Nature.Strength, "numbers", "", "", "")
        {
            Run = (Working? _, in int n) => n == 3 ? throw new InvalidOperationException("three") : (n / 10.0, 1),
            Rule = (in int _) => Source.User,
            Where = (in int n) => $"part {n}",
        };
        var writer = new SheetWriter();
        writer.Run(entry, Enumerable.Range(1, 8));
        Assert.Equal([0.8, null], writer.Checks.Select(check => check.Utilization));
        Assert.Equal("part 3", writer.Checks[1].Where);
        Assert.IsType<InvalidOperationException>(writer.Checks[1].Error);
    }

    [Fact]
    public void A_part_of_the_sheet_that_throws_leaves_the_rest()
    {
        var writer = new SheetWriter { Situation = "storm" };
        writer.Guard("bars", () =>
        {
            writer.Checks.Add(Check.Of(new CheckSubject("bars.bending", "bending"), Dimension.Number, Source.User, _ => (0.5, 1)));
            throw new NotSupportedException("x");
        });
        Assert.Equal(["bars.bending", "calculation.broken-off"], writer.Checks.Select(check => check.Id));
        Assert.Throws<OperationCanceledException>(() => writer.Guard("bars", () => throw new OperationCanceledException()));
    }

    [Theory]
    [InlineData(-1.35, 1.5)]
    [InlineData(1.35, -1.5)]
    public void Weight_and_wind_are_not_turned_by_a_factor(double weight, double wind)
    {
        var thrown = Assert.Throws<InvalidStatueException>(() => good.Statue.Check(good.Criteria, With(weight * new SelfWeight(), wind * SmallStatue.Wind)));
        Assert.Contains("Factor: must be from 0 to 10", thrown.Message);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1e-6)]
    public void A_factor_that_leaves_nothing_is_told(double factor)
    {
        CheckSheet sheet = good.Statue.Check(good.Criteria, With(factor * new SelfWeight(), factor * SmallStatue.Wind));
        Assert.Contains(sheet.Warnings, warning => warning.StartsWith("storm: self-weight counts", StringComparison.Ordinal));
        Assert.Equal(2, sheet.Warnings.Count(warning => warning.Contains("next to nothing of it is checked", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("storm\nPASS: 300 pass")]
    [InlineData("storm\u202Emrots")]
    [InlineData("sto\u001B[2Jrm")]
    [InlineData("sto\u200Brm")]
    public void Names_cannot_forge_a_line(string name)
    {
        var thrown = Assert.Throws<InvalidStatueException>(() => good.Statue.Check(good.Criteria, With(new SelfWeight()) with { Name = name }));
        Assert.Contains("holds a character that is not seen", thrown.Message);
    }

    [Fact]
    public void Other_texts_cannot_forge_a_line()
    {
        var forged = new Assumption("factor", "1\nPASS: 300 pass", new Source("mine\u202E", null!));
        CheckSheet sheet = good.Statue.Check(good.Criteria, With(new SelfWeight()) with { Factors = [forged] });
        foreach (string text in (string[])[sheet.Print(), sheet.ToStableText()])
        {
            Assert.DoesNotContain(text.Split('\n'), line => line.StartsWith("PASS: 300", StringComparison.Ordinal));
            Assert.DoesNotContain('\u202E', text);
        }
    }

    [Fact]
    public void Missing_lists_are_problems_with_a_path_and_a_hint()
    {
        Situation[] situations =
        [
            With(new SelfWeight()) with { Factors = null! },
            With(new SelfWeight(), new IceAction { Class = null! }) with { Name = "ice" },
        ];
        var thrown = Assert.Throws<InvalidStatueException>(() => good.Statue.Check(good.Criteria with { AcrossWind = new AcrossWindInput { Sections = null!, LifeYears = 0 } }, situations));
        Assert.Equal(4, thrown.Problems.Count);
        Assert.All(thrown.Problems, problem => Assert.True(problem is { Path.Length: > 0, Message.Length: > 0, Hint.Length: > 0 }, problem.ToString()));
    }

    [Fact]
    public void A_great_heat_is_worked_out() =>
        Assert.Empty(good.Statue.Check(good.Criteria, With(new SelfWeight(), 1.5 * new TemperatureAction { SkinChange = TemperatureDelta.FromKelvins(110), TowerChange = TemperatureDelta.FromKelvins(-110) })).BrokenOff);

    [Theory]
    [InlineData("base")]
    [InlineData("mid")]
    [InlineData("band 1")]
    public void A_strike_anywhere_is_worked_out_or_refused(string on)
    {
        Situation struck = With(new SelfWeight(), new Strike { Name = "boat", On = on, Mass = 50.Kilograms, Speed = 2.MetersPerSecond, Restitution = 0.4 });
        if (on == "base")
            Assert.Contains("\"base\" is held in the direction of the strike", Assert.Throws<InvalidStatueException>(() => good.Statue.Check(good.Criteria, struck)).Message);
        else
            Assert.Empty(good.Statue.Check(good.Criteria, struck).BrokenOff);
    }

    /// <summary>The order in which situations are given changes no check: neither its numbers nor the situation it is told of.</summary>
    [Fact]
    public void The_order_of_situations_changes_no_check()
    {
        StatueDocument heron = SaltmereHeron.Document;
        Situation[] few = [.. heron.AllSituations().Where(situation => situation.Name is "6.10, wind leading" or "characteristic, wind leading" or "6.10, sun leading")];
        Situation[] warm = [.. few, few.Single(s => s.Name == "6.10, sun leading") with { Name = "another sun" }];
        CheckSheet one = heron.Statue.Check(heron.Criteria, warm), other = heron.Statue.Check(heron.Criteria, [.. warm.Reverse()]);
        static string[] Lines(CheckSheet sheet) => [.. sheet.Checks.Select(check => $"{check.Id}, {check.Where}, {check.Situation}: {check.UtilizationText}").Order(StringComparer.Ordinal)];
        Assert.Equal(Lines(one), Lines(other));
    }

    /// <summary>Stiffnesses so far apart that rounding takes the digits: the sheet says so, and fails where too many are gone.</summary>
    [Theory]
    [InlineData(1, null, null)]
    [InlineData(1e5, Verdict.Fail, Verdict.Pass)]
    [InlineData(1e7, Verdict.Fail, Verdict.Fail)]
    public void A_solution_that_rounding_spoils_is_not_used_in_silence(double ratio, Verdict? verdict, Verdict? eigenvalues)
    {
        CoreSegment soft = SmallStatue.Core with { BendingX = Rigidity.FromKilonewtonSquareMeters(10), BendingY = Rigidity.FromKilonewtonSquareMeters(10) };
        CoreSegment stiff = SmallStatue.Core with
        {
            BendingX = Rigidity.FromKilonewtonSquareMeters(10 * ratio),
            BendingY = Rigidity.FromKilonewtonSquareMeters(10 * ratio),
            Torsion = Rigidity.FromKilonewtonSquareMeters(10 * ratio),
            Axial = (1e6 * ratio).Newtons,
        };
        var statue = new Statue
        {
            Name = "ratio",
            Tower = new Tower
            {
                Levels = [new TowerLevel("base", 0.Meters), new TowerLevel("a", 5.Meters), new TowerLevel("b", 5.1.Meters), new TowerLevel("top", 10.Meters)],
                Segments = [soft, stiff, soft],
            },
        };
        CheckSheet sheet = statue.Check(new Criteria(), With(new SelfWeight(), new ImposedLoad { Name = "pull", On = "top", AlongX = 1.Newtons }));
        Assert.Equal(verdict, sheet.Checks.SingleOrDefault(check => check.Id == "calculation.accuracy")?.Verdict);
        Assert.Equal(eigenvalues, sheet.Checks.SingleOrDefault(check => check.Id == "calculation.modes")?.Verdict);
        Assert.Equal(eigenvalues, sheet.Checks.SingleOrDefault(check => check.Id == "calculation.buckling")?.Verdict);
    }

    [Fact]
    public void Hints_for_names_take_no_time()
    {
        string[] names = [.. Enumerable.Range(0, 2000).Select(i => new string('x', 190) + i)];
        for (int i = 0; i < 300; i++)
            Assert.NotEmpty(NearNames.Closest(new string('y', 190) + i, names));
    }

    [Theory]
    [InlineData("1e306 km")]
    [InlineData("3 MetricCup")]
    public void Quantities_that_cannot_be_converted_are_problems(string text)
    {
        string file = StatueFile.Write(new StatueDocument { Statue = good.Statue, Situations = [With(new SelfWeight())] });
        int at = file.IndexOf("\"thickness\": \"", StringComparison.Ordinal) + "\"thickness\": \"".Length;
        var thrown = Assert.Throws<StatueFileException>(() => StatueFile.Read(file[..at] + text + file[file.IndexOf('"', at)..]));
        Assert.All(thrown.Problems, problem => Assert.True(problem is { Path.Length: > 0, Line: > 1 }));
    }

    [Fact]
    public void A_file_that_cannot_be_written_whole_leaves_the_old_one()
    {
        string folder = Directory.CreateTempSubdirectory("statue").FullName, path = Path.Combine(folder, "a.json");
        File.WriteAllText(path, "old");
        Assert.Throws<IOException>(() => WholeFile.Write(path, stream =>
        {
            stream.Write(new byte[100_000]);
            throw new IOException("the disk is full");
        }));
        Assert.Equal("old", File.ReadAllText(path));
        Assert.Single(Directory.GetFiles(folder));
        WholeFile.Write(path, "new");
        Assert.Equal("new", File.ReadAllText(path));
        Assert.Throws<DirectoryNotFoundException>(() => WholeFile.Write(Path.Combine(folder, "none", "a.json"), "x"));
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>A plan whose statue has a problem is told from others by all of its description, as a sound one is.</summary>
    [Fact]
    public void Shards_of_another_invalid_plan_are_never_merged()
    {
        string folder = Directory.CreateTempSubdirectory("statue").FullName;
        Statue invalid = good.Statue with { Name = "" };
        Variant[] mended = [new("mended", statue => statue with { Name = "mended" })];
        Situation storm = With(1.35 * new SelfWeight(), 1.5 * SmallStatue.Wind);
        var plan = new VariantPlan(invalid, mended, good.Criteria, [storm]);
        plan.RunShard(new Shard(0, 1), folder);
        Assert.Single(plan.Merge(folder, 1).Rows);
        VariantPlan[] others =
        [
            new(invalid with { Tower = invalid.Tower with { Segments = [SmallStatue.Panel, SmallStatue.Mast with { Section = new Tube(400.Millimeters, 4.Millimeters) }] } }, mended, good.Criteria, [storm]),
            new(invalid, mended, good.Criteria with { LeastBucklingFactor = 9 }, [storm]),
            new(invalid, mended, good.Criteria, [storm with { Actions = [4.05 * new SelfWeight(), 4.5 * SmallStatue.Wind] }]),
            new(invalid, [new("mended", statue => statue with { Name = "mended", Points = [] })], good.Criteria, [storm]),
        ];
        foreach (VariantPlan other in others)
            Assert.Throws<ShardException>(() => other.Merge(folder, 1));
        Directory.Delete(folder, recursive: true);
    }
}
