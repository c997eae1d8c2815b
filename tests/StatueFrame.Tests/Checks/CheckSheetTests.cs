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
    public void A_sheet_prints_well() => SnapshotText.Match(Heron.Print());

    [Fact]
    public void A_sheet_prints_every_check_in_customary_units() =>
        SnapshotText.Match(Heron.Print(DisplayUnits.UsCustomary, allChecks: true));

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
        foreach (string print in new[] { wide.Print(), wide.Print(DisplayUnits.UsCustomary, true), new CheckSheet { Title = "Empty" }.Print() })
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
        string expected = (Heron with { Checks = checks.ToValueList() }).Print(allChecks: true);
        Gen.Shuffle(checks).Sample(shuffled =>
            (Heron with { Checks = shuffled.ToValueList() }).Print(allChecks: true) == expected, iter: 100);
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
