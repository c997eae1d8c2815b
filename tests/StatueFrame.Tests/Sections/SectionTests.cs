using CsCheck;
using UnitsNet;

namespace StatueFrame.Tests.Sections;

public class SectionTests
{
    private static readonly Gen<Section> Any = Gen.OneOf(
        Gen.Select(Gen.Double[20, 300], Gen.Double[2, 20], (b, t) => (Section)new FlatBar(b.Millimeters, t.Millimeters)),
        Gen.Select(Gen.Double[5, 300], Gen.Double[5, 300], (a, b) => (Section)new Rectangle(a.Millimeters, b.Millimeters)),
        Gen.Double[5, 300].Select(d => (Section)new RoundBar(d.Millimeters)),
        Gen.Select(Gen.Double[20, 900], Gen.Double[1, 9], (d, t) => (Section)new Tube(d.Millimeters, t.Millimeters)),
        Gen.Select(Gen.Double[20, 900], Gen.Double[20, 900], Gen.Double[1, 9], (a, b, t) => (Section)new RectangularTube(a.Millimeters, b.Millimeters, t.Millimeters)),
        Gen.Select(Gen.Double[50, 200], Gen.Double[20, 50], Gen.Double[2, 15], (a, b, t) => (Section)new AngleBar(a.Millimeters, b.Millimeters, t.Millimeters)));

    private static Section Scaled(Section section, double s) => section switch
    {
        FlatBar f => new FlatBar(f.Width * s, f.Thickness * s),
        Rectangle r => new Rectangle(r.SideA * s, r.SideB * s),
        RoundBar r => new RoundBar(r.Diameter * s),
        Tube t => new Tube(t.OuterDiameter * s, t.Wall * s),
        RectangularTube t => new RectangularTube(t.SideA * s, t.SideB * s, t.Wall * s),
        AngleBar a => new AngleBar(a.LongLeg * s, a.ShortLeg * s, a.Thickness * s),
        _ => throw new InvalidOperationException(),
    };

    [Fact]
    public void Area_grows_as_the_square_of_size_moduli_as_the_cube_and_inertia_as_the_fourth_power() =>
        Gen.Select(Any, Gen.Double[0.8, 1.25]).Sample((section, s) =>
        {
            SectionProperties p = section.Properties, q = Scaled(section, s).Properties;
            AssertRatio(s * s, q.A / p.A);
            AssertRatio(s * s, q.Asy / p.Asy);
            AssertRatio(s * s, q.Asz / p.Asz);
            AssertRatio(s * s * s, q.Wy / p.Wy);
            AssertRatio(s * s * s, q.Wz / p.Wz);
            AssertRatio(s * s * s * s, q.Iy / p.Iy);
            AssertRatio(s * s * s * s, q.Iz / p.Iz);
            AssertRatio(s * s * s * s, q.J / p.J);
        });

    [Fact]
    public void Y_is_the_strong_axis() => Any.Sample(section => section.Properties.Iy >= section.Properties.Iz);

    [Fact]
    public void No_section_is_stiffer_in_torsion_than_its_polar_moment() =>
        Any.Sample(section => section.Properties.J <= (section.Properties.Iy + section.Properties.Iz) * (1 + 1e-12));

    [Fact]
    public void Less_than_the_whole_area_shears() =>
        Any.Sample(section => section.Properties.Asy < section.Properties.A && section.Properties.Asz < section.Properties.A);

    [Fact]
    public void Public_quantities_are_the_properties() =>
        Any.Sample(section =>
        {
            SectionProperties p = section.Properties;
            Assert.Equal(p.A, section.Area.SquareMeters);
            Assert.Equal(p.Wz, section.WeakModulus.CubicMeters);
            Assert.Equal(p.Iy, p.A * Math.Pow(section.StrongRadiusOfGyration.Meters, 2), 1e-12 * p.Iy);
            Assert.Equal(p.Iz, p.A * Math.Pow(section.WeakRadiusOfGyration.Meters, 2), 1e-12 * p.Iz);
            Assert.Equal(p.Iy, p.Wy * section.StrongExtremeFiber.Meters, 1e-12 * p.Iy);
            Assert.Equal(p.Iz, p.Wz * section.WeakExtremeFiber.Meters, 1e-12 * p.Iz);
        });

    [Fact]
    public void A_blend_starts_at_the_one_and_ends_at_the_other() =>
        Gen.Select(Any, Gen.Double[0.5, 2]).Sample((section, s) =>
        {
            Section other = Scaled(section, s);
            Assert.Equal(section, section.Blend(other, 0));
            Assert.Equal(other, section.Blend(other, 1));
            AssertRatio(Math.Pow((1 + s) / 2, 4), section.Blend(other, 0.5).Properties.Iz / section.Properties.Iz);
        });

