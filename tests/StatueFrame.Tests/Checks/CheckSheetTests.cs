using CsCheck;
using StatueFrame.Checks;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks;

public class CheckSheetTests
{
    internal static Check Stress(string id, string where, double demand, params string[] assumed) => Check.Of(
        new CheckSubject(id, id, where, "storm"), Dimension.Stress, Source.CommonPractice, _ => (demand * 1e6, 200e6), assumed);

    internal static CheckSheet Heron => new()
    {
        Title = "Saltmere Heron",
        Subject = "storm, all headings",
        Results =
        [
            new("masses", "skin", 12_340, Dimension.Mass),
            new("masses", "tower", 45_600, Dimension.Mass, "with its bolts"),
            new("frequencies", "sway along x", 1.27, Dimension.Frequency),
            new("sways", "top, across the wind", 3e-17, Dimension.Length),
            new("sways", "top, along the wind", 0.0834, Dimension.Length),
        ],
        Checks =
        [
            Stress("bars.bending", "band 3, bar 2", 142),
            Stress("bars.bending", "band 3, bar 1", 124, "friction at the saddle 0.2"),
            Stress("bars.bending", "band 4, bar 1", 90),
            Stress("bars.fatigue", "band 3, bar 2", 60, "30 years of wind as at the harbor mole"),
            Stress("tower.legs", "levels 2 to 3", 214),
            Stress("tower.legs", "levels 1 to 2", 203),
            Stress("tower.legs", "levels 3 to 4", 120),
            Check.NotChecked(new("base.anchors", "pull-out of the anchors", "pedestal"), "the anchor bars are not described", Source.CommonPractice),
        ],
        Assumptions =
        [
            new("force coefficient of all bands", "1.3", Source.En1991_1_4("7.6")),
            new("damping", "0.5 % of critical", Source.Assumed("dynamics")),
            new("damping", "0.5 % of critical", Source.Assumed("dynamics")),
        ],
        Warnings = ["Band 7 is slender: height / width = 12 is outside the table of force coefficients, whose last column is used."],
    };

    [Fact]
    public void A_sheet_prints_well() => SnapshotText.Match(Heron.Print(SheetForm.Full));

    [Fact]
    public void A_sheet_prints_on_one_page() => SnapshotText.Match(Heron.Print());

    /// <summary>However much is wrong, open or assumed: the verdict, the caution and the way to the rest are on one page.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(500, 3)]
    [InlineData(30, 300)]
    public void The_short_form_is_never_longer_than_a_page(int families, int assumptions)
    {
        string[] inputs = [.. Enumerable.Range(0, assumptions).Select(i => $"input {i}: {i} m")];
        CheckSheet sheet = Heron with
        {
            Title = string.Join(' ', Enumerable.Repeat("a long title", 12)),
            Checks = [.. Enumerable.Range(0, families).Select(i => Stress($"family{i}.kind", new string('w', 200), 20 * (i % 20), inputs))],
            LoadPath = [.. Enumerable.Range(0, families).Select(i => new PathLink($"link {i}", "what of it", (LinkState)(i % 3), [$"family{i}.kind"], null, ""))],
            Assumptions = [.. Enumerable.Range(0, assumptions).Select(i => new Assumption($"input {i}", $"{i} m", Source.User))],
            Basis = [.. Enumerable.Range(0, 20).Select(i => new BasisLine($"line {i}", new string('v', 300)))],
        };
        string print = sheet.Print();
        Assert.InRange(print.TrimEnd('\n').Split('\n').Length, 8, 40);
        Assert.Equal(print, sheet.ToString());
        Assert.Contains("licensed engineer", print);
        Assert.Contains(sheet.VerdictText.Split(':')[0], print);
        Assert.Contains("Print(SheetForm.Full)", print);
    }

    [Fact]
    public void Families_and_failures_are_printed_alone()
    {
        string bars = Heron.PrintFamily("bars"), failures = Heron.Print(SheetForm.Failures);
        Assert.Contains("bars.bending", bars);
        Assert.DoesNotContain("tower.legs", bars);
        Assert.DoesNotContain("bars.bending", failures);
        Assert.Equal(Heron.Failed.Count(), failures.Split('\n').Count(line => line.Contains("tower.legs")));
        Assert.Contains("\"bars\"", Assert.Throws<ArgumentException>(() => Heron.PrintFamily("bar")).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => Heron.Print((SheetForm)9));
    }

    [Fact]
    public void Of_every_part_the_worst_situation_is_left()
    {
        Check[] again = [.. Heron.Checks.Where(c => c.Utilization is not null).Select(c => Check.Of(c.Subject with { Situation = "breeze" }, c.Dimension, c.Source, _ => (0.5 * c.Demand!.Value, c.Capacity!.Value)))];
        CheckSheet both = Heron with { Checks = [.. Heron.Checks, .. again] };
        Assert.Equal(Heron.WorstOfParts(), both.WorstOfParts());
        Assert.Equal(["band 3, bar 2", "band 4, bar 1"], Heron.WorstOfParts().Where(c => c.Id == "bars.bending").Select(c => c.Where));
    }

    [Fact]
    public void A_check_says_itself_on_one_short_line()
    {
        Assert.Equal("bars.bending, band 3, bar 1, storm: 0.62 pass (1 assumed)", Heron.Checks.Single(c => c.Where == "band 3, bar 1").ToString());
        Assert.Equal("base.anchors, pedestal: not checked: the anchor bars are not described", Heron.NotChecked.Single().ToString());
    }

