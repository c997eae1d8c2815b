using UnitsNet;

namespace StatueFrame.Tests.Standoffs;

public class StandoffValidationTests
{
    public static IEnumerable<TheoryDataRow<StandoffRing, string, string>> Wrong =>
    [
        Row(Bars.Ring with { Level = " " }, "Level", "must not be empty"),
        Row(Bars.Ring with { Band = -1 }, "Band", "must be 1 or more"),
        Row(Bars.Ring with { Count = 0 }, "Count", "must be from 1 to 400"),
        Row(Bars.Ring with { Count = 401 }, "Count", "must be from 1 to 400"),
        Row(Bars.Ring with { FirstAngle = Angle.FromRadians(90) }, "FirstAngle", "out of range"),
        Row(Bars.Ring with { Lay = Angle.FromDegrees(91) }, "Lay", "out of range"),
        Row(Bars.Ring with { Rise = Length.FromMeters(300) }, "Rise", "out of range"),
        Row(Bars.Ring with { Length = Length.FromMeters(0.01) }, "Length", "0.02 m to 20 m"),
        Row(Bars.Ring with { Length = Length.FromMeters(800) }, "Length", "0.02 m to 20 m"),
        Row(Bars.Ring with { Length = Length.FromMillimeters(21) }, "Length", "times as long as thick"),
        Row(Bars.Ring with { Length = Length.FromMeters(19) }, "Length", "times as long as thick"),
        Row(Bars.Ring with { Length = Length.FromMeters(1), Rise = Length.FromMeters(1) }, "Rise", "not less than the bar's length"),
        Row(Bars.Ring with { Length = Length.FromMeters(1), Rise = Length.FromMeters(-1.5) }, "Rise", "not less than the bar's length"),
        Row(Of(Bars.Flat with { Section = Flat(60, 0.5) }), "Standoff.Section.Thickness", "not plausible"),
        Row(Of(Bars.Flat with { Section = Flat(200, 61) }), "Standoff.Section.Thickness", "not plausible"),
        Row(Of(Bars.Flat with { Section = Flat(4, 2) }), "Standoff.Section.Width", "not plausible"),
        Row(Of(Bars.Flat with { Section = Flat(501, 8) }), "Standoff.Section.Width", "not plausible"),
        Row(Of(Bars.Flat with { Section = Flat(8, 60) }), "Standoff.Section.Thickness", "greater than the width"),
        Row(Of(Bars.Flat with { Material = Bars.Steel with { Name = "" } }), "Standoff.Material.Name", "must not be empty"),
        Row(Of(Bars.Flat with { Roll = Angle.FromDegrees(200) }), "Standoff.Roll", "out of range"),
        Row(Of(Bars.Flat with { Slide = SaddleSlide.Along(0, 0, 0) }), "Standoff.Slide", "must be a direction"),
        Row(Of(Bars.Flat with { Slide = SaddleSlide.Along(1, double.NaN, 0) }), "Standoff.Slide", "must be a direction"),
        Row(Of(Bars.Flat with { TowerFixity = new() { WeakAxis = Spring(-1) } }), "Standoff.TowerFixity.WeakAxis", "must not be negative"),
        Row(Of(Bars.Flat with { TowerFixity = new() { StrongAxis = Spring(1e15) } }), "Standoff.TowerFixity.StrongAxis", "not plausible"),
        Row(new ExplicitRing { Level = "L", Bars = [] }, "Bars.Count", "must be from 1 to 400"),
        Row(Explicit(0, 0), "Bars[0].SkinEnd", "the bar is 0 m long"),
        Row(Explicit(0, 1e300), "Bars[0].SkinEnd", "0.02 m to 20 m"),
        Row(Of(Bars.Flat with { SkinFixity = new() { Twist = Spring(-1) } }), "Standoff.SkinFixity.Twist", "must not be negative"),
        Row(Explicit(0, 2000), "Bars[0].SkinEnd", "the bar is 2000 m long"),
    ];

    [Theory, MemberData(nameof(Wrong))]
    public void Problem_is_found_with_its_path(StandoffRing ring, string path, string message)
    {
        var validator = new Validator();
        ring.Validate(validator);
        Problem problem = Assert.Single(validator.Problems);
        Assert.Equal(path, problem.Path);
        Assert.Contains(message, problem.Message);
    }

    [Fact]
    public void All_problems_are_collected()
    {
        var validator = new Validator();
        (Bars.Ring with { Level = "", Count = 0, Standoff = Bars.Flat with { Section = Flat(60, 80) } }).Validate(validator);
        Assert.Equal(["Level", "Count", "Standoff.Section.Thickness"], validator.Problems.Select(p => p.Path));
    }

    [Fact]
    public void Sound_ring_has_no_problem()
    {
        var validator = new Validator();
        (Bars.Ring with { Lay = Angle.FromDegrees(90), Length = Length.FromMeters(0.8) }).Validate(validator);
        Explicit(0, 1.5).Validate(validator);
        Assert.Empty(validator.Problems);
    }

    [Fact]
    public void Bracket_is_listed_as_an_assumption()
    {
        Assert.Empty(Bars.Ring.Assumptions());
        Assert.Contains("rigid brackets", Assert.Single((Bars.Ring with { Length = Length.FromMeters(1) }).Assumptions()).Value);
        Assert.Contains("rigid brackets", Assert.Single(Explicit(0, 1).Assumptions()).Value);
    }

    [Fact]
    public void Equal_descriptions_are_equal()
    {
        Assert.Equal(Explicit(0, 1), Explicit(0, 1));
        Assert.NotEqual(Explicit(0, 1), Explicit(0, 1.1));
        Assert.Equal(SaddleSlide.Along(1, 2, 3), SaddleSlide.Along(1, 2, 3));
        Assert.Equal("along (1, 2, 3)", SaddleSlide.Along(1, 2, 3).ToString());
        Assert.Equal(EndFixity.Pinned, EndFixity.Spring(RotationalStiffness.Zero));
        Assert.NotEqual(EndFixity.Pinned, EndFixity.Rigid);
    }

    private static TheoryDataRow<StandoffRing, string, string> Row(StandoffRing ring, string path, string message) =>
        new(ring, path, message) { TestDisplayName = $"{path} {message}" };

    private static EvenRing Of(Standoff standoff) => Bars.Ring with { Standoff = standoff };

    private static FlatBar Flat(double b, double t) => new(Length.FromMillimeters(b), Length.FromMillimeters(t));

    private static RotationalStiffness Spring(double k) => RotationalStiffness.FromNewtonMetersPerRadian(k);

    private static ExplicitRing Explicit(double tower, double skin) => new()
    {
        Level = "L3",
        Bars = [new StandoffBar { TowerEnd = At(tower), SkinEnd = At(skin), Standoff = Bars.Flat }],
    };

    private static Point3 At(double x) => new(Length.FromMeters(x), Length.Zero, Length.Zero);
}
