using StatueFrame.Checks;
using StatueFrame.Tests.Heron;
using Entries = StatueFrame.Checks.Catalogue;

namespace StatueFrame.Tests.Checks.Catalogue;

/// <summary>What the catalogue says is what sheets, tests and documents say.</summary>
public class CatalogueTests
{
    /// <summary>Checks that scripts ask for by themselves.</summary>
    private static readonly string[] byScripts = ["comfort.rhythm", "comfort.storm-sway", "robustness.stands", "bars.plastic"];

    private static readonly StatueDocument heron = SaltmereHeron.Document;

    [Fact]
    public void Every_line_of_a_sheet_is_of_an_entry() =>
        Assert.All((heron with { Criteria = heron.Criteria with { DesignLife = null } }).Check().Checks, check => Assert.NotNull(Entries.Find(check.Id)));

    /// <summary>What a row rests on is on the list of assumptions, word by word; and what the wind does rests on what the wind took for the user.</summary>
    [Fact]
    public void Rows_name_assumptions_that_the_sheet_lists()
    {
        CheckSheet sheet = SaltmereHeron.Sheet;
        HashSet<string> listed = [.. sheet.Assumptions.Select(assumption => assumption.Short)];
        Assert.All(sheet.Checks.SelectMany(check => check.AssumedInputs), input => Assert.Contains(input, listed));
        foreach (string id in (string[])["life.end", "bars.fatigue", "bars.saddle-hold", "bars.clearance", "stability.buckling"])
            Assert.All(sheet.Checks.Where(check => check.Id == id && check.Situation is "storm" or "sway" && check.Verdict == Verdict.Pass), check => Assert.Contains(check.AssumedInputs, input => input.StartsWith("density of air", StringComparison.Ordinal)));
    }

    /// <summary>A value that nobody gave and that decides a number is named by the rows that rest on it, and no longer once it is given.</summary>
    [Theory]
    [InlineData("armature.bending", "armature bars over the standoffs")]
    [InlineData("sheet.panel-bending", "panels of sheet")]
    [InlineData("armature.deflection", "greatest deflection of panels and armature")]
    [InlineData("base.sliding", "friction under the base plates")]
    [InlineData("foundation.bearing", "density of the soil")]
    [InlineData("stability.buckling", "least buckling factor")]
    public void Rows_name_what_a_description_leaves_as_it_is(string id, string subject)
    {
        Assert.Contains(SaltmereHeron.Sheet.Checks, Names);
        Assert.DoesNotContain(given.Value.Checks, Names);

        bool Names(Check check) => check.Id == id && check.AssumedInputs.Any(input => input.StartsWith(subject, StringComparison.Ordinal));
    }

    /// <summary>The Heron with values for what its description leaves to the library.</summary>
    private static readonly Lazy<CheckSheet> given = new(() =>
    {
        Statue statue = heron.Statue;
        return (heron with
        {
            Criteria = heron.Criteria with { LeastBucklingFactor = 10.1 },
            Statue = statue with
            {
                Skin = Given(statue.Skin!),
                Limbs = [.. statue.Limbs.Select(limb => limb with { Skin = limb.Skin is { } skin ? Given(skin) : null })],
                HoldDown = statue.HoldDown! with { Friction = 0.21 },
                Foundation = statue.Foundation! with { Soil = statue.Foundation.Soil with { Density = 1790.KilogramsPerCubicMeter } },
            },
        }).Check();

        static Skin Given(Skin skin) => skin with { Armature = skin.Armature! with { IsContinuous = false, PanelRadius = 10.Meters, DeflectionLimit = 0.021 } };
    });

    [Fact]
    public void Every_link_of_the_load_path_is_held_by_entries() =>
        Assert.All(heron.Statue.Check(new Criteria(), heron.AllSituations()[0]).LoadPath.SelectMany(link => link.Ids), id => Assert.NotNull(Entries.Find(id)));

    [Fact]
    public void Some_test_names_every_entry()
    {
        string tests = string.Concat(Directory.EnumerateFiles(Path.Combine(Repository.Root, "tests", "StatueFrame.Tests"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.EndsWith("CatalogueTests.cs", StringComparison.Ordinal) && !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)).Select(File.ReadAllText));
        // What stands for parts that are not described has no demand: it cannot fail. Ranges of methods are told.
        Assert.All(Entries.Entries.Where(entry => entry.Demand.Length > 0 && entry.Nature != Nature.Range).Select(entry => entry.Id).Except(byScripts), id => Assert.Contains($"\"{id}\"", tests));
    }

    /// <summary>The table of <c>docs/theory/checks.md</c> is written from the catalogue; <c>STATUEFRAME_UPDATE=1 dotnet test</c> writes it anew.</summary>
    [Fact]
    public void The_page_is_written_from_the_catalogue()
    {
        const string Begin = "<!-- begin catalogue -->", End = "<!-- end catalogue -->";
        string page = Path.Combine(Repository.Root, "docs", "theory", "checks.md"), text = File.ReadAllText(page).ReplaceLineEndings("\n");
        int from = text.IndexOf(Begin, StringComparison.Ordinal), to = text.IndexOf(End, StringComparison.Ordinal);
        Assert.True(from >= 0 && to > from, "The page lacks its markers.");
        string updated = text[..from] + Begin + "\n" + Table() + text[to..];
        if (Environment.GetEnvironmentVariable("STATUEFRAME_UPDATE") == "1")
            File.WriteAllText(page, updated);
        else
            Assert.Equal(updated, text);
    }

    private static string Table() =>
        "| id | check | asks | looks at | demand | against | not checked when |\n|---|---|---|---|---|---|---|\n"
        + string.Concat(Entries.Entries.Select(e => $"| `{e.Id}` | {e.Title} | {e.Nature.ToString().ToLowerInvariant()} | {e.Parts} | {Cell(e.Demand)} | {Cell(e.Capacity)} | {e.Needs} |\n"));

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