    [Fact]
    public void Checks_and_results_are_written_as_tables()
    {
        string[] checks = Heron.ChecksToCsv().Split("\r\n"), results = Heron.ResultsToCsv(DisplayUnits.UsCustomary).Split("\r\n");
        Assert.Equal(Heron.Checks.Count + 2, checks.Length);
        Assert.Equal(Heron.Results.Count + 2, results.Length);
        Assert.Contains("bars.bending,bars.bending,\"band 3, bar 1\",storm,124,200,MPa,0.62,pass,,friction at the saddle 0.2,\"common practice, no source\"", checks);
        Assert.Contains(results, line => line.StartsWith("masses,skin,", StringComparison.Ordinal) && line.Contains(",lb,"));
    }

    [Fact]
    public void A_sheet_prints_every_check_in_customary_units() =>
        SnapshotText.Match(Heron.Print(SheetForm.Everything, DisplayUnits.UsCustomary));

    [Fact]
    public void The_stable_text_is_stable() => SnapshotText.Match(Heron.ToStableText());

    [Fact]
    public void Every_line_fits_and_every_print_has_the_caution()
    {
        CheckSheet wide = Heron with
        {
            Checks =
            [
                .. Heron.Checks,
                Stress("armature.bending-of-the-longest-bar", new string('w', 60) + " and more of it", 2e9, "a very long assumption, in many words, with a value"),
            ],
            Warnings = [new string('x', 300)],
        };
        foreach (string print in Enum.GetValues<SheetForm>().SelectMany(form => new[] { wide.Print(form), wide.Print(form, DisplayUnits.UsCustomary), new CheckSheet { Title = "Empty" }.Print(form) }).Append(wide.PrintFamily("bars")))
        {
            Assert.All(print.Split('\n'), line => Assert.True(line.Length <= 110, line));
            Assert.Contains("licensed engineer", print);
        }
    }

    [Fact]
    public void The_worst_check_of_each_family_governs()
    {
        Assert.Equal("levels 2 to 3", Heron.Governing!.Where);
        Assert.Equal(["band 3, bar 2", "levels 2 to 3"], Heron.GoverningByFamily.Select(c => c.Where));
        Assert.Equal("band 3, bar 2", Heron.GoverningOf("bars")!.Where);
        Assert.Null(Heron.GoverningOf("base"));
        Assert.Null(Heron.GoverningOf("no such family"));
    }

    [Fact]
    public void Silence_is_not_a_pass()
    {
        var empty = new CheckSheet { Title = "Empty" };
        Assert.False(empty.Passed);
        Assert.False(empty.Complete);
        Assert.Equal("NOTHING CHECKED", empty.VerdictText);

        CheckSheet open = empty with { Checks = [Check.NotChecked(new("a.b", "t"), "why", Source.User)] };
        Assert.False(open.Passed);
        Assert.False(open.Complete);
        Assert.Equal("NOTHING CHECKED: 1 not checked", open.VerdictText);

        CheckSheet passed = empty with { Checks = [Stress("a.b", "", 100)] };
        Assert.True(passed.Passed && passed.Complete && !passed.RestsOnAssumedInputs);
        Assert.Equal("PASS: 1 passes", passed.VerdictText);

        CheckSheet partly = empty with { Checks = [.. open.Checks, .. passed.Checks] };
        Assert.True(partly.Passed);
        Assert.False(partly.Complete);
        Assert.Equal("PASS, BUT NOT COMPLETE: 1 passes, 1 not checked", partly.VerdictText);

        CheckSheet assumed = empty with { Checks = [Stress("a.b", "", 100, "x = 1")] };
        Assert.True(assumed.Passed && assumed.RestsOnAssumedInputs);
        Assert.Equal("PASS, WITH ASSUMED INPUTS: 1 passes (1 with assumed inputs)", assumed.VerdictText);

        Assert.False(Heron.Passed);
    }

    [Fact]
    public void The_order_of_the_checks_given_does_not_matter()
    {
        Check[] checks = [.. Heron.Checks, Stress("bars.bending", "band 9, bar 1", 142)];
        string expected = (Heron with { Checks = checks.ToValueList() }).Print(SheetForm.Everything);
        Gen.Shuffle(checks).Sample(shuffled =>
            (Heron with { Checks = shuffled.ToValueList() }).Print(SheetForm.Everything) == expected, iter: 100);
    }

    [Fact]
    public void Rounding_noise_changes_neither_the_order_nor_the_stable_text() =>
        Gen.Int[-3, 3].Array[3].Sample(ulps =>
        {
            double[] demands = [.. ulps.Select(n => 142.25 + n * (Math.BitIncrement(142.25) - 142.25))];
            CheckSheet sheet = Of(demands), plain = Of([142.25, 142.25, 142.25]);
            Assert.Equal(plain.ToStableText(), sheet.ToStableText());
            Assert.Equal(plain.Checks.Select(c => c.Where), sheet.Checks.Select(c => c.Where));
            Assert.True(sheet.CompareWith(plain, 0).IsEmpty);
        }, iter: 200);

    private static CheckSheet Of(double[] demands) => new()
    {
        Title = "Ring",
        Checks = demands.Select((demand, i) => Stress("bars.bending", $"bar {i + 1}", demand)).ToValueList(),
        Results = [new("sways", "top", demands[0] * 1e-3, Dimension.Length), new("sways", "zero", 1e-18 * demands[1], Dimension.Length)],
    };

    [Fact]
    public void Digits_of_the_stable_text_can_be_chosen()
    {
        Assert.Contains("| 12000 |", Heron.ToStableText(2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Heron.ToStableText(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Heron.ToStableText(10));
    }
}