    [Fact]
    public void A_blend_is_the_same_from_either_end() =>
        Gen.Select(Any, Gen.Double[0.5, 2], Gen.Double[0, 1]).Sample((section, s, t) =>
        {
            Section other = Scaled(section, s);
            AssertRatio(1, section.Blend(other, t).Properties.J / other.Blend(section, 1 - t).Properties.J);
        });

    [Fact]
    public void Only_the_same_shape_blends()
    {
        Section flat = new FlatBar(60.Millimeters, 8.Millimeters), round = new RoundBar(20.Millimeters);
        Assert.True(flat.SameShape(new FlatBar(80.Millimeters, 10.Millimeters)));
        Assert.False(flat.SameShape(round));
        Assert.Contains("FlatBar", Assert.Throws<ArgumentException>(() => flat.Blend(round, 0.5)).Message);
    }

    [Fact]
    public void With_computes_anew()
    {
        var bar = new FlatBar(60.Millimeters, 8.Millimeters);
        double before = bar.Area.SquareMillimeters;
        FlatBar thicker = bar with { Thickness = 10.Millimeters };
        Assert.Equal(480, before, 1e-9);
        Assert.Equal(600, thicker.Area.SquareMillimeters, 1e-9);
        Assert.Equal(480, bar.Area.SquareMillimeters, 1e-9);
    }

    [Fact]
    public void Having_been_computed_does_not_change_equality()
    {
        Section a = new Tube(200.Millimeters, 8.Millimeters), b = new Tube(200.Millimeters, 8.Millimeters);
        _ = a.Area;
        Assert.Equal(a, b);
        Assert.Equal(a.GetHashCode(), b.GetHashCode());
        Assert.NotEqual(a, new Tube(200.Millimeters, 9.Millimeters));
        Assert.NotEqual<Section>(new FlatBar(60.Millimeters, 8.Millimeters), new Rectangle(60.Millimeters, 8.Millimeters));
    }

    [Fact]
    public void Designations_name_shape_and_size()
    {
        Assert.Equal("flat 60×8 mm", new FlatBar(60.Millimeters, 8.Millimeters).ToString());
        Assert.Equal("angle 100×100×10 mm", new AngleBar(100.Millimeters, 10.Millimeters).Designation);
        Assert.Equal("tube 219.1×8 mm", new Tube(219.1.Millimeters, 8.Millimeters).Designation);
        Assert.Equal("rectangular tube 100×60×4 mm", new RectangularTube(100.Millimeters, 60.Millimeters, 4.Millimeters).Designation);
        Assert.Equal("rectangle 100×50 mm", new Rectangle(100.Millimeters, 50.Millimeters).Designation);
        Assert.Equal("round 12.7 mm", new RoundBar(0.5.Inches).Designation);
    }

    public static IEnumerable<TheoryDataRow<Section, string>> Impossible =>
    [
        new(new FlatBar(8.Millimeters, 60.Millimeters), "Thickness"),
        new(new FlatBar(60.Millimeters, 8.Meters), "Thickness"),
        new(new FlatBar(60.Millimeters, Length.Zero), "Thickness"),
        new(new Rectangle(60.Millimeters, -1.Millimeters), "SideB"),
        new(new RoundBar(20.Meters), "Diameter"),
        new(new Tube(20.Millimeters, 10.Millimeters), "Wall"),
        new(new RectangularTube(100.Millimeters, 20.Millimeters, 10.Millimeters), "Wall"),
        new(new AngleBar(50.Millimeters, 60.Millimeters, 5.Millimeters), "ShortLeg"),
        new(new AngleBar(50.Millimeters, 40.Millimeters, 40.Millimeters), "Thickness"),
    ];

    [Theory, MemberData(nameof(Impossible))]
    public void Impossible_dimensions_are_named_and_never_become_numbers(Section section, string path)
    {
        var v = new Validator();
        section.Validate(v);
        Assert.Equal(path, Assert.Single(v.Problems).Path);
        Assert.Throws<InvalidStatueException>(() => section.WeakRadiusOfGyration);
    }

    [Fact]
    public void A_steel_bar_has_the_rigidities_of_its_parts()
    {
        var section = new FlatBar(60.Millimeters, 8.Millimeters).Of(StructuralSteel.S355);
        Assert.Equal(210e9 * 480e-6, section.EA, 1e-3);
        Assert.Equal(210e9 * 60 * 512 / 12 * 1e-12, section.EIz, 1e-6);
        Assert.Equal(7850 * 480e-6, section.Mass, 1e-12);
    }

    private static void AssertRatio(double expected, double ratio) => Assert.Equal(expected, ratio, 1e-9 * expected);
}
