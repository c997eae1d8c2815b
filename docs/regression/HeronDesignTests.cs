using StatueFrame;
using StatueFrame.Checks;

namespace Regression;

/// <summary>Holds the design: no change of statue, library or computer moves a sheet without being seen.</summary>
public class HeronDesignTests
{
    private static readonly CheckSheet asDrawn = HeronDesign.SheetOf(HeronDesign.AsDrawn), fewerBars = HeronDesign.SheetOf(HeronDesign.FewerBars);

    [Fact]
    public void The_design_as_drawn_is_the_one_that_was_signed() => KeptSheet.Match("as-drawn", asDrawn);

    [Fact]
    public void The_variant_with_fewer_bars_is_the_one_that_was_discussed() => KeptSheet.Match("fewer-bars", fewerBars, digits: 3);

    [Fact]
    public void Fewer_bars_move_bars_masses_and_sway_and_nothing_else() => KeptSheet.MovedOnly(asDrawn, fewerBars, change =>
        change.Subject.StartsWith("bars.", StringComparison.Ordinal)
        || change.Kind is SheetChangeKind.Result or SheetChangeKind.Statement
        || Math.Abs((change.After ?? 0) - (change.Before ?? 0)) < 0.01, digits: 3);

    [Fact]
    public void The_comparison_names_the_check_that_governs_now()
    {
        SheetComparison moved = fewerBars.CompareWith(asDrawn);
        Assert.Contains(moved.Changes, change => change.Subject.StartsWith("bars.", StringComparison.Ordinal) && change.After > change.Before);
        Assert.True(asDrawn.CompareWith(asDrawn).IsEmpty);
    }
}
