using StatueFrame.Studies;
using StatueFrame.Tests.Actions;

namespace StatueFrame.Tests.Studies.Variants;

public class VariantStudyTests
{
    private static readonly Criteria criteria = new() { BarStressFraction = 1 / 1.1, Modes = 2 };
    private static readonly Situation[] situations = [new() { Name = "weight", Actions = [1.35 * new SelfWeight()] }];

    private static VariantStudy Study(int? threads = null) => VariantStudy.Of(
        Stages.Statue,
        [
            .. Variant.List("sheet", new[] { 1.5, 2.0, 3.0 }, (s, t) => s with { Skin = s.Skin! with { Thickness = t.Millimeters } }),
            new Variant("absurd", s => s with { Skin = s.Skin! with { Thickness = 3.Meters } }),
            new Variant("broken", _ => throw new InvalidOperationException("no such drawing")),
        ],
        criteria, situations, new StudyOptions { Threads = threads });

    [Fact]
    public void One_variant_that_fails_stops_no_other()
    {
        VariantStudy study = Study();
        Assert.Equal(5, study.Rows.Count);
        Assert.All(study.Rows.Take(3), r => Assert.NotNull(r.Sheet));
        Assert.Contains("Thickness", study["absurd"].Error);
        Assert.Equal("no such drawing", study["broken"].Error);
        Assert.Null(study["broken"].Statue);
    }

    [Fact]
    public void Rows_do_not_depend_on_threads() => Assert.Equal(Study(1).ToCsv(), Study(6).ToCsv());

    [Fact]
    public void Thicker_sheet_weighs_more_and_the_lightest_is_best()
    {
        VariantStudy study = Study();
        Assert.True(study["sheet 1.5"].Mass < study["sheet 3"].Mass);
        Assert.Equal("sheet 1.5", study.Best(r => r.Mass!.Value.Kilograms, _ => true)!.Name);
        Assert.Equal("sheet 3", study.Best(r => -r.Mass!.Value.Kilograms, _ => true)!.Name);
    }

    [Fact]
    public void What_changed_between_two_is_told()
    {
        VariantStudy study = Study();
        Assert.True(study.Compare("sheet 2", "sheet 2").IsEmpty);
        Assert.Contains(study.Compare("sheet 1.5", "sheet 3").Changes, c => c.ToString().Contains("skin"));
        Assert.Throws<ArgumentException>(() => study.Compare("sheet 2", "absurd"));
        Assert.Throws<ArgumentException>(() => study["shet 2"]);
    }

    [Fact]
    public void A_grid_applies_both_changes()
    {
        ValueList<Variant> grid = Variant.Grid(
            Variant.List("sheet", new[] { 2.0, 3.0 }, (s, t) => s with { Skin = s.Skin! with { Thickness = t.Millimeters } }),
            Variant.List("folds", new[] { 1.0, 1.2 }, (s, f) => s with { Skin = s.Skin! with { FoldFactor = f } }));
        Assert.Equal(["sheet 2, folds 1", "sheet 2, folds 1.2", "sheet 3, folds 1", "sheet 3, folds 1.2"], grid.Select(v => v.Name));
        Statue last = grid[3].Change(Stages.Statue);
        Assert.Equal(3, last.Skin!.Thickness.Millimeters);
        Assert.Equal(1.2, last.Skin.FoldFactor);
    }

    [Fact]
    public void Tables_carry_the_caution_and_every_row()
    {
        string text = Study().Print();
        Assert.Contains("licensed engineer", text);
        Assert.All(Study().Rows, r => Assert.Contains(r.Name, text));
        Assert.Throws<ArgumentException>(() => VariantStudy.Of(Stages.Statue, [new Variant("a", s => s), new Variant("a", s => s)], criteria, situations));
    }

    [Fact]
    public void A_random_sample_is_the_same_for_the_same_seed()
    {
        Uncertain[] inputs = [Uncertain.Uniform("sheet mm", 1.5, 3), Uncertain.Uniform("folds", 1, 1.3)];
        ValueList<Variant> Draw(ulong seed) => Variant.Sample(inputs, 6, (s, x) => s with { Skin = s.Skin! with { Thickness = x[0].Millimeters, FoldFactor = x[1] } }, seed);
        Assert.Equal(Draw(1).Select(v => v.Name), Draw(1).Select(v => v.Name));
        Assert.NotEqual(Draw(1).Select(v => v.Name), Draw(2).Select(v => v.Name));
        double[] sheets = [.. Draw(1).Select(v => v.Change(Stages.Statue).Skin!.Thickness.Millimeters)];
        Assert.All(sheets, t => Assert.InRange(t, 1.5, 3));
        Assert.Equal(6, sheets.Distinct().Count());
    }

    [Fact]
    public void Kept_numbers_are_those_of_the_sheet()
    {
        VariantRow row = Study()["sheet 2"];
        CheckSheet sheet = row.Statue!.Check(criteria, situations);
        Assert.Equal(sheet, row.Sheet);
        Assert.Equal(sheet.Governing!.Utilization, row.Governing!.Utilization);
        Assert.Equal(sheet.GoverningByFamily.Select(c => c.Subject), row.Families.Select(f => f.Subject));
        Assert.Equal(sheet.Results.First(r => r is { Group: "masses", Name: "total" }).Value, row.Mass!.Value.Kilograms);
        Assert.Equal(2, row.Frequencies.Count);
    }

    [Fact]
    public void Why_two_differ_is_told_by_inputs_and_working()
    {
        VariantDifference why = Study().Explain("sheet 1.5", "sheet 3");
        Assert.Contains(why.Inputs, i => i is { Path: "skin.thickness", Before: "1.5 mm", After: "3 mm" });
        Assert.Contains(why.Reasons, r => r.After.Utilization > r.Before!.Utilization && r.Given.Count > 0);
        Assert.Contains("no input", Study().Explain("sheet 2", "sheet 2").ToString());
        Assert.Empty(Study().Explain("sheet 2", "sheet 2").Reasons);
    }

    [Fact]
    public void Like_changes_of_a_list_are_told_once()
    {
        VariantStudy study = VariantStudy.Of(
            Stages.Statue,
            [new("as is", s => s), new("more bars", s => s with { Standoffs = [.. s.Standoffs.Select(r => (EvenRing)r with { Count = 12 })] })], criteria, situations);
        Assert.Equal(new InputChange("standoffs[0].count", "8", "12", 4), Assert.Single(study.Explain("as is", "more bars").Inputs));
    }

    [Fact]
    public void What_is_good_enough_can_be_said()
    {
        Assert.Equal("sheet 2", Study().Best(r => r.Mass!.Value.Kilograms, r => r.Name != "sheet 1.5")!.Name);
        Assert.Equal("sheet 1.5", Study().Best(r => r.Mass!.Value.Kilograms, _ => true)!.Name);
        Assert.Null(Study().Best(r => r.Mass!.Value.Kilograms, r => r.UtilizationOf("bars") < 0));
    }

    [Fact]
    public void Progress_is_told_and_the_study_can_be_stopped()
    {
        double last = 0;
        var told = new Told(part => last = part);
        VariantStudy.Of(Stages.Statue, [new("a", s => s), new("b", s => s)], criteria, situations, new StudyOptions { Threads = 1, Progress = told });
        Assert.Equal(1, last);
        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => VariantStudy.Of(
            Stages.Statue, [new("a", s => { stop.Cancel(); return s; }), new("b", s => s), new("c", s => s)], criteria, situations, new StudyOptions { Threads = 1, Cancellation = stop.Token }));
    }

    private sealed class Told(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }
}
