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
        Assert.Equal("sheet 1.5", study.Best(r => r.Mass!.Value.Kilograms)!.Name);
        Assert.Equal("sheet 3", study.Best(r => -r.Mass!.Value.Kilograms)!.Name);
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
}
